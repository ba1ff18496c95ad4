package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.locate.Suspect;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;

/** Where an answer rests on how often joints are assumed to fail, and not on a reading. */
public final class PriorWords {
  /** A set of joints whose evidence differs by less than this is ranked by the priors alone. */
  private static final double EVIDENCE_ALIKE = 1.25;

  /** Rates nearer than this are the same. */
  private static final double SAME_RATE = 1e-9;

  private PriorWords() {}

  /** Whether nothing but priors ranks a suspect's joints. */
  public static boolean rankOnly(Suspect suspect) {
    return suspect.joints().size() > 1 && suspect.spread() < EVIDENCE_ALIKE;
  }

  /**
   * The assumption that ranks them: "push-ins are assumed to fail 3 times as often as screws";
   * empty where a reading has its say, or where all are assumed to fail as often.
   */
  public static Optional<String> because(Suspect suspect, Survey survey, Assumptions assumptions) {
    String place = Finding.placeOf(suspect.first());
    if (survey.places(Finding.State.BURNT).contains(place)) {
      return Optional.of("a joint at " + place + " was seen to be bad");
    }
    boolean ranks =
        rankOnly(suspect)
            && suspect.joints().stream()
                .allMatch(
                    joint ->
                        rate(joint.kind(), assumptions)
                            <= rate(suspect.first().kind(), assumptions));
    if (!ranks) {
      return Optional.empty();
    }
    List<JointKind> kinds =
        suspect.joints().stream()
            .map(Joint::kind)
            .distinct()
            .sorted(
                Comparator.comparingDouble((JointKind kind) -> rate(kind, assumptions)).reversed())
            .toList();
    JointKind first = kinds.get(0);
    Map<String, List<String>> byFactor = new LinkedHashMap<>();
    for (JointKind kind : kinds) {
      double times = rate(first, assumptions) / rate(kind, assumptions);
      if (times > 1 + SAME_RATE) {
        byFactor
            .computeIfAbsent(Figures.twoDigits(times), factor -> new ArrayList<>())
            .add(plural(kind));
      }
    }
    List<String> others = new ArrayList<>();
    byFactor.forEach(
        (factor, slower) ->
            others.add(factor + " times as often as " + JointWords.listed(slower, "and")));
    return others.isEmpty()
        ? Optional.empty()
        : Optional.of(plural(first) + " are assumed to fail " + JointWords.listed(others, "and"));
  }

  private static double rate(JointKind kind, Assumptions assumptions) {
    return assumptions.value(kind.weight());
  }

  private static String plural(JointKind kind) {
    return switch (kind) {
      case SCREW -> "screws";
      case PUSH_IN -> "push-ins";
      case WIRE_NUT -> "wire nuts";
      case CRIMP -> "crimps";
      case LUG -> "lugs";
      case SOLDER -> "soldered joints";
      case BLADE_CONTACT -> "blade contacts";
      case CONDUIT_FITTING -> "conduit fittings";
      case SWITCH_CONTACT -> "switch contacts";
    };
  }
}
