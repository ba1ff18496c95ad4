package ohmtrail.cli.walk.lesson;

import java.util.List;
import java.util.Locale;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.practice.LoopSums;

/** The equations that lead from two readings to the ohms of a joint, with their numbers. */
final class SumsWords {
  private SumsWords() {}

  static List<String> of(Circuit circuit, LoopSums sums) {
    Joint joint = circuit.joint(sums.bad().joint()).orElseThrow();
    return List.of(
        "The bad joint was "
            + new JointWords(circuit).jointAt(joint)
            + ", "
            + Figures.ohms(sums.bad().ohms())
            + ".",
        "The load: "
            + ohms(sums.loadOhms())
            + " ("
            + sums.load().name()
            + ", rated volts squared over watts).",
        "At "
            + sums.box()
            + ", nothing on: E = "
            + Figures.volts(sums.idleVolts())
            + "; with the load on: U = "
            + Figures.volts(sums.loadedVolts())
            + ".",
        "The current: I = U / R(load) = "
            + Figures.tenths(sums.loadedVolts())
            + " / "
            + ohms(sums.loadOhms())
            + " = "
            + Figures.amperes(sums.amperes())
            + ".",
        "Copper and supply: a sound run shows "
            + Figures.volts(sums.soundLoadedVolts())
            + " there, so R(line) = R(load) (E / U(sound) - 1) = "
            + ohms(sums.lineOhms())
            + ".",
        "The joint: R = E / I - R(load) - R(line) = "
            + ohms(sums.loopOhms())
            + " - "
            + ohms(sums.loadOhms())
            + " - "
            + ohms(sums.lineOhms())
            + " = "
            + ohms(sums.ohms())
            + ".",
        "Its heat then: I squared times R = " + Figures.watts(sums.watts()) + ".");
  }

  private static String ohms(double ohms) {
    return String.format(Locale.ROOT, "%.2f ohm", ohms);
  }
}
