package ohmtrail.map.known;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.CircuitException;

/**
 * A box of a run, and what is known of the cable that feeds it.
 *
 * @param box the box; not the panel
 * @param fedBy the cable that leads to it, where its feeder is known
 * @param hints what is known short of that; none where the feeder is known
 * @param place where it is on the floor plan, if anybody measured
 * @param mayBeForeign whether it may belong to another circuit
 */
public record Outlet(
    Box box,
    Optional<Cable> fedBy,
    List<Hint> hints,
    Optional<PlanPoint> place,
    boolean mayBeForeign) {
  /** Rejects the panel, a cable to another box, and hints beside a known feeder. */
  public Outlet {
    hints = List.copyOf(hints);
    if (box.kind() == BoxKind.PANEL) {
      throw new CircuitException("Panel (" + box.name() + ") must not be one of the outlets");
    }
    if (fedBy.filter(cable -> !cable.to().equals(box.name())).isPresent()) {
      throw new CircuitException("Cable to (" + box.name() + ") must end there");
    }
    if (fedBy.isPresent() && mayBeForeign) {
      throw new CircuitException(
          "Box ("
              + box.name()
              + ") must not be fed by a box of this run and perhaps belong to another circuit"
              + "\nMaybe leave out what feeds it.");
    }
  }

  /** A box of which nothing is known but that it is there. */
  public static Outlet unknown(Box box) {
    return new Outlet(box, Optional.empty(), List.of(), Optional.empty(), false);
  }

  /** A box whose feeder is known. */
  public static Outlet fedBy(Box box, Cable cable) {
    return new Outlet(box, Optional.of(cable), List.of(), Optional.empty(), false);
  }

  /** The same with something more that is known. */
  public Outlet with(Hint hint) {
    List<Hint> all = new ArrayList<>(hints);
    all.add(hint);
    return new Outlet(box, fedBy, all, place, mayBeForeign);
  }

  /** The same at a place on the plan. */
  public Outlet at(PlanPoint point) {
    return new Outlet(box, fedBy, hints, Optional.of(point), mayBeForeign);
  }

  /** The same, which may belong to another circuit. */
  public Outlet perhapsForeign() {
    return new Outlet(box, fedBy, hints, place, true);
  }

  /** Its name. */
  public String name() {
    return box.name();
  }
}
