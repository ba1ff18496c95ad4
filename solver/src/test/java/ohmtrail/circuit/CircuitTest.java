package ohmtrail.circuit;

import static ohmtrail.circuit.Boxes.PANEL;
import static ohmtrail.circuit.Boxes.cable;
import static ohmtrail.circuit.Boxes.circuit;
import static ohmtrail.circuit.Boxes.ids;
import static ohmtrail.circuit.Boxes.names;
import static ohmtrail.circuit.Boxes.receptacle;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What follows from boxes and cables, and what is refused. */
class CircuitTest {

  private static void assertRefused(List<Box> boxes, List<Cable> cables, String... parts) {
    CircuitException refusal = assertThrows(CircuitException.class, () -> circuit(boxes, cables));
    for (String part : parts) {
      assertTrue(refusal.getMessage().contains(part), refusal.getMessage());
    }
  }

  @Test
  void eachConductorOfACableHasAJointAtEachOfItsEnds() {
    Circuit run = circuit(List.of(PANEL, receptacle("a")), List.of(cable("panel", "a")));
    assertEquals(
        List.of(
            "panel/hot/supply",
            "panel/neutral/supply",
            "panel/hot/outgoing",
            "panel/neutral/outgoing",
            "panel/ground/outgoing"),
        ids(run.jointsIn("panel")));
    assertEquals(3, run.sections().size());
    Section hot = run.sections(run.cables().get(0)).get(0);
    assertEquals(ConductorRole.HOT, hot.conductor());
    assertEquals(List.of("panel/hot/outgoing", "a/hot/incoming"), ids(hot.joints()));
  }

  @Test
  void aFeedThroughReceptacleHasContactsAndNoTails() {
    Circuit run = circuit(List.of(PANEL, receptacle("a")), List.of(cable("panel", "a")));
    assertEquals(
        List.of("a/hot/contact", "a/neutral/contact", "a/ground/contact"),
        ids(run.deviceJoints("a")));
    assertEquals(JointKind.BLADE_CONTACT, run.joint("a/hot/contact").orElseThrow().kind());
    assertEquals(JointKind.SCREW, run.joint("a/hot/incoming").orElseThrow().kind());
  }

  @Test
  void aPigtailHasATailBeforeEachContactAndItsRunIsSpliced() {
    Circuit run = circuit(List.of(PANEL, Box.pigtail("a")), List.of(cable("panel", "a")));
    assertEquals(
        List.of(
            "a/hot/tail",
            "a/hot/contact",
            "a/neutral/tail",
            "a/neutral/contact",
            "a/ground/tail",
            "a/ground/contact"),
        ids(run.deviceJoints("a")));
    assertEquals(JointKind.WIRE_NUT, run.joint("a/hot/incoming").orElseThrow().kind());
    assertEquals(JointKind.WIRE_NUT, run.joint("a/hot/tail").orElseThrow().kind());
  }

  @Test
  void aJunctionHasNoDeviceAndAPanelHasScrews() {
    Circuit run =
        circuit(
            List.of(PANEL, Box.junction("j"), receptacle("a")),
            List.of(cable("panel", "j"), cable("j", "a")));
    assertEquals(List.of(), run.deviceJoints("j"));
    assertEquals(6, run.jointsIn("j").size());
    assertEquals(JointKind.WIRE_NUT, run.joint("j/hot/outgoing").orElseThrow().kind());
    assertEquals(JointKind.SCREW, run.joint("panel/hot/outgoing").orElseThrow().kind());
    assertEquals(List.of(), run.deviceJoints("panel"));
  }

  @Test
  void jointsOfATeeAreNamedAfterTheCableBehindThem() {
    Circuit tee = Boxes.tee();
    assertTrue(ids(tee.jointsIn("a")).contains("a/hot/outgoing/b"));
    assertTrue(ids(tee.jointsIn("a")).contains("a/hot/outgoing/d"));
    assertTrue(ids(tee.jointsIn("a")).contains("a/hot/incoming"));
    assertEquals(Optional.empty(), tee.joint("a/hot/outgoing"));
    assertTrue(tee.joint("b/hot/outgoing").isPresent());
  }

  @Test
  void noTwoJointsHaveOneName() {
    for (Circuit circuit : List.of(Boxes.tee(), Boxes.ring())) {
      List<String> ids = ids(circuit.joints());
      assertEquals(ids.size(), new HashSet<>(ids).size());
      int cables = 6 * circuit.cables().size();
      int supply = 2;
      int contacts = 3 * (circuit.boxes().size() - 1);
      assertEquals(cables + contacts + supply, ids.size());
      for (Joint joint : circuit.joints()) {
        assertEquals(Optional.of(joint), circuit.joint(joint.id()));
        assertTrue(circuit.jointsIn(joint.box()).contains(joint));
      }
    }
  }

  @Test
  void cablesAreTurnedToLeadAwayFromThePanelWhicheverWayTheyAreGiven() {
    Circuit backwards =
        circuit(
            List.of(receptacle("b"), receptacle("a"), PANEL),
            List.of(cable("b", "a"), cable("a", "panel")));
    assertEquals(List.of("panel", "a", "b"), names(backwards.boxes()));
    assertEquals(List.of(cable("panel", "a"), cable("a", "b")), backwards.cables());
    assertEquals(PANEL, backwards.panel());
  }

