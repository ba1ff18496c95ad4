package ohmtrail.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * The figures that lead from two readings to the ohms of a joint: supply, line, joint and load in a
 * row carry one current. They are the network's, without any meter's error, at the receptacle where
 * the joint takes most away; what the equations leave out, such as the ground's part in a circuit,
 * shows as a difference between {@link #ohms()} and those of {@link #bad()}.
 *
 * @param bad the degraded joint
 * @param load what is switched on
 * @param box where it is plugged in and read
 * @param idleVolts read there with nothing on
 * @param loadedVolts read there with the load on
 * @param soundIdleVolts what a sound run shows there with nothing on
 * @param soundLoadedVolts what a sound run shows there with the load on
 */
public record LoopSums(
    Degradation bad,
    Load load,
    String box,
    double idleVolts,
    double loadedVolts,
    double soundIdleVolts,
    double soundLoadedVolts) {

  /** Works them out for the first joint that is degraded. */
  public static LoopSums of(PracticeCase hidden, long seed) {
    LiveCircuit live = new LiveCircuit(hidden, seed);
    Circuit circuit = hidden.circuit();
    Survey equipment = live.equipment();
    Meter meter = equipment.meters().get(0);
    Load load = equipment.loads().get(0);
    List<String> boxes =
        circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    List<Test> tests = new ArrayList<>();
    for (String box : boxes) {
      Reading reading = new Reading(box, ProbePoints.usual(circuit, box), meter.name(), 0);
      tests.add(new Test("idle " + box, List.of(), List.of(reading)));
      tests.add(new Test("on " + box, List.of(new LoadInUse(load.name(), box)), List.of(reading)));
    }
    Predictor predictor = new Predictor(circuit, equipment.withTests(tests), hidden.assumptions());
    Degradation bad = live.degraded().get(0);
    List<Double> faulty = predictor.readings(List.of(bad), live.truePoint());
    List<Double> sound = predictor.readings(List.of(), live.truePoint());
    int place =
        IntStream.range(0, boxes.size())
            .boxed()
            .max(Comparator.comparingDouble(b -> sound.get(2 * b + 1) - faulty.get(2 * b + 1)))
            .orElseThrow();
    return new LoopSums(
        bad,
        load,
        boxes.get(place),
        faulty.get(2 * place),
        faulty.get(2 * place + 1),
        sound.get(2 * place),
        sound.get(2 * place + 1));
  }

  /** Rated volts squared over watts. */
  public double loadOhms() {
    return 1 / load.ratedSiemens();
  }

  /** The current, I = U / R(load). */
  public double amperes() {
    return loadedVolts / loadOhms();
  }

  /** Copper and supply, R(line) = R(load) (E / U - 1) of a sound run. */
  public double lineOhms() {
    return loadOhms() * (soundIdleVolts / soundLoadedVolts - 1);
  }

  /** Everything that the current passes, R = E / I. */
  public double loopOhms() {
    return idleVolts / amperes();
  }

  /** The joint, R = E / I - R(load) - R(line). */
  public double ohms() {
    return loopOhms() - loadOhms() - lineOhms();
  }

  /** Its heat, I squared times R. */
  public double watts() {
    return amperes() * amperes() * ohms();
  }
}
