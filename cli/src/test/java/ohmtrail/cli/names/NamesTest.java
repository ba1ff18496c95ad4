package ohmtrail.cli.names;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Which name is meant. */
class NamesTest {
  @Test
  void theNameWithTheFewestSlipsComesFirst() {
    Names names = new Names(List.of("bath", "bed-12", "bed-1"));

    assertEquals(List.of("bed-1", "bed-12", "bath"), names.nearestFirst("Bed1").toList());
  }

  @Test
  void namesAsNearAsEachOtherKeepTheirOrder() {
    Names names = new Names(List.of("xyz", "ab", "ac"));

    assertEquals(List.of("ab", "ac", "xyz"), names.nearestFirst("aa").toList());
  }

  @Test
  void twoLettersInEachOthersPlaceAreOneSlip() {
    assertEquals(Optional.of("receptacle"), new Names(List.of("receptacle")).nearest("recpetacle"));
    assertEquals(1, Names.distance("hall", "hlal"));
    assertEquals(2, Names.distance("hall", "lahl"));
  }

  @Test
  void capitalsDoNotMatterWhereOneNameIsLeft() {
    assertEquals(Optional.of("Hall"), new Names(List.of("Hall", "bed")).find("HALL"));
    assertEquals(Optional.empty(), new Names(List.of("Hall", "hall")).find("HALL"));
    assertEquals(Optional.of("hall"), new Names(List.of("Hall", "hall")).find("hall"));
  }

  @Test
  void whatElseIsSaidForANameIsTakenButNeverBeforeANameAndNeverOffered() {
    Names names = new Names(List.of("hall", "2"), Map.of("1", "hall", "2", "hall"));

    assertEquals(Optional.of("hall"), names.find("1"));
    assertEquals(Optional.of("2"), names.find("2"));
    assertEquals("must be one of hall, 2", names.rule());
  }

  @Property(tries = 300)
  void everyNameIsFoundAndIsTheNearestToItself(@ForAll String name, @ForAll String other) {
    Names names = new Names(List.of(other, name));

    assertEquals(Optional.of(name), names.find(name));
    assertTrue(names.nearestFirst(name).toList().contains(name));
  }

  @Property(tries = 300)
  void whatIsShownSteersNoTerminal(@ForAll String text) {
    assertEquals(-1, Shown.firstSteering(Shown.of(text)));
    assertEquals(Shown.firstSteering(text) < 0, Shown.of(text).equals(text));
  }

  @Test
  void whatWouldSteerATerminalIsShownAsItsCodePoint() {
    assertEquals("aU+001B[31mbU+202EcU+009B", Shown.of("a\u001b[31mb\u202ec\u009b"));
    assertEquals("U+E0001", Shown.of("\udb40\udc01"));
    assertEquals("a\nbU+0007", Shown.lines("a\nb\u0007"));
  }
}
