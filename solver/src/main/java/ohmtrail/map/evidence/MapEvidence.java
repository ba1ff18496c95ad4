package ohmtrail.map.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.RunMap;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * The marginal likelihood of one map after another: lengths, sound joints, loads, supply, drift and
 * gain integrated out, and summed over a bad joint in every place or none. Holds its workspace; one
 * thread at a time.
 *
 * <p>A bad joint that changes little is taken in along the slopes at the sound fit; one that
 * changes much has a fit of its own, which starts where one linear step from nothing known would
 * put it.
 */
public final class MapEvidence {
  /** Places with a fit of their own, at most. */
  private static final int MOST_FITTED = 4;

  /** A place whose gain at the first look is less has no fit of its own. */
  private static final double WORTH_FITTING = 2;

  /** The same as a share of the greatest gain. */
  private static final double WORTH_FITTING_SHARE = 0.5;

  /** The grid in ln R on which a small change is integrated. */
  private static final double GRID_STEP = 0.25;

  /** So many standard deviations from nothing a bad joint has a peak of its own. */
  private static final double OWN_PEAK = 4;

  /** From so many ohms on a joint shows about the same to any reading of the reduced model. */
  private static final double AS_GOOD_AS_OPEN = 3e4;

  private static final double STARTING_LIMIT = 300;

  private final RunNodes nodes;
  private final ReducedSurvey survey;
  private final CableBelief belief;
  private final JointPriors priors;
  private final Whitening whitening;
  private final RunModel model;
  private final double[] values;
  private final double sourceOhms;
  private final double sourceSigma;
  private final double logDensity;
  private final double openShare;
  private final double low;
  private final double high;

  /** Prepares for a problem. */
  public MapEvidence(MapProblem problem) {
    UnknownRun run = problem.run();
    Assumptions assumptions = problem.assumptions();
    this.nodes = RunNodes.of(run);
    Circuit circuit = run.circuit(everyBoxOnThePanel(run), assumptions);
    this.survey = ReducedSurvey.of(problem, circuit, nodes);
    this.belief = CableBelief.of(problem, circuit, nodes);
    boolean tells =
        survey.readings().stream().anyMatch(each -> each.overHot() != each.overNeutral());
    this.priors = JointPriors.of(problem, circuit, nodes, tells);
    this.whitening =
        Whitening.of(
            survey.readings(),
            assumptions.value(Assumption.SUPPLY_VOLTAGE_TOLERANCE),
            tailVariance(run.supply().volts()));
    this.model = new RunModel(survey, belief, run.supply().volts(), nodes.count());
    this.values = survey.readings().stream().mapToDouble(ReducedReading::value).toArray();
    this.sourceOhms = assumptions.value(Assumption.SOURCE_OHMS);
    this.sourceSigma = assumptions.value(Assumption.SOURCE_OHMS_SPREAD);
    this.low = assumptions.value(Assumption.DEGRADED_OHMS_LOW);
    this.high = assumptions.value(Assumption.DEGRADED_OHMS_HIGH);
    this.openShare = assumptions.value(Assumption.OPEN_SHARE);
    this.logDensity = Math.log((1 - openShare) / Math.log(high / low));
  }

  private static RunMap everyBoxOnThePanel(UnknownRun run) {
    List<RunMap.Feed> feeds = new ArrayList<>();
    run.outlets()
        .forEach(
            outlet ->
                feeds.add(
                    new RunMap.Feed(
                        outlet.name(),
                        outlet.fedBy().map(cable -> cable.from()).orElse(run.panel().name()))));
    return new RunMap(feeds);
  }

  /** The tail of a device carries the current of what is plugged in at the meter's own box. */
  private double[] tailVariance(double volts) {
    double[] variance = new double[survey.readings().size()];
    for (int r = 0; r < variance.length; r++) {
      ReducedReading reading = survey.readings().get(r);
      double amperes =
          reading.kind() == ReducedReading.Kind.LIVE && reading.load() < 0
              ? survey.loads().get(reading.test()).stream()
                  .filter(load -> load.node() == reading.node())
                  .mapToDouble(load -> load.siemens() * volts)
                  .sum()
              : 0;
      variance[r] = amperes * amperes * belief.tailVariance(reading.node());
    }
    return variance;
  }

