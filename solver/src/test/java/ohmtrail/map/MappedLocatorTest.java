package ohmtrail.map;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.RankedBox;
import ohmtrail.survey.Finding;
import org.junit.jupiter.api.Test;

class MappedLocatorTest {
  @Test
  void onASettledMapAJointIsAsProbableInABoxByTheFullNetworkAsByTheModelOfMaps() {
    for (long seed : new long[] {3, 9}) {
      DrawnRun run = new DrawnRun(4, seed).bad(2, 2);
      MapReport report = new MapLocator().map(run.problem(run.walks(run.everyBox()), 0.3));

      Posterior posterior = new MappedLocator().posterior(report);

      Map<String, Double> full =
          posterior.diagnosis().boxes().stream()
              .collect(Collectors.toMap(RankedBox::box, RankedBox::probability));
      for (BadJoint.Place place : report.badJoint().boxes()) {
        boolean isBeforeTheRun = place.box().equals(Finding.SUPPLY) || place.box().equals("panel");
        if (!isBeforeTheRun) {
          double other = full.getOrDefault(place.box(), 0.0);
          assertEquals(other, place.probability(), 0.1, "seed " + seed + " " + place);
        }
      }
    }
  }

  @Test
  void probabilitiesOverMapsSumToOne() {
    DrawnRun run = new DrawnRun(4, 11);
    MapReport report = new MapLocator().map(run.problem(List.of(run.walk(1, run.everyBox())), 0.3));

    Posterior posterior = new MappedLocator().posterior(report);

    double boxes = posterior.diagnosis().boxes().stream().mapToDouble(RankedBox::probability).sum();
    double all =
        boxes
            + posterior.diagnosis().healthyProbability()
            + posterior.diagnosis().unexplainedProbability();
    assertTrue(all > 0.9 && all < 1.2, "sum " + all);
  }
}
