package ohmtrail.cli.render.advice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import ohmtrail.advise.Advice;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.advise.RuledOut;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.survey.Test;

/** What must not be done, and why. */
public final class Refusals {
  private Refusals() {}

  /** What is read or plugged in, and what that could do. */
  private record Refusal(String what, Harm harm) {}

  /**
   * Whether a shorter reading at that box under the same loads is advised: told by load and box, as
   * they are, the longer one would contradict it.
   */
  private static boolean isLongerThanAdvised(Choice.Read out, Hazard hazard, Advice advice) {
    return hazard.harm() == Harm.HEAT
        && advice.options().stream()
            .map(Option::choice)
            .filter(Choice.Read.class::isInstance)
            .anyMatch(choice -> arrangement((Choice.Read) choice).equals(arrangement(out)));
  }

  private static List<Object> arrangement(Choice.Read visit) {
    List<Object> uses = new ArrayList<>();
    visit.loads().forEach(use -> uses.add(List.of(use.load(), use.box())));
    uses.add(visit.box());
    visit.tests().stream().map(Test::switching).distinct().forEach(uses::add);
    return uses;
  }

  /** Visits with the same loads and the same harm are told together, by the worst of them. */
  public static List<String> of(Advice advice, AdviceWords words) {
    Map<Refusal, Set<String>> boxes = new LinkedHashMap<>();
    Map<Refusal, Hazard> worst = new LinkedHashMap<>();
    Map<Refusal, Choice.Read> first = new LinkedHashMap<>();
    for (RuledOut out : advice.ruledOut()) {
      for (Hazard hazard : out.hazards()) {
        if (isLongerThanAdvised(out.choice(), hazard, advice)) {
          continue;
        }
        Refusal refusal = new Refusal(words.refused(out.choice(), hazard.harm()), hazard.harm());
        boxes.computeIfAbsent(refusal, key -> new LinkedHashSet<>()).add(out.choice().box());
        first.putIfAbsent(refusal, out.choice());
        worst.merge(refusal, hazard, (one, other) -> one.worst() >= other.worst() ? one : other);
      }
    }
    List<String> refused = new ArrayList<>();
    worst.forEach(
        (refusal, hazard) ->
            refused.add(
                refusal.what()
                    + " at "
                    + JointWords.listed(List.copyOf(boxes.getOrDefault(refusal, Set.of())), "or")
                    + ": "
                    + words.hazard(Objects.requireNonNull(first.get(refusal)), hazard)));
    return List.copyOf(refused);
  }
}
