package ohmtrail.practice;

import java.util.List;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.ProbePoints;

/**
 * What readings are taken. Each visit to a box is a test of its own, minutes from the others.
 *
 * @param readShare share of the receptacles that are visited, above 0; which ones is chance
 * @param rounds what is read at each, at least one
 * @param between the conductors that the meter is held to each time, at least one pair; for the hot
 *     the one leg of a receptacle on a supply of two stands in
 * @param accuracy of both meters
 * @param resolutionVolts of both meters, positive
 * @param heaterWatts of the heater at the supply's nominal voltage, positive
 * @param unused what else could be measured with what is at hand; nothing is
 */
public record SurveyKind(
    double readShare,
    List<Round> rounds,
    List<ProbePoints> between,
    Accuracy accuracy,
    double resolutionVolts,
    double heaterWatts,
    List<Measurand> unused) {
  /** One way of reading a box. */
  public enum Round {
    /** Nothing on, a high-impedance meter. */
    IDLE_HIGH_IMPEDANCE,
    /** Nothing on, a low-impedance meter. */
    IDLE_LOW_IMPEDANCE,
    /** A heater plugged in at the same box, a high-impedance meter. */
    HEATER_HERE,
    /** A heater plugged in at the last box of the run, a high-impedance meter. */
    HEATER_AT_END
  }

  private static final double HEATER_WATTS_AT_120 = 1500;

  /** Copies the lists; rejects a survey of nothing. */
  public SurveyKind {
    rounds = List.copyOf(rounds);
    between = List.copyOf(between);
    unused = List.copyOf(unused);
    Shares.requireShare("Share of receptacles read", readShare);
    Shares.requireRange("Resolution", resolutionVolts, Double.MAX_VALUE);
    Shares.requireRange("Heater watts", heaterWatts, Double.MAX_VALUE);
    if (readShare == 0 || rounds.isEmpty() || between.isEmpty()) {
      throw new IllegalArgumentException(
          "Survey of a share ("
              + readShare
              + ") of the receptacles, rounds "
              + rounds
              + " between "
              + between
              + " must have at least one of each");
    }
  }

  /**
   * Every receptacle idle with either meter, and with a 1500 W heater; 0.5 % + 2 counts of 0.1 V.
   */
  public static SurveyKind everyReceptacle() {
    return new SurveyKind(
        1,
        List.of(Round.IDLE_HIGH_IMPEDANCE, Round.IDLE_LOW_IMPEDANCE, Round.HEATER_HERE),
        List.of(ProbePoints.HOT_NEUTRAL),
        new Accuracy(0.005, 2),
        0.1,
        HEATER_WATTS_AT_120,
        List.of());
  }

  /** The same at a share of the receptacles. */
  public SurveyKind reading(double share) {
    return new SurveyKind(share, rounds, between, accuracy, resolutionVolts, heaterWatts, unused);
  }

  /** The same with other rounds. */
  public SurveyKind inRounds(Round... chosen) {
    return new SurveyKind(
        readShare, List.of(chosen), between, accuracy, resolutionVolts, heaterWatts, unused);
  }

  /** The same with the meter held to other conductors. */
  public SurveyKind heldTo(ProbePoints... chosen) {
    return new SurveyKind(
        readShare, rounds, List.of(chosen), accuracy, resolutionVolts, heaterWatts, unused);
  }

  /** The same with another heater. */
  public SurveyKind withHeater(double watts) {
    return new SurveyKind(readShare, rounds, between, accuracy, resolutionVolts, watts, unused);
  }

  /** The same with a clamp, a loop tester and an ohmmeter in the bag. */
  public SurveyKind carryingEveryMeter() {
    return new SurveyKind(
        readShare,
        rounds,
        between,
        accuracy,
        resolutionVolts,
        heaterWatts,
        List.of(Measurand.CURRENT, Measurand.LOOP_IMPEDANCE, Measurand.RESISTANCE));
  }
}
