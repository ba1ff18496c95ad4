package ohmtrail.cli.walk.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.practice.PracticeCase;
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
 * The equations that lead from two readings to the ohms of a joint: supply, line, joint and load in
 * a row carry one current. The figures are the network's, without any meter's error; what the
 * equations leave out, such as the ground's part in a circuit, shows as a difference at the end.
 */
final class Sums {
  private final Circuit circuit;
  private final Degradation bad;
  private final Load load;
  private final Predictor predictor;
  private final double[] point;
  private final List<String> boxes;

  Sums(PracticeCase hidden, long seed) {
    LiveCircuit live = new LiveCircuit(hidden, seed);
    this.circuit = hidden.circuit();
    this.bad = live.degraded().get(0);
    Survey equipment = live.equipment();
    this.load = equipment.loads().get(0);
    this.boxes = circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    List<Test> tests = new ArrayList<>();
    for (String box : boxes) {
      Meter meter = equipment.meters().get(0);
      Reading reading = new Reading(box, ProbePoints.usual(circuit, box), meter.name(), 0);
      tests.add(new Test("idle " + box, List.of(), List.of(reading)));
      tests.add(new Test("on " + box, List.of(new LoadInUse(load.name(), box)), List.of(reading)));
    }
    this.predictor = new Predictor(circuit, equipment.withTests(tests), hidden.assumptions());
    this.point = live.truePoint();
  }

  /** The sentences, with the numbers in them. */
  List<String> lines() {
    List<Double> faulty = predictor.readings(List.of(bad), point);
    List<Double> sound = predictor.readings(List.of(), point);
    int place = 0;
    for (int b = 1; b < boxes.size(); b++) {
      if (sound.get(2 * b + 1) - faulty.get(2 * b + 1)
          > sound.get(2 * place + 1) - faulty.get(2 * place + 1)) {
        place = b;
      }
    }
    double idle = faulty.get(2 * place);
    double loaded = faulty.get(2 * place + 1);
    double soundLoaded = sound.get(2 * place + 1);
    double loadOhms = 1 / load.ratedSiemens();
    double amperes = loaded / loadOhms;
    double lineOhms = loadOhms * (sound.get(2 * place) / soundLoaded - 1);
    double ohms = idle / amperes - loadOhms - lineOhms;
    Joint joint = circuit.joint(bad.joint()).orElseThrow();
    String box = boxes.get(place);
    return List.of(
        "The bad joint was "
            + new JointWords(circuit).jointAt(joint)
            + ", "
            + Figures.ohms(bad.ohms())
            + ".",
        "The load: " + ohms(loadOhms) + " (" + load.name() + ", rated volts squared over watts).",
        "At "
            + box
            + ", nothing on: E = "
            + Figures.volts(idle)
            + "; with the load on: U = "
            + Figures.volts(loaded)
            + ".",
        "The current: I = U / R(load) = "
            + Figures.tenths(loaded)
            + " / "
            + ohms(loadOhms)
            + " = "
            + Figures.amperes(amperes)
            + ".",
        "Copper and supply: a sound run shows "
            + Figures.volts(soundLoaded)
            + " there, so R(line) = R(load) (E / U(sound) - 1) = "
            + ohms(lineOhms)
            + ".",
        "The joint: R = E / I - R(load) - R(line) = "
            + ohms(idle / amperes)
            + " - "
            + ohms(loadOhms)
            + " - "
            + ohms(lineOhms)
            + " = "
            + ohms(ohms)
            + ".",
        "Its heat then: I squared times R = " + Figures.watts(amperes * amperes * ohms) + ".");
  }

  private static String ohms(double ohms) {
    return String.format(Locale.ROOT, "%.2f ohm", ohms);
  }
}
