package ohmtrail.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.ProbePoints;

/**
 * What cases are drawn from.
 *
 * <p>Readings between hot and neutral alone can hardly tell a degraded hot joint from a degraded
 * neutral one; the populations whose meter is held to ground too can.
 *
 * @param name unique among {@link #presets()}
 * @param circuits the circuits
 * @param faults the faults
 * @param surveys the surveys
 * @param disturbance what goes wrong on the way
 */
public record Population(
    String name,
    CircuitKind circuits,
    FaultKind faults,
    SurveyKind surveys,
    Disturbance disturbance) {
  private static final double HEATER_WATTS_AT_230 = 2000;
  private static final double HALF = 0.5;

  private static final FaultKind SLIGHT = FaultKind.between(0.05, 0.3);
  private static final FaultKind LOOSE = FaultKind.between(0.3, 30);
  private static final FaultKind CHARRED = FaultKind.between(30, 100e3);

  /** 0.3 to 30 ohm, every receptacle read: what the others differ from. */
  public static Population loose() {
    return new Population(
        "loose",
        CircuitKind.northAmerican(),
        LOOSE,
        SurveyKind.everyReceptacle(),
        Disturbance.NONE);
  }

  /** Every population that has a name, in a fixed order. */
  public static List<Population> presets() {
    Population loose = loose();
    Population slight = loose.with("slight", SLIGHT);
    Population charred = loose.with("charred", CHARRED);
    Population twoJoints = loose.with("two-joints", LOOSE.ofJoints(2));
    FaultKind asAssumed = FaultKind.asAssumed(Assumptions.defaults());
    SurveyKind half = loose.surveys.reading(HALF);
    SurveyKind groundToo =
        loose.surveys.heldTo(
            ProbePoints.HOT_NEUTRAL, ProbePoints.HOT_GROUND, ProbePoints.NEUTRAL_GROUND);
    List<Population> presets = new ArrayList<>();
    presets.addAll(asStated(loose, slight, charred, twoJoints, half, groundToo, asAssumed));
    for (Disturbance slip : Disturbance.values()) {
      if (slip.isMisstated()) {
        presets.add(loose.with(slip.word(), slip));
        presets.add(loose.with("sound-" + slip.word(), FaultKind.none()).with(slip));
      }
    }
    return List.copyOf(presets);
  }

  private static List<Population> asStated(
      Population loose,
      Population slight,
      Population charred,
      Population twoJoints,
      SurveyKind half,
      SurveyKind groundToo,
      FaultKind asAssumed) {
    return List.of(
        loose,
        loose.with("loose-half-read", half),
        loose.with("loose-every-meter", loose.surveys.carryingEveryMeter()),
        slight,
        slight.with("slight-half-read", half),
        charred,
        charred.with("charred-half-read", half),
        loose.with("open", FaultKind.open()),
        loose.with("healthy", FaultKind.none()),
        loose.with("as-assumed", asAssumed),
        twoJoints,
        loose.with("mistyped", Disturbance.MISTYPED_READING),
        loose.with("unstable", Disturbance.UNSTABLE_JOINT),
        loose.with("wrong-length", Disturbance.WRONG_LENGTH),
        loose.with("weak-heater", Disturbance.WEAK_HEATER),
        loose.with("meter-out", Disturbance.METER_OUT_OF_ACCURACY),
        loose.with("heater-at-end", heaterAtEnd(loose)),
        loose.with("ground-too", groundToo),
        twoJoints.with("two-joints-ground-too", groundToo),
        loose.with("ground-too-half-read", groundToo.reading(HALF)),
        slight.with("slight-ground-too", groundToo),
        iec(),
        multiwire(groundToo),
        multiwire(groundToo).with("two-leg-as-assumed", asAssumed),
        ring(),
        ring().with("ring-as-assumed", asAssumed));
  }

  /** The population of that name. */
  public static Optional<Population> named(String name) {
    return presets().stream().filter(preset -> preset.name.equals(name)).findFirst();
  }

  private static SurveyKind heaterAtEnd(Population population) {
    return population.surveys.inRounds(
        SurveyKind.Round.IDLE_HIGH_IMPEDANCE,
        SurveyKind.Round.IDLE_LOW_IMPEDANCE,
        SurveyKind.Round.HEATER_AT_END);
  }

  private static Population iec() {
    return new Population(
        "loose-230",
        CircuitKind.iec(),
        LOOSE,
        SurveyKind.everyReceptacle().withHeater(HEATER_WATTS_AT_230),
        Disturbance.NONE);
  }

  /** Two legs and one neutral, held to ground too: which conductor it is matters there. */
  private static Population multiwire(SurveyKind groundToo) {
    return new Population("two-leg", CircuitKind.multiwire(), LOOSE, groundToo, Disturbance.NONE);
  }

  /** Held to ground too: either side of a ring hides what the other lacks. */
  private static Population ring() {
    return new Population(
        "ring",
        CircuitKind.ring(),
        LOOSE,
        SurveyKind.everyReceptacle()
            .heldTo(ProbePoints.HOT_NEUTRAL, ProbePoints.NEUTRAL_GROUND)
            .withHeater(HEATER_WATTS_AT_230),
        Disturbance.NONE);
  }

  /** The same under another name with other faults. */
  public Population with(String otherName, FaultKind otherFaults) {
    return new Population(otherName, circuits, otherFaults, surveys, disturbance);
  }

  /** The same under another name with other surveys. */
  public Population with(String otherName, SurveyKind otherSurveys) {
    return new Population(otherName, circuits, faults, otherSurveys, disturbance);
  }

  /** The same under another name with another disturbance. */
  public Population with(String otherName, Disturbance otherDisturbance) {
    return new Population(otherName, circuits, faults, surveys, otherDisturbance);
  }

  private Population with(Disturbance otherDisturbance) {
    return with(name, otherDisturbance);
  }
}
