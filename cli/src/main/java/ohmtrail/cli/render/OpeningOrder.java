package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import ohmtrail.advise.Advice;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.OpeningPlan;
import ohmtrail.locate.RankedBox;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;

/** Which box to open first: the likeliest, or the quickest search where the case says minutes. */
public final class OpeningOrder {
  /** Boxes of less are not worth an order. */
  private static final double WORTH_ORDERING = 0.01;

  private final boolean timed;
  private final OpeningPlan quickest;
  private final OpeningPlan byProbability;
  private final WorkWords work;

  private OpeningOrder(
      Circuit circuit, boolean timed, OpeningPlan quickest, OpeningPlan byProbability) {
    this.work = new WorkWords(circuit);
    this.timed = timed;
    this.quickest = quickest;
    this.byProbability = byProbability;
  }

  /** For the boxes of an answer. */
  public static OpeningOrder of(CaseFile caseFile, Diagnosis diagnosis) {
    Circuit circuit = caseFile.circuit();
    Survey survey = caseFile.survey();
    boolean timed =
        circuit.boxes().stream().anyMatch(box -> box.openingMinutes().isPresent())
            || !survey.places(Finding.State.OUT_OF_REACH).isEmpty();
    Minutes minutes = Minutes.defaults();
    return new OpeningOrder(
        circuit,
        timed,
        OpeningPlan.quickest(circuit, survey, minutes, diagnosis.boxes()),
        OpeningPlan.byProbability(circuit, survey, minutes, diagnosis.boxes()));
  }

  /** As advised: by the minutes of this search, what looked fine last. */
  public static OpeningOrder of(CaseFile caseFile, Advice advice) {
    List<OpeningPlan.Step> boxes =
        advice.opening().steps().stream()
            .filter(step -> !step.box().equals(Finding.SUPPLY))
            .toList();
    List<OpeningPlan.Step> ranked = new ArrayList<>(boxes);
    ranked.sort(Comparator.comparingDouble(OpeningPlan.Step::probability).reversed());
    return new OpeningOrder(
        caseFile.circuit(), true, new OpeningPlan(boxes), new OpeningPlan(ranked));
  }

  /** Whether the case says of any box how long it takes to open, or that it is out of reach. */
  public boolean isTimed() {
    return timed;
  }

  /** The order to go by. */
  public OpeningPlan plan() {
    return timed ? quickest : byProbability;
  }

  /** The likeliest first. */
  public OpeningPlan byProbability() {
    return byProbability;
  }

  /** Whether the two orders differ among the boxes that matter. */
  public boolean differs() {
    return !worthwhile(plan()).equals(worthwhile(byProbability));
  }

  private static List<String> worthwhile(OpeningPlan plan) {
    return plan.steps().stream()
        .filter(step -> step.probability() >= WORTH_ORDERING)
        .map(OpeningPlan.Step::box)
        .toList();
  }

  /** The order by probability alone, with what it costs: a sentence. */
  public String otherOrder() {
    return "By probability alone: "
        + JointWords.listed(worthwhile(byProbability).stream().map(work::named).toList(), "then")
        + "; that takes "
        + minutes(byProbability.expectedMinutes())
        + ".";
  }

  /** What the order to go by costs: a sentence. */
  public String cost() {
    return "In this order it takes "
        + minutes(plan().expectedMinutes())
        + " on average until the bad joint is found, if one is bad.";
  }

  /** The box to open first, and with what probability. */
  RankedBox first() {
    OpeningPlan.Step step = plan().steps().get(0);
    return new RankedBox(step.box(), step.probability());
  }

  /** Whether another box is likelier than the one to open first. */
  boolean firstIsNotLikeliest() {
    return !first().box().equals(likeliest().box());
  }

  private OpeningPlan.Step likeliest() {
    return byProbability.steps().get(0);
  }

  /** Why a box that is not the likeliest comes first. */
  String why() {
    OpeningPlan.Step step = plan().steps().get(0);
    return step.box()
        + " comes first because it takes "
        + minutes(step.minutes())
        + " to open, where "
        + likeliest().box()
        + " ("
        + Figures.probability(likeliest().probability())
        + ") takes "
        + minutes(likeliest().minutes())
        + ".";
  }

  private static String minutes(double minutes) {
    String figure = Figures.twoDigits(minutes);
    return figure + (figure.equals("1") ? " minute" : " minutes");
  }
}
