package ohmtrail.cli.render.json;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.SwitchWords;
import ohmtrail.reference.Assumption;
import ohmtrail.report.Prediction;
import ohmtrail.report.Prediction.PredictedReading;
import ohmtrail.report.Prediction.PredictedTest;
import ohmtrail.report.heat.Heat;
import ohmtrail.survey.LoadInUse;

/** What meters would show, as a document. */
public final class PredictJson {
  private final CaseFile caseFile;
  private final Prediction prediction;
  private final JsonWriter json;

  private PredictJson(CaseFile caseFile, Prediction prediction) {
    this.caseFile = caseFile;
    this.prediction = prediction;
    this.json = Parts.begin("predict", caseFile);
  }

  /** Writes it. */
  public static String of(CaseFile caseFile, Prediction prediction) {
    return new PredictJson(caseFile, prediction).write();
  }

  private String write() {
    Circuit circuit = caseFile.circuit();
    json.array("degraded");
    for (Prediction.Supposed supposed : prediction.degraded()) {
      json.object().member("joint", supposed.joint().id());
      Parts.ohms(json, "ohms", supposed.ohms());
      HeatJson.write(json, supposed.worst(), supposed.limit());
      json.end();
    }
    json.end();
    Parts.guidance(json, Region.of(circuit.supply()).guidance());
    json.array("tests");
    prediction.tests().forEach(this::writeTest);
    json.end();
    FindingsJson.write(json, prediction.tests().stream().map(PredictedTest::state).toList());
    Parts.taken(json, caseFile);
    Parts.assumptions(json, caseFile, List.of(Assumption.values()));
    json.texts("cautions", Cautions.forMeasuring(caseFile));
    Parts.warnings(json, caseFile);
    return json.end().toString();
  }

  private void writeTest(PredictedTest test) {
    json.object().member("test", test.test().name());
    json.array("loads");
    for (LoadInUse use : test.test().loads()) {
      json.object().member("load", use.load()).member("at", use.box()).end();
    }
    json.end();
    json.texts(
        "wiredIn", SwitchWords.drawing(caseFile.with(prediction.problem().survey()), test.test()));
    Parts.switching(json, test.test().switching());
    json.array("readings");
    test.readings().forEach(this::writeReading);
    json.end();
    FindingsJson.drops(json, test.state().drops());
    json.array("heat");
    for (int d = 0; d < test.heat().size(); d++) {
      Heat heat = test.heat().get(d);
      json.object()
          .member("joint", prediction.degraded().get(d).joint().id())
          .member("amperes", heat.amperes())
          .member("watts", heat.watts())
          .end();
    }
    json.end().end();
  }

  private void writeReading(PredictedReading reading) {
    json.object()
        .member("at", reading.reading().box())
        .member("between", Parts.between(reading.reading()))
        .member("unit", reading.reading().measurand().unit())
        .member("meter", reading.reading().meter());
    Parts.figure(json, "predicted", reading.predicted());
    Parts.figure(json, "healthy", reading.healthy());
    if (reading.isRead()) {
      Parts.figure(json, "observed", reading.reading().value());
    } else {
      json.nothing("observed");
    }
    json.end();
  }
}
