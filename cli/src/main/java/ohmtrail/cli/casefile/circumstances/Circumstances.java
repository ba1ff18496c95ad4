package ohmtrail.cli.casefile.circumstances;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Who measured, when, where and with what. All of it optional; texts are fit to be shown.
 *
 * @param person who measured
 * @param date on which day
 * @param place where
 * @param claim number of the insurer's claim
 * @param job number of the job or order
 * @param weather what it was like, where it matters
 * @param temperature how warm it was, as it was said
 * @param hoursOfUse for how many hours the loads named are on in the time that is asked about
 * @param meters what the meters of the case are, each name once
 * @param notes in the order of the file
 * @param photographs in the order of the file
 * @param times when each test was taken, in the order of the file, each test once
 */
public record Circumstances(
    Optional<String> person,
    Optional<LocalDate> date,
    Optional<String> place,
    Optional<String> claim,
    Optional<String> job,
    Optional<String> weather,
    Optional<String> temperature,
    OptionalDouble hoursOfUse,
    List<MeterIdentity> meters,
    List<String> notes,
    List<Photograph> photographs,
    List<TestTime> times) {
  /** Nothing is said. */
  public static final Circumstances UNSAID =
      new Circumstances(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty(),
          List.of(),
          List.of(),
          List.of(),
          List.of());

  /** Copies the lists. */
  public Circumstances {
    meters = List.copyOf(meters);
    notes = List.copyOf(notes);
    photographs = List.copyOf(photographs);
    times = List.copyOf(times);
  }

  /** When a test was taken, as far as anybody said. */
  public Optional<TestTime> timeOf(String test) {
    return times.stream().filter(time -> time.test().equals(test)).findFirst();
  }

  /** What a meter is, as far as anybody said. */
  public Optional<MeterIdentity> identityOf(String meter) {
    return meters.stream().filter(identity -> identity.meter().equals(meter)).findFirst();
  }

  /** The same with other times. */
  public Circumstances withTimes(List<TestTime> others) {
    return new Circumstances(
        person,
        date,
        place,
        claim,
        job,
        weather,
        temperature,
        hoursOfUse,
        meters,
        notes,
        photographs,
        others);
  }
}
