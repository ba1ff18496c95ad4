package ohmtrail.survey;

/**
 * A load that is on during a test.
 *
 * @param load name of the load
 * @param box the box it is plugged in at
 */
public record LoadInUse(String load, String box) {}
