package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.OhmsWords;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.report.OpeningOrder;

/** The suspects that an answer comes down to: one for each joint that is bad. */
public final class BadJoints {
  private static final List<String> NUMBERS = List.of("No", "One", "Two", "Three");

  private final Diagnosis diagnosis;
  private final JointWords words;
  private final List<String> order;
  private final WorkWords work;
  private final Set<String> seenBad;

  private BadJoints(
      Circuit circuit, Diagnosis diagnosis, OpeningOrder opening, Set<String> seenBad) {
    this.seenBad = Set.copyOf(seenBad);
    this.diagnosis = diagnosis;
    this.order = opening.plan().boxes();
    this.words = new JointWords(circuit);
    this.work = new WorkWords(circuit);
  }

  /** Several bad joints in a few sentences, the box to open first first. */
  static String headline(
      Circuit circuit, Diagnosis diagnosis, OpeningOrder opening, Set<String> seenBad) {
    return new BadJoints(circuit, diagnosis, opening, seenBad).headline();
  }

  private String headline() {
    List<Suspect> bad = withTheFirstBox();
    bad.sort(Comparator.comparingInt(suspect -> order.indexOf(box(suspect))));
    StringBuilder text = new StringBuilder();
    text.append(NUMBERS.get(Math.min(diagnosis.degradedJoints(), NUMBERS.size() - 1)))
        .append(" joints are bad at once, ")
        .append(Figures.probability(diagnosis.severalProbability()))
        .append(" sure.");
    String before = "";
    for (Suspect suspect : bad) {
      text.append(' ').append(sentence(suspect, before));
      before = JointWords.isSupplySide(suspect) ? before : box(suspect);
    }
    return text.toString();
  }

  /**
   * The suspects that hold the joints of the likeliest explanation; where none of them lies in the
   * box to open first, its own in place of the least likely.
   */
  private List<Suspect> withTheFirstBox() {
    List<Suspect> bad = new ArrayList<>(diagnosis.badSuspects());
    String first = order.get(0);
    if (bad.stream().noneMatch(suspect -> words.boxes(suspect).contains(first))) {
      diagnosis.suspects().stream()
          .filter(suspect -> words.boxes(suspect).contains(first))
          .findFirst()
          .ifPresent(
              suspect -> {
                if (!bad.isEmpty()) {
                  bad.remove(Collections.min(bad, Comparator.comparing(Suspect::probability)));
                }
                bad.add(suspect);
              });
    }
    return bad;
  }

  private String sentence(Suspect suspect, String before) {
    if (JointWords.isSupplySide(suspect)) {
      return "Open no box for "
          + finding(suspect, "")
          + ": a matter for the utility or a licensed electrician.";
    }
    String box = box(suspect);
    if (box.equals(before)) {
      return "In the same box: " + finding(suspect, box) + ".";
    }
    String otherEnds = otherEnds(suspect, box);
    return order(box, before)
        + ": "
        + finding(suspect, box)
        + (otherEnds.isEmpty() ? "." : "; if it is sound, " + otherEnds + ".");
  }

  /** Nobody is sent to open what was opened. */
  private String order(String box, String before) {
    if (seenBad.contains(box)) {
      return "A bad joint was seen at " + box + " and is to be made anew, the breaker off";
    }
    return before.isEmpty() ? work.first(box) : work.then(box);
  }

  private String otherEnds(Suspect suspect, String opened) {
    List<String> others = words.boxes(suspect).stream().filter(box -> !box.equals(opened)).toList();
    List<String> named = others.stream().map(work::named).toList();
    return named.size() == 1 ? "the other end, " + named.get(0) : JointWords.listed(named, "or");
  }

  private String finding(Suspect suspect, String opened) {
    return words.suspect(suspect, opened)
        + ", "
        + OhmsWords.of(suspect.ohms())
        + ", "
        + Figures.probability(suspect.probability());
  }

  /** The box in which most of a suspect's probability lies. */
  private static String box(Suspect suspect) {
    Map<String, Double> shares = new LinkedHashMap<>();
    for (int j = 0; j < suspect.joints().size(); j++) {
      shares.merge(suspect.joints().get(j).box(), suspect.jointProbabilities().get(j), Double::sum);
    }
    return shares.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElseThrow();
  }
}
