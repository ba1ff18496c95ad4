package ohmtrail.locate;

import ohmtrail.predict.Parameter;

/**
 * Something known only roughly, and what the best hypothesis makes of it.
 *
 * @param parameter what it is, with its nominal value and tolerance
 * @param value the fitted value, in the parameter's unit
 * @param pull how far the fit moved it, in standard deviations of its tolerance
 */
public record FittedParameter(Parameter parameter, double value, double pull) {}
