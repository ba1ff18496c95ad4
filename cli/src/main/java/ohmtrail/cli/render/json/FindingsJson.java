package ohmtrail.cli.render.json;

import java.util.List;
import java.util.Locale;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.predict.LoadPoint;
import ohmtrail.report.DeviceCurrent;
import ohmtrail.report.Overvoltage;
import ohmtrail.report.TestState;
import ohmtrail.report.VoltageDrop;
import ohmtrail.survey.Reading;

/** What loads, receptacles and residual-current devices see in the tests. */
final class FindingsJson {
  private final JsonWriter json;
  private final List<TestState> tests;

  private FindingsJson(JsonWriter json, List<TestState> tests) {
    this.json = json;
    this.tests = tests;
  }

  /** Writes members of the object that is open. */
  static void write(JsonWriter json, List<TestState> tests) {
    FindingsJson findings = new FindingsJson(json, tests);
    findings.writeLoads();
    findings.writeOvervoltage();
    findings.writeResidualCurrents();
    findings.writeTrips();
  }

  private void writeLoads() {
    json.array("operatingPoints");
    for (TestState test : tests) {
      for (LoadPoint point : test.loads()) {
        json.object()
            .member("test", test.test().name())
            .member("load", point.use().load())
            .member("at", point.use().box())
            .member("runs", point.runs())
            .member("volts", point.volts(), Parts.VOLTS)
            .member("amperes", point.amperes())
            .member("watts", point.watts())
            .end();
      }
    }
    json.end();
  }

  private void writeOvervoltage() {
    json.array("overvoltage");
    for (TestState test : tests) {
      for (Overvoltage found : test.overvoltages()) {
        json.object()
            .member("test", found.test())
            .member("box", found.box())
            .member("between", found.between().word())
            .member("volts", found.volts(), Parts.VOLTS)
            .member("ofNominal", found.ofNominal(), Parts.PROBABILITY)
            .end();
      }
    }
    json.end();
  }

  private void writeTrips() {
    json.array("trips");
    for (TestState test : tests) {
      for (DeviceCurrent current : test.watchedDevices()) {
        json.object()
            .member("device", current.device().box())
            .member("test", current.test())
            .member("tripped", current.watched().orElseThrow().tripped());
        write(current);
      }
    }
    json.end();
  }

  private void writeResidualCurrents() {
    json.array("residualCurrents");
    for (TestState test : tests) {
      for (DeviceCurrent current : test.deviceCurrents()) {
        Reading reading = current.reading().orElseThrow();
        json.object()
            .member("device", current.device().box())
            .member("test", current.test())
            .member("of", reading.tap().word())
            .member("meter", reading.meter());
        write(current);
      }
    }
    json.end();
  }

  private void write(DeviceCurrent current) {
    json.member("amperes", current.amperes())
        .member("tripProbability", current.tripProbability(), Parts.PROBABILITY)
        .member("response", word(current.response()))
        .end();
  }

  private static String word(ResidualCurrentDevice.Response response) {
    return response.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The voltage drops of a test as a member {@code drops}. */
  static void drops(JsonWriter json, List<VoltageDrop> drops) {
    json.array("drops");
    for (VoltageDrop drop : drops) {
      json.object()
          .member("box", drop.box())
          .member("metres", drop.metres())
          .member("volts", drop.volts(), Parts.VOLTS)
          .member("drop", drop.dropVolts(), Parts.VOLTS)
          .member("fraction", drop.fraction(), Parts.PROBABILITY)
          .end();
    }
    json.end();
  }
}
