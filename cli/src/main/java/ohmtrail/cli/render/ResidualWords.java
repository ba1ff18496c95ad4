package ohmtrail.cli.render;

import java.util.List;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.circuit.ResidualCurrentDevice.Response;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.report.DeviceCurrent;
import ohmtrail.report.TestState;
import ohmtrail.report.caution.Caution;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Trip;

/** What GFCIs and RCDs do during the readings of a case. */
public final class ResidualWords {
  private static final double MILLI = 1e3;

  /** A trip less probable than this is not worth a line. */
  private static final double WORTH_A_LINE = 0.005;

  private ResidualWords() {}

  /** One line per reading during which a device may trip or trips. */
  public static List<String> trips(CaseFile caseFile, List<TestState> tests) {
    return tests.stream()
        .flatMap(test -> test.deviceCurrents().stream())
        .filter(current -> current.tripProbability() >= WORTH_A_LINE)
        .map(current -> name(caseFile, current) + ": " + sentence(caseFile, current))
        .toList();
  }

  /** One line per GFCI or RCD that somebody watched: what it did, and what it saw. */
  public static List<String> watched(CaseFile caseFile, List<TestState> tests) {
    return tests.stream()
        .flatMap(test -> test.watchedDevices().stream())
        .map(current -> watched(caseFile, current, current.watched().orElseThrow()))
        .toList();
  }

  private static String watched(CaseFile caseFile, DeviceCurrent current, Trip trip) {
    boolean odd =
        trip.tripped()
            ? current.response() == Response.HOLDS
            : current.response() == Response.TRIPS;
    return "The "
        + device(caseFile, current.device())
        + (trip.tripped() ? " tripped" : " did not trip")
        + trip.probe()
            .map(probe -> " with " + probe.meter() + " at " + probe.tap().word())
            .orElse("")
        + ", test "
        + current.test()
        + ". With "
        + current(current.amperes())
        + " of imbalance it "
        + does(current.device(), current.amperes())
        + (odd ? ": this does not fit." : ".");
  }

  private static String sentence(CaseFile caseFile, DeviceCurrent current) {
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
    return device(Region.of(caseFile.circuit().supply()), device);
  }

  private static String device(Region region, ResidualCurrentDevice device) {
    Rating rating = device.rating();
    return region.residualCurrentDevice()
        + " at "
        + device.box()
        + " ("
        + Figures.upToTenths(MILLI * rating.holdsAmperes())
        + " to "
        + Figures.upToTenths(MILLI * rating.tripsAmperes())
        + " mA)";
  }

  private static String name(CaseFile caseFile, DeviceCurrent current) {
    Region region = Region.of(caseFile.circuit().supply());
    Reading reading = current.reading().orElseThrow();
    return new ReadingWords(region).name(reading)
        + " with "
        + reading.meter()
        + ", test "
        + current.test();
  }

  /** What must not be held from a live conductor to ground behind a device. */
  static String caution(Region region, Caution.Trips caution) {
    ResidualCurrentDevice device = caution.device();
    return "Do not hold "
        + caution.meter().name()
        + " from a live conductor to "
        + region.conductor(ConductorRole.GROUND)
        + " behind the "
        + device(region, device)
        + ": it "
        + (caution.meter().measurand() == Measurand.VOLTAGE ? "passes " : "draws ")
        + current(caution.amperes())
        + (device.rating().at(caution.amperes()) == Response.TRIPS
            ? " and trips it."
            : " and may trip it.");
  }
}
