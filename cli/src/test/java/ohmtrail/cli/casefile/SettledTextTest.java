package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.map.known.RunMap;
import org.junit.jupiter.api.Test;

/** Feeders that are settled are put into the text of a case; all else stays as it was written. */
class SettledTextTest {
  private static Optional<String> settled(String text, Map<String, String> feeders) {
    return CaseText.of("case.yaml", text).settling(feeders);
  }

  @Test
  void everyWayOfWritingAnEntryTakesItsFeeder() {
    String text =
        """
        # the room
        supply: 120 V # as read
        boxes:
          - hall   # the first one
          - "sofa: left"
          - piano:
          - tv: junction, perhaps elsewhere, after hall   # black
          - desk: from ? plan 3 m 4 m
          - lamp: "from hall or piano last"
          - shelf: {kind: receptacle, from: unknown, order: perhaps elsewhere last}
          - door:
              # behind the curtain
              kind: receptacle
              order: not next to hall
          - porch: perhaps elsewhere
        hidden: 1 # who knows
        """;
    Map<String, String> feeders = new LinkedHashMap<>();
    feeders.put("hall", "panel");
    feeders.put("sofa: left", "hall");
    feeders.put("piano", "hall");
    feeders.put("tv", "piano");
    feeders.put("desk", "tv");
    feeders.put("lamp", "piano");
    feeders.put("shelf", "lamp");
    feeders.put("door", "shelf");
    feeders.put("porch", RunMap.ANOTHER_CIRCUIT);
    assertEquals(
        """
        # the room
        supply: 120 V # as read
        boxes:
          - hall: from panel   # the first one
          - "sofa: left": from hall
          - piano: from hall
          - tv: junction after hall from piano   # black
          - desk: plan 3 m 4 m from tv
          - lamp: "last from piano"
          - shelf: {kind: receptacle, from: lamp, order: last}
          - door:
              # behind the curtain
              from: shelf
              kind: receptacle
              order: not next to hall
          - porch: another circuit
        hidden: 0 # who knows
        """,
        settled(text, feeders).orElseThrow());
  }

  @Test
  void aListInBracketsAndARunTakeFeedersToo() {
    assertEquals(
        "run: [panel, {hall: outlet 4 m}, {bed: outlet from hall}]\nboxes: [den: from bed, loft]\n",
        settled(
                "run: [panel, {hall: outlet 4 m}, {bed: outlet from ?}]\nboxes: [den, loft]\n",
                Map.of("bed", "hall", "den", "bed"))
            .orElseThrow());
  }

  @Test
  void whatOneBoxStaysOpenLeavesRoomForOneThatHides() {
    String after = settled("boxes: [a, b]\nhidden: 2\n", Map.of("a", "panel")).orElseThrow();
    assertTrue(after.contains("hidden: 2"), after);
  }

  @Test
  void whatCannotBeSaidIsNotWritten() {
    assertEquals(Optional.empty(), settled("boxes: [a, b]\n", Map.of("a", "b", "b", "a")));
    assertEquals(Optional.empty(), settled("boxes: [a, b]\n", Map.of("a", "nobody")));
  }

  @Property(tries = 200)
  void whateverIsSettledIsReadBack(@ForAll long seed) throws CaseFileException {
    Random random = new Random(seed);
    StringBuilder text = new StringBuilder("boxes:\n");
    Map<String, String> feeders = new LinkedHashMap<>();
    String[] said = {
      "", ": junction", ": from ?", ":", ": {kind: junction}", ": perhaps elsewhere"
    };
    for (int box = 0; box < 6; box++) {
      text.append("  - box ").append(box).append(said[random.nextInt(said.length)]).append('\n');
      if (random.nextInt(3) > 0) {
        feeders.put("box " + box, box == 0 ? "panel" : "box " + random.nextInt(box));
      }
    }
    String which = "seed " + seed + ":\n" + text + feeders;
    String after = settled(text.toString(), feeders).orElseThrow(() -> new AssertionError(which));
    CaseFile read = CaseFiles.read(after);
    feeders.forEach(
        (box, feeder) ->
            assertTrue(
                read.circuit().cables().stream()
                    .anyMatch(cable -> cable.to().equals(box) && cable.from().equals(feeder)),
                which + "\n" + after));
    assertEquals(text.toString().lines().count(), after.lines().count(), which);
  }
}
