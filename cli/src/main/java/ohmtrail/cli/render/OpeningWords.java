package ohmtrail.cli.render;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.locate.RankedBox;
import ohmtrail.report.OpeningOrder;
import ohmtrail.report.OpeningPlan;

/**
 * The order in which to open boxes, in words.
 *
 * @param circuit whose boxes they are
 * @param order the order
 */
public record OpeningWords(Circuit circuit, OpeningOrder order) {

  /** The order by probability alone, with what it costs: a sentence. */
  public String otherOrder() {
    WorkWords work = new WorkWords(circuit);
    List<String> boxes =
        OpeningOrder.worthwhile(order.byProbability()).stream().map(work::named).toList();
    return "By probability alone: "
        + JointWords.listed(boxes, "then")
        + "; that takes "
        + minutes(order.byProbability().expectedMinutes())
        + ".";
  }

  /** What the order to go by costs: a sentence. */
  public String cost() {
    return "In this order it takes "
        + minutes(order.plan().expectedMinutes())
        + " on average until the bad joint is found, if one is bad.";
  }

  /** The box to open first, and with what probability. */
  RankedBox first() {
    OpeningPlan.Step step = order.plan().steps().get(0);
    return new RankedBox(step.box(), step.probability());
  }

  /** Whether another box is likelier than the one to open first. */
  boolean firstIsNotLikeliest() {
    return !first().box().equals(likeliest().box());
  }

  private OpeningPlan.Step likeliest() {
    return order.byProbability().steps().get(0);
  }

  /** Why a box that is not the likeliest comes first. */
  String why() {
    OpeningPlan.Step step = order.plan().steps().get(0);
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
