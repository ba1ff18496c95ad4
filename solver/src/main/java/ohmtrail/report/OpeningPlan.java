package ohmtrail.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;

/**
 * The order in which to open boxes, and how long that takes.
 *
 * @param steps every box, the first to open first
 */
public record OpeningPlan(List<Step> steps) {
  /** Where nothing that is worth a minute lies in a box, its order is of no interest. */
  private static final double NOTHING = 1e-6;

  /**
   * One box.
   *
   * @param box its name
   * @param probability that it holds a degraded joint
   * @param minutes to open it and look
   */
  public record Step(String box, double probability, double minutes) {
    private double perMinute() {
      return probability / minutes;
    }
  }

  /** Copies the list. */
  public OpeningPlan {
    steps = List.copyOf(steps);
  }

  /**
   * By probability per minute: for one degraded joint no other order is quicker on average
   * (exchange two neighbours to see it). Boxes without any probability come last, as ranked.
   *
   * @param circuit knows how long some boxes take
   * @param survey knows which are out of reach
   * @param minutes how long the others do
   * @param ranked every box, the most probable first
   */
  public static OpeningPlan quickest(
      Circuit circuit, Survey survey, Minutes minutes, List<RankedBox> ranked) {
    return quickest(byProbability(circuit, survey, minutes, ranked).steps);
  }

  /** The same for boxes with their minutes; of equally urgent ones the first comes first. */
  public static OpeningPlan quickest(List<Step> boxes) {
    List<Step> steps = new ArrayList<>(boxes);
    steps.sort(Comparator.comparingDouble(OpeningPlan::urgency).reversed());
    return new OpeningPlan(steps);
  }

  /** As ranked. */
  public static OpeningPlan byProbability(
      Circuit circuit, Survey survey, Minutes minutes, List<RankedBox> ranked) {
    return new OpeningPlan(
        ranked.stream()
            .map(
                box ->
                    new Step(
                        box.box(),
                        box.probability(),
                        minutesFor(circuit.box(box.box()).orElseThrow(), minutes, survey)))
            .toList());
  }

  /** On a logarithmic scale: rates a millionth of themselves apart are as good as equal. */
  private static double urgency(Step step) {
    return step.probability() < NOTHING
        ? Double.NEGATIVE_INFINITY
        : LogSpace.rounded(Math.log(step.perMinute()));
  }

  /** Minutes to open a box and look, the way there apart. */
  public static double minutesFor(Box box, Minutes minutes, Survey survey) {
    double usual =
        box.openingMinutes()
            .orElse(minutes.of(box.kind() == BoxKind.PANEL ? Chore.OPEN_PANEL : Chore.OPEN_BOX));
    boolean hard = survey.places(Finding.State.OUT_OF_REACH).contains(box.name());
    return hard ? usual + minutes.of(Chore.HARD_TO_REACH) : usual;
  }

  /** The boxes' names, in their order. */
  public List<String> boxes() {
    return steps.stream().map(Step::box).toList();
  }

  /**
   * Minutes until a degraded joint is found, on average, if one box holds one; 0 where none can.
   */
  public double expectedMinutes() {
    double spent = 0;
    double weighted = 0;
    double total = 0;
    for (Step step : steps) {
      spent += step.minutes();
      weighted += step.probability() * spent;
      total += step.probability();
    }
    return total > 0 ? weighted / total : 0;
  }
}
