package ohmtrail.survey;

import java.util.List;
import java.util.Optional;

/**
 * One moment: which loads were on, and what was read.
 *
 * @param name unique in its survey
 * @param loads the loads on beside those that are wired in; empty for an idle circuit
 * @param isolation how the circuit was made dead; empty while the breaker was on
 * @param readings what was read then; may be empty
 * @param trips what the GFCIs or RCDs did, as far as anybody saw
 * @param switching the switches that were open, and what is wired in but was off
 * @param supplyMoved whether the voltage of the supply was another one from this test on, by more
 *     than it drifts
 */
public record Test(
    String name,
    List<LoadInUse> loads,
    Optional<Isolation> isolation,
    List<Reading> readings,
    List<Trip> trips,
    Switching switching,
    boolean supplyMoved) {
  /** Copies the lists; with the breaker off no load is on, and only then is resistance read. */
  public Test {
    if (name.isBlank()) {
      throw new SurveyException("Test name (" + name + ") must not be blank");
    }
    loads = List.copyOf(loads);
    readings = List.copyOf(readings);
    trips = List.copyOf(trips);
    if (isolation.isPresent() && !trips.isEmpty()) {
      throw new SurveyException(
          "Test (" + name + ") must have its breaker on for a device to trip or to hold");
    }
    if (isolation.isPresent() && !loads.isEmpty()) {
      throw new SurveyException(
          "Test ("
              + name
              + ") must have no load on while its breaker is off\n"
              + "Maybe unplug it: an ohmmeter would read it.");
    }
    for (Reading reading : readings) {
      requireAllowed(name, isolation.isPresent(), reading);
    }
  }

  /** A test in which nobody watched a GFCI or RCD, with every switch closed. */
  public Test(
      String name, List<LoadInUse> loads, Optional<Isolation> isolation, List<Reading> readings) {
    this(name, loads, isolation, readings, List.of(), Switching.USUAL, false);
  }

  /** The same moment, switched so. */
  public Test withSwitching(Switching switched) {
    return new Test(name, loads, isolation, readings, trips, switched, supplyMoved);
  }

  /** The same moment, with what GFCIs or RCDs did. */
  public Test withTrips(List<Trip> seen) {
    return new Test(name, loads, isolation, readings, seen, switching, supplyMoved);
  }

  /** A test with the breaker on. */
  public Test(String name, List<LoadInUse> loads, List<Reading> readings) {
    this(name, loads, Optional.empty(), readings);
  }

  private static void requireAllowed(String name, boolean dead, Reading reading) {
    if (!dead && reading.measurand() == Measurand.RESISTANCE) {
      throw new SurveyException(
          "Resistance ("
              + reading.tap().word()
              + ") in test "
              + name
              + " must be read with the breaker off\n"
              + "Maybe the test was one with the breaker off: say so; an ohmmeter on a live circuit is destroyed.");
    }
    if (dead
        && (reading.measurand() == Measurand.CURRENT
            || reading.measurand() == Measurand.LOOP_IMPEDANCE)) {
      throw new SurveyException(
          "Reading ("
              + reading.tap().word()
              + ") in "
              + reading.measurand().unit()
              + " in test "
              + name
              + " must be taken with the breaker on\n"
              + "Maybe the meter is an ohmmeter.");
    }
  }

  /** The same moment with other readings. */
  public Test withReadings(List<Reading> others) {
    return new Test(name, loads, isolation, others, trips, switching, supplyMoved);
  }

  /** The same moment with other loads on. */
  public Test withLoads(List<LoadInUse> others) {
    return new Test(name, others, isolation, readings, trips, switching, supplyMoved);
  }

  /** The same, from which on the voltage of the supply was another one. */
  public Test withSupplyMoved() {
    return new Test(name, loads, isolation, readings, trips, switching, true);
  }

  /** The same under another name. */
  public Test named(String other) {
    return new Test(other, loads, isolation, readings, trips, switching, supplyMoved);
  }

  /** Whether the breaker was off. */
  public boolean isDead() {
    return isolation.isPresent();
  }
}
