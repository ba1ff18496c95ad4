package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestNamesTest {
  @Test
  void theNameWithTheFewestChangesComesFirst() {
    assertEquals(
        List.of("bed-1", "bed-12", "bath"),
        NearestNames.to("Bed1", List.of("bath", "bed-12", "bed-1")));
  }

  @Test
  void namesAsNearAsEachOtherKeepTheirOrder() {
    assertEquals(List.of("ab", "ac", "xyz"), NearestNames.to("aa", List.of("xyz", "ab", "ac")));
  }
}
