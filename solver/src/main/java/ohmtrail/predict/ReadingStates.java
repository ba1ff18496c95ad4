package ohmtrail.predict;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.network.Attachment;
import ohmtrail.network.Complex;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;

/** Attaches what each reading of a survey, and each GFCI or RCD that was watched, needs. */
final class ReadingStates {
  private final Circuit circuit;
  private final Survey survey;
  private final Parameters parameters;
  private final double[] point;
  private final ToDoubleFunction<Test> sourceVolts;
  private final Map<Wiring.State, Wiring> wirings;
  private final List<Degradation> degradations;

  /**
   * For the readings of a survey.
   *
   * @param sourceVolts the voltage behind the supply impedance in each test
   * @param wirings the circuit in every state that the tests had it in
   */
  ReadingStates(
      Circuit circuit,
      Survey survey,
      Parameters parameters,
      double[] point,
      ToDoubleFunction<Test> sourceVolts,
      Map<Wiring.State, Wiring> wirings,
      List<Degradation> degradations) {
    this.circuit = circuit;
    this.survey = survey;
    this.parameters = parameters;
    this.point = point;
    this.sourceVolts = sourceVolts;
    this.wirings = wirings;
    this.degradations = degradations;
  }

  /** What becomes of the places where meters are held once a reading is over. */
  enum Meters {
    /** All are kept: the readings are asked again and again. */
    STAY,
    /** None is kept: room for one reading at a time, however many there are. */
    COME_AND_GO
  }

  /** Solves a circuit for the tests of a survey. */
  static ReadingStates of(
      Circuit circuit,
      Survey survey,
      Assumptions assumptions,
      Parameters parameters,
      double[] point,
      List<Degradation> degradations,
      Meters meters) {
    Set<String> joints = new LinkedHashSet<>();
    degradations.forEach(degradation -> joints.add(degradation.joint()));
    survey.tests().stream()
        .flatMap(test -> test.trips().stream())
        .map(Trip::device)
        .distinct()
        .flatMap(device -> circuit.jointsOutOf(device).stream())
        .forEach(joint -> joints.add(joint.id()));
    Map<Wiring.State, Wiring> wirings = new LinkedHashMap<>();
    uses(circuit, survey, meters, joints)
        .forEach(
            (state, use) ->
                wirings.put(state, Wiring.of(circuit, assumptions, parameters, point, state, use)));
    return new ReadingStates(
        circuit,
        survey,
        parameters,
        point,
        test -> parameters.sourceVolts(point, survey, test),
        wirings,
        degradations);
  }

  /** What is connected in every state that the circuit was in. */
  static Map<Wiring.State, Wiring.Use> uses(
      Circuit circuit, Survey survey, Meters meters, Set<String> joints) {
    Map<Wiring.State, Wiring.Use> uses = new LinkedHashMap<>();
    for (Test test : survey.tests()) {
      Wiring.Use use =
          uses.computeIfAbsent(
              Wiring.State.of(test),
              state -> new Wiring.Use(new LinkedHashSet<>(), new LinkedHashSet<>(), joints));
      survey.loadsOn(test).forEach(load -> use.taps().add(load.tap(circuit)));
      Set<Tap> held = meters == Meters.STAY ? use.taps() : use.watched();
      test.readings().stream()
          .map(Reading::tap)
          .filter(tap -> !(tap instanceof Tap.AroundLoad))
          .forEach(held::add);
      test.trips().stream()
          .flatMap(trip -> trip.probe().stream())
          .map(Trip.Probe::tap)
          .filter(Tap::isTouching)
          .forEach(held::add);
    }
    return uses;
  }

