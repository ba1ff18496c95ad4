package ohmtrail.practice;

import java.util.List;
import java.util.stream.Stream;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;

/**
 * What circuits are drawn: mostly a daisy chain of receptacles. Figures are common practice, no
 * source.
 *
 * @param shape how the boxes hang together
 * @param supply the supply of all of them
 * @param conductors one of these is used throughout a circuit, each as likely; each must have a
 *     usual breaker
 * @param fewestBoxes besides the panel, at least 1
 * @param mostBoxes besides the panel
 * @param teeShare probability that a box hangs off an earlier box than the one before it
 * @param junctionShare probability that a box which the run passes has splices only
 * @param pigtailShare probability that a receptacle hangs off splices
 * @param pushInShare probability that a feed-through receptacle has push-in terminals, not screws
 * @param shortestMetres shortest stated length of a cable, positive
 * @param longestMetres longest; between the two uniform in the logarithm
 */
public record CircuitKind(
    Shape shape,
    Supply supply,
    List<Conductor> conductors,
    int fewestBoxes,
    int mostBoxes,
    double teeShare,
    double junctionShare,
    double pigtailShare,
    double pushInShare,
    double shortestMetres,
    double longestMetres) {
  /** How the boxes of a circuit hang together. */
  public enum Shape {
    /** A chain with a tee here and there, its breaker the one usual on its conductors. */
    RUN,
    /** Two legs and one neutral up to a splice; beyond it each leg has a chain of its own. */
    MULTIWIRE,
    /** A chain whose end leads back to the panel, with a spur here and there. */
    RING
  }

  private static final int FEWEST_BOXES = 5;
  private static final int MOST_BOXES = 12;
  private static final double TEE_SHARE = 1.0 / 8;
  private static final double JUNCTION_SHARE = 1.0 / 12;
  private static final double PIGTAIL_SHARE = 0.3;
  private static final double PUSH_IN_SHARE = 0.5;
  private static final double SHORTEST_METRES = 2;
  private static final double LONGEST_METRES = 12;

  /** Copies the list; rejects shares and ranges that cannot be. */
  public CircuitKind {
    conductors = List.copyOf(conductors);
    if (conductors.isEmpty()
        || conductors.stream().anyMatch(each -> each.typicalBreakerAmperes().isEmpty())) {
      throw new IllegalArgumentException(
          "Conductors (" + conductors + ") must be one or more that have a usual breaker");
    }
    Shares.requireRange("Boxes", fewestBoxes, mostBoxes);
    Shares.requireShare("Share of tees", teeShare);
    Shares.requireShare("Share of junction boxes", junctionShare);
    Shares.requireShare("Share of pigtails", pigtailShare);
    Shares.requireShare("Share of push-in terminals", pushInShare);
    Shares.requireRange("Metres", shortestMetres, longestMetres);
  }

  /** 5 to 12 boxes at 120 V on 14 or 12 AWG copper. */
  public static CircuitKind northAmerican() {
    return usual(Shape.RUN, Supply.NORTH_AMERICA_120, "14 AWG", "12 AWG");
  }

  /** 5 to 12 boxes at 230 V on 1.5 or 2.5 mm² copper. */
  public static CircuitKind iec() {
    return usual(Shape.RUN, Supply.IEC_230, "1.5 mm2", "2.5 mm2");
  }

  /** Multiwire branch circuits of 5 to 12 boxes at 120/240 V on 14 or 12 AWG copper. */
  public static CircuitKind multiwire() {
    return usual(Shape.MULTIWIRE, Supply.NORTH_AMERICA_120_240, "14 AWG", "12 AWG");
  }

  /** Ring final circuits of 5 to 12 boxes at 230 V on 2.5 mm² copper. */
  public static CircuitKind ring() {
    return usual(Shape.RING, Supply.IEC_230, "2.5 mm2");
  }

  private static CircuitKind usual(Shape shape, Supply supply, String... sizes) {
    List<Conductor> conductors =
        Stream.of(sizes)
            .map(size -> ConductorSize.parse(size).orElseThrow())
            .map(size -> new Conductor(size, ConductorMaterial.COPPER))
            .toList();
    return new CircuitKind(
        shape,
        supply,
        conductors,
        FEWEST_BOXES,
        MOST_BOXES,
        TEE_SHARE,
        JUNCTION_SHARE,
        PIGTAIL_SHARE,
        PUSH_IN_SHARE,
        SHORTEST_METRES,
        LONGEST_METRES);
  }
}
