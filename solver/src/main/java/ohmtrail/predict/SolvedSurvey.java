package ohmtrail.predict;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.network.Attachment;
import ohmtrail.network.Complex;
import ohmtrail.predict.operating.SettledNetwork;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;

/**
 * Every voltage and current of a survey's tests at one point: what each meter shows, what stands
 * along the run, where the loads settle, what flows through a joint and what a GFCI or RCD sees.
 *
 * <p>The circuit is solved once for every state that its switches and breaker were in; each test
 * after that attaches its loads and the ohms of that test to the same response. The voltage behind
 * the supply impedance of a test is the fitted one times 1 + drift. Nothing is linearised. Belongs
 * to one thread.
 */
public final class SolvedSurvey {
  private final Problem problem;
  private final Circuit circuit;
  private final Survey survey;
  private final double unknownLength;
  private final Parameters parameters;
  private final OperatingConditions conditions;
  private final double[] point;
  private final Map<String, Double> sourceVolts = new HashMap<>();
  private final Map<Wiring.State, Wiring> wirings = new LinkedHashMap<>();
  private final Map<String, SettledNetwork> settled = new HashMap<>();

  private SolvedSurvey(Problem problem, Parameters parameters, OperatingConditions conditions) {
    this.problem = problem;
    this.circuit = problem.circuit();
    this.survey = problem.survey();
    this.unknownLength = problem.assumptions().value(Assumption.UNKNOWN_LENGTH);
    this.parameters = parameters;
    this.conditions = conditions;
    this.point = conditions.point();
  }

  /**
   * Solves.
   *
   * @param problem circuit, survey and assumptions
   * @param conditions where; one drift per test of the survey
   * @param joints ids of further joints that a current will be asked of
   */
  public static SolvedSurvey of(
      Problem problem, OperatingConditions conditions, Collection<String> joints) {
    Parameters parameters =
        Parameters.of(problem.circuit(), problem.survey(), problem.assumptions());
    SolvedSurvey solved = new SolvedSurvey(problem, parameters, conditions);
    solved.setOff();
    Set<Tap> pairs = Pairs.everywhere(problem.circuit());
    ReadingStates.uses(
            problem.circuit(),
            problem.survey(),
            ReadingStates.Meters.COME_AND_GO,
            solved.excited(joints))
        .forEach(
            (state, use) -> {
              use.watched().addAll(pairs);
              solved.wirings.put(
                  state,
                  Wiring.of(
                      problem.circuit(),
                      problem.assumptions(),
                      parameters,
                      solved.point,
                      state,
                      use));
            });
    return solved;
  }

  /** Solves with everything as stated, ohms added to joints. */
  public static SolvedSurvey asStated(Problem problem, List<Degradation> degradations) {
    return of(problem, OperatingConditions.asStated(problem, degradations), Set.of());
  }

  /**
   * The same circuit with other ohms added or other drifts: nothing is solved again.
   *
   * @param others the same parameters; degraded joints that the survey was solved for
   */
  public SolvedSurvey with(OperatingConditions others) {
    if (!others.parameters().equals(conditions.parameters())) {
      throw new IllegalArgumentException(
          "Parameters must be those that the survey was solved at\nMaybe solve it anew.");
    }
    SolvedSurvey changed = new SolvedSurvey(problem, parameters, others);
    changed.setOff();
    changed.wirings.putAll(wirings);
    return changed;
  }

  private void setOff() {
    List<Test> tests = survey.tests();
    for (int t = 0; t < tests.size(); t++) {
      double volts = parameters.sourceVolts(point, survey, tests.get(t));
      sourceVolts.put(tests.get(t).name(), volts * (1 + conditions.drifts().get(t)));
    }
  }

  /** The point that everything is worked out at. */
  public OperatingConditions conditions() {
    return conditions;
  }

  private Set<String> excited(Collection<String> joints) {
    Set<String> excited = new LinkedHashSet<>(joints);
    conditions.degradations().forEach(degradation -> excited.add(degradation.joint()));
    circuit.residualCurrentDevices().stream()
        .flatMap(device -> circuit.jointsOutOf(device.box()).stream())
        .map(Joint::id)
        .forEach(excited::add);
    return excited;
  }

  /** The voltage behind the supply impedance in a test, volts. */
  public double sourceVolts(Test test) {
    return Wiring.require(sourceVolts, test.name(), "Test");
  }

  /**
   * A reading as predicted.
   *
   * @param number of the fit, as {@link ReadingError} has it
   * @param shown by the meter, in the unit of the measurand; infinite where one of ohms shows that
   *     the way is open
   * @param perSupply change of the number per unit of the natural logarithm of the supply voltage
   */
  public record PredictedReading(double number, double shown, double perSupply) {}

  /** What the meters show in a test, one per reading of it. */
  public List<PredictedReading> readings(Test test) {
    ReadingStates states = states();
    return test.readings().stream().map(reading -> predicted(states, test, reading)).toList();
  }

  private PredictedReading predicted(ReadingStates states, Test test, Reading reading) {
    ReadingState state = states.build(test, reading);
    double scale = state.followsSupply() ? state.gain() * sourceVolts(test) : state.gain();
    double number = scale * state.shown().abs();
    return new PredictedReading(
        number,
        ReadingError.shown(number, survey.meter(reading.meter())),
        scale * state.perSupply());
  }

  private ReadingStates states() {
    return new ReadingStates(
        circuit, survey, parameters, point, this::sourceVolts, wirings, conditions.degradations());
  }

