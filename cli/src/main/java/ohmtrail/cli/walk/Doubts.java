package ohmtrail.cli.walk;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.advise.Outlook;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Figures;
import ohmtrail.cli.render.JointWords;
import ohmtrail.locate.Posterior;
import ohmtrail.survey.LoadInUse;
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
   * @param loads what is on
   * @param reading with what was typed
   */
  Optional<String> about(List<LoadInUse> loads, Reading reading) {
    Outlook outlook = outlook(loads, reading);
    double volts = reading.value();
    if (outlook.allows(volts)) {
      return Optional.empty();
    }
    String shown = Figures.volts(volts);
    if (!loads.isEmpty() && outlook(List.of(), reading).allows(volts)) {
      String names = names(loads);
      return Optional.of(shown + " here would mean that the " + names + " was off: was it on?");
    }
    Optional<String> left = loads.isEmpty() ? leftOn(reading) : Optional.empty();
    if (left.isPresent()) {
      return Optional.of(
          shown + " here would mean that the " + left.get() + " was on: was everything off?");
    }
    for (double factor : new double[] {DECADE, 1 / DECADE, MILLI, 1 / MILLI}) {
      if (outlook.allows(volts * factor)) {
        return Optional.of(
            shown
                + " is not believable here, "
                + Figures.volts(volts * factor)
                + " would be: has the point slipped?");
      }
    }
    return Optional.of(
        "Nothing that is still believed of this run shows "
            + shown
            + " here: "
            + Figures.tenths(outlook.least())
            + " to "
            + Figures.volts(outlook.most())
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
    Outlook outlook = outlook(test.withReadings(List.of(reading)).named("doubted"));
    if (outlook.allows(reading.value())) {
      return Optional.empty();
    }
    String unit = " " + reading.measurand().unit();
    return Optional.of(
        "Taken in, but nothing that was still believed of this run shows "
            + Figures.number(reading.value())
            + unit
            + " there: "
            + Figures.number(outlook.least())
            + " to "
            + Figures.number(outlook.most())
            + unit
            + " would be. Type undo if it was not so.");
  }

  private Outlook outlook(List<LoadInUse> loads, Reading reading) {
    return outlook(new Test("doubted", loads, List.of(reading)));
  }

  private Outlook outlook(Test blank) {
    return Outlook.of(
        caseFile.circuit(), caseFile.survey(), caseFile.assumptions(), posterior, blank);
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
                outlook(List.of(new LoadInUse(load, reading.box())), reading)
                    .allows(reading.value()))
        .findFirst();
  }

  private static String names(List<LoadInUse> loads) {
    return JointWords.listed(
        loads.stream().map(LoadInUse::load).distinct().collect(Collectors.toList()), "and");
  }
}