  ReadingState build(Test test, Reading reading) {
    Wiring whole = Wiring.require(wirings, Wiring.State.of(test), "State");
    Meter meter = survey.meter(reading.meter());
    TestLoads loads = TestLoads.of(test, circuit, survey, parameters, point, whole);
    int gainPlace = parameters.place(new Parameters.GainKey(meter.name()));
    Optional<LoadInUse> around =
        reading.tap() instanceof Tap.AroundLoad clamp
            ? Optional.of(loads.useOf(clamp))
            : Optional.empty();
    Tap tap = around.map(use -> use.tap(circuit)).orElse(reading.tap());
    int port = whole.tapPort(tap);
    Wiring wiring = whole.driving(port);
    ReadingState.InPlace inPlace = ReadingState.InPlace.of(loads);
    if (meter.measurand() == Measurand.VOLTAGE) {
      addVoltmeter(meter, wiring, port, inPlace);
    } else if (meter.measurand() != Measurand.CURRENT) {
      inPlace.shunts().add(port, Complex.real(1 / meter.greatest()));
    }
    List<Attachment> series = series(test, wiring, inPlace.elements());
    return new ReadingState(
        new ReadingState.Placement(
            test,
            reading.measurand(),
            List.of(port),
            around,
            circuit,
            parameters,
            wiring,
            sourceVolts.applyAsDouble(test),
            parameters.steps(survey, test),
            loads,
            inPlace,
            series,
            OptionalInt.of(gainPlace),
            parameters.all().get(gainPlace).factor(point[gainPlace])),
        series);
  }

  /** What a GFCI or RCD sees at a moment at which somebody watched it. */
  ReadingState build(Test test, Trip trip) {
    Wiring whole = Wiring.require(wirings, Wiring.State.of(test), "State");
    Wiring wiring =
        trip.probe()
            .map(Trip.Probe::tap)
            .filter(Tap::isTouching)
            .map(tap -> whole.driving(whole.tapPort(tap)))
            .orElse(whole);
    TestLoads loads = TestLoads.of(test, circuit, survey, parameters, point, wiring);
    ReadingState.InPlace inPlace = ReadingState.InPlace.of(loads);
    trip.probe().ifPresent(probe -> addProbe(probe, wiring, inPlace));
    List<Attachment> series = series(test, wiring, inPlace.elements());
    List<Integer> ports =
        circuit.jointsOutOf(trip.device()).stream()
            .map(Joint::id)
            .map(wiring::jointPort)
            .distinct()
            .toList();
    return new ReadingState(
        new ReadingState.Placement(
            test,
            Measurand.CURRENT,
            ports,
            Optional.empty(),
            circuit,
            parameters,
            wiring,
            sourceVolts.applyAsDouble(test),
            parameters.steps(survey, test),
            loads,
            inPlace,
            series,
            OptionalInt.empty(),
            1),
        series);
  }

  /** What a meter that is held to something draws from the supply while it is held there. */
  private void addProbe(Trip.Probe probe, Wiring wiring, ReadingState.InPlace inPlace) {
    Meter meter = survey.meter(probe.meter());
    if (meter.measurand() == Measurand.VOLTAGE) {
      addVoltmeter(meter, wiring, wiring.tapPort(probe.tap()), inPlace);
    } else if (meter.testAmperes() > 0) {
      double siemens = meter.siemens(circuit.supply().volts());
      inPlace.shunts().add(wiring.tapPort(probe.tap()), Complex.real(siemens));
    }
  }

  private void addVoltmeter(Meter meter, Wiring wiring, int port, ReadingState.InPlace inPlace) {
    int place = parameters.place(new Parameters.MeterOhmsKey(meter.name()));
    Complex conductance = Complex.real(1 / parameters.value(place, point));
    inPlace.shunts().add(port, conductance);
    // More ohms are fewer siemens.
    inPlace
        .elements()
        .add(new Wiring.Element(port, place, conductance.times(-parameters.sigma(place))));
    if (meter.inputFarads() > 0) {
      inPlace.shunts().add(port, new Complex(0, wiring.omega() * meter.inputFarads()));
    }
  }

  private List<Attachment> series(Test test, Wiring wiring, List<Wiring.Element> elements) {
    return degradations.stream()
        .filter(degradation -> degradation.when().covers(test))
        .map(each -> degrade(each, wiring, elements))
        .toList();
  }

  /**
   * The ohms of a degraded joint in its gap, and how they follow their parameter if they have one.
   */
  private Attachment degrade(
      Degradation degradation, Wiring wiring, List<Wiring.Element> elements) {
    int port = wiring.jointPort(degradation.joint());
    OptionalInt place = parameters.placeOf(degradation);
    if (place.isEmpty()) {
      return Attachment.series(port, degradation.ohms());
    }
    double ohms = parameters.value(place.getAsInt(), point);
    double slope = ohms * parameters.slope(place.getAsInt(), point);
    elements.add(new Wiring.Element(port, place.getAsInt(), Complex.real(slope)));
    return Attachment.series(port, ohms);
  }
}
