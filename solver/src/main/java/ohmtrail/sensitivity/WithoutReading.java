package ohmtrail.sensitivity;

import ohmtrail.survey.Reading;

/**
 * The conclusion without one reading.
 *
 * @param index its place in the survey, from 0
 * @param test the test it was taken in
 * @param reading the reading
 * @param conclusion of all others
 * @param change what is another one without it
 */
public record WithoutReading(
    int index, String test, Reading reading, Conclusion conclusion, Change change) {}
