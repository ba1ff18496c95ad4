package ohmtrail.report.caution;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * Work inside a box. A receptacle that is read at from outside is none.
 *
 * @param box which box is open
 * @param place what it is
 * @param live whether it is live inside while the work is done; not so where the breaker stays off
 * @param breakers the live conductors whose breakers feed the box or pass their current through its
 *     neutral, {@link Circuit#liveThrough}
 */
public record Work(String box, Place place, boolean live, List<ConductorRole> breakers) {
  /** What is open. */
  public enum Place {
    /** A box of the run: with the breakers that feed it off, nothing in it is live. */
    BOX,
    /** The panel: its supply side stays live whatever is switched off in it. */
    PANEL
  }

  /** Copies the list. */
  public Work {
    breakers = List.copyOf(breakers);
  }

  /** Opening a box to look at its joints, or to make one anew. */
  public static Work opening(String box, Circuit circuit) {
    return work(box, false, circuit);
  }

  /**
   * What readings, the links put in for them and the joints lifted for them need opened, each box
   * once, live where any of it is done live.
   */
  public static List<Work> of(List<Test> tests, Circuit circuit) {
    Map<String, Boolean> live = new LinkedHashMap<>();
    for (Test test : tests) {
      for (String box : opened(test, circuit)) {
        live.merge(box, !test.isDead(), Boolean::logicalOr);
      }
    }
    List<Work> works = new ArrayList<>();
    live.forEach((box, now) -> works.add(work(box, now, circuit)));
    return List.copyOf(works);
  }

  private static Work work(String box, boolean live, Circuit circuit) {
    boolean panel = box.equals(circuit.panel().name());
    return new Work(box, panel ? Place.PANEL : Place.BOX, live, circuit.liveThrough(box));
  }

  /** The boxes that a test needs open. */
  private static Set<String> opened(Test test, Circuit circuit) {
    Set<String> opened = new LinkedHashSet<>();
    test.readings().stream().map(Reading::tap).forEach(tap -> addOpened(tap, circuit, opened));
    test.isolation().map(Isolation::links).orElse(List.of()).stream()
        .forEach(link -> addOpened(link, circuit, opened));
    test.isolation().map(Isolation::lifted).orElse(List.of()).stream()
        .forEach(joint -> opened.add(joint.box()));
    return opened;
  }

  private static void addOpened(Tap tap, Circuit circuit, Set<String> opened) {
    Set<String> touched = new LinkedHashSet<>(List.of(tap.box()));
    if (tap instanceof Tap.Points points) {
      touched.add(points.first().box());
      touched.add(points.second().box());
    }
    touched.stream()
        .filter(box -> tap.isInside() || !circuit.box(box).map(Box::hasReceptacle).orElse(false))
        .forEach(opened::add);
  }
}
