package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import ohmtrail.advise.Advice;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.advise.stop.SupplySide;
import ohmtrail.advise.work.Work;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.survey.Test;

/** What must not be done on the way, fitted to the case. */
public final class Cautions {
  /** A suspect less likely than this changes nobody's plan. */
  private static final double WORTH_A_WARNING = 0.05;

  private Cautions() {}

  /** The cautions that hold for every circuit that is measured, live or dead. */
  public static List<String> forMeasuring(CaseFile caseFile) {
    return forMeasuring(caseFile, caseFile.survey().tests());
  }

  private static List<String> forMeasuring(CaseFile caseFile, List<Test> tests) {
    Region region = Region.of(caseFile.circuit().supply());
    List<String> cautions = new ArrayList<>();
    if (tests.isEmpty() || !tests.stream().allMatch(Test::isDead)) {
      cautions.add(
          "These readings are taken on live parts. Only a person trained for live work takes them,"
              + " with a meter and leads of measurement category CAT III for fixed wiring, CAT IV"
              + " where the service is within reach (the meter, the main switch and what leads to"
              + " it), rated for the voltage.");
    }
    cautions.add(
        "Stop and switch the circuit off at the breaker at any heat, smell, smoke, buzzing or"
            + " crackling, and leave it off.");
    cautions.add(
        "Before opening a box: "
            + everyBreaker(caseFile.circuit())
            + " off, secured against being switched on, and every conductor proved dead against"
            + " every other and against ground. Proved dead means: the tester proved on a live"
            + " source, the conductors, the tester proved again.");
    if (Work.of(tests, caseFile.circuit()).stream().anyMatch(Work::live)) {
      cautions.add(
          "A reading in an open panel or box is work on an open live box: only for a licensed"
              + " electrician, qualified and protected for it. Probes and clamp go on and come off"
              + " with the main switch off in the panel, whose "
              + region.lineSide()
              + " stays live all the same, and with the breaker off and proved dead elsewhere.");
    }
    if (tests.stream().anyMatch(Test::isDead)) {
      cautions.add(
          "An ohmmeter or continuity tester goes on a dead circuit only: breaker off and locked,"
              + " every conductor proved dead first. Before switching on again take every link off"
              + " and make every lifted joint good.");
    }
    cautions.addAll(ResidualWords.cautions(caseFile));
    if (hasAluminium(caseFile)) {
      cautions.add(
          "This run has aluminium conductors: remake their joints only with connectors listed for"
              + " aluminium.");
    }
    cautions.add(
        "The local "
            + region.rules()
            + " and a licensed electrician come first: where they say otherwise, do as they say.");
    return List.copyOf(cautions);
  }

  /** The cautions for a circuit and what was found out about it, the most pressing first. */
  public static List<String> forAnswer(CaseFile caseFile, Diagnosis diagnosis) {
    return forAnswer(caseFile, diagnosis, List.of());
  }

  /**
   * The same with those for what is advised.
   *
   * @param steps how many of the best choices are shown
   */
  public static List<String> forAdvice(CaseFile caseFile, Advice advice, int steps) {
    List<Test> advised =
        advice.options().stream()
            .limit(steps)
            .map(Option::choice)
            .flatMap(
                choice -> choice instanceof Choice.Read read ? read.tests().stream() : Stream.of())
            .toList();
    return forAnswer(caseFile, advice.diagnosis(), advised);
  }

  private static String everyBreaker(Circuit circuit) {
    List<ConductorRole> legs = circuit.supply().legs().conductors();
    return legs.size() < 2 ? "the breaker" : "every breaker that feeds it or shares its neutral";
  }

