package ohmtrail.cli.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import ohmtrail.circuit.Box;
import ohmtrail.cli.chart.ProfileChart.Lane;
import ohmtrail.cli.chart.ProfileChart.Place;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumptions;

/** Cases drawn at random: whatever the run and the survey, every box and reading has its place. */
class PracticeChartTest {
  private static final long SEED = 20240611;

  @Property(tries = 8)
  void everyBoxIsInOneLaneAndEveryReadingInThePicture(@ForAll @IntRange(max = 10_000) int number) {
    String which = "case " + number + " of series " + SEED;
    for (Population population : Population.presets()) {
      PracticeCase drawn = new Practice(population, Assumptions.defaults(), SEED).caseOf(number);
      ProfileChart chart = ProfileChart.of(which, drawn.problem(), List.of());
      Set<String> boxes = new HashSet<>();
      int named = 0;
      for (Lane lane : chart.lanes()) {
        boxes.addAll(lane.places().stream().map(Place::box).toList());
        named += lane.places().size();
      }
      assertEquals(
          drawn.circuit().boxes().stream().map(Box::name).collect(Collectors.toSet()),
          boxes,
          which);
      assertEquals(boxes.size() + chart.lanes().size() - 1, named, which);
      long marks =
          chart.panels().stream()
              .flatMap(panel -> panel.readings().stream())
              .mapToLong(readings -> readings.marks().size())
              .sum();
      assertEquals(drawn.survey().readingCount(), marks + notDrawn(chart), which);
      assertTrue(ChartFile.svgElement(chart).endsWith("</svg>\n"), which);
    }
  }

  private static long notDrawn(ProfileChart chart) {
    return chart.notes().stream()
        .filter(note -> note.startsWith("Not in the picture: "))
        .mapToLong(note -> Long.parseLong(note.replaceAll("\\D+", "")))
        .sum();
  }
}
