package ohmtrail.report;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.LoadPoint;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * A test as the report has it, every figure at the report's point.
 *
 * @param test the test
 * @param supplyVolts the voltage behind the supply impedance in it, to neutral
 * @param profile the voltages along the run, as a meter that draws nothing would show them
 * @param drops what is lost on the way to each box
 * @param loads where each load that is on settles
 * @param overvoltages receptacles above 110 % of nominal
 * @param deviceCurrents what each GFCI or RCD sees during each reading
 * @param watchedDevices what each that somebody watched saw
 */
public record TestState(
    Test test,
    double supplyVolts,
    VoltageProfile profile,
    List<VoltageDrop> drops,
    List<LoadPoint> loads,
    List<Overvoltage> overvoltages,
    List<DeviceCurrent> deviceCurrents,
    List<DeviceCurrent> watchedDevices) {
  /** Copies the lists. */
  public TestState {
    drops = List.copyOf(drops);
    loads = List.copyOf(loads);
    overvoltages = List.copyOf(overvoltages);
    deviceCurrents = List.copyOf(deviceCurrents);
    watchedDevices = List.copyOf(watchedDevices);
  }

  static List<TestState> of(SolvedSurvey solved, Circuit circuit, Survey survey) {
    return survey.tests().stream().map(test -> of(solved, circuit, test)).toList();
  }

  private static TestState of(SolvedSurvey solved, Circuit circuit, Test test) {
    VoltageProfile profile = solved.profile(test);
    return new TestState(
        test,
        solved.sourceVolts(test),
        profile,
        VoltageDrop.along(profile, circuit, test),
        solved.loadPoints(test),
        Overvoltage.of(circuit, test.name(), profile),
        DeviceCurrent.duringReadings(solved, circuit, test),
        DeviceCurrent.watched(solved, circuit, test));
  }

  /** Whether any load draws current, or would, in the test. */
  public boolean isLoaded() {
    return !loads.isEmpty();
  }
}
