package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.circuit.ResidualCurrentDevice.Response;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.predict.ResidualCurrent;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;

/** What GFCIs and RCDs do during the readings of a case. */
public final class ResidualWords {
  private static final double MILLI = 1e3;

  private ResidualWords() {}

  /**
   * One line per reading during which a device may trip or trips.
   *
   * @param survey the case's, or one with more readings
   * @param degradations ohms supposed or found
   */
  public static List<String> trips(
      CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    List<String> names = names(caseFile, survey);
    return currents(caseFile, survey, degradations).stream()
        .filter(current -> current.response() != Response.HOLDS)
        .map(current -> names.get(current.reading()) + ": " + sentence(caseFile, current))
        .toList();
  }

  /**
   * One line per GFCI or RCD that somebody watched: what it did, and what it saw.
   *
   * @param degradations ohms supposed or found
   */
  public static List<String> watched(
      CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    List<Watched> watched = watchedCurrents(caseFile, survey, degradations);
    return watched.stream().map(each -> sentence(caseFile, each)).toList();
  }

  /**
   * A device that somebody watched.
   *
   * @param test the test's name
   * @param trip what it did
   * @param amperes what it saw
   * @param response what it does about that
   */
  public record Watched(String test, Trip trip, double amperes, Response response) {}

  /** What every device that somebody watched saw. */
  public static List<Watched> watchedCurrents(
      CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    if (survey.tests().stream().allMatch(test -> test.trips().isEmpty())) {
      return List.of();
    }
    Predictor predictor = new Predictor(caseFile.circuit(), survey, caseFile.assumptions());
    List<Double> amperes =
        predictor.tripAmperes(degradations, predictor.parameters().nominalPoint());
    List<Watched> watched = new ArrayList<>();
    for (Test test : survey.tests()) {
      for (Trip trip : test.trips()) {
        double seen = amperes.get(watched.size());
        Response response = device(caseFile, trip).rating().at(seen);
        watched.add(new Watched(test.name(), trip, seen, response));
      }
    }
    return List.copyOf(watched);
  }

  private static ResidualCurrentDevice device(CaseFile caseFile, Trip trip) {
    return caseFile.circuit().residualCurrentDevices().stream()
        .filter(device -> device.box().equals(trip.device()))
        .findFirst()
        .orElseThrow();
  }

  private static String sentence(CaseFile caseFile, Watched watched) {
    String does =
        switch (watched.response()) {
          case HOLDS -> "it holds";
          case MAY_TRIP -> "it may trip";
          case TRIPS -> "it trips";
        };
    boolean odd =
        watched.trip().tripped()
            ? watched.response() == Response.HOLDS
            : watched.response() == Response.TRIPS;
    return "The "
        + device(caseFile, device(caseFile, watched.trip()))
        + (watched.trip().tripped() ? " tripped" : " did not trip")
        + watched
            .trip()
            .probe()
            .map(probe -> " with " + probe.meter() + " at " + probe.tap().word())
            .orElse("")
        + ", test "
        + watched.test()
        + ". With "
        + Figures.upToTenths(MILLI * watched.amperes())
        + " mA of imbalance "
        + does
        + (odd ? ": this does not fit." : ".");
  }

  /** What every device sees during every reading; nothing where there is no device. */
  public static List<ResidualCurrent> currents(
      CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    if (caseFile.circuit().residualCurrentDevices().isEmpty()) {
      return List.of();
    }
    Predictor predictor = new Predictor(caseFile.circuit(), survey, caseFile.assumptions());
    return predictor.residualCurrents(degradations, predictor.parameters().nominalPoint());
  }

  private static String sentence(CaseFile caseFile, ResidualCurrent current) {
    return Figures.upToTenths(MILLI * current.amperes())
        + " mA of imbalance; the "
        + device(caseFile, current.device())
        + (current.response() == Response.TRIPS ? " trips." : " may trip.");
  }

  private static String device(CaseFile caseFile, ResidualCurrentDevice device) {
    Rating rating = device.rating();
    return Region.of(caseFile.circuit().supply()).residualCurrentDevice()
        + " at "
        + device.box()
        + " ("
        + Figures.upToTenths(MILLI * rating.holdsAmperes())
        + " to "
        + Figures.upToTenths(MILLI * rating.tripsAmperes())
        + " mA)";
  }

  private static List<String> names(CaseFile caseFile, Survey survey) {
    Region region = Region.of(caseFile.circuit().supply());
    List<String> names = new ArrayList<>();
    for (Test test : survey.tests()) {
      for (Reading reading : test.readings()) {
        names.add(
            new ReadingWords(region).name(reading)
                + " with "
                + reading.meter()
                + ", test "
                + test.name());
      }
    }
    return names;
  }

  /** What must not be held from a live conductor to ground behind a device; empty if nothing. */
  static List<String> cautions(CaseFile caseFile) {
    List<String> cautions = new ArrayList<>();
    Region region = Region.of(caseFile.circuit().supply());
    for (ResidualCurrentDevice device : caseFile.circuit().residualCurrentDevices()) {
      for (Meter meter : caseFile.survey().meters()) {
        caution(caseFile, region, device, meter).ifPresent(cautions::add);
      }
    }
    return List.copyOf(cautions);
  }

  private static Optional<String> caution(
      CaseFile caseFile, Region region, ResidualCurrentDevice device, Meter meter) {
    String ground = region.conductor(ConductorRole.GROUND);
    String behind =
        " from a live conductor to " + ground + " behind the " + device(caseFile, device);
    if (meter.measurand() == Measurand.LOOP_IMPEDANCE) {
      // A loop tester's own ampere returns by way of the earth (common practice, no source).
      return Optional.of(
          "Do not test the loop with " + meter.name() + behind + ": its test current trips it.");
    }
    if (meter.measurand() != Measurand.VOLTAGE) {
      return Optional.empty();
    }
    double amperes = caseFile.circuit().supply().volts() / meter.inputOhms();
    return device.rating().at(amperes) == Response.HOLDS
        ? Optional.empty()
        : Optional.of(
            "Do not hold "
                + meter.name()
                + behind
                + ": it passes "
                + Figures.upToTenths(MILLI * amperes)
                + " mA and trips it.");
  }
}
