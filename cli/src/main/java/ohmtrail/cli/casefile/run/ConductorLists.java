package ohmtrail.cli.casefile.run;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Conductors;

/** Reads lists of conductors: those of a cable, and those that a device is connected to. */
final class ConductorLists {
  private ConductorLists() {}

  /** The whole of a scalar as conductors, each once; empty when it is not, and noted. */
  static Optional<List<ConductorRole>> only(Scalar text, String key, Problems problems) {
    Words words = new Words(text);
    List<ConductorRole> roles = Conductors.takeAll(words);
    if (roles.isEmpty() || words.hasNext() || !areEachOnce(roles)) {
      problems.error(
          text.place(),
          "Key (" + key + ") takes conductors, each once; (" + text.text() + ") is not that.",
          "(leg-1/leg-2/neutral/ground) or (hot/neutral/ground) was meant.");
      return Optional.empty();
    }
    return Optional.of(roles.stream().sorted().toList());
  }

  /** Whether none is named twice. */
  static boolean areEachOnce(List<ConductorRole> roles) {
    return roles.stream().distinct().count() == roles.size();
  }

  /**
   * What a device is connected to when these are named: one live conductor alone brings the neutral
   * and the ground with it, two bring the ground.
   */
  static List<ConductorRole> device(List<ConductorRole> named) {
    if (!named.stream().allMatch(ConductorRole::isLive)) {
      return named;
    }
    return named.size() == 1
        ? List.of(named.get(0), ConductorRole.NEUTRAL, ConductorRole.GROUND)
        : List.of(named.get(0), named.get(1), ConductorRole.GROUND);
  }
}
