package ohmtrail.cli.render.json;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.JointHeat;
import ohmtrail.cli.render.Overvoltage;
import ohmtrail.cli.render.Prediction;
import ohmtrail.cli.render.Prediction.HeatInTest;
import ohmtrail.cli.render.Prediction.PredictedReading;
import ohmtrail.cli.render.Prediction.PredictedTest;
import ohmtrail.cli.render.Region;
import ohmtrail.cli.render.SwitchWords;
import ohmtrail.cli.render.VoltageDrop;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;

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
    for (Degradation degradation : prediction.degradations()) {
      json.object().member("joint", degradation.joint());
      Parts.ohms(json, "ohms", degradation.ohms());
      Parts.heat(json, JointHeat.worst(degradation.ohms(), circuit), circuit);
      json.end();
    }
    json.end();
    Parts.guidance(json, Region.of(circuit.supply()).guidance());
    json.array("tests");
    prediction.tests().forEach(this::writeTest);
    json.end();
    Survey survey = Prediction.filled(caseFile);
    FindingsJson.write(
        json,
        caseFile,
        survey,
        prediction.degradations(),
        Overvoltage.supposed(caseFile, survey, prediction.degradations()));
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
    json.texts("wiredIn", SwitchWords.drawing(caseFile, test.test()));
    Parts.switching(json, test.test().switching());
    json.array("readings");
    test.readings().forEach(this::writeReading);
    json.end().array("drops");
    test.drops().forEach(this::writeDrop);
    json.end().array("heat");
    test.heat().forEach(this::writeHeat);
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

  private void writeDrop(VoltageDrop drop) {
    json.object()
        .member("box", drop.box())
        .member("metres", drop.metres())
        .member("volts", drop.volts(), Parts.VOLTS)
        .member("drop", drop.dropVolts(), Parts.VOLTS)
        .member("fraction", drop.fraction(), Parts.PROBABILITY)
        .end();
  }

  private void writeHeat(HeatInTest heat) {
    json.object()
        .member("joint", heat.joint())
        .member("amperes", heat.amperes())
        .member("watts", heat.watts())
        .end();
  }
}
