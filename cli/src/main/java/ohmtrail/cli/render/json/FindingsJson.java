package ohmtrail.cli.render.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.LoadFindings;
import ohmtrail.cli.render.Overvoltage;
import ohmtrail.cli.render.ResidualWords;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.LoadPoint;
import ohmtrail.predict.ResidualCurrent;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** What loads, receptacles and residual-current devices see under supposed or found ohms. */
final class FindingsJson {
  private final JsonWriter json;
  private final CaseFile caseFile;
  private final Survey survey;
  private final List<Degradation> degradations;

  private FindingsJson(
      JsonWriter json, CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    this.json = json;
    this.caseFile = caseFile;
    this.survey = survey;
    this.degradations = degradations;
  }

  /**
   * Writes members of the object that is open.
   *
   * @param above the receptacles above the bound
   */
  static void write(
      JsonWriter json,
      CaseFile caseFile,
      Survey survey,
      List<Degradation> degradations,
      List<Overvoltage.Found> above) {
    FindingsJson findings = new FindingsJson(json, caseFile, survey, degradations);
    findings.writeLoads();
    findings.writeOvervoltage(above);
    findings.writeResidualCurrents();
    findings.writeTrips();
  }

  private void writeLoads() {
    json.array("operatingPoints");
    for (LoadFindings.Found found : LoadFindings.found(caseFile, survey, degradations)) {
      LoadPoint point = found.point();
      json.object()
          .member("test", found.test())
          .member("load", point.use().load())
          .member("at", point.use().box())
          .member("runs", point.runs())
          .member("volts", point.volts(), Parts.VOLTS)
          .member("amperes", point.amperes())
          .member("watts", point.watts())
          .end();
    }
    json.end();
  }

  private void writeOvervoltage(List<Overvoltage.Found> above) {
    json.array("overvoltage");
    for (Overvoltage.Found found : above) {
      json.object()
          .member("test", found.test())
          .member("box", found.box())
          .member("between", found.between().word())
          .member("volts", found.volts(), Parts.VOLTS)
          .member("ofNominal", found.ofNominal(), Parts.PROBABILITY)
          .end();
    }
    json.end();
  }

  private void writeTrips() {
    json.array("trips");
    for (ResidualWords.Watched watched :
        ResidualWords.watchedCurrents(caseFile, survey, degradations)) {
      json.object()
          .member("device", watched.trip().device())
          .member("test", watched.test())
          .member("tripped", watched.trip().tripped())
          .member("amperes", watched.amperes())
          .member(
              "tripProbability",
              watched.rating().tripProbability(watched.amperes()),
              Parts.PROBABILITY)
          .member("response", word(watched.response()))
          .end();
    }
    json.end();
  }

  private static String word(ResidualCurrentDevice.Response response) {
    return response.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void writeResidualCurrents() {
    List<String> tests = new ArrayList<>();
    List<Reading> readings = new ArrayList<>();
    for (Test test : survey.tests()) {
      for (Reading reading : test.readings()) {
        tests.add(test.name());
        readings.add(reading);
      }
    }
    json.array("residualCurrents");
    for (ResidualCurrent current : ResidualWords.currents(caseFile, survey, degradations)) {
      Reading reading = readings.get(current.reading());
      json.object()
          .member("device", current.device().box())
          .member("test", tests.get(current.reading()))
          .member("of", reading.tap().word())
          .member("meter", reading.meter())
          .member("amperes", current.amperes())
          .member("tripProbability", current.tripProbability(), Parts.PROBABILITY)
          .member("response", word(current.response()))
          .end();
    }
    json.end();
  }
}
