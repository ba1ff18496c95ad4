package ohmtrail.cli.render.json;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.advise.Advice;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.advise.Outcome;
import ohmtrail.advise.RuledOut;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.advice.AdviceWords;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/** What to do next as a document. */
public final class NextJson {
  /** Decimals of minutes: a few seconds. */
  private static final int MINUTES = 2;

  private final CaseFile caseFile;
  private final AdviceReport report;
  private final Advice advice;
  private final AdviceWords words;
  private final JsonWriter json;

  private NextJson(CaseFile caseFile, AdviceReport report) {
    this.caseFile = caseFile;
    this.report = report;
    this.advice = report.advice();
    this.words = new AdviceWords(caseFile.circuit(), caseFile.survey(), caseFile.assumptions());
    this.json = Parts.begin("next", caseFile);
  }

  /** Writes it. */
  public static String of(CaseFile caseFile, AdviceReport report) {
    return new NextJson(caseFile, report).write();
  }

  private String write() {
    Optional<String> danger = DangerWords.of(caseFile, report.report());
    if (danger.isPresent()) {
      json.member("danger", danger.get());
    } else {
      json.nothing("danger");
    }
    json.member("minutesByOpening", advice.minutesByOpening(), MINUTES).array("choices");
    advice.options().forEach(this::write);
    json.end().array("ruledOut");
    advice.ruledOut().forEach(this::write);
    json.end();
    Parts.taken(json, caseFile);
    Parts.assumptions(json, caseFile, advice.diagnosis().assumptions());
    json.texts("cautions", Cautions.forAdvice(caseFile, advice, advice.options().size()));
    Parts.warnings(json, caseFile);
    return json.end().toString();
  }

  private void write(Option option) {
    json.object();
    write(option.choice());
    json.member("words", words.choice(option.choice()))
        .member("ownMinutes", option.ownMinutes(), MINUTES)
        .member("expectedMinutes", option.expectedMinutes(), MINUTES)
        .array("outcomes");
    option.outcomes().forEach(outcome -> write(option.choice(), outcome));
    json.end().end();
  }

  private void write(Choice choice) {
    if (choice instanceof Choice.Read read) {
      json.member("do", "read")
          .member("look", read.look().name().toLowerCase(Locale.ROOT))
          .array("tests");
      read.tests().forEach(this::write);
      json.end();
    } else if (choice instanceof Choice.Open open) {
      json.member("do", "open").member("box", open.box());
    } else if (choice instanceof Choice.Stop stop) {
      json.member("do", "stop")
          .member("reason", stop.reason().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
  }

  private void write(Test test) {
    json.object().array("loads");
    for (LoadInUse use : test.loads()) {
      json.object().member("load", use.load()).member("at", use.box()).end();
    }
    json.end();
    json.texts("open", List.copyOf(test.switching().open()))
        .texts("off", List.copyOf(test.switching().off()));
    test.isolation()
        .ifPresent(
            isolation -> json.texts("links", isolation.links().stream().map(Tap::word).toList()));
    json.array("readings");
    for (Reading reading : test.readings()) {
      json.object()
          .member("at", reading.box())
          .member("between", Parts.between(reading))
          .member("meter", reading.meter())
          .end();
    }
    json.end().end();
  }

  private void write(Choice choice, Outcome outcome) {
    json.object().member("words", words.outcome(choice, outcome));
    bound("above", outcome.above());
    bound("below", outcome.below());
    outcome
        .shows()
        .map(figure -> figure.reading().measurand().unit())
        .ifPresentOrElse(unit -> json.member("unit", unit), () -> json.nothing("unit"));
    json.member("fall", outcome.shows().flatMap(Outcome.Figure::from).isPresent())
        .member("probability", outcome.probability(), Parts.PROBABILITY)
        .member("healthyProbability", outcome.healthyProbability(), Parts.PROBABILITY)
        .member("minutesLeft", outcome.minutesLeft(), MINUTES)
        .array("boxes");
    for (Outcome.LikelyBox box : outcome.boxes()) {
      json.object()
          .member("box", box.box())
          .member("probability", box.probability(), Parts.PROBABILITY)
          .end();
    }
    json.end().end();
  }

  /** A bound of ohms beyond what the meter shows is an open way. */
  private void bound(String name, OptionalDouble bound) {
    if (bound.isPresent() && Double.isInfinite(bound.getAsDouble())) {
      json.member(name, "open");
    } else {
      json.member(name, bound);
    }
  }

  private void write(RuledOut out) {
    json.object().array("tests");
    out.choice().tests().forEach(this::write);
    json.end().array("reasons");
    for (Hazard hazard : out.hazards()) {
      json.object()
          .member("harm", hazard.harm().name().toLowerCase(Locale.ROOT))
          .member("worst", hazard.worst())
          .member("limit", hazard.limit())
          .member("unit", hazard.harm().unit())
          .member("probability", hazard.probability(), Parts.PROBABILITY)
          .member("joint", hazard.under().joint());
      Parts.ohms(json, "ohms", hazard.under().ohms());
      json.member("words", words.hazard(out.choice(), hazard)).end();
    }
    json.end().end();
  }
}
