package ohmtrail.cli.walk;

import java.util.LinkedHashMap;
import java.util.Map;
import ohmtrail.map.BoxFeeders;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.RunMap;

/** What an answer settles of a map that the case leaves open. */
public final class SettledFeeders {
  private SettledFeeders() {}

  /**
   * What feeds each box that is settled now; {@link RunMap#ANOTHER_CIRCUIT} for one that is on
   * another. Neither a box that hides nor what it feeds.
   */
  public static Map<String, String> of(MapReport report) {
    Map<String, String> feeders = new LinkedHashMap<>();
    for (BoxFeeders box : report.boxes()) {
      String feeder = box.likeliest().feeder();
      boolean seen = !RunMap.isHidden(feeder) && !RunMap.isHidden(box.box());
      boolean open =
          report.problem().run().outlet(box.box()).filter(SettledFeeders::isOpen).isPresent();
      if (box.isSettled() && seen && open) {
        feeders.put(box.box(), feeder);
      }
    }
    return feeders;
  }

  private static boolean isOpen(Outlet outlet) {
    return outlet.fedBy().isEmpty()
        && outlet.hints().stream()
            .noneMatch(hint -> hint instanceof Hint.First || hint instanceof Hint.OnAnotherCircuit);
  }
}
