package ohmtrail.cli.casefile.circumstances;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;

/** Reads and writes days and times as ISO 8601 has them: 2026-03-14, 2026-03-14 10:32. */
final class Moments {
  private static final DateTimeFormatter TO_THE_MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private static final DateTimeFormatter TO_THE_SECOND =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

  private final Optional<LocalDate> day;
  private final Problems problems;

  /**
   * @param day the day of times that name none
   */
  Moments(Optional<LocalDate> day, Problems problems) {
    this.day = day;
    this.problems = problems;
  }

  /** A day; empty when it is none, and noted. */
  Optional<LocalDate> date(Scalar scalar) {
    try {
      return Optional.of(LocalDate.parse(scalar.text().strip()));
    } catch (DateTimeException none) {
      problems.error(
          scalar.place(),
          "Date (" + scalar.text() + ") must be a day of the calendar as year, month and day.",
          "write 2026-03-14.");
      return Optional.empty();
    }
  }

  /** A time with its day, or on the day of the case; empty when it is none, and noted. */
  Optional<LocalDateTime> time(Scalar scalar) {
    String text = scalar.text().strip();
    try {
      boolean isOfTheDay = text.matches("[0-9]{1,2}:[0-9]{2}(:[0-9]{2})?");
      if (!isOfTheDay) {
        return Optional.of(LocalDateTime.parse(text.replaceFirst("(?<=[0-9])\\s+", "T")));
      }
      if (day.isPresent()) {
        String padded = text.indexOf(':') == 1 ? "0" + text : text;
        return Optional.of(day.get().atTime(LocalTime.parse(padded)));
      }
    } catch (DateTimeException none) {
      // Said below, as for a time of no day.
    }
    problems.error(
        scalar.place(),
        "Time (" + scalar.text() + ") must be a day and a time of 24 hours.",
        "write 2026-03-14 10:32, or give the day under date.");
    return Optional.empty();
  }

  static String text(LocalDateTime time) {
    return (time.getSecond() == 0 ? TO_THE_MINUTE : TO_THE_SECOND).format(time);
  }
}
