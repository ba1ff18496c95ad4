package ohmtrail.map.evidence;

import java.util.Arrays;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * The unknowns of one map after another as standard normal numbers: of each cable, of the source,
 * of each load; and the ohms of a bad joint. One map at a time: what is asked of the slopes is of
 * the last that was evaluated.
 */
final class RunUnknowns {
  private static final double MOST_LOG_OHMS = 25;

  private final RunNodes nodes;
  private final ReducedSurvey survey;
  private final CableBelief belief;
  private final Whitening whitening;
  private final RunModel model;
  private final double[] values;
  private final double sourceOhms;
  private final double sourceSigma;

  RunUnknowns(
      RunNodes nodes,
      ReducedSurvey survey,
      CableBelief belief,
      Whitening whitening,
      RunModel model,
      Assumptions assumptions) {
    this.nodes = nodes;
    this.survey = survey;
    this.belief = belief;
    this.whitening = whitening;
    this.model = model;
    this.values = survey.readings().stream().mapToDouble(ReducedReading::value).toArray();
    this.sourceOhms = assumptions.value(Assumption.SOURCE_OHMS);
    this.sourceSigma = assumptions.value(Assumption.SOURCE_OHMS_SPREAD);
  }

  /** Those of a sound run. */
  Sound sound(RunTree tree) {
    return new Sound(tree, 0);
  }

  /** Those of a run with a bad joint in a place. */
  TreeFit.Unknowns bad(RunTree tree, JointPlace place) {
    return new Bad(tree, place);
  }

  /** The greatest nominal conductance that a test puts on: how hard a joint is driven. */
  double loadSiemens() {
    return survey.loads().stream()
        .mapToDouble(on -> on.stream().mapToDouble(ReducedLoad::siemens).sum())
        .max()
        .orElse(0);
  }

  /** Slopes of the readings along an ohm in a place, at the point last evaluated. */
  double[] slopes(JointPlace place) {
    boolean isNeutral = place.conductor() == JointPlace.Conductor.NEUTRAL;
    return switch (place.part()) {
      case CABLE -> (isNeutral ? model.alongNeutral : model.alongHot)[place.node()];
      case TAIL -> (isNeutral ? model.alongNeutralTail : model.alongHotTail)[place.node()];
      case SUPPLY -> model.alongSource;
    };
  }

  /** The unknowns of a sound run on one map. */
  class Sound implements TreeFit.Unknowns {
    final RunTree tree;
    private final int[] cables;
    private final int extra;

    Sound(RunTree tree, int extra) {
      this.tree = tree;
      this.extra = extra;
      int[] there = new int[nodes.count()];
      int known = 0;
      for (int node = 1; node < there.length; node++) {
        if (tree.isPresent(node) && !nodes.isAnotherCircuit(node)) {
          there[known++] = node;
        }
      }
      this.cables = Arrays.copyOf(there, known);
      model.on(tree);
    }

    /** The nodes that have a cable, in the order of the unknowns. */
    int[] cables() {
      return cables.clone();
    }

    @Override
    public int count() {
      return cables.length + 1 + survey.loadSigmas().size() + extra;
    }

    @Override
    public boolean lastIsEven() {
      return false;
    }

    double ohms(double[] point, int place) {
      int node = cables[place];
      int feeder = tree.parent(node);
      return belief.ohms(feeder, node) * Math.exp(belief.sigma(feeder, node) * point[place]);
    }

    void set(double[] point) {
      for (int c = 0; c < cables.length; c++) {
        double ohms = ohms(point, c);
        model.hot[cables[c]] = ohms;
        model.neutral[cables[c]] = ohms;
      }
      model.source = sourceOhms * Math.exp(sourceSigma * point[cables.length]);
      for (int k = 0; k < model.loadFactors.length; k++) {
        model.loadFactors[k] = Math.exp(survey.loadSigmas().get(k) * point[cables.length + 1 + k]);
      }
    }

    void fill(double[] point, double[] residual, double[][] columns) {
      off(residual);
      for (int c = 0; c < cables.length; c++) {
        int node = cables[c];
        double scale = ohms(point, c) * belief.sigma(tree.parent(node), node);
        for (int r = 0; r < residual.length; r++) {
          columns[c][r] = scale * (model.alongHot[node][r] + model.alongNeutral[node][r]);
        }
        whitening.apply(columns[c]);
      }
      int at = cables.length;
      double bySource = sourceOhms * Math.exp(sourceSigma * point[at]) * sourceSigma;
      scaled(model.alongSource, bySource, columns[at]);
      for (int k = 0; k < model.loadFactors.length; k++) {
        scaled(model.alongLoad[k], survey.loadSigmas().get(k), columns[at + 1 + k]);
      }
    }

    final void scaled(double[] slopes, double factor, double[] column) {
      for (int r = 0; r < column.length; r++) {
        column[r] = factor * slopes[r];
      }
      whitening.apply(column);
    }

    final void off(double[] residual) {
      for (int r = 0; r < residual.length; r++) {
        residual[r] = values[r] - model.values[r];
      }
      whitening.apply(residual);
    }

    @Override
    public void residual(double[] point, double[] residual) {
      set(point);
      model.predict();
      off(residual);
    }

    @Override
    public void evaluate(double[] point, double[] residual, double[][] columns) {
      set(point);
      model.evaluate();
      fill(point, residual, columns);
    }
  }

  /** The same with one bad joint: the logarithm of its ohms comes last. */
  private final class Bad extends Sound {
    private final JointPlace place;

    Bad(RunTree tree, JointPlace place) {
      super(tree, 1);
      this.place = place;
    }

    @Override
    public boolean lastIsEven() {
      return true;
    }

    @Override
    public void residual(double[] point, double[] residual) {
      set(point);
      double before = worsen(ohms(point));
      model.predict();
      restore(before);
      off(residual);
    }

    @Override
    public void evaluate(double[] point, double[] residual, double[][] columns) {
      set(point);
      double ohms = ohms(point);
      double before = worsen(ohms);
      model.evaluate();
      restore(before);
      fill(point, residual, columns);
      scaled(slopes(place), ohms, columns[point.length - 1]);
    }

    private double ohms(double[] point) {
      return Math.exp(Math.min(MOST_LOG_OHMS, point[point.length - 1]));
    }

    private double[] where() {
      boolean isNeutral = place.conductor() == JointPlace.Conductor.NEUTRAL;
      return place.part() == JointPlace.Part.CABLE
          ? isNeutral ? model.neutral : model.hot
          : isNeutral ? model.neutralTail : model.hotTail;
    }

    /** Adds the ohms, and gives back what was there. */
    private double worsen(double ohms) {
      if (place.part() == JointPlace.Part.SUPPLY) {
        double before = model.source;
        model.source += ohms;
        return before;
      }
      double before = where()[place.node()];
      where()[place.node()] += ohms;
      return before;
    }

    private void restore(double before) {
      if (place.part() != JointPlace.Part.SUPPLY) {
        where()[place.node()] = before;
      }
    }
  }
}
