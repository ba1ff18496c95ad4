package ohmtrail.cli.render.words;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Cable;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.UnknownRun;

/** What is known of a run whose cables nobody has seen, box by box. */
public final class KnownWords {
  /** What tells more. */
  public static final String HELP =
      "A load at one box and a reading at every box, then the load at another, tell which box feeds"
          + " which: `map` says how far they do.";

  private static final String NOBODY = "nobody knows what feeds it";

  private KnownWords() {}

  /** An entry for each box, and for those that hide. */
  public static List<String> of(UnknownRun run, Region region) {
    List<String> entries = new ArrayList<>();
    for (Outlet outlet : run.outlets()) {
      entries.add(
          outlet.name()
              + ": "
              + region.kind(outlet.box().kind())
              + "; "
              + String.join("; ", said(outlet, region)));
    }
    run.distances()
        .forEach(
            distance ->
                entries.add(
                    distance.one()
                        + " and "
                        + distance.other()
                        + ": "
                        + region.length(distance.metres())
                        + " apart"));
    if (run.mayHide() > 0) {
      entries.add(
          run.mayHide() == 1
              ? "One box may be there that nobody has seen."
              : "Up to " + run.mayHide() + " boxes may be there that nobody has seen.");
    }
    return entries;
  }

  private static List<String> said(Outlet outlet, Region region) {
    List<String> said = new ArrayList<>();
    outlet.fedBy().ifPresent(cable -> said.add(fed(cable, region)));
    outlet.hints().stream().map(KnownWords::said).forEach(said::add);
    boolean feeder =
        outlet.fedBy().isPresent()
            || outlet.hints().stream()
                .anyMatch(hint -> hint instanceof Hint.First || hint instanceof Hint.FedByOneOf);
    if (!feeder) {
      said.add(0, NOBODY);
    }
    if (outlet.mayBeForeign()) {
      said.add("perhaps on another circuit");
    }
    outlet
        .place()
        .ifPresent(
            place ->
                said.add(
                    "on the plan at "
                        + region.length(place.xMetres())
                        + " across, "
                        + region.length(place.yMetres())
                        + " up"));
    return said;
  }

  private static String fed(Cable cable, Region region) {
    return "fed from "
        + cable.from()
        + (cable.lengthMetres().isPresent()
            ? ", " + region.length(cable.lengthMetres().getAsDouble())
            : "");
  }

  private static String said(Hint hint) {
    if (hint instanceof Hint.First) {
      return "fed from the panel";
    } else if (hint instanceof Hint.Last) {
      return "feeds no other box";
    } else if (hint instanceof Hint.FedByOneOf some) {
      return "fed from " + JointWords.listed(some.feeders(), "or");
    } else if (hint instanceof Hint.After after) {
      return "beyond " + after.box();
    } else if (hint instanceof Hint.NextTo next) {
      return "joined with " + next.box() + " by one cable";
    } else if (hint instanceof Hint.NotNextTo not) {
      return "not joined with " + not.box();
    }
    return hint instanceof Hint.OnThisCircuit
        ? "dark while the breaker was off"
        : "live while the breaker was off";
  }
}
