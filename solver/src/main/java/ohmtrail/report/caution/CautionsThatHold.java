package ohmtrail.report.caution;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Response;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.problem.Problem;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.report.caution.Caution.Standing;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Test;

/** Which cautions hold, the most pressing first. */
public final class CautionsThatHold {
  /** A suspect less likely than this changes nobody's plan. */
  private static final double WORTH_A_WARNING = 0.05;

  private CautionsThatHold() {}

  /** Those for every circuit that is measured, live or dead. */
  public static List<Caution> forMeasuring(Problem problem) {
    return forMeasuring(problem, problem.survey().tests());
  }

  private static List<Caution> forMeasuring(Problem problem, List<Test> tests) {
    Circuit circuit = problem.circuit();
    List<Caution> cautions = new ArrayList<>();
    if (tests.isEmpty() || !tests.stream().allMatch(Test::isDead)) {
      cautions.add(Standing.LIVE_PARTS);
    }
    cautions.add(Standing.STOP);
    cautions.add(Standing.PROVE_DEAD);
    if (Work.of(tests, circuit).stream().anyMatch(Work::live)) {
      cautions.add(Standing.OPEN_LIVE_BOX);
    }
    if (tests.stream().anyMatch(Test::isDead)) {
      cautions.add(Standing.DEAD_CIRCUIT);
    }
    for (ResidualCurrentDevice device : circuit.residualCurrentDevices()) {
      problem.survey().meters().stream()
          .flatMap(meter -> trips(device, meter, circuit.supply().volts()).stream())
          .forEach(cautions::add);
    }
    if (circuit.cables().stream()
        .anyMatch(cable -> cable.conductor().material() == ConductorMaterial.ALUMINIUM)) {
      cautions.add(Standing.ALUMINIUM);
    }
    cautions.add(Standing.LOCAL_RULES);
    return List.copyOf(cautions);
  }

  private static Optional<Caution> trips(ResidualCurrentDevice device, Meter meter, double volts) {
    double amperes = volts * meter.siemens(volts);
    return device.rating().at(amperes) == Response.HOLDS
        ? Optional.empty()
        : Optional.of(new Caution.Trips(device, meter, amperes));
  }

  /**
   * Those for a problem and what was found out about it.
   *
   * @param advised tests that are advised on the same page
   */
  public static List<Caution> forAnswer(Problem problem, Diagnosis diagnosis, List<Test> advised) {
    List<Test> tests = Stream.concat(problem.survey().tests().stream(), advised.stream()).toList();
    List<Caution> cautions = new ArrayList<>();
    if (SupplySide.unequalLegs(problem).isPresent()) {
      cautions.add(Standing.MAIN_SWITCH_OFF);
    } else if (diagnosis.verdict() == Verdict.DEGRADED) {
      cautions.addAll(forSuspects(problem.circuit(), diagnosis, advised));
    }
    cautions.addAll(forMeasuring(problem, tests));
    return List.copyOf(cautions);
  }

  private static List<Caution> forSuspects(
      Circuit circuit, Diagnosis diagnosis, List<Test> advised) {
    List<Caution> cautions = new ArrayList<>(List.of(Standing.UNLOAD));
    if (isSuspected(diagnosis, ConductorRole.NEUTRAL)) {
      cautions.add(new Caution.LostNeutral(leading(diagnosis, advised)));
      if (circuit.supply().legs() != Supply.Legs.ONE) {
        cautions.add(Standing.LEGS_DIVIDE);
      }
    }
    if (isSuspected(diagnosis, ConductorRole.GROUND)) {
      cautions.add(Standing.UNPROTECTED);
    }
    if (diagnosis.suspects().stream().mapToDouble(Suspect::supplySideProbability).sum()
        >= WORTH_A_WARNING) {
      cautions.add(Standing.SUPPLY_SIDE);
    }
    if (diagnosis.probabilityOf(circuit.panel().name()) >= WORTH_A_WARNING) {
      cautions.add(Standing.PANEL);
    }
    return cautions;
  }

  /** The neutral that is meant, unless a step of the same page goes there with a load. */
  private static Optional<Suspect> leading(Diagnosis diagnosis, List<Test> advised) {
    return advised.stream().anyMatch(test -> !test.loads().isEmpty())
        ? Optional.empty()
        : diagnosis.suspects().stream()
            .max(
                Comparator.comparingDouble(suspect -> probability(suspect, ConductorRole.NEUTRAL)));
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
}
