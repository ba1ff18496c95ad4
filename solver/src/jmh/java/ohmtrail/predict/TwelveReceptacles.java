package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/** A chain of twelve receptacles, and sixty readings of it in 24 tests. */
public final class TwelveReceptacles {
  /** Receptacles in the chain, named box-1 and so on from the panel, box-0. */
  public static final int BOXES = 12;

  /** Readings at each: two idle, three with the heater on. */
  public static final int READINGS_PER_BOX = 5;

  private TwelveReceptacles() {}

  /** The chain, its receptacles' terminals of one kind. */
  public static Circuit circuit(JointKind terminals) {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("box-0")));
    List<Cable> cables = new ArrayList<>();
    for (int box = 1; box <= BOXES; box++) {
      boxes.add(Box.feedThrough("box-" + box, terminals));
      cables.add(Cable.of("box-" + (box - 1), "box-" + box, 6, copper));
    }
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
  }

  /**
   * Five readings at every receptacle, with two meters, idle and with a heater.
   *
   * @param volts what each reading shows, by its place in the survey
   */
  public static Survey survey(IntToDoubleFunction volts) {
    List<Test> tests = new ArrayList<>();
    int at = 0;
    for (int box = 1; box <= BOXES; box++) {
      String name = "box-" + box;
      List<Reading> idle = new ArrayList<>();
      idle.add(reading(name, ProbePoints.HOT_NEUTRAL, "digital", volts.applyAsDouble(at++)));
      idle.add(reading(name, ProbePoints.HOT_NEUTRAL, "low", volts.applyAsDouble(at++)));
      tests.add(new Test("idle " + box, List.of(), idle));
      List<Reading> loaded = new ArrayList<>();
      loaded.add(reading(name, ProbePoints.HOT_NEUTRAL, "digital", volts.applyAsDouble(at++)));
      loaded.add(reading(name, ProbePoints.HOT_GROUND, "digital", volts.applyAsDouble(at++)));
      loaded.add(reading(name, ProbePoints.NEUTRAL_GROUND, "digital", volts.applyAsDouble(at++)));
      tests.add(new Test("heater " + box, List.of(new LoadInUse("heater", name)), loaded));
    }
    return new Survey(
        List.of(Meter.highImpedance("digital"), Meter.lowImpedance("low")),
        List.of(new HeatingElement("heater", 1500, 120)),
        tests);
  }

  private static Reading reading(String box, ProbePoints between, String meter, double volts) {
    return new Reading(box, between, meter, volts);
  }
}
