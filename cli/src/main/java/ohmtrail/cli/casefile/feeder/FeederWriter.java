package ohmtrail.cli.casefile.feeder;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.PlanPoint;
import ohmtrail.map.known.UnknownRun;

/** Writes what is known of the feeders of a run, short of a cable. */
public final class FeederWriter {

  private final UnknownRun run;
  private final DoubleFunction<String> length;

  /**
   * @param run what is known
   * @param length a length in metres, as it is written
   */
  public FeederWriter(UnknownRun run, DoubleFunction<String> length) {
    this.run = run;
    this.length = length;
  }

  /** The boxes that may feed an outlet, in words; nothing where nobody knows. */
  public static String from(Outlet outlet) {
    return outlet.hints().stream()
        .filter(Hint.FedByOneOf.class::isInstance)
        .map(hint -> String.join(" " + Vocabulary.OR + " ", ((Hint.FedByOneOf) hint).feeders()))
        .findFirst()
        .orElse("");
  }

  /** Everything else that is known of where an outlet hangs. */
  public String order(Outlet outlet) {
    List<String> words = new ArrayList<>();
    outlet.hints().stream().map(FeederWriter::words).forEach(words::add);
    boolean told = outlet.hints().stream().anyMatch(hint -> hint instanceof Hint.OnAnotherCircuit);
    if (outlet.mayBeForeign() && !told) {
      words.add(written(Vocabulary.ELSEWHERE));
    }
    words.add(placed(outlet.name(), outlet.place()));
    return String.join(" ", words.stream().filter(each -> !each.isEmpty()).toList());
  }

  /** Where a box is, and how far from others. */
  public String placed(String box, Optional<PlanPoint> place) {
    List<String> words = new ArrayList<>();
    place.ifPresent(
        point ->
            words.add(
                String.join(
                    " ",
                    Vocabulary.PLAN,
                    length.apply(point.xMetres()),
                    length.apply(point.yMetres()))));
    run.distances().stream()
        .filter(distance -> distance.one().equals(box))
        .forEach(
            distance ->
                words.add(
                    String.join(
                        " ",
                        Vocabulary.STRAIGHT,
                        length.apply(distance.metres()),
                        Vocabulary.TO,
                        distance.other())));
    return String.join(" ", words);
  }

  private static String words(Hint hint) {
    if (hint instanceof Hint.First) {
      return Vocabulary.FIRST;
    } else if (hint instanceof Hint.Last) {
      return Vocabulary.LAST;
    } else if (hint instanceof Hint.After after) {
      return Vocabulary.AFTER + " " + after.box();
    } else if (hint instanceof Hint.NextTo next) {
      return written(Vocabulary.NEXT_TO) + " " + next.box();
    } else if (hint instanceof Hint.NotNextTo not) {
      return written(Vocabulary.NOT_NEXT_TO) + " " + not.box();
    } else if (hint instanceof Hint.OnThisCircuit) {
      return written(Vocabulary.WENT_DARK);
    } else if (hint instanceof Hint.OnAnotherCircuit) {
      return written(Vocabulary.STAYED_LIVE);
    }
    return "";
  }

  private static String written(Map<String, String> meanings) {
    return meanings.keySet().iterator().next().replace('-', ' ').toLowerCase(Locale.ROOT);
  }
}
