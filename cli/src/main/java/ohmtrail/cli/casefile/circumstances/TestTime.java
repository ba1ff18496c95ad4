package ohmtrail.cli.casefile.circumstances;

import java.time.LocalDateTime;

/**
 * When a test was taken.
 *
 * @param test its name in the case
 * @param at local time, to the minute or the second
 */
public record TestTime(String test, LocalDateTime at) {}
