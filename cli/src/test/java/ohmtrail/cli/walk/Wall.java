package ohmtrail.cli.walk;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/** A run with a bad joint, and somebody at it who answers what a session asks. */
final class Wall {
  /** What is typed to describe it, from an empty file. */
  static final List<String> DESCRIBED =
      List.of(
          "",
          "",
          "15 A",
          "14 AWG",
          "push-in",
          "hall-1 30 ft",
          "hall-2 12 ft",
          "hall-3: receptacle 12 ft",
          "hall-4 12 ft",
          "",
          "no",
          "");

  private static final String BAD_BOX = "hall-3";
  private static final Degradation BAD = new Degradation("hall-3/neutral/incoming", 2.4);

  private static final Pattern ASKED =
      Pattern.compile(
          "([\\w-]+): (hot|neutral) to (neutral|ground)"
              + "(?:, nothing on| while the heater (?:plugged in there|at ([\\w-]+)) is on)");

  private static final Pattern OPENED =
      Pattern.compile("([\\w-]+)(?: \\([^)]*\\))?: do all joints look fine");

  private Wall() {}

  static Circuit circuit() {
    try {
      CaseFile read =
          new CaseFileReader()
              .read(
                  "wall",
                  """
                  breaker: 15 A
                  cable: 14 AWG
                  joints: push-in
                  run:
                    - panel
                    - hall-1: receptacle 30 ft
                    - hall-2: receptacle 12 ft
                    - hall-3: receptacle 12 ft
                    - hall-4: receptacle 12 ft
                  """);
      return read.circuit();
    } catch (CaseFileException e) {
      throw new AssertionError(e);
    }
  }

  /** What somebody types who stands there. */
  static String answer(String question) {
    Matcher opened = OPENED.matcher(question);
    if (opened.find()) {
      return opened.group(1).equals(BAD_BOX) ? "burnt" : "fine";
    }
    Matcher asked = ASKED.matcher(question);
    if (!asked.find()) {
      return "quit";
    }
    String box = asked.group(1);
    boolean idle = !asked.group().contains("heater");
    String heaterAt = asked.group(4) == null ? box : asked.group(4);
    ProbePoints between = new ProbePoints(conductor(asked.group(2)), conductor(asked.group(3)));
    return String.format(Locale.ROOT, "%.1f", volts(box, between, idle ? null : heaterAt));
  }

  private static ConductorRole conductor(String word) {
    return ConductorRole.valueOf(word.toUpperCase(Locale.ROOT));
  }

  private static double volts(String box, ProbePoints between, String heaterAt) {
    List<LoadInUse> loads =
        heaterAt == null ? List.of() : List.of(new LoadInUse("heater", heaterAt));
    Test test = new Test("asked", loads, List.of(new Reading(box, between, "high", 0)));
    Survey survey =
        new Survey(
            List.of(Meter.highImpedance("high")),
            List.of(new HeatingElement("heater", 1500, 120)),
            List.of(test));
    return new Predictor(circuit(), survey, Assumptions.defaults()).readings(List.of(BAD)).get(0);
  }
}
