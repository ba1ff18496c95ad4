package ohmtrail.cli.render.json;

import java.util.List;
import java.util.Locale;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.MissingWords;
import ohmtrail.cli.render.Notes;
import ohmtrail.cli.render.PriorWords;
import ohmtrail.cli.render.SlipWords;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.SlipBelief;
import ohmtrail.locate.Support;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;
import ohmtrail.report.OpeningOrder;
import ohmtrail.report.OpeningPlan;
import ohmtrail.report.Report;
import ohmtrail.report.TestState;

/** The answer as a document. */
public final class LocateJson {
  private final CaseFile caseFile;
  private final Report report;
  private final Diagnosis diagnosis;
  private final JsonWriter json;

  private LocateJson(CaseFile caseFile, Report report) {
    this.caseFile = caseFile;
    this.report = report;
    this.diagnosis = report.diagnosis();
    this.json = Parts.begin("locate", caseFile);
  }

  /** Writes it. */
  public static String of(CaseFile caseFile, Report report) {
    return new LocateJson(caseFile, report).write();
  }

  private String write() {
    json.member("verdict", diagnosis.verdict().name().toLowerCase(Locale.ROOT))
        .member("headline", Headline.of(caseFile, report))
        .member("healthyProbability", diagnosis.healthyProbability(), Parts.PROBABILITY)
        .member("unexplainedProbability", diagnosis.unexplainedProbability(), Parts.PROBABILITY)
        .member("severalProbability", diagnosis.severalProbability(), Parts.PROBABILITY)
        .member("unstableProbability", diagnosis.unstableProbability(), Parts.PROBABILITY)
        .member("badJoints", diagnosis.degradedJoints());
    writeBoxes();
    writeOpening();
    writeSuspects();
    writeBest();
    writeDanger();
    writePoint();
    writeSlips();
    writeSupport();
    writeWithoutFinds();
    json.texts("notes", Notes.of(caseFile, diagnosis));
    writeReadings();
    writeParameters();
    writeDrops();
    FindingsJson.write(json, report.tests());
    Parts.taken(json, caseFile);
    Parts.assumptions(json, caseFile, diagnosis.assumptions());
    json.texts("whatWouldHelp", MissingWords.of(caseFile, report));
    json.texts("cautions", Cautions.forAnswer(caseFile, report));
    Parts.warnings(json, caseFile);
    return json.end().toString();
  }

  private void writeBoxes() {
    json.array("boxes");
    for (RankedBox box : diagnosis.boxes()) {
      json.object()
          .member("box", box.box())
          .member("probability", box.probability(), Parts.PROBABILITY)
          .end();
    }
    json.end();
  }

  private void writeOpening() {
    OpeningOrder opening = report.opening();
    json.object("opening")
        .member("timed", opening.timed())
        .member("expectedMinutes", opening.plan().expectedMinutes())
        .member("expectedMinutesByProbability", opening.byProbability().expectedMinutes())
        .array("order");
    for (OpeningPlan.Step step : opening.plan().steps()) {
      json.object()
          .member("box", step.box())
          .member("probability", step.probability(), Parts.PROBABILITY)
          .member("minutes", step.minutes())
          .end();
    }
    json.end().end();
  }

  private void writeSuspects() {
    json.array("suspects");
    for (Report.RankedSuspect ranked : report.suspects()) {
      Suspect suspect = ranked.suspect();
      json.object().array("joints");
      for (int j = 0; j < suspect.joints().size(); j++) {
        write(suspect.joints().get(j), suspect.jointProbabilities().get(j));
      }
      json.end().member("probability", suspect.probability(), Parts.PROBABILITY);
      Parts.interval(json, suspect.ohms());
      json.member("spread", suspect.spread())
          .member("rankedByPriorsOnly", PriorWords.rankOnly(suspect));
      PriorWords.because(suspect, caseFile.survey(), caseFile.assumptions())
          .ifPresentOrElse(
              because -> json.member("rankedBecause", because),
              () -> json.nothing("rankedBecause"));
      HeatJson.write(json, ranked.heat());
      json.end();
    }
    json.end();
  }

  private void write(Joint joint, double probability) {
    json.object()
        .member("id", joint.id())
        .member("box", joint.box())
        .member("conductor", joint.conductor().word())
        .member("role", joint.role().word())
        .member("kind", joint.kind().word())
        .member("probability", probability, Parts.PROBABILITY)
        .end();
  }

  private void writeBest() {
    json.array("best");
    for (Degradation degradation : diagnosis.best()) {
      json.object().member("joint", degradation.joint());
      Parts.ohms(json, "ohms", degradation.ohms());
      json.texts("alike", alike(degradation.joint())).end();
    }
    json.end();
  }