  private static List<String> forAnswer(
      CaseFile caseFile, Diagnosis diagnosis, List<Test> advised) {
    List<Test> tests = Stream.concat(caseFile.survey().tests().stream(), advised.stream()).toList();
    List<String> cautions = new ArrayList<>();
    if (SupplySide.unequalLegs(caseFile.problem()).isPresent()) {
      cautions.add(
          "Leave the main switch off until somebody has looked: behind a lost neutral of the supply"
              + " the lighter leg of the whole house gets far more than its loads are made for."
              + " Meter, service and main lugs are for the utility or a licensed electrician.");
    } else if (diagnosis.verdict() == Verdict.DEGRADED) {
      addForSuspects(caseFile, diagnosis, advised, cautions);
    }
    cautions.addAll(forMeasuring(caseFile, tests));
    return List.copyOf(cautions);
  }

  private static void addForSuspects(
      CaseFile caseFile, Diagnosis diagnosis, List<Test> advised, List<String> cautions) {
    Region region = Region.of(caseFile.circuit().supply());
    cautions.add(
        "Take the loads off this circuit and leave them off until the joint is remade, but for a"
            + " reading: a bad joint heats only while current flows, and neither breaker nor "
            + region.residualCurrentDevice()
            + " trips on it.");
    if (isSuspected(diagnosis, ConductorRole.NEUTRAL)) {
      cautions.add(lostNeutral(caseFile, diagnosis, advised));
      if (caseFile.circuit().supply().legs() != Supply.Legs.ONE) {
        cautions.add(
            "With a lost neutral the loads of the two legs divide the voltage between them: what is"
                + " plugged in on the lighter leg gets far more than it is made for. Take the loads"
                + " off both legs.");
      }
    }
    if (isSuspected(diagnosis, ConductorRole.GROUND)) {
      cautions.add(
          "A suspected "
              + region.conductor(ConductorRole.GROUND)
              + ": metal parts of what is plugged in beyond it are not protected and may become"
              + " live.");
    }
    double before =
        diagnosis.suspects().stream().mapToDouble(JointWords::supplySideProbability).sum();
    if (before >= WORTH_A_WARNING) {
      cautions.add(
          "The fault may lie on the supply side, at or before the panel: meter, service and main"
              + " lugs are for the utility or a licensed electrician. No breaker of this circuit"
              + " unloads it; the main switch does.");
    }
    String panel = caseFile.circuit().panel().name();
    if (diagnosis.boxes().stream()
        .anyMatch(box -> box.box().equals(panel) && box.probability() >= WORTH_A_WARNING)) {
      cautions.add(
          "A suspect is in "
              + panel
              + ": main switch off and locked before it is opened, and its "
              + region.lineSide()
              + " stays live all the same. That work is for a licensed electrician.");
    }
  }

  /** Names the neutral that is meant, unless a step of the same page goes there with a load. */
  private static String lostNeutral(CaseFile caseFile, Diagnosis diagnosis, List<Test> advised) {
    String behind =
        "Behind an open neutral a load puts the full supply voltage on the neutral conductor";
    if (advised.stream().anyMatch(test -> !test.loads().isEmpty())) {
      return behind
          + ": none but what a step names goes in, nowhere else and no longer than it says.";
    }
    Suspect leading =
        diagnosis.suspects().stream()
            .max(Comparator.comparingDouble(suspect -> probability(suspect, ConductorRole.NEUTRAL)))
            .orElseThrow();
    return behind
        + ". It may be "
        + new JointWords(caseFile.circuit()).suspect(leading, "")
        + ": nothing is plugged in beyond it to try.";
  }

  private static boolean isSuspected(Diagnosis diagnosis, ConductorRole conductor) {
    return diagnosis.suspects().stream()
            .mapToDouble(suspect -> probability(suspect, conductor))
            .sum()
        >= WORTH_A_WARNING;
  }

  private static double probability(Suspect suspect, ConductorRole conductor) {
    double sum = 0;
    for (int j = 0; j < suspect.joints().size(); j++) {
      Joint joint = suspect.joints().get(j);
      sum += joint.conductor() == conductor ? suspect.jointProbabilities().get(j) : 0;
    }
    return sum;
  }

  private static boolean hasAluminium(CaseFile caseFile) {
    return caseFile.circuit().cables().stream()
        .anyMatch(cable -> cable.conductor().material() == ConductorMaterial.ALUMINIUM);
  }
}
