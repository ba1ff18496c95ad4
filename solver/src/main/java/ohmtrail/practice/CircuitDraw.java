package ohmtrail.practice;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.reference.Conductor;

/** Draws a circuit. */
final class CircuitDraw {
  private static final String PANEL = "panel";

  /** People state lengths to half a metre at best; a tenth keeps the draw smooth. */
  private static final double STEPS_PER_METRE = 10;

  private final CircuitKind kind;
  private final Chance chance;

  CircuitDraw(CircuitKind kind, Chance chance) {
    this.kind = kind;
    this.chance = chance;
  }

  Circuit draw() {
    int count = chance.whole(kind.fewestBoxes(), kind.mostBoxes());
    List<Integer> feeders = feeders(count);
    Conductor conductor = chance.oneOf(kind.conductors());
    List<Box> boxes = new ArrayList<>(List.of(Box.panel(PANEL)));
    List<Cable> cables = new ArrayList<>();
    for (int place = 1; place <= count; place++) {
      boxes.add(box(place, feeders.contains(place)));
      String from = boxes.get(feeders.get(place - 1)).name();
      cables.add(Cable.of(from, boxes.get(place).name(), metres(), conductor));
    }
    double breakerAmperes = conductor.typicalBreakerAmperes().orElseThrow();
    return new Circuit(kind.supply(), breakerAmperes, boxes, cables);
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
