package ohmtrail.cli.chart;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.cli.render.map.MapWords;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.map.BadJoint;
import ohmtrail.map.BoxFeeders;
import ohmtrail.map.EstimatedCable;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.RunMap;

/**
 * The most probable map, every box at its distance from the panel along the cables. Plain data,
 * metres.
 *
 * @param title what it is of
 * @param subtitle the answer in a sentence
 * @param region its unit of length
 * @param panel what the panel is called
 * @param boxes those that the panel feeds in the end, each behind the one that feeds it and all
 *     behind one that has been drawn, before the next begins
 * @param notes what is said below
 */
public record MapChart(
    String title,
    String subtitle,
    Region region,
    String panel,
    List<Place> boxes,
    List<String> notes)
    implements Chart {
  /** A feeder less probable than this is not named. */
  private static final double WORTH_NAMING = 0.05;

  /** Nor is a way on which a bad joint is less probable than this marked. */
  private static final double WORTH_MARKING = 0.05;

  /**
   * A box.
   *
   * @param box its name
   * @param feeder what feeds it in this map
   * @param metres from the panel along the cables
   * @param lowMetres where it would be if its own cable were at the lower end of its interval
   * @param highMetres where at the upper end
   * @param probability of this feeder
   * @param settled whether that is enough to go by
   * @param measured whether anything read bears on the length of the cable
   * @param others what else may feed it, in words; perhaps nothing
   * @param badJoint how likely a joint at an end of this cable is bad; empty where it hardly is
   */
  public record Place(
      String box,
      String feeder,
      double metres,
      double lowMetres,
      double highMetres,
      double probability,
      boolean settled,
      boolean measured,
      String others,
      Optional<Double> badJoint) {
    /** What stands beside it. */
    String label() {
      return box
          + "  "
          + Figures.probability(probability)
          + (others.isEmpty() ? "" : ", or from " + others)
          + (measured ? "" : "; length not known")
          + badJoint
              .map(share -> "; bad joint on this way " + Figures.probability(share))
              .orElse("");
    }
  }

  /** Copies the lists. */
  public MapChart {
    boxes = List.copyOf(boxes);
    notes = List.copyOf(notes);
  }

  /**
   * Of an answer.
   *
   * @param title what the case is called
   */
  public static MapChart of(String title, MapReport report) {
    MapWords words = new MapWords(report);
    List<String> notes = new ArrayList<>();
    notes.add(words.joint());
    notes.addAll(words.foreign());
    notes.addAll(words.alike());
    return new MapChart(
        title,
        words.headline(),
        Region.of(report.problem().run().supply()),
        report.problem().run().panel().name(),
        places(report),
        notes);
  }

  private static List<Place> places(MapReport report) {
    RunMap map = report.likeliest().map();
    Map<String, Double> metres = new HashMap<>();
    String panel = report.problem().run().panel().name();
    metres.put(panel, 0.0);
    List<Place> places = new ArrayList<>();
    Deque<String> pending = new ArrayDeque<>(List.of(panel));
    while (!pending.isEmpty()) {
      String feeder = pending.pop();
      if (!feeder.equals(panel)) {
        Place place = place(report, feeder, metres);
        places.add(place);
        metres.put(feeder, place.metres());
      }
      List<String> fed = map.fedBy(feeder);
      for (int f = fed.size() - 1; f >= 0; f--) {
        pending.push(fed.get(f));
      }
    }
    return places;
  }

  private static Place place(MapReport report, String box, Map<String, Double> metres) {
    BoxFeeders feeders = report.feedersOf(box).orElseThrow();
    EstimatedCable cable =
        report.cables().stream().filter(each -> each.box().equals(box)).findFirst().orElseThrow();
    double from = metres.getOrDefault(cable.feeder(), 0.0);
    return new Place(
        box,
        cable.feeder(),
        from + cable.metres().value(),
        from + cable.metres().low(),
        from + cable.metres().high(),
        feeders.probabilityOf(cable.feeder()),
        feeders.isSettled(),
        cable.isMeasured(),
        feeders.isSettled() ? "" : others(feeders, cable.feeder()),
        badJoint(report.badJoint(), cable));
  }

  private static String others(BoxFeeders feeders, String drawn) {
    List<String> others =
        feeders.feeders().stream()
            .filter(share -> !share.feeder().equals(drawn))
            .filter(share -> share.probability() >= WORTH_NAMING)
            .limit(2)
            .map(share -> share.feeder() + " " + Figures.probability(share.probability()))
            .toList();
    return others.isEmpty() ? "" : JointWords.listed(others, "or");
  }

  private static Optional<Double> badJoint(BadJoint bad, EstimatedCable cable) {
    return bad.stretches().stream()
        .filter(
            stretch -> stretch.feeder().equals(cable.feeder()) && stretch.box().equals(cable.box()))
        .map(BadJoint.Stretch::probability)
        .filter(share -> share >= WORTH_MARKING)
        .findFirst();
  }

  @Override
  public String description() {
    StringBuilder text = new StringBuilder(subtitle);
    for (Place place : boxes) {
      text.append(' ')
          .append(place.feeder())
          .append(" feeds ")
          .append(place.box())
          .append(" (")
          .append(Figures.probability(place.probability()))
          .append("), ")
          .append(place.measured() ? "" : "taken as ")
          .append(region.length(place.metres()))
          .append(" from the panel")
          .append(place.others().isEmpty() ? "" : "; or from " + place.others())
          .append('.');
    }
    notes.forEach(note -> text.append(' ').append(note));
    return text.toString();
  }
}
