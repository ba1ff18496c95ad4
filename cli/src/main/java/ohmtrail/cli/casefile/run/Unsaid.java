package ohmtrail.cli.casefile.run;

/**
 * Something that a case does not say and that was taken as usual.
 *
 * @param key the key that would say it
 * @param value what was taken, as the key would say it
 * @param because why, in half a sentence
 */
public record Unsaid(String key, String value, String because) {}
