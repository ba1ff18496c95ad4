package ohmtrail.map.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.map.MapLocator;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.CableKind;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

class MapPlannerTest {
  private static Outlet outlet(String name) {
    return Outlet.unknown(Box.feedThrough(name, JointKind.SCREW));
  }

  private static MapReport report(Outlet... outlets) {
    UnknownRun run =
        UnknownRun.of(
            Supply.NORTH_AMERICA_120,
            15,
            Box.panel("panel"),
            List.of(outlets),
            CableKind.of(
                new Conductor(
                    ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER)));
    Survey survey =
        new Survey(
            List.of(Meter.highImpedance("meter")),
            List.of(new HeatingElement("heater", 1500, 120)),
            List.of());
    return new MapLocator().map(new MapProblem(run, survey, Assumptions.defaults()));
  }

  @Test
  void theHeaterGoesBeyondWhatIsOpenAndTheOthersAreRead() {
    MapReport report =
        report(
            outlet("hall").with(new Hint.First()),
            outlet("sofa").with(new Hint.FedByOneOf(List.of("hall", "window"))),
            outlet("window").with(new Hint.FedByOneOf(List.of("hall", "sofa"))),
            outlet("piano").with(new Hint.FedByOneOf(List.of("sofa", "window"))));

    MapPlan plan = MapPlanner.plan(report, Minutes.defaults());

    MapVisit best = plan.visits().get(0);
    assertEquals("piano", best.at(), plan.toString());
    assertTrue(best.read().contains("sofa") || best.read().contains("window"), plan.toString());
    assertFalse(plan.isJointFound());
  }

  @Test
  void aHeaterAtTheFirstBoxTellsNothingOfThoseBehindIt() {
    MapReport report =
        report(
            outlet("hall").with(new Hint.First()),
            outlet("sofa").with(new Hint.After("hall")),
            outlet("window").with(new Hint.After("hall")));

    MapPlan plan = MapPlanner.plan(report, Minutes.defaults());

    assertTrue(plan.visits().stream().noneMatch(visit -> visit.at().equals("hall")));
    assertTrue(plan.entropy() > 0);
  }

  @Test
  void whatIsKnownNeedsNoWalk() {
    MapReport report = report(outlet("hall"));

    assertTrue(MapPlanner.plan(report, Minutes.defaults()).visits().isEmpty());
  }

  /** The bound on what is told is no more than there is to know. */
  @Test
  void noWalkTellsMoreThanIsUnknown() {
    MapPlan plan =
        MapPlanner.plan(
            report(outlet("hall"), outlet("sofa"), outlet("window")), Minutes.defaults());

    assertFalse(plan.visits().isEmpty());
    plan.visits()
        .forEach(visit -> assertTrue(visit.nats() <= plan.entropy() + 1e-9, visit.toString()));
  }
}
