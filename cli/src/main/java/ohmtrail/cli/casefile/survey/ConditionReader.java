package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Tap;

/**
 * Reads what a test was taken under: loads, or {@code off + link hot-ground at bed-2 + lift JOINT}.
 */
final class ConditionReader {

  private static final char AND = '+';
  private static final Set<String> OFF = Set.of(Condition.OFF, "breaker off", "dead");
  private static final String EXAMPLE =
      "write off + link hot-ground at bed-2, or off + lift panel/hot/outgoing/hall-1.";

  private final UseReader uses;
  private final SwitchingReader switching;
  private final TapReader taps;
  private final Problems problems;

  ConditionReader(UseReader uses, SwitchingReader switching, TapReader taps, Problems problems) {
    this.uses = uses;
    this.switching = switching;
    this.taps = taps;
    this.problems = problems;
  }

  /** Whether a text says what a test was taken under, rightly or not, rather than being a name. */
  static boolean isCondition(String text) {
    return UseReader.isUse(text) || isOff(text) || SwitchingReader.isState(text);
  }

  private static boolean isOff(String text) {
    String first = text.split("[+]", -1)[0].strip().toLowerCase(Locale.ROOT);
    return OFF.contains(first);
  }

  /** Reads a text, or a list of loads and switches; what is wrong is noted and left out. */
  Condition read(Node node) {
    if (node instanceof Scalar scalar && isOff(scalar.text())) {
      return off(scalar);
    }
    SwitchingReader.Draft switched = new SwitchingReader.Draft();
    List<LoadInUse> loads = uses.read(node, switched);
    return Condition.live(loads, switched.switching());
  }

  private Condition off(Scalar scalar) {
    List<Tap> links = new ArrayList<>();
    List<Joint> lifted = new ArrayList<>();
    SwitchingReader.Draft switched = new SwitchingReader.Draft();
    List<Scalar> parts = scalar.split(AND);
    for (Scalar part : parts.subList(1, parts.size())) {
      Words words = new Words(part);
      if (words.takeIf(Condition.LINK)) {
        link(words).ifPresentOrElse(links::add, () -> notAPart(part));
      } else if (words.takeIf(Condition.LIFT)) {
        taps.takeJoint(words).ifPresentOrElse(lifted::add, () -> notAPart(part));
      } else if (!switching.take(part, switched)) {
        notAPart(part);
      }
    }
    return new Condition(
        List.of(), Optional.of(isolation(scalar, links, lifted)), switched.switching());
  }

  private Isolation isolation(Scalar scalar, List<Tap> links, List<Joint> lifted) {
    try {
      return new Isolation(links, lifted);
    } catch (SurveyException broken) {
      problems.error(scalar.place(), broken);
      return Isolation.BREAKER_OFF;
    }
  }

  private Optional<Tap> link(Words words) {
    Optional<Tap> tap = taps.take(words).or(() -> taps.takePairAtBox(words));
    return words.hasNext() ? Optional.empty() : tap;
  }

  private void notAPart(Scalar part) {
    problems.error(
        part.place(),
        "With the breaker off a test may have links, joints lifted and switches open; ("
            + part.text()
            + ") is none of these, or names what the circuit has not got.",
        EXAMPLE);
  }
}