  /** The voltages along the run in a test, as a meter that draws nothing would show them. */
  public VoltageProfile profile(Test test) {
    Wiring wiring = wiring(test);
    double[] perVolt = settled(test).drivenBySupply();
    double source = sourceVolts(test);
    List<VoltageProfile.Point> points = new ArrayList<>();
    for (Box box : circuit.boxes()) {
      Map<ProbePoints, Double> volts = new LinkedHashMap<>();
      for (ProbePoints pair : Pairs.at(circuit, box)) {
        int port = wiring.tapPort(new Tap.Pair(box.name(), pair));
        volts.put(pair, source * magnitude(perVolt, port));
      }
      points.add(new VoltageProfile.Point(box.name(), metresTo(box.name()), volts));
    }
    return new VoltageProfile(points);
  }

  private double metresTo(String box) {
    return circuit.pathTo(box).stream()
        .mapToDouble(cable -> cable.lengthMetres().orElse(unknownLength))
        .sum();
  }

  /** Where the loads of a test settle, with no meter on; one per load that is on. */
  public List<LoadPoint> loadPoints(Test test) {
    TestLoads loads = loads(test);
    SettledNetwork network = settled(test);
    List<LoadPoint> points = new ArrayList<>();
    for (LoadInUse use : loads.uses()) {
      int port = wiring(test).tapPort(use.tap(circuit));
      double volts = sourceVolts(test) * magnitude(network.drivenBySupply(), port);
      Complex admittance = loads.admittance(use, network.point());
      points.add(
          new LoadPoint(
              use,
              !admittance.equals(Complex.ZERO),
              volts,
              volts * admittance.abs(),
              volts * volts * admittance.re()));
    }
    return List.copyOf(points);
  }

  /**
   * The current through a joint in a test, with no meter on.
   *
   * @param joint its id; one of those that the survey was solved for
   * @return amperes, root mean square; 0 while it is open
   */
  public double jointAmperes(Test test, String joint) {
    return isOpen(conditions.degradations(), test, joint) ? 0 : through(settled(test), test, joint);
  }

  /**
   * The current through a joint in a test as a function of the ohms added there, with no meter on
   * and everything but the ohms as it is at the point. With i0 the current while nothing is added
   * and y the admittance seen in the joint's gap it is i0/(1 + y R); loads that follow their
   * voltage settle anew at each value.
   *
   * @param others ohms added in other joints that the survey was solved for
   * @param joint its id; one of those that the survey was solved for
   * @return amperes, root mean square, at finite ohms
   */
  public DoubleUnaryOperator jointCurrent(Test test, List<Degradation> others, String joint) {
    if (!loads(test).dependent().isEmpty()) {
      return ohms -> {
        List<Degradation> all = new ArrayList<>(others);
        all.add(new Degradation(joint, ohms));
        return through(settle(test, all), test, joint);
      };
    }
    SettledNetwork network = settle(test, others);
    int gap = wiring(test).jointPort(joint);
    double amperes = through(network, test, joint);
    Complex admittance = network.attachments().transfer(gap, gap);
    return ohms -> amperes / Complex.ONE.plus(admittance.times(ohms)).abs();
  }

  /**
   * The admittance seen in a joint's gap with nothing on: next to none where nothing but the joint
   * joins its two sides, that of the rest of the loop in a ring.
   *
   * @param joint its id; one of those that the survey was solved for
   * @return siemens; 0 where no test was made with the breaker on
   */
  public double loopSiemens(String joint) {
    return wirings.entrySet().stream()
        .filter(entry -> entry.getKey().isolation().isEmpty())
        .findFirst()
        .map(Map.Entry::getValue)
        .map(wiring -> wiring.response().transfer(wiring.jointPort(joint), wiring.jointPort(joint)))
        .map(Complex::abs)
        .orElse(0.0);
  }

  private static boolean isOpen(List<Degradation> degradations, Test test, String joint) {
    return degradations.stream()
        .filter(each -> each.joint().equals(joint) && each.when().covers(test))
        .anyMatch(each -> Double.isInfinite(each.ohms()));
  }

  private double through(SettledNetwork network, Test test, String joint) {
    return sourceVolts(test) * magnitude(network.drivenBySupply(), wiring(test).jointPort(joint));
  }

  /**
   * What a GFCI or RCD sees in a test.
   *
   * @param trip the device, and the meter that is held to something meanwhile
   * @return amperes that flow out through it and do not come back; 0 while the breaker is off
   */
  public double residualAmperes(Test test, Trip trip) {
    return test.isDead() ? 0 : sourceVolts(test) * states().build(test, trip).shown().abs();
  }

  /** The same while a reading of the test is taken, its meter in place. */
  public double residualAmperes(Test test, ResidualCurrentDevice device, Reading reading) {
    Trip.Probe probe = new Trip.Probe(reading.tap(), reading.meter());
    return residualAmperes(test, new Trip(device.box(), false, Optional.of(probe)));
  }

  private SettledNetwork settled(Test test) {
    return settled.computeIfAbsent(test.name(), name -> settle(test, conditions.degradations()));
  }

  private SettledNetwork settle(Test test, List<Degradation> degradations) {
    Wiring wiring = wiring(test);
    TestLoads loads = loads(test);
    List<Attachment> series =
        degradations.stream()
            .filter(each -> each.when().covers(test))
            .map(each -> Attachment.series(wiring.jointPort(each.joint()), each.ohms()))
            .toList();
    return SettledNetwork.of(
        wiring.response(),
        loads.constant(),
        series,
        loads.dependent(),
        sourceVolts(test),
        wiring::drivenBySupply);
  }

  private TestLoads loads(Test test) {
    return TestLoads.of(test, circuit, survey, parameters, point, wiring(test));
  }

  private Wiring wiring(Test test) {
    return Wiring.require(wirings, Wiring.State.of(test), "State");
  }

  private static double magnitude(double[] perVolt, int port) {
    return Math.hypot(perVolt[2 * port], perVolt[2 * port + 1]);
  }
}
