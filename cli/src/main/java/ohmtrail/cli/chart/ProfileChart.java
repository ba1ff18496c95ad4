package ohmtrail.cli.chart;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.BoxKind;
import ohmtrail.cli.render.words.Region;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.report.Report;
import ohmtrail.report.profile.RunProfiles;

/**
 * The voltages along a run: what a healthy circuit would show, what the explanation at hand would
 * show, and what was read. Plain data, volts and metres.
 *
 * <p>Which tests are drawn how:
 *
 * <ul>
 *   <li>Tests that put the loads on in the same way make one <i>arrangement</i>: the same loads at
 *       the same boxes, or one load carried along and read at the box where it is plugged in. The
 *       line of a carried load shows at each receptacle what is read with the load plugged in
 *       <i>there</i>; that is where the step stands at the bad joint. Readings of different meters
 *       are different arrangements, since a low-impedance meter is a load of its own.
 *   <li>The main arrangement has its healthy line, its explained line and its readings. Considered
 *       are those that tell healthy from explained at least half as well as the best of them does
 *       (all, where there is no explanation), and of these, those with at least half the heaviest
 *       load; the one read at the most boxes is taken.
 *   <li>The next two, heavier load first, have one thin line (explained, or healthy where there is
 *       no explanation) and their readings. The readings of all further ones are drawn without a
 *       line; none is left out.
 *   <li>The healthy line of a diagnosis is the same circuit as its fitted line (the supply, loads
 *       and lengths that were fitted) with every joint sound, so that the two part at the bad
 *       joint. Where nothing fits, and where there is no diagnosis, everything is as stated.
 *   <li>Lines show what the arrangement's own meter would show, its input resistance included. A
 *       degraded joint that is known is a step at its box; one that may lie at either end of a
 *       cable is a band between both. Where more boxes are in question, or one is not shown, the
 *       line is straight from box to box.
 * </ul>
 *
 * <p>The bar of a reading is its meter's stated accuracy and half a step of its display, cut off at
 * zero volts.
 *
 * @param title what was measured
 * @param subtitle which explanation the lines stand for
 * @param description the figures in words
 * @param region words and units
 * @param lanes the run: the first from the panel, each other one from the box where it branches off
 * @param marks where the explanation puts the fault
 * @param panels hot to neutral, neutral to ground
 * @param notes what the reader must know besides
 */
