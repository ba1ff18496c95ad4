package ohmtrail.practice.answer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.practice.PracticeCase;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * What people do with the readings (common practice, no source): open where the voltage under load
 * drops most from one box that was read to the next along the run; there the far box first, then
 * what lies between, then the near one; then the next largest step.
 *
 * <p>The first box that was read is compared with what it showed with nothing on, which is what the
 * panel has; or with the nominal voltage where it was not read so.
 */
public final class RuleOfThumb {
  private final Circuit circuit;
  private final Map<String, Double> idleVolts;
  private final Map<String, Double> loadedVolts;

  private RuleOfThumb(Circuit circuit, Survey survey) {
    this.circuit = circuit;
    this.idleVolts = new LinkedHashMap<>();
    this.loadedVolts = new LinkedHashMap<>();
    for (Test test : survey.tests()) {
      Map<String, Double> volts = test.loads().isEmpty() ? idleVolts : loadedVolts;
      for (Reading reading : test.readings()) {
        if (reading.between().filter(RuleOfThumb::isLiveToNeutral).isPresent()) {
          volts.putIfAbsent(reading.box(), reading.value());
        }
      }
    }
  }

  private static boolean isLiveToNeutral(ProbePoints between) {
    return between.first().isLive() && between.second() == ConductorRole.NEUTRAL;
  }

  /** Ranks the boxes of a case. */
  public static Answer answer(PracticeCase practiceCase) {
    return answer(practiceCase.circuit(), practiceCase.survey());
  }

  /** Ranks the boxes of a circuit. */
  public static Answer answer(Circuit circuit, Survey survey) {
    return Answer.ofOrder(new RuleOfThumb(circuit, survey).order());
  }

  /** From a box that was read, or the panel, to the next. */
  private record Step(List<String> farToNear, double volts) {}

  private List<String> order() {
    List<Step> steps = new ArrayList<>();
    for (Box box : circuit.boxes()) {
      if (loadedVolts.containsKey(box.name())) {
        steps.add(stepTo(box.name()));
      }
    }
    steps.sort(Comparator.comparingDouble(Step::volts).reversed());
    Set<String> order = new LinkedHashSet<>();
    steps.forEach(step -> order.addAll(step.farToNear()));
    circuit.boxes().forEach(box -> order.add(box.name()));
    return List.copyOf(order);
  }

  private Step stepTo(String box) {
    List<Cable> path = circuit.pathTo(box);
    List<String> farToNear = new ArrayList<>(List.of(box));
    for (int back = path.size() - 1; back >= 0; back--) {
      String at = path.get(back).from();
      farToNear.add(at);
      Double there = loadedVolts.get(at);
      if (there != null) {
        return new Step(farToNear, there - volts(box));
      }
    }
    double supply = idleVolts.getOrDefault(box, circuit.supply().volts());
    return new Step(farToNear, supply - volts(box));
  }

  private double volts(String box) {
    return loadedVolts.getOrDefault(box, 0.0);
  }
}
