package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

class RoomTest {
  private static final long MEGABYTE = 1L << 20;

  @Test
  void twoHundredBoxesAndFourHundredReadingsFitIntoHalfAGigabyte() {
    assertDoesNotThrow(() -> Room.of(chain(200, 40, 10)).requireWithin(512 * MEGABYTE));
  }

  @Test
  void whatNeverFitsIsRefusedWithItsSizeAndWhatWouldDo() {
    Room room = Room.of(chain(2000, 200, 10));
    Room.TooLittleException refused =
        assertThrows(Room.TooLittleException.class, () -> room.requireWithin(512 * MEGABYTE));
    String message = String.valueOf(refused.getMessage());
    assertTrue(message.contains("2001 boxes and 2000 readings"), message);
    assertTrue(message.contains("there are 512 MB"), message);
    assertTrue(message.contains("java -Xmx"), message);
  }

  @Test
  void whatJustFitsIsTaken() {
    Room room = Room.of(chain(12, 6, 10));
    assertDoesNotThrow(() -> room.requireWithin(room.bytes()));
    assertThrows(Room.TooLittleException.class, () -> room.requireWithin(room.bytes() - 1));
  }

  @Test
  void withoutAReadingThereIsNothingToHold() {
    assertEquals(0, Room.of(chain(12, 0, 0)).readings());
    assertDoesNotThrow(() -> Room.of(chain(12, 0, 0)).requireWithin(MEGABYTE));
  }

  @Test
  void moreReadingsAndMoreBoxesTakeMore() {
    long small = Room.of(chain(40, 4, 5)).bytes();
    assertTrue(Room.of(chain(40, 8, 5)).bytes() > small);
    assertTrue(Room.of(chain(80, 4, 5)).bytes() > small);
  }

  private static Problem chain(int boxes, int tests, int readings) {
    Conductor copper =
        new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);
    List<Box> all = new ArrayList<>(List.of(Box.panel("box-0")));
    List<Cable> cables = new ArrayList<>();
    for (int box = 1; box <= boxes; box++) {
      all.add(Box.feedThrough("box-" + box, JointKind.PUSH_IN));
      cables.add(Cable.of("box-" + (box - 1), "box-" + box, 3, copper));
    }
    List<ohmtrail.survey.Test> taken = new ArrayList<>();
    for (int test = 0; test < tests; test++) {
      List<Reading> shown = new ArrayList<>();
      for (int r = 0; r < readings; r++) {
        String box = "box-" + (1 + (test * readings + r) % boxes);
        shown.add(new Reading(box, ProbePoints.HOT_NEUTRAL, "digital", 118));
      }
      LoadInUse heater = new LoadInUse("heater", "box-" + (1 + test % boxes));
      taken.add(new ohmtrail.survey.Test("test " + test, List.of(heater), shown));
    }
    return new Problem(
        new Circuit(Supply.NORTH_AMERICA_120, 20, all, cables),
        new Survey(
            List.of(Meter.highImpedance("digital")),
            List.of(new HeatingElement("heater", 600, 120)),
            taken),
        Assumptions.defaults());
  }
}
