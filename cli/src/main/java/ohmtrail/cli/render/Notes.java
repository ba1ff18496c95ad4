package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;

/** What else there is to know of an answer: other ways to read it, and what is under strain. */
public final class Notes {
  /** What is less likely changes nobody's plan. */
  private static final double WORTH_TELLING = 0.05;

  /** A fitted value more than two tolerances off is not what was stated. */
  private static final double STRAINED = 2;

  private static final double EVEN_ODDS = 0.5;

  private Notes() {}

  /** A sentence for each. */
  public static List<String> of(CaseFile caseFile, Diagnosis diagnosis) {
    List<String> notes = new ArrayList<>(SlipWords.possible(caseFile, diagnosis));
    if (diagnosis.verdict() == Verdict.DEGRADED) {
      addHowMany(diagnosis, notes);
      addUnstable(diagnosis, notes);
    }
    strained(diagnosis).forEach(fitted -> notes.add(strain(fitted)));
    return List.copyOf(notes);
  }

  private static void addHowMany(Diagnosis diagnosis, List<String> notes) {
    if (diagnosis.severalProbability() >= WORTH_TELLING) {
      notes.add(
          "More than one bad joint at once: "
              + Figures.probability(diagnosis.severalProbability())
              + "; one alone: "
              + Figures.probability(diagnosis.oneProbability())
              + ".");
    }
  }

  private static void addUnstable(Diagnosis diagnosis, List<String> notes) {
    if (diagnosis.unstableProbability() >= WORTH_TELLING && !isUnstable(diagnosis)) {
      notes.add(
          "A joint whose ohms change with the current: "
              + Figures.probability(diagnosis.unstableProbability())
              + ".");
    }
  }

  /** Whether the one bad joint is most probably one whose ohms change with the current. */
  static boolean isUnstable(Diagnosis diagnosis) {
    return diagnosis.degradedJoints() == 1
        && diagnosis.unstableProbability() > EVEN_ODDS
        && diagnosis.best().size() == 2
        && diagnosis.bestJoints().size() == 1;
  }

  /** Its ohms in either state, in a sentence. */
  static String unstable(Diagnosis diagnosis) {
    Degradation idle = diagnosis.best().get(0);
    Degradation loaded = diagnosis.best().get(1);
    return "Its ohms change with the current: "
        + Figures.ohms(idle.ohms())
        + " with nothing on, "
        + Figures.ohms(loaded.ohms())
        + " under load ("
        + Figures.probability(diagnosis.unstableProbability())
        + " sure).";
  }

  /** What was stated and cannot well be, the worst first. */
  public static List<FittedParameter> strained(Diagnosis diagnosis) {
    return diagnosis.parameters().stream()
        .filter(fitted -> Math.abs(fitted.pull()) > STRAINED)
        .sorted(
            Comparator.comparingDouble((FittedParameter fitted) -> Math.abs(fitted.pull()))
                .reversed())
        .toList();
  }

  private static String strain(FittedParameter fitted) {
    String unit = fitted.parameter().unit();
    return "Under strain: "
        + fitted.parameter().description()
        + ", "
        + Figures.number(fitted.parameter().nominal())
        + withUnit(unit)
        + " taken, "
        + Figures.number(fitted.value())
        + withUnit(unit)
        + " fits: "
        + Figures.tenths(Math.abs(fitted.pull()))
        + " times its tolerance away. Is it as stated?";
  }

  private static String withUnit(String unit) {
    return unit.equals("1") || unit.isEmpty() ? "" : " " + unit;
  }
}
