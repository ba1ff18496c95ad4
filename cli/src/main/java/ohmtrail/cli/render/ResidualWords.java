package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
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

  private static String name(CaseFile caseFile, DeviceCurrent current) {
    Region region = Region.of(caseFile.circuit().supply());
    Reading reading = current.reading().orElseThrow();
    return new ReadingWords(region).name(reading)
        + " with "
        + reading.meter()
        + ", test "
        + current.test();
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
