package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
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
record ComplaintLikelihood(List<Heard> heard) {
  ComplaintLikelihood {
    heard = List.copyOf(heard);
  }

  /**
   * One complaint.
   *
   * @param causes names of the joints that can cause it
   * @param bayesFactor how many times likelier it is where one of them is degraded
   */
  record Heard(Set<String> causes, double bayesFactor) {
    Heard {
      causes = Set.copyOf(causes);
    }
  }

  static ComplaintLikelihood of(Circuit circuit, Survey survey, Assumptions assumptions) {
    List<Heard> heard = new ArrayList<>();
    for (Complaint complaint : survey.complaints()) {
      heard.add(
          new Heard(
              complaint.causes(circuit), assumptions.value(bayesFactor(complaint.symptom()))));
    }
    return new ComplaintLikelihood(heard);
  }

  /** The likelihood of everything heard, 1 where no joint is degraded. */
  double likelihood(List<Joint> degraded) {
    double likelihood = 1;
    for (Heard each : heard) {
      boolean caused = degraded.stream().anyMatch(joint -> each.causes().contains(joint.id()));
      likelihood *= caused ? each.bayesFactor() : 1;
    }
    return likelihood;
  }

  /**
   * What is taken for granted of the ohms once the complaints are heard: who is asked and names
   * nothing that is dead, or brighter, has hardly an open joint.
   */
  static Assumptions heardBy(Survey survey, Assumptions assumptions) {
    boolean silent = survey.complaints().isEmpty();
    boolean open =
        survey.complaints().stream()
            .map(Complaint::symptom)
            .anyMatch(symptom -> symptom == Symptom.DEAD || symptom == Symptom.BRIGHTER);
    if (silent || open) {
      return assumptions;
    }
    return lower(
        lower(assumptions, Assumption.OPEN_SHARE, Assumption.NOTHING_DEAD_OPEN_SHARE),
        Assumption.DEGRADED_OHMS_HIGH,
        Assumption.NOTHING_DEAD_OHMS_HIGH);
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
