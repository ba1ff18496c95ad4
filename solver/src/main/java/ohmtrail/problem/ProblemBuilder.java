package ohmtrail.problem;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * Puts a problem together in the order in which a person would tell it: what feeds the circuit, its
 * boxes from the panel outward, what was at hand, and what was read.
 *
 * <p>Each box hangs on the one told before it unless another is named. What this does not know (a
 * ring, a switch, two legs, a clamp) comes in as the records that it is made of: {@link #box(Box,
 * Cable)}, {@link #cable(Cable)}, {@link #test(Test)}. Not safe for use by several threads.
 */
public final class ProblemBuilder {
  /** The name of the panel. */
  public static final String PANEL = "panel";

  private final Supply supply;
  private final double breakerAmperes;
  private final List<Box> boxes = new ArrayList<>(List.of(Box.panel(PANEL)));
  private final List<Cable> cables = new ArrayList<>();
  private final List<Meter> meters = new ArrayList<>();
  private final List<Load> loads = new ArrayList<>();
  private final List<Test> tests = new ArrayList<>();
  private Assumptions assumptions = Assumptions.defaults();
  private Optional<Conductor> conductor = Optional.empty();
  private JointKind terminals = JointKind.SCREW;

  /**
   * Begins at the panel.
   *
   * @param supply what feeds it
   * @param breakerAmperes rated current of the breaker, positive
   */
  public ProblemBuilder(Supply supply, double breakerAmperes) {
    this.supply = supply;
    this.breakerAmperes = breakerAmperes;
  }

  /**
   * The conductors of every cable that follows.
   *
   * @param size its designation, such as {@code 14 AWG} or {@code 2.5 mm2}
   * @throws CircuitException when no published table has that size
   */
  public ProblemBuilder wire(String size, ConductorMaterial material) {
    ConductorSize known =
        ConductorSize.parse(size)
            .orElseThrow(
                () ->
                    new CircuitException(
                        "Conductor size ("
                            + size
                            + ") must be in a published table\nMaybe write 14 AWG or 2.5 mm2."));
    conductor = Optional.of(new Conductor(known, material));
    return this;
  }

  /**
   * How wires are held at the terminals of every receptacle that follows; screws until it is said.
   */
  public ProblemBuilder terminals(JointKind kind) {
    terminals = kind;
    return this;
  }

  /**
   * A receptacle whose terminals carry the run onward, so many metres of cable from the last box.
   */
  public ProblemBuilder receptacle(String name, double metres) {
    return receptacle(name, metres, last());
  }

  /** The same, fed from another box. */
  public ProblemBuilder receptacle(String name, double metres, String from) {
    return box(Box.feedThrough(name, terminals), cable(from, name, metres));
  }

  /** A receptacle that hangs off wire-nut splices, so many metres of cable from the last box. */
  public ProblemBuilder pigtail(String name, double metres) {
    return box(Box.pigtail(name), cable(last(), name, metres));
  }

  /** A box of splices only, so many metres of cable from the last box. */
  public ProblemBuilder junction(String name, double metres) {
    return box(Box.junction(name), cable(last(), name, metres));
  }

  /** Any other box, with the cable that feeds it. */
  public ProblemBuilder box(Box box, Cable feeding) {
    boxes.add(box);
    cables.add(feeding);
    return this;
  }

  /** A further cable between boxes that were told, such as the one that closes a ring. */
  public ProblemBuilder cable(Cable closing) {
    cables.add(closing);
    return this;
  }

  private String last() {
    return boxes.get(boxes.size() - 1).name();
  }

  private Cable cable(String from, String to, double metres) {
    return new Cable(
        from,
        to,
        OptionalDouble.of(metres),
        OptionalDouble.empty(),
        conductor.orElseThrow(
            () ->
                new CircuitException(
                    "Cable to ("
                        + to
                        + ") must have a conductor\nMaybe call wire(...) before it.")),
        Cable.Companion.NONE);
  }

  /** A meter; {@link #read} uses the first. */
  public ProblemBuilder meter(Meter meter) {
    meters.add(meter);
    return this;
  }

  /** A load that can be plugged in. */
  public ProblemBuilder load(Load load) {
    loads.add(load);
    return this;
  }

  /** A moment with these loads on, and the readings that follow. */
  public ProblemBuilder test(String name, LoadInUse... on) {
    return test(new Test(name, List.of(on), List.of()));
  }

  /** Any other moment, such as one with the breaker off, and the readings that follow. */
  public ProblemBuilder test(Test test) {
    tests.add(test);
    return this;
  }

  /**
   * A voltage read in the test told last, with the meter told first.
   *
   * @throws SurveyException when no test or no meter was told before
   */
  public ProblemBuilder read(String box, ProbePoints between, double volts) {
    if (meters.isEmpty()) {
      throw new SurveyException(
          "Reading at (" + box + ") must have a meter\nMaybe call meter(...) before it.");
    }
    return read(new Reading(box, between, meters.get(0).name(), volts));
  }

  /**
   * Any other reading, in the test told last.
   *
   * @throws SurveyException when no test was told before
   */
  public ProblemBuilder read(Reading reading) {
    if (tests.isEmpty()) {
      throw new SurveyException(
          "Reading at ("
              + reading.box()
              + ") must belong to a test\nMaybe call test(...) before it.");
    }
    Test open = tests.get(tests.size() - 1);
    List<Reading> readings = new ArrayList<>(open.readings());
    readings.add(reading);
    tests.set(tests.size() - 1, open.withReadings(readings));
    return this;
  }

  /** One of the assumptions with another value, in its unit. */
  public ProblemBuilder assuming(Assumption assumption, double value) {
    assumptions = assumptions.with(assumption, value);
    return this;
  }

  /**
   * The problem as told so far.
   *
   * @throws CircuitException when the boxes and cables do not fit together
   * @throws SurveyException when what was read does not fit the circuit
   */
  public Problem build() {
    return new Problem(
        new Circuit(supply, breakerAmperes, boxes, cables),
        new Survey(meters, loads, tests),
        assumptions);
  }
}
