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

  /** A trip less probable than this is not worth a line. */
  private static final double WORTH_A_LINE = 0.005;

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
        .filter(current -> current.tripProbability() >= WORTH_A_LINE)
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
   * @param rating when it trips
   */
  public record Watched(String test, Trip trip, double amperes, Rating rating) {
    /** What it does about what it saw. */
    public Response response() {
      return rating.at(amperes);
    }
  }

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
        watched.add(new Watched(test.name(), trip, seen, device(caseFile, trip).rating()));
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
        + current(watched.amperes())
        + " of imbalance it "
        + does(device(caseFile, watched.trip()), watched.amperes())
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
    return current(current.amperes())
        + " of imbalance; the "
        + device(caseFile, current.device())
        + " "
        + does(current.device(), current.amperes())
        + ".";
  }

  private static String does(ResidualCurrentDevice device, double amperes) {
    return switch (device.rating().at(amperes)) {
      case HOLDS -> "holds";
      case MAY_TRIP ->
          "may trip (probability "
              + Figures.hundredths(device.rating().tripProbability(amperes))
              + ")";
      case TRIPS ->
          "trips within " + Figures.twoDigits(device.rating().longestSeconds(amperes)) + " s";
    };
  }

  private static String current(double amperes) {
    return amperes < 1
        ? Figures.upToTenths(MILLI * amperes) + " mA"
        : Figures.tenths(amperes) + " A";
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
    double volts = caseFile.circuit().supply().volts();
    double amperes = volts * meter.siemens(volts);
    Response response = device.rating().at(amperes);
    return response == Response.HOLDS
        ? Optional.empty()
        : Optional.of(
            "Do not hold "
                + meter.name()
                + " from a live conductor to "
                + region.conductor(ConductorRole.GROUND)
                + " behind the "
                + device(caseFile, device)
                + ": it "
                + (meter.measurand() == Measurand.VOLTAGE ? "passes " : "draws ")
                + current(amperes)
                + (response == Response.TRIPS ? " and trips it." : " and may trip it."));
  }
}
