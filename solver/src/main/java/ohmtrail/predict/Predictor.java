package ohmtrail.predict;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.network.Complex;
import ohmtrail.predict.operating.Shunts;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;

/** What meters would show on a circuit, given degraded joints and the parameters. Immutable. */
public final class Predictor {
  private final Circuit circuit;
  private final Survey survey;
  private final Assumptions assumptions;
  private final Parameters parameters;

  /**
   * Prepares.
   *
   * @throws ohmtrail.survey.SurveyException when the survey does not fit the circuit
   */
  public Predictor(Circuit circuit, Survey survey, Assumptions assumptions) {
    survey.requireFits(circuit);
    this.circuit = circuit;
    this.survey = survey;
    this.assumptions = assumptions;
    this.parameters = Parameters.of(circuit, survey, assumptions);
  }

  /** The parameters; a point is a list of their u in this order. */
  public Parameters parameters() {
    return parameters;
  }

  /**
   * What the meters would show with everything as stated.
   *
   * @param degradations ohms added, at most one entry per joint
   * @return in the unit of each reading's measurand, in the order of the survey
   */
  public List<Double> readings(List<Degradation> degradations) {
    return readings(degradations, parameters.nominalPoint());
  }

  /** What the meters would show at a point of the parameters. */
  public List<Double> readings(List<Degradation> degradations, double[] point) {
    ReadingStates states = states(survey, degradations, point);
    double source = sourceVolts(point);
    List<Double> shown = new ArrayList<>();
    for (Test test : survey.tests()) {
      for (Reading reading : test.readings()) {
        Meter meter = survey.meter(reading.meter());
        shown.add(ReadingError.shown(states.build(test, reading).magnitude(source), meter));
      }
    }
    return List.copyOf(shown);
  }

  /**
   * What every GFCI or RCD sees during every reading, its meter in place and a loop tester drawing
   * its test current; nothing trips in the prediction.
   *
   * @param degradations ohms added, at most one entry per joint
   * @param point u of each parameter
   * @return by device, then by reading
   */
  public List<ResidualCurrent> residualCurrents(List<Degradation> degradations, double[] point) {
    List<ResidualCurrent> currents = new ArrayList<>();
    for (ResidualCurrentDevice device : circuit.residualCurrentDevices()) {
      List<Test> watching = survey.tests().stream().map(test -> watching(test, device)).toList();
      Iterator<Double> amperes = tripAmperes(watching, degradations, point).iterator();
      int reading = 0;
      for (Test test : survey.tests()) {
        for (int r = 0; r < test.readings().size(); r++) {
          double seen = test.isDead() ? 0 : amperes.next();
          currents.add(new ResidualCurrent(device, reading++, seen));
        }
      }
    }
    return List.copyOf(currents);
  }

  /**
   * A device watched while each meter of a test reads, one after the other. With the breaker off it
   * sees nothing.
   */
  private static Test watching(Test test, ResidualCurrentDevice device) {
    List<Trip> trips =
        test.isDead()
            ? List.of()
            : test.readings().stream()
                .map(reading -> new Trip.Probe(reading.tap(), reading.meter()))
                .map(probe -> new Trip(device.box(), false, Optional.of(probe)))
                .toList();
    return test.withReadings(List.of()).withTrips(trips);
  }

  /**
   * What every GFCI or RCD that somebody watched saw then.
   *
   * @return amperes, one per {@link ohmtrail.survey.Trip} in the order of the survey
   */
  public List<Double> tripAmperes(List<Degradation> degradations, double[] point) {
    return tripAmperes(survey.tests(), degradations, point);
  }

  private List<Double> tripAmperes(
      List<Test> tests, List<Degradation> degradations, double[] point) {
    ReadingStates states = states(survey.withTests(tests), degradations, point);
    double source = sourceVolts(point);
    return tests.stream()
        .flatMap(test -> test.trips().stream().map(trip -> states.build(test, trip)))
        .map(state -> state.magnitude(source))
        .toList();
  }

  private ReadingStates states(Survey of, List<Degradation> degradations, double[] point) {
    return ReadingStates.of(
        circuit,
        of,
        assumptions,
        parameters,
        point,
        degradations,
        ReadingStates.Meters.COME_AND_GO);
  }

  /**
   * The circuit under the loads of tests, ready for ohms in its joints.
   *
   * @param tests live ones whose loads are on, with one reading at most: its meter draws meanwhile
   * @param point u of every parameter
   */
  public LoadStates states(List<Test> tests, double[] point) {
    Map<Wiring.State, Set<Tap>> taps = new LinkedHashMap<>();
    for (Test test : tests) {
      Set<Tap> touched =
          taps.computeIfAbsent(Wiring.State.of(test), state -> new LinkedHashSet<>());
      survey.loadsOn(test).forEach(use -> touched.add(use.tap(circuit)));
      test.readings().forEach(reading -> touched.add(reading.tap()));
    }
    Set<Tap> watched = new LinkedHashSet<>(touchable());
    Map<Wiring.State, Wiring> wirings = new LinkedHashMap<>();
    taps.forEach(
        (state, touched) ->
            wirings.put(
                state,
                Wiring.of(
                    circuit,
                    assumptions,
                    parameters,
                    point,
                    state,
                    new Wiring.Use(watched, touched, Set.of()))));
    return new LoadStates(
        test -> state(test, Wiring.require(wirings, Wiring.State.of(test), "State"), point));
  }

  /** Where loads are plugged in, and what a hand may touch. */
  private List<Tap> touchable() {
    List<Tap> taps = new ArrayList<>();
    taps.addAll(receptacles());
    taps.addAll(toPanelGround(ConductorRole.GROUND));
    taps.addAll(toPanelGround(ConductorRole.NEUTRAL));
    return taps;
  }

  private List<Tap> receptacles() {
    List<Tap> taps = new ArrayList<>();
    for (Box box : circuit.boxes()) {
      if (box.hasReceptacle()) {
        Pairs.liveToNeutral(circuit.deviceConductors(box))
            .forEach(pair -> taps.add(new Tap.Pair(box.name(), pair)));
      }
    }
    return taps;
  }

  private List<Tap> toPanelGround(ConductorRole conductor) {
    String panel = circuit.panel().name();
    return circuit.boxes().stream()
        .map(Box::name)
        .filter(box -> !box.equals(panel) && circuit.conductorsAt(box).contains(conductor))
        .<Tap>map(
            box ->
                new Tap.Points(
                    new ProbePoint.Contact(box, conductor),
                    new ProbePoint.Contact(panel, ConductorRole.GROUND)))
        .toList();
  }

  private LoadState state(Test test, Wiring wiring, double[] point) {
    TestLoads loads = TestLoads.of(test, circuit, survey, parameters, point, wiring);
    Shunts drawing = new Shunts(loads.constant());
    for (Reading reading : test.readings()) {
      double siemens = survey.meter(reading.meter()).siemens(circuit.supply().volts());
      drawing.add(wiring.tapPort(reading.tap()), Complex.real(siemens));
    }
    LoadState.Places places =
        new LoadState.Places(
            ports(wiring, receptacles()),
            ports(wiring, toPanelGround(ConductorRole.GROUND)),
            ports(wiring, toPanelGround(ConductorRole.NEUTRAL)),
            wiring.sources().stream().map(Wiring.Source::port).toList());
    return new LoadState(wiring, loads, drawing, places, sourceVolts(point));
  }

  private static List<Integer> ports(Wiring wiring, List<Tap> taps) {
    return taps.stream().map(wiring::tapPort).toList();
  }

  private double sourceVolts(double[] point) {
    return parameters.sourceVolts(point);
  }
}
