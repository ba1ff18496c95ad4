package ohmtrail.report.caution;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import org.junit.jupiter.api.Test;

/** What a hand goes into, and whose breakers feed it (common practice, no source). */
class WorkTest {
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final List<ConductorRole> BOTH =
      List.of(
          ConductorRole.LEG_1, ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);
  private static final List<ConductorRole> FIRST =
      List.of(ConductorRole.LEG_1, ConductorRole.NEUTRAL, ConductorRole.GROUND);
  private static final List<ConductorRole> SECOND =
      List.of(ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);

  /** A workshop on a shared neutral that ends on one leg, and a freezer on the other leg alone. */
  private static final Circuit LEGS =
      new Circuit(
          Supply.NORTH_AMERICA_120_240,
          20,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("bench", JointKind.SCREW),
              Box.feedThrough("window", JointKind.SCREW),
              Box.junction("door"),
              Box.feedThrough("freezer", JointKind.SCREW)),
          List.of(
              Cable.of("panel", "bench", 12, COPPER).with(BOTH),
              Cable.of("bench", "window", 5, COPPER).with(FIRST),
              Cable.of("bench", "door", 5, COPPER).with(FIRST),
              Cable.of("panel", "freezer", 9, COPPER).with(SECOND)));

  private static ohmtrail.survey.Test idle(Tap tap) {
    return new ohmtrail.survey.Test(
        "idle", List.of(), List.of(new Reading(tap, Measurand.VOLTAGE, "high", 0, 0)));
  }

  private static Tap firstLeg(String box) {
    return new Tap.Pair(box, new ProbePoints(ConductorRole.LEG_1, ConductorRole.NEUTRAL));
  }

  @Test
  void everyBreakerThatSharesTheNeutralOfABoxIsOneOfIts() {
    List<ConductorRole> both = List.of(ConductorRole.LEG_1, ConductorRole.LEG_2);

    assertEquals(both, Work.opening("bench", LEGS).breakers());
    assertEquals(both, Work.opening("window", LEGS).breakers(), "its neutral goes on to bench");
    assertEquals(List.of(ConductorRole.LEG_2), Work.opening("freezer", LEGS).breakers());
    assertEquals(both, Work.opening("panel", LEGS).breakers());
  }

  @Test
  void thePanelIsNoBoxLikeTheRest() {
    assertEquals(Work.Place.PANEL, Work.opening("panel", LEGS).place());
    assertEquals(Work.Place.BOX, Work.opening("bench", LEGS).place());
  }

  @Test
  void aReceptacleIsReadFromOutside() {
    assertEquals(List.of(), Work.of(List.of(idle(firstLeg("bench"))), LEGS));
  }

  @Test
  void thePanelsBarsAndAJunctionBoxAreReadOpenAndLive() {
    for (String box : List.of("panel", "door")) {
      List<Work> works = Work.of(List.of(idle(firstLeg(box))), LEGS);

      assertEquals(List.of(box), works.stream().map(Work::box).toList());
      assertEquals(List.of(true), works.stream().map(Work::live).toList());
    }
  }

  @Test
  void aLinkAtThePanelIsWorkInThePanelThoughTheMeterIsElsewhere() {
    Isolation linked = new Isolation(List.of(firstLeg("panel")), List.of());
    ohmtrail.survey.Test test =
        new ohmtrail.survey.Test(
            "off",
            List.of(),
            Optional.of(linked),
            List.of(new Reading(firstLeg("bench"), Measurand.RESISTANCE, "ohms", 0, 0)));

    List<Work> works = Work.of(List.of(test), LEGS);

    assertEquals(List.of("panel"), works.stream().map(Work::box).toList());
    assertEquals(List.of(false), works.stream().map(Work::live).toList());
  }

  @Test
  void aClampInThePanelIsWorkOnALiveOne() {
    Tap around = new Tap.AroundConductor("panel", "bench", ConductorRole.LEG_1);
    ohmtrail.survey.Test test =
        new ohmtrail.survey.Test(
            "clamped", List.of(), List.of(new Reading(around, Measurand.CURRENT, "clamp", 0, 0)));

    List<Work> works = Work.of(List.of(test), LEGS);

    assertEquals(List.of(Work.Place.PANEL), works.stream().map(Work::place).toList());
    assertEquals(List.of(true), works.stream().map(Work::live).toList());
  }
}
