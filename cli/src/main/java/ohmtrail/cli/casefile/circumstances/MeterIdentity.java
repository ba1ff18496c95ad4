package ohmtrail.cli.casefile.circumstances;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Which meter it was.
 *
 * @param meter its name in the case
 * @param description what it is, such as "multimeter, true RMS, CAT III 600 V"
 * @param serial its serial number
 * @param calibrated the day of its last calibration
 */
public record MeterIdentity(
    String meter,
    Optional<String> description,
    Optional<String> serial,
    Optional<LocalDate> calibrated) {}
