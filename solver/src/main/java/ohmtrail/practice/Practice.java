package ohmtrail.practice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * A series of cases drawn from a population. The case of a number is the same whenever it is asked
 * for and whatever was asked for before. Circuit, fault, survey and readings draw from streams of
 * their own: populations that differ in their surveys alone have the same circuits and faults.
 * Immutable; safe to share.
 */
public final class Practice {
  private final Population population;
  private final Assumptions assumptions;
  private final long seed;

  /**
   * Prepares.
   *
   * @param population what is drawn from
   * @param assumptions priors and tolerances that are drawn from
   * @param seed the number of the series
   */
  public Practice(Population population, Assumptions assumptions, long seed) {
    this.population = population;
    this.assumptions = assumptions;
    this.seed = seed;
  }

  /** What is drawn from. */
  public Population population() {
    return population;
  }

  /** Draws the case of a number. */
  public PracticeCase caseOf(long number) {
    Chance chance = Chance.of(seed, number);
    Chance forCircuit = chance.split();
    Chance forFault = chance.split();
    Chance forSurvey = chance.split();
    Chance forReadings = chance.split();
    Circuit circuit = new CircuitDraw(population.circuits(), forCircuit).draw();
    List<Degradation> degraded = faults(circuit, forFault);
    Survey blank = new SurveyDraw(population.surveys(), circuit, forSurvey).draw();
    ReadingDraw readings = new ReadingDraw(circuit, blank, assumptions, forReadings);
    return readings.draw(degraded, population.disturbance());
  }

  private List<Degradation> faults(Circuit circuit, Chance chance) {
    FaultKind kind = population.faults();
    List<Degradation> drawn = new ArrayList<>();
    if (chance.happens(kind.healthyShare())) {
      return drawn;
    }
    Map<Joint, Double> left = new LinkedHashMap<>(kind.prior(circuit, assumptions));
    while (drawn.size() < kind.joints() && !left.isEmpty()) {
      int place = chance.weighted(List.copyOf(left.values()));
      Joint joint = List.copyOf(left.keySet()).get(place);
      left.remove(joint);
      drawn.add(new Degradation(joint.id(), ohms(kind, chance)));
    }
    return drawn;
  }

  private static double ohms(FaultKind kind, Chance chance) {
    boolean open = chance.happens(kind.openShare());
    double ohms = chance.logUniform(kind.lowestOhms(), kind.highestOhms());
    return open ? Double.POSITIVE_INFINITY : ohms;
  }
}
