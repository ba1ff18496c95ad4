package ohmtrail.locate.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.Joint;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Symptom;

/**
 * How likely what was complained of is, given which joints are degraded, up to a factor common to
 * all hypotheses: the product of one Bayes factor per complaint that one of the joints can cause.
 * Given the joints, complaints are taken as independent.
 *
 * @param heard the complaints
 */
public record ComplaintLikelihood(List<Heard> heard) {
  /** Copies the list. */
  public ComplaintLikelihood {
    heard = List.copyOf(heard);
  }

  /**
   * One complaint.
   *
   * @param causes names of the joints that can cause it
   * @param bayesFactor how many times likelier it is where one of them is degraded
   */
  public record Heard(Set<String> causes, double bayesFactor) {
    /** Copies the set. */
    public Heard {
      causes = Set.copyOf(causes);
    }
  }

  /** The likelihood for the complaints of a problem. */
  public static ComplaintLikelihood of(Problem problem) {
    List<Heard> heard = new ArrayList<>();
    for (Complaint complaint : problem.survey().complaints()) {
      heard.add(
          new Heard(
              complaint.causes(problem.circuit()),
              problem.assumptions().value(bayesFactor(complaint.symptom()))));
    }
    return new ComplaintLikelihood(heard);
  }

  /** The likelihood of everything heard, 1 where no joint is degraded. */
  public double of(List<Joint> degraded) {
    double likelihood = 1;
    for (Heard each : heard) {
      boolean caused = degraded.stream().anyMatch(joint -> each.causes().contains(joint.id()));
      likelihood *= caused ? each.bayesFactor() : 1;
    }
    return likelihood;
  }

  /**
   * The problem with what is taken for granted of the ohms once the complaints are heard: who is
   * asked and names nothing that is dead, or brighter, has hardly an open joint.
   */
  public static Problem heardBy(Problem problem) {
    Survey survey = problem.survey();
    Assumptions assumptions = problem.assumptions();
    boolean silent = survey.complaints().isEmpty();
    boolean open =
        survey.complaints().stream()
            .map(Complaint::symptom)
            .anyMatch(symptom -> symptom == Symptom.DEAD || symptom == Symptom.BRIGHTER);
    if (silent || open) {
      return problem;
    }
    return new Problem(
        problem.circuit(),
        survey,
        lower(
            lower(assumptions, Assumption.OPEN_SHARE, Assumption.NOTHING_DEAD_OPEN_SHARE),
            Assumption.DEGRADED_OHMS_HIGH,
            Assumption.NOTHING_DEAD_OHMS_HIGH));
  }

  private static Assumptions lower(Assumptions all, Assumption stated, Assumption heard) {
    return all.with(stated, Math.min(all.value(stated), all.value(heard)));
  }

  private static Assumption bayesFactor(Symptom symptom) {
    return switch (symptom) {
      case DEAD -> Assumption.COMPLAINT_DEAD;
      case DIMS -> Assumption.COMPLAINT_DIMS;
      case FLICKERS -> Assumption.COMPLAINT_FLICKERS;
      case BRIGHTER -> Assumption.COMPLAINT_BRIGHTER;
      case WARM -> Assumption.COMPLAINT_WARM;
      case TRIPS -> Assumption.COMPLAINT_TRIPS;
      case SMELLS -> Assumption.COMPLAINT_SMELLS;
    };
  }
}
