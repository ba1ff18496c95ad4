package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.locate.evidence.ComplaintLikelihood;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Symptom;
import org.junit.jupiter.api.Test;

/** What was complained of; before any reading it is held to Bayes' rule. */
class ComplaintLikelihoodTest {
  private static final double ROUNDING = 1e-6;

  /** As good as never are two joints degraded: a joint's posterior is then its own. */
  private static final Assumptions ONE_FAULT =
      Assumptions.defaults().with(Assumption.FURTHER_FAULT, 1e-9);

  @Property(tries = 10)
  void theOddsOfTheBoxThatIsWarmAgainstASoundCircuitRiseByTheBayesFactor(@ForAll long seed) {
    RandomCase drawn = RandomCase.of(seed, ONE_FAULT);
    Survey unread = drawn.survey().withTests(List.of());
    String box = drawn.circuit().boxes().get(1).name();
    Complaint warm =
        new Complaint(Symptom.WARM, Optional.of(box), Optional.empty(), Optional.empty());
    Set<String> causes = warm.causes(drawn.circuit());
    double before = odds(drawn, unread, causes);
    double after = odds(drawn, unread.withComplaints(List.of(warm)), causes);
    double factor = ONE_FAULT.value(Assumption.COMPLAINT_WARM);
    assertEquals(1, after / (before * factor), ROUNDING, box + " of seed " + seed);
  }

  /** Of those joints against a sound circuit. */
  private static double odds(RandomCase drawn, Survey survey, Set<String> joints) {
    Posterior posterior = new Locator().posterior(new Problem(drawn.circuit(), survey, ONE_FAULT));
    double sum =
        posterior.joints().stream()
            .filter(belief -> joints.contains(belief.joint().id()))
            .mapToDouble(JointBelief::probability)
            .sum();
    return sum / posterior.diagnosis().healthyProbability();
  }

  @Test
  void whoIsDisturbedByDimLampsHardlyHasASoundCircuit() {
    RandomCase drawn = RandomCase.of(1, Assumptions.defaults());
    Survey survey =
        drawn.survey().withTests(List.of()).withComplaints(List.of(new Complaint(Symptom.DIMS)));
    Diagnosis diagnosis =
        new Locator().locate(new Problem(drawn.circuit(), survey, Assumptions.defaults()));
    assertTrue(diagnosis.healthyProbability() < 0.05, () -> "" + diagnosis.healthyProbability());
  }

  @Test
  void whereNothingIsSaidToBeDeadAnOpenJointIsHardlyBelieved() {
    RandomCase drawn = RandomCase.of(1, Assumptions.defaults());
    Survey survey = drawn.survey().withTests(List.of());
    Assumptions stated = Assumptions.defaults();
    Survey dims = survey.withComplaints(List.of(new Complaint(Symptom.DIMS)));
    Survey deadToo =
        survey.withComplaints(List.of(new Complaint(Symptom.DIMS), new Complaint(Symptom.DEAD)));
    assertEquals(stated, heardBy(drawn, survey));
    assertEquals(stated, heardBy(drawn, deadToo));
    assertEquals(
        stated.value(Assumption.NOTHING_DEAD_OPEN_SHARE),
        heardBy(drawn, dims).value(Assumption.OPEN_SHARE));
  }

  private static Assumptions heardBy(RandomCase drawn, Survey survey) {
    Problem problem = new Problem(drawn.circuit(), survey, Assumptions.defaults());
    return ComplaintLikelihood.heardBy(problem).assumptions();
  }
}
