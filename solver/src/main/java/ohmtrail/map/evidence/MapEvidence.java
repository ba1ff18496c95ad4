package ohmtrail.map.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
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

  /** A gain at the sound fit from which on a change is not small. */
  private static final double LARGE_GAIN = 6;

  /** The grid in ln R on which a small change is integrated. */
  private static final double GRID_STEP = 0.25;

  /** So many standard deviations from nothing a bad joint has a peak of its own. */
  private static final double OWN_PEAK = 4;

  /** From so many ohms on a joint shows about the same to any reading of the reduced model. */
  private static final double AS_GOOD_AS_OPEN = 3e4;

  private static final double STARTING_LIMIT = 300;

  /** Samples by which Laplace's approximation is made good, and what they are drawn from. */
  private static final int SAMPLES = 400;

  private static final int FEWEST_SAMPLES = 40;
  private static final double WORTH_ALL_SAMPLES = 0.02;

  private static final long SAMPLING_SEED = 1989;

  private final RunNodes nodes;
  private final ReducedSurvey survey;
  private final CableBelief belief;
  private final JointPriors priors;
  private final Whitening whitening;
  private final RunUnknowns unknowns;
  private final double[][] draws;
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
    this.unknowns =
        new RunUnknowns(
            nodes,
            survey,
            belief,
            whitening,
            new RunModel(survey, belief, run.supply().volts(), nodes.count()),
            assumptions);
    this.draws = draws(nodes.count() + 2 + survey.loadSigmas().size());
    this.low = assumptions.value(Assumption.DEGRADED_OHMS_LOW);
    this.high = assumptions.value(Assumption.DEGRADED_OHMS_HIGH);
    this.openShare = assumptions.value(Assumption.OPEN_SHARE);
    this.logDensity = Math.log((1 - openShare) / Math.log(high / low));
  }

  /** Of Student's distribution with four degrees of freedom, in pairs of opposite sign. */
  private static double[][] draws(int unknowns) {
    SplittableRandom random = new SplittableRandom(SAMPLING_SEED);
    double[][] draws = new double[SAMPLES][unknowns];
    for (int sample = 0; sample < SAMPLES; sample += 2) {
      double chiSquare = -2 * StrictMath.log((1 - random.nextDouble()) * (1 - random.nextDouble()));
      double scale = StrictMath.sqrt(TreeFit.DEGREES_OF_FREEDOM / chiSquare);
      for (int c = 0; c < unknowns; c++) {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - random.nextDouble()));
        double normal = radius * StrictMath.cos(2 * Math.PI * random.nextDouble());
        draws[sample][c] = scale * normal;
        draws[sample + 1][c] = -draws[sample][c];
      }
    }
    return draws;
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
    return explain(tree, new double[0][]).log();
  }

  /**
   * The same without what Laplace's approximation misses, by importance sampling.
   *
   * @param share what the tree has of the probability, about: the more, the more samples
   */
  public double refinedLog(RunTree tree, double share) {
    double[][] samples = share >= WORTH_ALL_SAMPLES ? draws : Arrays.copyOf(draws, FEWEST_SAMPLES);
    return explain(tree, samples).log();
  }

  /** The same with where a joint may be bad, and with the cables as they fit best. */
  public MapExplanation explanation(RunTree tree) {
    return explain(tree, Arrays.copyOf(draws, FEWEST_SAMPLES)).explanation(belief);
  }

  private ExplainedTree explain(RunTree tree, double[][] samples) {
    RunUnknowns.Sound sound = unknowns.sound(tree);
    TreeFit fit = new TreeFit(sound, new double[sound.count()], survey.readings().size());
    fit.begin();
    List<PlacePrior> places = priors.places(tree);
    Map<Integer, Double> starts = new LinkedHashMap<>();
    addStarts(starts, slopesAt(places, fit), WORTH_FITTING, WORTH_FITTING_SHARE);
    fit.climb();
    double missed = samples.length > 0 ? fit.logCorrection(samples) : 0;
    double logSound = fit.logMode - fit.halfLogDeterminant(true) + missed;
    sound.evaluate(fit.point, fit.residual, fit.columns);
    List<OneOhm> near = slopesAt(places, fit);
    addStarts(starts, near, LARGE_GAIN, 0);
    double[] logs = new double[places.size()];
    for (int p = 0; p < logs.length; p++) {
      logs[p] = logSound + logSmall(near.get(p));
    }
    TreeFit best = fit;
    double bestLog = priors.logSound() + logSound;
    for (Map.Entry<Integer, Double> start : starts.entrySet()) {
      int p = start.getKey();
      TreeFit own = fitted(tree, places.get(p).place(), start.getValue());
      double more = samples.length > 0 ? own.logCorrection(samples) : 0;
      double log = own.logMode - own.halfLogDeterminant(false) + logMass(own) + more;
      logs[p] = Math.max(logs[p], log);
      if (places.get(p).log() + log > bestLog) {
        best = own;
        bestLog = places.get(p).log() + log;
      }
    }
    return new ExplainedTree(
        tree, places, logs, priors.logSound() + logSound, best, sound.cables());
  }

  private TreeFit fitted(RunTree tree, JointPlace place, double ohms) {
    TreeFit.Unknowns bad = unknowns.bad(tree, place);
    double[] start = new double[bad.count()];
    start[start.length - 1] = Math.log(ohms);
    TreeFit own = new TreeFit(bad, start, survey.readings().size());
    own.begin();
    own.climb();
    return own;
  }

  /**
   * The places that one linear step favours, by number, with the ohms to start from: the added
   * current i = k / (1 - k y) that the load's own admittance y leaves, k being the linear ohms.
   */
  private void addStarts(
      Map<Integer, Double> starts, List<OneOhm> slopes, double leastGain, double leastShare) {
    double most = slopes.stream().mapToDouble(OneOhm::gain).max().orElse(0);
    double least = Math.max(leastGain, leastShare * most);
    double admittance = unknowns.loadSiemens();
    IntStream.range(0, slopes.size())
        .boxed()
        .filter(p -> slopes.get(p).gain() >= least)
        .sorted(Comparator.comparingDouble((Integer p) -> slopes.get(p).gain()).reversed())
        .limit(MOST_FITTED)
        .forEach(
            p -> {
              double linear = slopes.get(p).peak();
              double left = 1 - linear * admittance;
              double ohms = left > 0 ? linear / left : STARTING_LIMIT;
              starts.putIfAbsent(p, Math.max(low, Math.min(STARTING_LIMIT, ohms)));
            });
  }

  /** How the likelihood follows an ohm in each place, at the point last evaluated. */
  private List<OneOhm> slopesAt(List<PlacePrior> places, TreeFit fit) {
    List<OneOhm> slopes = new ArrayList<>();
    for (PlacePrior each : places) {
      double[] column = unknowns.slopes(each.place()).clone();
      whitening.apply(column);
      slopes.add(OneOhm.of(column, fit));
    }
    return slopes;
  }

  /**
   * The likelihood over that of a sound run, averaged over the ohms of a bad joint along whose
   * slope it is normal.
   */
  private double logSmall(OneOhm along) {
    if (!along.isSeen() || along.gain() > LARGE_GAIN) {
      return 0;
    }
    double peak = along.peak();
    double sigma = along.sigma();
    double density = Math.exp(logDensity);
    if (peak > OWN_PEAK * sigma) {
      return along.gain() + Math.log(density * Math.sqrt(2 * Math.PI) * sigma / peak);
    }
    double sum = 0;
    for (double x = Math.log(low) + 0.5 * GRID_STEP; x < Math.log(high); x += GRID_STEP) {
      double ohms = Math.exp(x);
      if (ohms > peak + 8 * sigma) {
        break;
      }
      sum += Math.exp(along.slope() * ohms - 0.5 * along.curvature() * ohms * ohms);
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
}
