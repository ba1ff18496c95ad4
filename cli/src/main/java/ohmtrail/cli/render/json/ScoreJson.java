package ohmtrail.cli.render.json;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.score.Calibration;
import ohmtrail.practice.score.Comparison;
import ohmtrail.practice.score.Opening;
import ohmtrail.practice.score.Ratio;
import ohmtrail.practice.score.Score;
import ohmtrail.practice.score.Study;

/** How well the locator does, as JSON. */
public final class ScoreJson {
  private final JsonWriter json = Parts.begin("score");

  private ScoreJson() {}

  /** Writes it. */
  public static String of(Study study) {
    return new ScoreJson().write(study);
  }

  private String write(Study study) {
    json.member("seed", Long.toString(study.seed())).member("cases", study.cases());
    json.array("populations");
    for (Comparison comparison : study.comparisons()) {
      json.object().member("population", comparison.population().name());
      writeScore(comparison.locator());
      writeSample(comparison.sample());
      json.end();
    }
    json.end();
    return json.end().toString();
  }

  private void writeScore(Score score) {
    writeOpening("boxes", score.opening());
    writeOpening("boxesForAll", score.openingForAll());
    writeOpening("boxesByRuleOfThumb", score.ruleOfThumb());
    json.member("suspectRight", score.suspectShare())
        .member("jointRight", score.jointShare())
        .member("conductorRight", score.conductorShare())
        .member("countRight", score.countShare())
        .member("wrongReadingNamed", score.wrongReadingShare())
        .member("firstBoxKept", score.firstBoxKeptShare())
        .member("ohmsCovered", score.coverage())
        .member("falseAlarms", score.falseAlarms())
        .member("surelyWrong", score.surelyWrongShare())
        .member("surelyRight", score.surelyRightShare())
        .member("slipNamed", score.slipNamedShare())
        .member("slipClaimed", score.slipClaimedShare())
        .member("soundAccused", score.accusedShare());
    writeVerdicts("verdictsOnDegraded", score.verdictsOnDegraded());
    writeVerdicts("verdictsOnHealthy", score.verdictsOnHealthy());
    writeCalibration(score.calibration());
  }

  private void writeOpening(String name, Optional<Opening> opening) {
    if (opening.isEmpty()) {
      json.nothing(name);
      return;
    }
    json.object(name)
        .member("cases", opening.get().cases())
        .member("mean", opening.get().meanBoxes())
        .member("standardError", opening.get().standardError())
        .member("firstShare", opening.get().firstBoxShare(), Parts.PROBABILITY)
        .end();
  }

  private void writeVerdicts(String name, Map<Verdict, Integer> counts) {
    json.object(name);
    for (Verdict verdict : Verdict.values()) {
      json.member(verdict.name().toLowerCase(Locale.ROOT), counts.getOrDefault(verdict, 0));
    }
    json.end();
  }

  private void writeCalibration(Optional<Calibration> calibration) {
    if (calibration.isEmpty()) {
      json.nothing("calibration");
      return;
    }
    json.object("calibration")
        .member("brierScore", calibration.get().brierScore())
        .member("expectedError", calibration.get().expectedError())
        .member("worstError", calibration.get().worstError())
        .array("bins");
    for (Calibration.Bin bin : calibration.get().bins()) {
      json.object()
          .member("low", bin.low(), Parts.PROBABILITY)
          .member("high", bin.high(), Parts.PROBABILITY)
          .member("boxes", bin.boxes())
          .member("stated", bin.meanStated(), Parts.PROBABILITY)
          .member("observed", bin.frequency(), Parts.PROBABILITY)
          .end();
    }
    json.end().end();
  }

  private void writeSample(Optional<Comparison.Sample> sample) {
    if (sample.isEmpty()) {
      json.nothing("oracle");
      return;
    }
    json.object("oracle").member("cases", sample.get().oracle().cases());
    writeOpening("boxes", sample.get().oracle().opening());
    writeOpening("boxesByLocate", sample.get().locator().opening());
    writeOpening("boxesByRuleOfThumb", sample.get().oracle().ruleOfThumb());
    writeRatio("ratio", sample.get().boxes());
    writeRatio("ratioForAll", sample.get().boxesForAll());
    json.member("conductorRight", sample.get().oracle().conductorShare())
        .member("jointRight", sample.get().oracle().jointShare())
        .member("falseAlarms", sample.get().oracle().falseAlarms());
    writeCalibration(sample.get().oracle().calibration());
    json.end();
  }

  private void writeRatio(String name, Optional<Ratio> ratio) {
    ratio.ifPresentOrElse(
        given ->
            json.object(name)
                .member("value", given.value())
                .member("standardError", given.standardError())
                .end(),
        () -> json.nothing(name));
  }
}
