package ohmtrail.map;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.map.known.CableKind;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.RunMap;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

/**
 * The worked example of neighbour joining (Saitou and Nei 1987; the matrix of five taxa a to e is
 * the one of the encyclopedia Wikipedia's article on it, from memory): its path lengths as
 * readings, with a as the panel and its three inner nodes as splices that nobody can read at.
 */
class NeighbourJoiningTest {
  private static final int[][] PUBLISHED = {
    {0, 5, 9, 9, 8}, {5, 0, 10, 10, 9}, {9, 10, 0, 8, 7}, {9, 10, 8, 0, 3}, {8, 9, 7, 3, 0}
  };
  private static final String NAMES = "abcde";
  private static final double VOLTS = 120;
  private static final double HEATER_OHMS = 9.6;
  private static final double SOURCE_OHMS = 0.1;

  /** One unit of the published lengths, ohms of loop. */
  private static final double UNIT = 0.05;

  private static double shared(int one, int other) {
    return SOURCE_OHMS
        + UNIT * 0.5 * (PUBLISHED[0][one] + PUBLISHED[0][other] - PUBLISHED[one][other]);
  }

  private static MapProblem problem() {
    List<Outlet> outlets = new ArrayList<>();
    List<ohmtrail.survey.Test> tests = new ArrayList<>();
    for (int taxon = 1; taxon < NAMES.length(); taxon++) {
      String name = NAMES.substring(taxon, taxon + 1);
      outlets.add(Outlet.unknown(Box.feedThrough(name, JointKind.SCREW)));
      List<Reading> readings = new ArrayList<>();
      double amperes = VOLTS / (HEATER_OHMS + shared(taxon, taxon));
      for (int box = 1; box < NAMES.length(); box++) {
        readings.add(
            new Reading(
                NAMES.substring(box, box + 1),
                ProbePoints.HOT_NEUTRAL,
                "meter",
                VOLTS - amperes * shared(taxon, box)));
      }
      tests.add(
          new ohmtrail.survey.Test(
              "heater at " + name, List.of(new LoadInUse("heater", name)), readings));
    }
    for (String splice : List.of("u", "v", "w")) {
      outlets.add(Outlet.unknown(Box.junction(splice)));
    }
    UnknownRun run =
        UnknownRun.of(
            Supply.NORTH_AMERICA_120,
            15,
            Box.panel("a"),
            outlets,
            CableKind.of(
                new Conductor(
                    ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER)));
    Assumptions exact =
        Assumptions.defaults()
            .with(Assumption.HEALTHY_PRIOR, 0.999)
            .with(Assumption.READING_SCATTER, 0.01)
            .with(Assumption.SUPPLY_DRIFT, 1e-5)
            .with(Assumption.SUPPLY_VOLTAGE_TOLERANCE, 1e-5)
            .with(Assumption.SOURCE_OHMS_SPREAD, 1e-4)
            .with(Assumption.LOAD_POWER_TOLERANCE, 1e-4)
            .with(Assumption.HEALTHY_JOINT_OHMS, 1e-5);
    Meter meter = new Meter("meter", 10e6, 0, new Accuracy(0, 0), 0.01);
    return new MapProblem(
        run,
        new Survey(
            List.of(meter),
            List.of(new HeatingElement("heater", VOLTS * VOLTS / HEATER_OHMS, VOLTS)),
            tests),
        exact);
  }

  @Test
  void thePublishedTreeAndItsLengthsComeOut() {
    MapReport report = new MapLocator().map(problem());
    RunMap map = report.likeliest().map();

    String joining = map.feederOf("d").orElseThrow();
    assertEquals(joining, map.feederOf("e").orElseThrow(), report.toString());
    String before = map.feederOf(joining).orElseThrow();
    assertEquals(before, map.feederOf("c").orElseThrow(), report.toString());
    String first = map.feederOf(before).orElseThrow();
    assertEquals(first, map.feederOf("b").orElseThrow(), report.toString());
    assertEquals("a", map.feederOf(first).orElseThrow(), report.toString());
    List<String> ends = List.of(first, "b", before, "c", joining, "d", "e");
    int[] published = {2, 3, 3, 4, 2, 2, 1};
    for (int end = 0; end < published.length; end++) {
      String box = ends.get(end);
      double units =
          report.cables().stream()
                  .filter(cable -> cable.box().equals(box))
                  .mapToDouble(cable -> cable.loopOhms().value())
                  .findFirst()
                  .orElseThrow()
              / UNIT;
      assertEquals(published[end], units, 0.1 * published[end], box);
    }
  }
}