  /** How many readings the reduced model cannot predict. */
  public int leftOut() {
    return survey.leftOut();
  }

  /** Natural logarithm of the density of the readings, up to a constant that all maps share. */
  public double log(RunTree tree) {
    return explain(tree).log();
  }

  /** The same with where a joint may be bad, and with the cables as they fit best. */
  public MapExplanation explanation(RunTree tree) {
    return explain(tree).explanation(belief);
  }

  private ExplainedTree explain(RunTree tree) {
    SoundUnknowns sound = new SoundUnknowns(tree);
    int readings = values.length;
    TreeFit fit = new TreeFit(sound, new double[sound.count()], readings);
    fit.begin();
    List<PlacePrior> places = priors.places(tree);
    double[][] first = columnsOf(places);
    List<Peak> candidates = candidates(places, first, fit, sound);
    fit.climb();
    double logSound = fit.logMode - fit.halfLogDeterminant(true);
    sound.evaluate(fit.point, fit.residual, fit.columns);
    double[][] slopes = columnsOf(places);
    double[] logs = new double[places.size()];
    for (int p = 0; p < logs.length; p++) {
      logs[p] = logSound + logSmall(slopes[p], fit);
    }
    TreeFit best = fit;
    double bestLog = priors.logSound() + logSound;
    for (Peak candidate : candidates) {
      PlacePrior prior = places.get(candidate.place);
      BadUnknowns bad = new BadUnknowns(tree, prior.place());
      double[] start = new double[bad.count()];
      start[start.length - 1] = Math.log(candidate.ohms);
      TreeFit own = new TreeFit(bad, start, readings);
      own.begin();
      own.climb();
      double log = own.logMode - own.halfLogDeterminant(false) + logMass(own);
      logs[candidate.place] = Math.max(logs[candidate.place], log);
      if (prior.log() + log > bestLog) {
        best = own;
        bestLog = prior.log() + log;
      }
    }
    return new ExplainedTree(tree, places, logs, priors.logSound() + logSound, best, sound.cables);
  }

  private record Peak(int place, double ohms, double gain) {}

  /** The places that one linear step from nothing known favours. */
  private List<Peak> candidates(
      List<PlacePrior> places, double[][] columns, TreeFit fit, SoundUnknowns sound) {
    List<Peak> peaks = new ArrayList<>();
    double[] projected = fit.forward(products(fit, fit.residual));
    double most = 0;
    for (int p = 0; p < places.size(); p++) {
      double[] along = fit.forward(products(fit, columns[p]));
      double slope = TreeFit.dot(columns[p], fit.residual) - TreeFit.dot(along, projected);
      double curvature = TreeFit.dot(columns[p], columns[p]) - TreeFit.dot(along, along);
      if (slope > 0 && curvature > 0) {
        double gain = 0.5 * slope * slope / curvature;
        double linear = slope / curvature;
        double admittance = sound.loadSiemens();
        double ohms = linear * admittance < 1 ? linear / (1 - linear * admittance) : STARTING_LIMIT;
        peaks.add(new Peak(p, Math.max(low, Math.min(STARTING_LIMIT, ohms)), gain));
        most = Math.max(most, gain);
      }
    }
    double least = Math.max(WORTH_FITTING, WORTH_FITTING_SHARE * most);
    return peaks.stream()
        .filter(peak -> peak.gain >= least)
        .sorted(Comparator.comparingDouble(Peak::gain).reversed())
        .limit(MOST_FITTED)
        .toList();
  }

  private static double[] products(TreeFit fit, double[] vector) {
    double[] products = new double[fit.columns.length];
    for (int c = 0; c < products.length; c++) {
      products[c] = TreeFit.dot(fit.columns[c], vector);
    }
    return products;
  }

  /** Whitened slopes along an ohm in each place, at the point last evaluated. */
  private double[][] columnsOf(List<PlacePrior> places) {
    double[][] columns = new double[places.size()][];
    for (int p = 0; p < columns.length; p++) {
      columns[p] = slopes(places.get(p).place()).clone();
      whitening.apply(columns[p]);
    }
    return columns;
  }

  private double[] slopes(JointPlace place) {
    boolean isNeutral = place.conductor() == JointPlace.Conductor.NEUTRAL;
    return switch (place.part()) {
      case CABLE -> (isNeutral ? model.alongNeutral : model.alongHot)[place.node()];
      case TAIL -> (isNeutral ? model.alongNeutralTail : model.alongHotTail)[place.node()];
      case SUPPLY -> model.alongSource;
    };
  }

