package ohmtrail.map.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.map.BadJoint;
import ohmtrail.map.MapReport;
import ohmtrail.map.RankedMap;
import ohmtrail.map.evidence.MapEvidence;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.load.Load;

/**
 * Plans the next walk round by what it would show under each map that is still probable.
 *
 * <p>The drop of entropy is bounded from below by the distances between what the maps predict: I is
 * at least - sum p(i) ln sum p(j) exp(-D(i,j)), D being Bhattacharyya's distance (Kolchinsky and
 * Tracey 2017, from memory). Boxes to read are taken one by one, each that tells most beside those
 * before it, as long as the walk tells more for each minute.
 */
public final class MapPlanner {
  private static final int MOST_MAPS = 60;
  private static final int MOST_VISITS = 5;

  /** A box of this probability is opened rather than the map learnt. */
  private static final double FOUND = 0.9;

  /** A walk that is expected to tell less is not worth its minutes. */
  private static final double LEAST_NATS = 0.02;

  private final MapReport report;
  private final MapProblem problem;
  private final Minutes minutes;
  private final List<Expected> maps = new ArrayList<>();
  private double entropy;

  private MapPlanner(MapReport report, Minutes minutes) {
    this.report = report;
    this.problem = report.problem();
    this.minutes = minutes;
  }

  /** Plans on what a report believes. */
  public static MapPlan plan(MapReport report, Minutes minutes) {
    return new MapPlanner(report, minutes).plan();
  }

  private record Expected(double probability, RunVolts volts) {}

  private MapPlan plan() {
    boolean found =
        report.badJoint().boxes().stream()
            .map(BadJoint.Place::probability)
            .anyMatch(probability -> probability >= FOUND);
    if (found || report.isSettled()) {
      return new MapPlan(List.of(), found, 0);
    }
    expect();
    List<MapVisit> visits = new ArrayList<>();
    for (Load load : problem.survey().pluggedIn()) {
      for (Outlet outlet : problem.run().outlets()) {
        if (outlet.box().hasReceptacle()) {
          visits.add(visit(load, outlet.name()));
        }
      }
    }
    visits.removeIf(visit -> visit.nats() < LEAST_NATS);
    visits.sort(Comparator.comparingDouble(MapVisit::natsPerMinute).reversed());
    return new MapPlan(visits.subList(0, Math.min(MOST_VISITS, visits.size())), false, entropy);
  }

  private void expect() {
    MapEvidence evidence = new MapEvidence(problem);
    RunNodes nodes = RunNodes.of(problem.run());
    List<RankedMap> likely = report.maps().subList(0, Math.min(MOST_MAPS, report.maps().size()));
    double sum = likely.stream().mapToDouble(RankedMap::probability).sum();
    for (RankedMap map : likely) {
      double probability = map.probability() / sum;
      entropy -= probability * Math.log(probability);
      maps.add(
          new Expected(probability, RunVolts.of(nodes, nodes.tree(map.map()), evidence, problem)));
    }
  }

  /** The boxes to read are taken as long as what the walk tells for each minute grows. */
  private MapVisit visit(Load load, String at) {
    double siemens = load.ratedWatts() / (load.ratedVolts() * load.ratedVolts());
    double[][][] shown = new double[maps.size()][][];
    for (int m = 0; m < shown.length; m++) {
      shown[m] = maps.get(m).volts.with(siemens, at);
    }
    List<String> left =
        new ArrayList<>(
            problem.run().outlets().stream()
                .map(Outlet::box)
                .filter(Box::hasReceptacle)
                .map(Box::name)
                .toList());
    List<String> read = new ArrayList<>();
    double taken = minutes.of(Chore.WALK) + minutes.of(Chore.PLUG_LOAD);
    double nats = 0;
    while (!left.isEmpty()) {
      String best = left.get(0);
      double most = -1;
      for (String box : left) {
        read.add(box);
        double told = information(shown, read);
        read.remove(read.size() - 1);
        if (told > most) {
          most = told;
          best = box;
        }
      }
      boolean isHere = best.equals(at);
      double longer = taken + minutes.of(Chore.READING) + (isHere ? 0 : minutes.of(Chore.WALK));
      if (read.size() > 1 && most / longer <= nats / taken) {
        break;
      }
      read.add(best);
      left.remove(best);
      nats = most;
      taken = longer;
    }
    return new MapVisit(load.name(), at, read, taken, nats, jointOnTheWay(at));
  }

  private double jointOnTheWay(String box) {
    double sum = 0;
    for (Expected each : maps) {
      for (BadJoint.Stretch stretch : report.badJoint().stretches()) {
        if (each.volts.leadsThrough(box, stretch.feeder(), stretch.box())) {
          sum += each.probability * stretch.probability();
        }
      }
    }
    double supply =
        report.badJoint().boxes().stream()
            .filter(place -> place.box().equals(Finding.SUPPLY))
            .mapToDouble(BadJoint.Place::probability)
            .sum();
    return Math.min(1, sum + supply);
  }

  private double information(double[][][] shown, List<String> read) {
    RunNodes nodes = RunNodes.of(problem.run());
    int[] at = read.stream().mapToInt(nodes::number).toArray();
    double own = ownVariance();
    double drift =
        problem.run().supply().volts() * problem.assumptions().value(Assumption.SUPPLY_DRIFT);
    double information = 0;
    for (int i = 0; i < shown.length; i++) {
      double sum = 0;
      for (int j = 0; j < shown.length; j++) {
        sum +=
            maps.get(j).probability
                * Math.exp(-distance(shown[i], shown[j], at, own, drift * drift));
      }
      information -= maps.get(i).probability * Math.log(sum);
    }
    return information;
  }

  /**
   * Bhattacharyya's distance of two normal predictions with the mean of their variances; the drift
   * of the test, which all its readings share, is taken out by the Sherman-Morrison formula.
   */
  private static double distance(
      double[][] one, double[][] other, int[] at, double own, double driftVariance) {
    double squares = 0;
    double weighted = 0;
    double weights = 0;
    double widths = 0;
    for (int box : at) {
      double first = own + one[1][box];
      double second = own + other[1][box];
      double variance = 0.5 * (first + second);
      double off = one[0][box] - other[0][box];
      squares += off * off / variance;
      weighted += off / variance;
      weights += 1 / variance;
      widths += 0.5 * Math.log(variance / Math.sqrt(first * second));
    }
    double common = driftVariance * weighted * weighted / (1 + driftVariance * weights);
    return (squares - common) / 8 + widths;
  }

  private double ownVariance() {
    Meter meter =
        problem.survey().meters(Measurand.VOLTAGE).stream()
            .max(Comparator.comparingDouble(Meter::inputOhms))
            .orElseGet(() -> Meter.highImpedance("voltmeter"));
    double scatter = ReadingError.scatter(Measurand.VOLTAGE, problem.assumptions());
    return meter.readingSigma() * meter.readingSigma() + scatter * scatter;
  }
}