  @Test
  void thePathToABoxGoesThroughTheFewestBoxes() {
    Circuit tee = Boxes.tee();
    assertEquals(List.of(cable("panel", "a"), cable("a", "d")), tee.pathTo("d"));
    assertEquals(3, tee.pathTo("c").size());
    assertEquals(List.of(), tee.pathTo("panel"));
    assertEquals(List.of(cable("panel", "c")), Boxes.ring().pathTo("c"));
  }

  @Test
  void theEndsOfARunAreTheBoxesThatNoCableLeaves() {
    assertEquals(List.of("d", "c"), names(Boxes.tee().ends()));
    assertEquals(List.of("b"), names(Boxes.ring().ends()), "where the two ways round meet");
  }

  @Test
  void aRingIsFedFromBothSidesAndItsFarBoxHasTwoIncomingJoints() {
    Circuit ring = Boxes.ring();
    assertEquals(
        List.of(cable("panel", "a"), cable("panel", "c"), cable("a", "b"), cable("c", "b")),
        ring.cables());
    assertTrue(ring.joint("panel/hot/outgoing/a").isPresent());
    assertTrue(ring.joint("panel/hot/outgoing/c").isPresent());
    assertTrue(ring.joint("b/hot/incoming/a").isPresent());
    assertTrue(ring.joint("b/hot/incoming/c").isPresent());
    assertTrue(ring.joint("a/hot/incoming").isPresent());
  }

  @Test
  void circuitsOfTheSamePartsAreEqual() {
    assertEquals(Boxes.tee(), Boxes.tee());
    assertEquals(Boxes.tee().hashCode(), Boxes.tee().hashCode());
    assertNotEquals(Boxes.tee(), Boxes.ring());
    assertTrue(Boxes.tee().toString().contains("panel"));
  }

  @Test
  void aBoxNobodyFeedsIsRefusedByName() {
    assertRefused(
        List.of(PANEL, receptacle("a"), receptacle("lost"), receptacle("far")),
        List.of(cable("panel", "a"), cable("lost", "far")),
        "[lost, far]",
        "Maybe");
  }

  @Test
  void aCableToABoxThatIsNotThereIsRefusedByName() {
    assertRefused(
        List.of(PANEL, receptacle("a")),
        List.of(cable("panel", "a"), cable("a", "attic")),
        "(attic)",
        "[panel, a]");
  }

  @Test
  void aSecondCableBetweenTwoBoxesIsRefusedWhateverItsLengthAndDirection() {
    // Its joints would have the names of the first one's.
    for (Cable second :
        List.of(
            cable("panel", "a"), Cable.of("panel", "a", 7, Boxes.COPPER), cable("a", "panel"))) {
      assertRefused(
          List.of(PANEL, receptacle("a")),
          List.of(cable("panel", "a"), second),
          "between these two boxes");
    }
    Cable same = cable("panel", "a");
    assertRefused(List.of(PANEL, receptacle("a")), List.of(same, same), "between these");
  }

  @Test
  void twoBoxesOfOneNameAndTwoPanelsAndNoPanelAreRefused() {
    assertRefused(
        List.of(PANEL, receptacle("a"), receptacle("a")), List.of(cable("panel", "a")), "(a)");
    assertRefused(
        List.of(PANEL, Box.panel("other")), List.of(cable("panel", "other")), "(2) panels");
    assertRefused(List.of(receptacle("a"), receptacle("b")), List.of(cable("a", "b")), "(0)");
    assertRefused(List.of(PANEL), List.of(), "(1) boxes");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -15, Double.NaN, Double.POSITIVE_INFINITY})
  void aBreakerWithoutARatingIsRefused(double amperes) {
    List<Box> boxes = List.of(PANEL, receptacle("a"));
    List<Cable> cables = List.of(cable("panel", "a"));
    CircuitException refusal =
        assertThrows(
            CircuitException.class, () -> new Circuit(Supply.IEC_230, amperes, boxes, cables));
    assertTrue(refusal.getMessage().contains(String.valueOf(amperes)), refusal.getMessage());
  }

  @Test
  void whatIsNotThereIsEmptyAndAPathToItIsRefused() {
    Circuit tee = Boxes.tee();
    assertEquals(Optional.empty(), tee.box("attic"));
    assertEquals(Optional.empty(), tee.joint("attic/hot/incoming"));
    assertEquals(List.of(), tee.jointsIn("attic"));
    assertEquals(List.of(), tee.deviceJoints("attic"));
    assertEquals(List.of(), tee.sections(cable("attic", "a")));
    assertThrows(CircuitException.class, () -> tee.pathTo("attic"));
  }

  @Test
  void listsHandedOutCannotBeChanged() {
    Circuit tee = Boxes.tee();
    assertThrows(UnsupportedOperationException.class, () -> tee.boxes().clear());
    assertThrows(UnsupportedOperationException.class, () -> tee.cables().clear());
    assertThrows(UnsupportedOperationException.class, () -> tee.joints().clear());
    assertThrows(UnsupportedOperationException.class, () -> tee.deviceJoints("a").clear());
  }
}