  /**
   * The likelihood over that of a sound run, averaged over the ohms of a bad joint along whose
   * slope it is normal.
   */
  private double logSmall(double[] column, TreeFit fit) {
    double[] along = fit.forward(products(fit, column));
    double curvature = TreeFit.dot(column, column) - TreeFit.dot(along, along);
    if (curvature < 1e-9) {
      return 0;
    }
    double slope = TreeFit.dot(column, fit.residual);
    double peak = slope / curvature;
    double sigma = 1 / Math.sqrt(curvature);
    double density = Math.exp(logDensity);
    if (peak > OWN_PEAK * sigma) {
      return 0.5 * slope * peak + Math.log(density * Math.sqrt(2 * Math.PI) * sigma / peak);
    }
    double sum = 0;
    for (double x = Math.log(low) + 0.5 * GRID_STEP; x < Math.log(high); x += GRID_STEP) {
      double ohms = Math.exp(x);
      if (ohms > peak + 8 * sigma) {
        break;
      }
      sum += Math.exp(slope * ohms - 0.5 * curvature * ohms * ohms);
    }
    return Math.log(Math.max(1e-300, sum * GRID_STEP * density));
  }

  /** Logarithm of the prior mass of the ohms under a peak. */
  private double logMass(TreeFit own) {
    double x = own.point[own.point.length - 1];
    double range = Math.log(high / low);
    double width = Math.sqrt(2 * Math.PI / Math.max(1e-9, own.lastCurvature()));
    if (x > Math.log(AS_GOOD_AS_OPEN)) {
      return Math.log(
          openShare + Math.exp(logDensity) * Math.max(0, Math.log(high) - x + 0.5 * width));
    }
    double cut = x < Math.log(low) ? 0.5 : 1;
    return logDensity + Math.log(Math.min(range, cut * width));
  }

  /** The unknowns of a sound run on one map. */
  private class SoundUnknowns implements TreeFit.Unknowns {
    final RunTree tree;
    final int[] cables;
    private final int extra;

    SoundUnknowns(RunTree tree) {
      this(tree, 0);
    }

    SoundUnknowns(RunTree tree, int extra) {
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

    @Override
    public int count() {
      return cables.length + 1 + survey.loadSigmas().size() + extra;
    }

    @Override
    public boolean lastIsEven() {
      return false;
    }

    /** The greatest nominal conductance that a test puts on: how hard a joint is driven. */
    double loadSiemens() {
      return survey.loads().stream()
          .mapToDouble(on -> on.stream().mapToDouble(ReducedLoad::siemens).sum())
          .max()
          .orElse(0);
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
      for (int r = 0; r < residual.length; r++) {
        residual[r] = values[r] - model.values[r];
      }
      whitening.apply(residual);
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

    @Override
    public void evaluate(double[] point, double[] residual, double[][] columns) {
      set(point);
      model.evaluate();
      fill(point, residual, columns);
    }
  }

  /** The same with one bad joint: the logarithm of its ohms comes last. */
  private final class BadUnknowns extends SoundUnknowns {
    private final JointPlace place;

    BadUnknowns(RunTree tree, JointPlace place) {
      super(tree, 1);
      this.place = place;
    }

    @Override
    public boolean lastIsEven() {
      return true;
    }

    @Override
    public void evaluate(double[] point, double[] residual, double[][] columns) {
      set(point);
      double ohms = Math.exp(Math.min(25, point[point.length - 1]));
      boolean isNeutral = place.conductor() == JointPlace.Conductor.NEUTRAL;
      double[] where =
          switch (place.part()) {
            case CABLE -> isNeutral ? model.neutral : model.hot;
            case TAIL -> isNeutral ? model.neutralTail : model.hotTail;
            case SUPPLY -> new double[1];
          };
      double sound = where[place.node()];
      where[place.node()] += ohms;
      if (place.part() == JointPlace.Part.SUPPLY) {
        model.source += ohms;
      }
      model.evaluate();
      where[place.node()] = sound;
      fill(point, residual, columns);
      scaled(slopes(place), ohms, columns[point.length - 1]);
    }
  }
}
