package ohmtrail.cli.render.json;

import java.util.Locale;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.JointHeat;
import ohmtrail.cli.render.Notes;
import ohmtrail.cli.render.OpeningOrder;
import ohmtrail.cli.render.Overvoltage;
import ohmtrail.cli.render.PriorWords;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.OpeningPlan;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;

/** The answer as a document. */
public final class LocateJson {
  private final CaseFile caseFile;
  private final Diagnosis diagnosis;
  private final JsonWriter json;

  private LocateJson(CaseFile caseFile, Diagnosis diagnosis) {
    this.caseFile = caseFile;
    this.diagnosis = diagnosis;
    this.json = Parts.begin("locate", caseFile);
  }

  /** Writes it. */
  public static String of(CaseFile caseFile, Diagnosis diagnosis) {
    return new LocateJson(caseFile, diagnosis).write();
  }

  private String write() {
    json.member("verdict", diagnosis.verdict().name().toLowerCase(Locale.ROOT))
        .member("headline", Headline.of(caseFile, diagnosis))
        .member("healthyProbability", diagnosis.healthyProbability(), Parts.PROBABILITY)
        .member("unexplainedProbability", diagnosis.unexplainedProbability(), Parts.PROBABILITY)
        .member("severalProbability", diagnosis.severalProbability(), Parts.PROBABILITY)
        .member("unstableProbability", diagnosis.unstableProbability(), Parts.PROBABILITY)
        .member("badJoints", diagnosis.degradedJoints());
    writeBoxes();
    writeOpening();
    writeSuspects();
    writeBest();
    writeHeat();
    json.texts("notes", Notes.of(diagnosis));
    writeReadings();
    writeParameters();
    FindingsJson.write(
        json,
        caseFile,
        caseFile.survey(),
        diagnosis.best(),
        Overvoltage.fitted(caseFile, diagnosis));
    Parts.taken(json, caseFile);
    Parts.assumptions(json, caseFile, diagnosis.assumptions());
    json.texts("whatWouldHelp", Notes.whatIsMissing(caseFile, diagnosis));
    json.texts("cautions", Cautions.forAnswer(caseFile, diagnosis));
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
    OpeningOrder opening = OpeningOrder.of(caseFile, diagnosis);
    json.object("opening")
        .member("timed", opening.isTimed())
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
    for (Suspect suspect : diagnosis.suspects()) {
      json.object().array("joints");
      for (int j = 0; j < suspect.joints().size(); j++) {
        write(suspect.joints().get(j), suspect.jointProbabilities().get(j));
      }
      json.end().member("probability", suspect.probability(), Parts.PROBABILITY);
      Parts.interval(json, suspect.ohms());
      json.member("spread", suspect.spread())
          .member("rankedByPriorsOnly", PriorWords.rankOnly(suspect));
      PriorWords.because(suspect, caseFile.assumptions())
          .ifPresentOrElse(
              because -> json.member("rankedBecause", because),
              () -> json.nothing("rankedBecause"));
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
      json.end();
    }
    json.end();
  }

  private void writeHeat() {
    Optional<JointHeat> heat =
        diagnosis.verdict() == Verdict.DEGRADED
            ? JointHeat.worst(diagnosis.suspects().get(0), caseFile.circuit())
            : Optional.empty();
    if (heat.isPresent()) {
      Parts.heat(json, heat.get(), caseFile.circuit());
    } else {
      json.nothing("heat");
    }
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