  /** The joints that the readings cannot tell from one. */
  private List<String> alike(String joint) {
    return diagnosis.suspectOf(joint).stream()
        .flatMap(suspect -> suspect.joints().stream())
        .map(Joint::id)
        .filter(id -> !id.equals(joint))
        .toList();
  }

  private void writeDanger() {
    DangerWords.of(caseFile, report)
        .ifPresentOrElse(words -> json.member("danger", words), () -> json.nothing("danger"));
  }

  /** Where everything is worked out, beside the parameters. */
  private void writePoint() {
    json.object("point")
        .member("sound", diagnosis.verdict() == Verdict.UNEXPLAINED ? "as stated" : "as fitted")
        .array("supply");
    for (int t = 0; t < report.tests().size(); t++) {
      TestState state = report.tests().get(t);
      json.object()
          .member("test", state.test().name())
          .member("drift", report.at().drifts().get(t), Parts.DRIFT)
          .member("volts", state.supplyVolts(), Parts.VOLTS)
          .end();
    }
    json.end().end();
  }

  private void writeDrops() {
    json.array("drops");
    for (TestState state : report.tests()) {
      json.object().member("test", state.test().name());
      FindingsJson.drops(json, state.drops());
      json.end();
    }
    json.end();
  }

  private void writeSlips() {
    json.array("slips");
    for (SlipBelief belief : diagnosis.slips()) {
      json.object()
          .member("kind", belief.slip().kind())
          .member("probability", belief.ofItsKind(), Parts.PROBABILITY)
          .member("words", SlipWords.what(caseFile, belief) + ".")
          .member("check", SlipWords.check(belief.slip()))
          .end();
    }
    json.end();
  }

  private void writeSupport() {
    Support support = diagnosis.support();
    json.object("support").array("carrying");
    for (Support.Carrying carrying : support.carrying()) {
      json.object()
          .member("reading", carrying.reading())
          .member("probabilityWithout", carrying.without(), Parts.PROBABILITY)
          .member("healthyWithout", carrying.soundWithout(), Parts.PROBABILITY)
          .end();
    }
    json.end().array("excluded");
    for (Support.Excluded rival : support.excluded()) {
      json.object()
          .member("joint", rival.joint().id())
          .member("reading", rival.reading())
          .member("bayesFactor", rival.bayesFactor())
          .end();
    }
    json.end().member("bayesFactor", support.bayesFactor()).end();
  }

  private void writeWithoutFinds() {
    if (report.withoutFinds().isEmpty()) {
      json.nothing("withoutFinds");
      return;
    }
    Diagnosis without = report.withoutFinds().get();
    json.object("withoutFinds")
        .member("verdict", without.verdict().name().toLowerCase(Locale.ROOT))
        .member("healthyProbability", without.healthyProbability(), Parts.PROBABILITY)
        .array("boxes");
    for (RankedBox box : without.boxes()) {
      json.object()
          .member("box", box.box())
          .member("probability", box.probability(), Parts.PROBABILITY)
          .end();
    }
    json.end().end();
  }

  private void writeReadings() {
    json.array("readings");
    for (FittedReading fitted : diagnosis.readings()) {
      json.object()
          .member("test", fitted.test())
          .member("at", fitted.reading().box())
          .member("between", Parts.between(fitted.reading()))
          .member("unit", fitted.reading().measurand().unit())
          .member("meter", fitted.reading().meter());
      Parts.figure(json, "observed", fitted.reading().value());
      Parts.figure(json, "predicted", fitted.fitted());
      json.member("residual", fitted.residual(), Parts.VOLTS)
          .member("residualSigmas", fitted.residualSigmas(), Parts.SIGMAS)
          .member("sigma", fitted.sigma());
      Parts.figure(json, "healthy", fitted.healthy());
      json.member("wrongProbability", fitted.wrongProbability(), Parts.PROBABILITY).end();
    }
    json.end();
  }

  private void writeParameters() {
    json.array("parameters");
    for (FittedParameter fitted : diagnosis.parameters()) {
      json.object()
          .member("description", fitted.parameter().description())
          .member("unit", fitted.parameter().unit())
          .member("nominal", fitted.parameter().nominal())
          .member("tolerance", fitted.parameter().sigma())
          .member("value", fitted.value())
          .member("pull", fitted.pull(), Parts.SIGMAS)
          .member("strained", Notes.strained(diagnosis).contains(fitted))
          .end();
    }
    json.end();
  }
}
