package ohmtrail.cli.render.json;

import java.util.Locale;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.reference.Assumption;
import ohmtrail.sensitivity.AssumptionEffect;
import ohmtrail.sensitivity.AssumptionEffect.TurningPoint;
import ohmtrail.sensitivity.AssumptionRange;
import ohmtrail.sensitivity.Change;
import ohmtrail.sensitivity.Conclusion;
import ohmtrail.sensitivity.Quantiles;
import ohmtrail.sensitivity.Rival;
import ohmtrail.sensitivity.Sensitivity;
import ohmtrail.sensitivity.Together;
import ohmtrail.sensitivity.WithoutReading;

/** How far an answer hangs on what it was given, as a JSON document. */
public final class SensitivityJson {
  private SensitivityJson() {}

  /** Writes it. */
  public static String of(CaseFile caseFile, Sensitivity sensitivity) {
    JsonWriter json = Parts.begin("sensitivity", caseFile);
    conclusion(json.object("stated"), sensitivity.stated()).end();
    json.array("assumptions");
    sensitivity.effects().forEach(effect -> effect(json, effect));
    json.end();
    json.texts("withoutEffect", sensitivity.withoutEffect().stream().map(Assumption::key).toList());
    together(json, sensitivity.together());
    json.array("withoutReading");
    sensitivity.withoutReading().forEach(each -> withoutReading(json, each));
    json.end();
    json.array("rivals");
    sensitivity.rivals().forEach(rival -> rival(json, rival));
    json.end();
    json.member("answered", sensitivity.answered());
    Parts.warnings(json, caseFile);
    return json.end().toString();
  }

  private static JsonWriter conclusion(JsonWriter json, Conclusion conclusion) {
    json.member("verdict", conclusion.verdict().name().toLowerCase(Locale.ROOT))
        .member("probability", conclusion.probability(), Parts.PROBABILITY)
        .texts("boxes", conclusion.boxes())
        .texts(
            "joints",
            conclusion.suspect().stream()
                .flatMap(suspect -> suspect.joints().stream())
                .map(Joint::id)
                .toList());
    if (conclusion.ohms().isPresent()) {
      Parts.interval(json, conclusion.ohms().get());
    } else {
      json.nothing("ohms");
    }
    return json;
  }

  private static void effect(JsonWriter json, AssumptionEffect effect) {
    AssumptionRange range = effect.range();
    json.object()
        .member("key", range.assumption().key())
        .member("unit", range.assumption().unit())
        .member("stated", range.stated())
        .member("low", range.low())
        .member("high", range.high())
        .member("hasEffect", effect.hasEffect());
    conclusion(json.object("atLow"), effect.atLow()).end();
    conclusion(json.object("atHigh"), effect.atHigh()).end();
    turning(json, "changesBelow", effect.below());
    turning(json, "changesAbove", effect.above());
    json.end();
  }

  private static void turning(JsonWriter json, String name, Optional<TurningPoint> turning) {
    if (turning.isEmpty()) {
      json.nothing(name);
      return;
    }
    json.object(name).member("value", turning.get().value());
    change(json, turning.get().change());
    json.end();
  }

  private static void change(JsonWriter json, Change change) {
    json.object("changes")
        .member("verdict", change.verdict())
        .member("box", change.box())
        .member("conductor", change.conductor())
        .member("ohms", change.ohms())
        .end();
  }

  private static void together(JsonWriter json, Together together) {
    json.object("together")
        .member("draws", together.draws())
        .member("seed", Long.toString(together.seed()))
        .texts("varied", together.varied().stream().map(Assumption::key).toList())
        .member("sameVerdict", together.sameVerdict(), Parts.PROBABILITY)
        .member("sameBox", together.sameBox(), Parts.PROBABILITY)
        .member("sameConductor", together.sameConductor(), Parts.PROBABILITY)
        .member("ohmsWithin", together.sameOhms(), Parts.PROBABILITY);
    quantiles(json, "probability", together.probability());
    quantiles(json, "ohms", together.ohms());
    json.end();
  }

  private static void quantiles(JsonWriter json, String name, Optional<Quantiles> quantiles) {
    if (quantiles.isEmpty()) {
      json.nothing(name);
      return;
    }
    json.object(name)
        .member("low", quantiles.get().low())
        .member("median", quantiles.get().median())
        .member("high", quantiles.get().high())
        .end();
  }

  private static void withoutReading(JsonWriter json, WithoutReading without) {
    json.object()
        .member("index", without.index())
        .member("test", without.test())
        .member("at", without.reading().box())
        .member("between", Parts.between(without.reading()));
    Parts.figure(json, "read", without.reading().value());
    conclusion(json.object("conclusion"), without.conclusion()).end();
    change(json, without.change());
    json.end();
  }

  private static void rival(JsonWriter json, Rival rival) {
    json.object()
        .texts("joints", rival.suspect().joints().stream().map(Joint::id).toList())
        .member("probability", rival.suspect().probability())
        .member("bayesFactor", rival.bayesFactor());
    if (rival.excluding().isPresent()) {
      json.object("excluding")
          .member("reading", rival.excluding().get().index())
          .member("bayesFactor", rival.excluding().get().bayesFactor())
          .end();
    } else {
      json.nothing("excluding");
    }
    json.end();
  }
}
