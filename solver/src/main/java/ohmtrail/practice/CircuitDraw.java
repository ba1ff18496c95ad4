package ohmtrail.practice;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.reference.Conductor;

/** Draws a circuit. */
final class CircuitDraw {
  private static final String PANEL = "panel";

  /** People state lengths to half a metre at best; a tenth keeps the draw smooth. */
  private static final double STEPS_PER_METRE = 10;

  /** Breaker of a ring final circuit (BS 7671, from memory). */
  private static final double RING_AMPERES = 32;

  /** With fewer boxes it would be two cables between the same two. */
  private static final int FEWEST_IN_RING = 2;

  /** As many receptacles hang on either leg. */
  private static final double EITHER_LEG = 0.5;

  private static final List<ConductorRole> BOTH_LEGS =
      List.of(
          ConductorRole.LEG_1, ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);

  private final CircuitKind kind;
  private final Chance chance;

  CircuitDraw(CircuitKind kind, Chance chance) {
    this.kind = kind;
    this.chance = chance;
  }

  Circuit draw() {
    int count = chance.whole(kind.fewestBoxes(), kind.mostBoxes());
    return switch (kind.shape()) {
      case RUN -> run(feeders(count));
      case MULTIWIRE -> multiwire(count);
      case RING -> ring(count);
    };
  }

  private Circuit run(List<Integer> feeders) {
    Conductor conductor = chance.oneOf(kind.conductors());
    List<Box> boxes = new ArrayList<>(List.of(Box.panel(PANEL)));
    List<Cable> cables = new ArrayList<>();
    lay(feeders, conductor, boxes, cables);
    double breakerAmperes = conductor.typicalBreakerAmperes().orElseThrow();
    return new Circuit(kind.supply(), breakerAmperes, boxes, cables);
  }

  private void lay(
      List<Integer> feeders, Conductor conductor, List<Box> boxes, List<Cable> cables) {
    for (int place = 1; place <= feeders.size(); place++) {
      boxes.add(box(place, feeders.contains(place)));
      String from = boxes.get(feeders.get(place - 1)).name();
      cables.add(Cable.of(from, boxes.get(place).name(), metres(), conductor));
    }
  }

  /** A box that is no spur belongs to the ring; the last of them leads back to the panel. */
  private Circuit ring(int count) {
    Conductor conductor = chance.oneOf(kind.conductors());
    List<Integer> ring = new ArrayList<>();
    List<Integer> feeders = new ArrayList<>();
    for (int place = 1; place <= count; place++) {
      boolean spur = place > FEWEST_IN_RING && chance.happens(kind.teeShare());
      feeders.add(spur ? chance.oneOf(ring) : ring.isEmpty() ? 0 : ring.get(ring.size() - 1));
      if (!spur) {
        ring.add(place);
      }
    }
    List<Box> boxes = new ArrayList<>(List.of(Box.panel(PANEL)));
    List<Cable> cables = new ArrayList<>();
    lay(feeders, conductor, boxes, cables);
    String last = boxes.get(ring.get(ring.size() - 1)).name();
    cables.add(Cable.of(last, PANEL, metres(), conductor));
    return new Circuit(kind.supply(), RING_AMPERES, boxes, cables);
  }

  /**
   * Up to the place where the legs part, every receptacle is on either of them and the other passes
   * it in a splice; neither part is empty.
   */
  private Circuit multiwire(int count) {
    Conductor conductor = chance.oneOf(kind.conductors());
    int common = chance.whole(1, count - 2);
    int ofFirst = chance.whole(1, count - common - 1);
    List<Box> boxes = new ArrayList<>(List.of(Box.panel(PANEL)));
    List<Cable> cables = new ArrayList<>();
    for (int place = 1; place <= count; place++) {
      boolean beyond = place > common;
      boolean first = beyond ? place <= common + ofFirst : chance.happens(EITHER_LEG);
      boolean ends = place == count || place == common + ofFirst;
      Box box = box(place, !ends);
      boxes.add(beyond || !box.hasReceptacle() ? box : box.on(leg(first)));
      boolean secondBegins = place == common + ofFirst + 1;
      String from = boxes.get(secondBegins ? common : place - 1).name();
      cables.add(
          Cable.of(from, box.name(), metres(), conductor).with(beyond ? leg(first) : BOTH_LEGS));
    }
    double breakerAmperes = conductor.typicalBreakerAmperes().orElseThrow();
    return new Circuit(kind.supply(), breakerAmperes, boxes, cables);
  }

  private static List<ConductorRole> leg(boolean first) {
    return List.of(
        first ? ConductorRole.LEG_1 : ConductorRole.LEG_2,
        ConductorRole.NEUTRAL,
        ConductorRole.GROUND);
  }

  /** For each box from 1 on the number of the box that feeds it; the panel is 0. */
  private List<Integer> feeders(int count) {
    List<Integer> feeders = new ArrayList<>();
    for (int place = 1; place <= count; place++) {
      boolean tee = place > 2 && chance.happens(kind.teeShare());
      feeders.add(tee ? chance.whole(1, place - 2) : place - 1);
    }
    return feeders;
  }

  /** A box at the end of a run is there for its receptacle. */
  private Box box(int place, boolean feedsAnother) {
    boolean junction = chance.happens(kind.junctionShare());
    boolean pigtail = chance.happens(kind.pigtailShare());
    boolean pushIn = chance.happens(kind.pushInShare());
    if (junction && feedsAnother) {
      return Box.junction("junction-" + place);
    }
    String name = "receptacle-" + place;
    return pigtail
        ? Box.pigtail(name)
        : Box.feedThrough(name, pushIn ? JointKind.PUSH_IN : JointKind.SCREW);
  }

  private double metres() {
    double metres = chance.logUniform(kind.shortestMetres(), kind.longestMetres());
    return Math.round(metres * STEPS_PER_METRE) / STEPS_PER_METRE;
  }
}
