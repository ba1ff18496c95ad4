package ohmtrail.cli.render.text;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.DeviceWiring;
import ohmtrail.circuit.Grounding.Conduit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.reference.ConductorMaterial;

/** A circuit as a tree of lines: each box under the one that feeds it. */
public final class CircuitTree {
  private static final String FORK = "|- ";
  private static final String LAST = "`- ";
  private static final String PASSING = "|  ";
  private static final String BLANK = "   ";

  private final Circuit circuit;
  private final Region region;
  private final Page page;
  private final Set<String> drawn = new HashSet<>();

  private CircuitTree(Circuit circuit, Page page) {
    this.circuit = circuit;
    this.region = Region.of(circuit.supply());
    this.page = page;
  }

  /**
   * What is still to be drawn: a box and all behind it, with the cable that leads there.
   *
   * @param start before the words of the cable
   * @param indent before those of the box and all behind it
   */
  private record Pending(Cable cable, String start, String indent) {}

  /** Draws it on a page. */
  public static void draw(Circuit circuit, Page page) {
    new CircuitTree(circuit, page).draw();
  }

  /** By a list of what is left and not by recursion: a long run is deeper than a stack. */
  private void draw() {
    Deque<Pending> pending = new ArrayDeque<>();
    draw(circuit.panel(), "  ", pending);
    while (!pending.isEmpty()) {
      Pending next = pending.removeFirst();
      boolean closesRing = drawn.contains(next.cable().to());
      String back = closesRing ? " back to " + next.cable().to() : "";
      page.line(next.start() + described(next.cable()) + back);
      if (!closesRing) {
        draw(circuit.box(next.cable().to()).orElseThrow(), next.indent(), pending);
      }
    }
  }

  /** A run goes straight down and steps in only where it forks, so a long one stays on the page. */
  private void draw(Box box, String indent, Deque<Pending> pending) {
    drawn.add(box.name());
    List<Cable> onward = circuit.cablesFrom(box.name());
    describe(box, indent, onward.isEmpty() ? BLANK : PASSING);
    boolean alone = onward.size() == 1;
    for (int c = onward.size() - 1; c >= 0; c--) {
      boolean last = c == onward.size() - 1;
      String mark = last ? LAST : FORK;
      String under = indent + (last ? BLANK : PASSING);
      pending.addFirst(
          new Pending(onward.get(c), indent + (alone ? PASSING : mark), alone ? indent : under));
    }
  }

  private void describe(Box box, String indent, String margin) {
    int width = page.width() - indent.length() - margin.length();
    String start = indent;
    for (String line : Page.lines(described(box), width)) {
      page.line(start + line);
      start = indent + margin;
    }
  }

  private String described(Cable cable) {
    String length =
        cable.lengthMetres().isPresent()
            ? region.length(cable.lengthMetres().getAsDouble())
            : "unknown length of";
    String material = cable.conductor().material() == ConductorMaterial.COPPER ? "" : " aluminium";
    return length
        + " "
        + cable.conductor().size().designation()
        + material
        + (cable.roles().contains(ConductorRole.SWITCHED) ? ", " + conductors(cable) : "")
        + (cable.ground().orElse(null) instanceof Conduit conduit ? in(conduit) : "")
        + (cable.companion() == Cable.Companion.LIVE ? " beside a live conductor" : "");
  }

  private String conductors(Cable cable) {
    return cable.roles().stream().map(region::conductor).collect(Collectors.joining("/"));
  }

  private static String in(Conduit conduit) {
    return switch (conduit) {
      case EMT -> " in EMT, which is the ground";
      case RIGID -> " in rigid conduit, which is the ground";
    };
  }

  private String described(Box box) {
    String kind = kind(box);
    return box.name()
        + (box.name().equals(kind) ? "" : ": " + kind)
        + "; "
        + joints(box)
        + minutes(box);
  }

  private static String minutes(Box box) {
    return box.openingMinutes().isPresent()
        ? "; " + Figures.upToTenths(box.openingMinutes().getAsDouble()) + " minutes to open"
        : "";
  }

  private String kind(Box box) {
    boolean plain = box.kind() == BoxKind.PANEL || box.kind() == BoxKind.JUNCTION;
    String wiring = box.wiring() == DeviceWiring.FEED_THROUGH ? ", feed-through" : ", on pigtails";
    return region.kind(box.kind()) + (plain ? "" : wiring);
  }

  /** Each role with the kind of joint it is, and how many joints that makes in all conductors. */
  private String joints(Box box) {
    List<Joint> joints = circuit.jointsIn(box.name());
    List<String> roles = new ArrayList<>();
    for (JointRole role : JointRole.values()) {
      Set<String> kinds =
          joints.stream()
              .filter(joint -> joint.role() == role)
              .map(joint -> joint.kind().word())
              .collect(Collectors.toCollection(LinkedHashSet::new));
      if (!kinds.isEmpty()) {
        String kind = JointWords.listed(List.copyOf(kinds), "or");
        boolean named = role == JointRole.CONTACT || role == JointRole.SWITCH;
        roles.add(named ? kind : role.word() + " " + kind);
      }
    }
    return joints.size() + " joints: " + String.join(", ", roles);
  }
}