public record ProfileChart(
    String title,
    String subtitle,
    String description,
    Region region,
    List<Lane> lanes,
    List<Mark> marks,
    List<Panel> panels,
    List<String> notes)
    implements Chart {
  /** Copies the lists. */
  public ProfileChart {
    lanes = List.copyOf(lanes);
    marks = List.copyOf(marks);
    panels = List.copyOf(panels);
    notes = List.copyOf(notes);
  }

  /**
   * The chart of an answer.
   *
   * @param title what was measured
   */
  public static ProfileChart of(String title, Report report) {
    Explanation explanation = Explanation.of(report);
    return new ProfileAssembly(RunProfiles.of(report), explanation).chart(title);
  }

  /**
   * The chart of a prediction, everything as stated.
   *
   * @param title what was measured
   * @param problem its tests say which loads are on; without any, the idle circuit is drawn
   * @param degradations ohms to draw the prediction for; may be empty
   */
  public static ProfileChart of(String title, Problem problem, List<Degradation> degradations) {
    Explanation explanation = Explanation.of(problem.circuit(), degradations);
    return new ProfileAssembly(RunProfiles.of(problem, degradations), explanation).chart(title);
  }

  /**
   * A box.
   *
   * @param box its name
   * @param metres along the cables from the panel
   * @param kind what it is
   */
  public record Place(String box, double metres, BoxKind kind) {}

  /**
   * A stretch of the run without a branch.
   *
   * @param places its boxes; the first is the panel, or the box of another lane that it branches
   *     off at
   */
  public record Lane(List<Place> places) {
    /** Copies the list. */
    public Lane {
      places = List.copyOf(places);
    }
  }

  /**
   * Where a fault may be.
   *
   * @param label what is said of it
   * @param boxes the boxes it may be in, at least one
   * @param fromMetres the nearest of them
   * @param toMetres the farthest of them
   */
  public record Mark(String label, List<String> boxes, double fromMetres, double toMetres) {
    /** Copies the list. */
    public Mark {
      boxes = List.copyOf(boxes);
    }
  }

  /**
   * One scale of volts over the run.
   *
   * @param quantity what the volts are between
   * @param lowVolts lower end of the scale
   * @param highVolts upper end of the scale
   * @param guides voltages to compare with
   * @param lines what would be shown
   * @param readings what was shown
   */
  public record Panel(
      String quantity,
      double lowVolts,
      double highVolts,
      List<Guide> guides,
      List<Line> lines,
      List<Readings> readings) {
    /** Copies the lists. */
    public Panel {
      guides = List.copyOf(guides);
      lines = List.copyOf(lines);
      readings = List.copyOf(readings);
    }
  }

  /**
   * A voltage to compare with.
   *
   * @param label what it is
   * @param volts where it stands
   */
  public record Guide(String label, double volts) {}

  /** How much a series matters. */
  public enum Prominence {
    /** The arrangement that the chart is about. */
    MAIN,
    /** One beside it. */
    SECOND,
    /** Another. */
    THIRD,
    /** All the rest. */
    OTHER
  }

  /** What a line stands for. */
  public enum Condition {
    /** Nothing but copper and sound joints. */
    HEALTHY,
    /** The explanation that the chart was made for. */
    EXPLAINED
  }

  /**
   * Volts along the run under one arrangement.
   *
   * @param arrangement which loads were on, and who read
   * @param prominence of the arrangement
   * @param condition healthy or explained
   * @param word what the chart calls that condition
   * @param branches one for each lane that has a box to show
   */
  public record Line(
      String arrangement,
      Prominence prominence,
      Condition condition,
      String word,
      List<Branch> branches) {
    /** Copies the list. */
    public Line {
      branches = List.copyOf(branches);
    }
  }

  /**
   * The part of a line that belongs to one lane.
   *
   * @param points from the panel outward, at least one
   * @param steps what degraded joints take between two points that follow each other
   */
  public record Branch(List<Point> points, List<Step> steps) {
    /** Copies the lists. */
    public Branch {
      points = List.copyOf(points);
      steps = List.copyOf(steps);
    }

    /** The step on the way to a box, if there is one. */
    Optional<Step> stepTo(String box) {
      return steps.stream().filter(step -> step.toBox().equals(box)).findFirst();
    }
  }

  /**
   * What a degraded joint takes on the way from one box to the next.
   *
   * @param toBox the box beyond it
   * @param volts by how much the line falls there; negative where it rises
   * @param end where on the way it falls
   */
  public record Step(String toBox, double volts, End end) {}

  /** Where between two boxes a joint lies. */
  public enum End {
    /** In the nearer box. */
    NEAR,
    /** In the farther one. */
    FAR,
    /** In either: the readings cannot tell. */
    EITHER
  }

  /**
   * Volts at a box.
   *
   * @param box its name
   * @param metres along the cables from the panel
   * @param volts there
   */
  public record Point(String box, double metres, double volts) {}

  /**
   * The readings of one arrangement, or of all those without a line of their own.
   *
   * @param arrangement which loads were on, and who read
   * @param prominence of the arrangement
   * @param marks one per reading
   */
  public record Readings(String arrangement, Prominence prominence, List<ReadingMark> marks) {
    /** Copies the list. */
    public Readings {
      marks = List.copyOf(marks);
    }
  }

  /**
   * One reading.
   *
   * @param test the test it was taken in
   * @param box where
   * @param metres along the cables from the panel
   * @param volts what the meter showed
   * @param below how much lower the true voltage may be, volts
   * @param above how much higher it may be, volts
   * @param wrongProbability how likely the reading is simply wrong; 0 without a diagnosis
   */
  public record ReadingMark(
      String test,
      String box,
      double metres,
      double volts,
      double below,
      double above,
      double wrongProbability) {}
}
