package ohmtrail.map.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Supply;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * A survey as the reduced model sees it. What it cannot predict (two legs, switches, a clamp around
 * a cable, probes at two boxes, joints taken apart) is left out and counted.
 *
 * @param readings those that it can predict, tests in their order
 * @param loads by test
 * @param loadSigmas log sd of each load of the survey
 * @param leftOut how many readings it cannot predict
 */
record ReducedSurvey(
    List<ReducedReading> readings,
    List<List<ReducedLoad>> loads,
    List<Double> loadSigmas,
    int leftOut) {
  /** A meter of less conductance draws nothing that matters beside a path that conducts. */
  private static final double MATTERS_SIEMENS = 1e-5;

  /** Below this share of the nominal voltage an idle circuit shows a way that is open. */
  private static final double GHOST_SHARE = 0.8;

  /** A voltage through the capacitance of a cable may be anything up to such a share. */
  private static final double GHOST_SIGMA_SHARE = 0.35;

  /** Takes the readings of a problem. */
  static ReducedSurvey of(MapProblem problem, Circuit circuit, RunNodes nodes) {
    return new Reduction(problem, circuit, nodes).survey();
  }

  private static final class Reduction {
    private final Survey survey;
    private final Supply supply;
    private final Assumptions assumptions;
    private final Circuit circuit;
    private final RunNodes nodes;
    private final List<ReducedReading> readings = new ArrayList<>();
    private final List<List<ReducedLoad>> loads = new ArrayList<>();
    private int leftOut;

    Reduction(MapProblem problem, Circuit circuit, RunNodes nodes) {
      this.survey = problem.survey();
      this.supply = problem.run().supply();
      this.assumptions = problem.assumptions();
      this.circuit = circuit;
      this.nodes = nodes;
    }

    ReducedSurvey survey() {
      for (Test test : survey.tests()) {
        Optional<List<ReducedLoad>> on = loadsOf(test);
        loads.add(on.orElse(List.of()));
        for (Reading reading : test.readings()) {
          Optional<ReducedReading> reduced =
              on.flatMap(known -> reduced(test, loads.size() - 1, reading));
          reduced.ifPresentOrElse(readings::add, () -> leftOut++);
        }
      }
      List<Double> sigmas =
          survey.loads().stream()
              .map(load -> assumptions.value(load.rating().tolerance()))
              .toList();
      return new ReducedSurvey(List.copyOf(readings), List.copyOf(loads), sigmas, leftOut);
    }

    /** Empty where something is on that the model does not have. */
    private Optional<List<ReducedLoad>> loadsOf(Test test) {
      if (supply.legs() != Supply.Legs.ONE
          || !test.switching().equals(Switching.USUAL)
          || test.supplyMoved()) {
        return Optional.empty();
      }
      List<ReducedLoad> on = new ArrayList<>();
      for (LoadInUse use : survey.loadsOn(test)) {
        if (!use.connection(circuit).equals(ProbePoints.HOT_NEUTRAL)) {
          return Optional.empty();
        }
        Load load = survey.load(use.load());
        double active = load.ratedWatts() / (load.ratedVolts() * load.ratedVolts());
        double share = Math.max(load.leastVoltsShare(), supply.volts() / load.ratedVolts());
        on.add(
            new ReducedLoad(
                nodes.number(use.box()),
                survey.loads().indexOf(load),
                active * load.relativeSiemens(share)));
      }
      return Optional.of(on);
    }

    private Optional<ReducedReading> reduced(Test test, int number, Reading reading) {
      return switch (reading.measurand()) {
        case VOLTAGE -> test.isDead() ? Optional.empty() : voltage(test, number, reading);
        case CURRENT -> current(number, reading);
        case LOOP_IMPEDANCE -> loop(test, number, reading);
        case RESISTANCE -> resistance(test, number, reading);
      };
    }

    private Optional<ReducedReading> voltage(Test test, int number, Reading reading) {
      Optional<ProbePoints> between = reading.between().filter(this::isPredicted);
      if (between.isEmpty()) {
        return Optional.empty();
      }
      Meter meter = survey.meter(reading.meter());
      double siemens = meter.siemens(supply.volts());
      double variance = ReadingError.of(reading, meter, assumptions).variance();
      boolean isGhost =
          survey.loadsOn(test).isEmpty()
              && siemens < MATTERS_SIEMENS
              && between.get().first() == ConductorRole.HOT
              && reading.value() < GHOST_SHARE * supply.volts();
      double ghost = isGhost ? GHOST_SIGMA_SHARE * supply.volts() : 0;
      boolean draws = siemens >= MATTERS_SIEMENS || isGhost;
      return Optional.of(
          live(number, reading, between.get(), -1, draws ? siemens : 0, variance + ghost * ghost));
    }

    private boolean isPredicted(ProbePoints pair) {
      return pair.equals(ProbePoints.HOT_NEUTRAL)
          || (supply.earthing() == Supply.Earthing.TN_C_S
              && (pair.equals(ProbePoints.HOT_GROUND) || pair.equals(ProbePoints.NEUTRAL_GROUND)));
    }

    private ReducedReading live(
        int number, Reading reading, ProbePoints pair, int load, double siemens, double variance) {
      Meter meter = survey.meter(reading.meter());
      ReadingError error = ReadingError.of(reading, meter, assumptions);
      boolean overHot = pair.first() == ConductorRole.HOT;
      boolean isClamp = load >= 0;
      int overNeutral = pair.equals(ProbePoints.HOT_GROUND) ? 0 : overHot ? 1 : -1;
      return new ReducedReading(
          ReducedReading.Kind.LIVE,
          number,
          nodes.number(reading.box()),
          isClamp || !overHot ? 0 : 1,
          isClamp || !overHot ? 0 : 1,
          isClamp ? 0 : overNeutral,
          0,
          load,
          -1,
          siemens,
          error.value(),
          variance,
          error.driftSigma(),
          meter.accuracy().gainSigma(),
          survey.meters().indexOf(meter),
          meter.greatest());
    }

    private Optional<ReducedReading> current(int number, Reading reading) {
      if (!(reading.tap() instanceof Tap.AroundLoad around)) {
        return Optional.empty();
      }
      List<ReducedLoad> on = loads.get(number);
      for (int place = 0; place < on.size(); place++) {
        ReducedLoad load = on.get(place);
        if (load.node() == nodes.number(around.box())
            && survey.loads().get(load.number()).name().equals(around.load())) {
          Meter meter = survey.meter(reading.meter());
          double variance = ReadingError.of(reading, meter, assumptions).variance();
          return Optional.of(live(number, reading, ProbePoints.HOT_NEUTRAL, place, 0, variance));
        }
      }
      return Optional.empty();
    }

    private Optional<ReducedReading> loop(Test test, int number, Reading reading) {
      boolean isFree = survey.loadsOn(test).isEmpty();
      return isFree && reading.tap() instanceof Tap.Pair pair && isLoop(pair.between())
          ? Optional.of(passive(ReducedReading.Kind.LOOP, number, reading, pair.between(), -1))
          : Optional.empty();
    }

    private boolean isLoop(ProbePoints pair) {
      return pair.equals(ProbePoints.HOT_NEUTRAL)
          || (pair.equals(ProbePoints.HOT_GROUND) && supply.earthing() == Supply.Earthing.TN_C_S);
    }

    /** Along two conductors that one link joins; nothing that is wired in may bridge them. */
    private Optional<ReducedReading> resistance(Test test, int number, Reading reading) {
      boolean isPlain =
          survey.hardWired().isEmpty()
              && test.isolation().filter(how -> how.lifted().isEmpty()).isPresent()
              && test.isolation().orElseThrow().links().size() == 1;
      if (!isPlain
          || !(reading.tap() instanceof Tap.Pair pair)
          || !(test.isolation().orElseThrow().links().get(0) instanceof Tap.Pair link)
          || !pair.between().equals(link.between())) {
        return Optional.empty();
      }
      return Optional.of(
          passive(
              ReducedReading.Kind.RESISTANCE,
              number,
              reading,
              pair.between(),
              nodes.number(link.box())));
    }

    private ReducedReading passive(
        ReducedReading.Kind kind, int number, Reading reading, ProbePoints pair, int link) {
      Meter meter = survey.meter(reading.meter());
      ReadingError error = ReadingError.of(reading, meter, assumptions);
      return new ReducedReading(
          kind,
          number,
          nodes.number(reading.box()),
          kind == ReducedReading.Kind.LOOP ? 1 : 0,
          pair.first() == ConductorRole.HOT ? 1 : 0,
          pair.first() == ConductorRole.NEUTRAL || pair.second() == ConductorRole.NEUTRAL ? 1 : 0,
          pair.second() == ConductorRole.GROUND ? 1 : 0,
          -1,
          link,
          0,
          error.value(),
          error.variance(),
          0,
          meter.measurand() == Measurand.RESISTANCE ? meter.accuracy().gainSigma() : 0,
          survey.meters().indexOf(meter),
          meter.greatest());
    }
  }
}
