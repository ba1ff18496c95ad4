package ohmtrail.cli.walk;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.advise.PredictiveDistribution;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.locate.Posterior;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/** Whether a reading is believable, and what it would mean if it is as typed. */
final class Doubts {
  private static final double DECADE = 10;
  private static final double MILLI = 1000;

  private final CaseFile caseFile;
  private final Posterior posterior;

  Doubts(CaseFile caseFile, Posterior posterior) {
    this.caseFile = caseFile;
    this.posterior = posterior;
  }

  /**
   * The question to ask back; empty for a reading that something believable shows.
   *
   * @param test that it is taken in: what is on, or how the circuit was made dead
   * @param reading with what was typed
   */
  Optional<String> about(Test test, Reading reading) {
    PredictiveDistribution predicted =
        predicted(test.withReadings(List.of(reading)).named("doubted"));
    double value = reading.value();
    if (predicted.isCredible(value)) {
      return Optional.empty();
    }
    List<LoadInUse> loads = test.loads();
    boolean ofVolts = reading.measurand() == Measurand.VOLTAGE;
    String shown = figure(reading, value);
    if (ofVolts && !loads.isEmpty() && predicted(List.of(), reading).isCredible(value)) {
      String names = names(loads);
      return Optional.of(shown + " here would mean that the " + names + " was off: was it on?");
    }
    Optional<String> left = ofVolts && loads.isEmpty() ? leftOn(reading) : Optional.empty();
    if (left.isPresent()) {
      return Optional.of(
          shown + " here would mean that the " + left.get() + " was on: was everything off?");
    }
    for (double factor : new double[] {DECADE, 1 / DECADE, MILLI, 1 / MILLI}) {
      if (predicted.isCredible(value * factor)) {
        return Optional.of(
            shown
                + " is not believable here, "
                + figure(reading, value * factor)
                + " would be: has the point slipped?");
      }
    }
    return Optional.of(
        "Nothing that is still believed of this run shows "
            + shown
            + " here: "
            + figure(reading, predicted.least())
            + " to "
            + figure(reading, predicted.most())
            + " would be. Is it as read, at "
            + reading.box()
            + "?");
  }

  /**
   * What to say of a test of any kind that was taken in already; empty where something believable
   * shows all of it.
   */
  Optional<String> aboutTest(Test test) {
    return test.readings().stream()
        .filter(reading -> Double.isFinite(reading.value()) && !reading.isDead())
        .flatMap(reading -> aboutNoted(test, reading).stream())
        .findFirst();
  }

  private Optional<String> aboutNoted(Test test, Reading reading) {
    PredictiveDistribution predicted =
        predicted(test.withReadings(List.of(reading)).named("doubted"));
    if (predicted.isCredible(reading.value())) {
      return Optional.empty();
    }
    return Optional.of(
        "Taken in, but nothing that was still believed of this run shows "
            + figure(reading, reading.value())
            + " there: "
            + figure(reading, predicted.least())
            + " to "
            + figure(reading, predicted.most())
            + " would be. Type undo if it was not so.");
  }

  private static String figure(Reading reading, double value) {
    return ReadingWords.figure(reading.measurand(), value);
  }

  private PredictiveDistribution predicted(List<LoadInUse> loads, Reading reading) {
    return predicted(new Test("doubted", loads, List.of(reading)));
  }

  private PredictiveDistribution predicted(Test blank) {
    return PredictiveDistribution.of(caseFile.problem(), posterior, blank);
  }

  /** A load that, left on at that box, would explain it. */
  private Optional<String> leftOn(Reading reading) {
    boolean pluggable =
        caseFile.circuit().box(reading.box()).map(box -> box.hasReceptacle()).orElse(false);
    return caseFile.survey().pluggedIn().stream()
        .map(Load::name)
        .filter(load -> pluggable)
        .filter(
            load ->
                predicted(List.of(new LoadInUse(load, reading.box())), reading)
                    .isCredible(reading.value()))
        .findFirst();
  }

  private static String names(List<LoadInUse> loads) {
    return JointWords.listed(
        loads.stream().map(LoadInUse::load).distinct().collect(Collectors.toList()), "and");
  }
}
