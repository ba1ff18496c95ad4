package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.report.Report;
import org.junit.jupiter.api.Test;

/**
 * One outlet and no map of its run, from the command line. What readings mean there is common
 * practice, no source.
 */
class BareOutletTest {
  private static final int MOST_LINES = 10;

  private static Diagnosis locate(String supply, String... readings) throws CaseFileException {
    CaseFile caseFile = read(supply, readings);
    return new Locator().locate(caseFile.problem());
  }

  private static CaseFile read(String supply, String... readings) throws CaseFileException {
    return new CaseFileReader().read("command line", OutletCase.text(supply, List.of(readings)));
  }

  private static double share(Diagnosis diagnosis, ConductorRole conductor) {
    double sum = 0;
    for (Suspect suspect : diagnosis.suspects()) {
      for (int j = 0; j < suspect.joints().size(); j++) {
        boolean same = suspect.joints().get(j).conductor() == conductor;
        sum += same ? suspect.jointProbabilities().get(j) : 0;
      }
    }
    return sum;
  }

  private static String answer(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertEquals(
        0,
        Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments),
        err.toString());
    return out.toString().replaceAll("\\s+", " ");
  }

  @Test
  void aSoundOutletReadsTheSameHighAndLow() throws CaseFileException {
    Diagnosis diagnosis =
        locate(
            "120",
            "hot-neutral 120.6 high",
            "hot-neutral 120.2 low",
            "hot-ground 120.4 high",
            "hot-neutral 116.4 high with 1500 W");
    assertEquals(Verdict.HEALTHY, diagnosis.verdict());
  }

  @Test
  void tensOfKilohmsInTheNeutralPullTheLowReadingToATenthWhileHotToGroundStaysFull()
      throws CaseFileException {
    Diagnosis diagnosis =
        locate("120", "hot-neutral 118.6 high", "hot-neutral 11.9 low", "hot-ground 119.8 low");
    assertTrue(share(diagnosis, ConductorRole.NEUTRAL) > 0.95, diagnosis.suspects().toString());
    OhmsInterval ohms = diagnosis.suspects().get(0).ohms();
    // Of the supply, 11.9 V stand across the meter's 3 kohm and the rest across the neutral.
    double byHand = 3000 * (120 - 11.9) / 11.9;
    assertTrue(ohms.low().orElseThrow() < byHand && byHand < ohms.high().orElseThrow(), "" + ohms);
  }

  @Test
  void theSameInTheHotLeavesHotToGroundLow() throws CaseFileException {
    Diagnosis diagnosis =
        locate("120", "hot-neutral 118.6 high", "hot-neutral 11.9 low", "hot-ground 11.9 low");
    // A neutral lost before the bond, on the supply side, would do the same to both readings.
    assertTrue(share(diagnosis, ConductorRole.HOT) > 0.9, diagnosis.suspects().toString());
  }

  @Test
  void withoutAReadingToGroundHotAndNeutralAreAlike() throws CaseFileException {
    Diagnosis diagnosis = locate("120", "hot-neutral 118.6 high", "hot-neutral 24 low");
    assertEquals(
        share(diagnosis, ConductorRole.HOT), share(diagnosis, ConductorRole.NEUTRAL), 0.01);
  }

  @Test
  void aConductorConnectedToNothingShowsTensOfVoltsToAHighImpedanceMeterOnly()
      throws CaseFileException {
    CaseFile caseFile =
        read("120", "neutral-ground 0 high", "neutral-ground 0 low", "hot-ground 0 low");
    List<Double> volts =
        new Predictor(caseFile.circuit(), caseFile.survey(), Assumptions.defaults())
            .readings(List.of(new Degradation("panel/neutral/outgoing", Double.POSITIVE_INFINITY)));
    assertTrue(volts.get(0) > 10 && volts.get(0) < 90, volts.toString());
    assertTrue(volts.get(1) < 1, volts.toString());
  }

  @Test
  void withALostNeutralOnTwoLegsTheNeutralIsNamed() throws CaseFileException {
    Diagnosis diagnosis =
        locate(
            "120/240",
            "leg-1-leg-2 241 high",
            "leg-1-leg-2 240 low",
            "leg-1-neutral 0.3 low",
            "leg-2-neutral 0.3 low");
    assertTrue(share(diagnosis, ConductorRole.NEUTRAL) > 0.95, diagnosis.suspects().toString());
    Diagnosis leg =
        locate(
            "120/240",
            "leg-1-leg-2 240 high",
            "leg-1-leg-2 60.1 low",
            "leg-1-neutral 119.5 low",
            "leg-2-neutral 30.1 low");
    assertTrue(share(leg, ConductorRole.LEG_2) > 0.95, leg.suspects().toString());
  }

  @Test
  void theCommandLineAnswersWithoutACase() {
    String answer =
        answer(
            "locate",
            "--outlet",
            "120",
            "--read",
            "hot-neutral 118.6 high",
            "--read",
            "hot-neutral 11.9 low",
            "--read",
            "hot-ground 119.8 low");
    assertTrue(
        answer.startsWith("The neutral on the way to this outlet is degraded, about 27 kohm"),
        answer);
    assertTrue(answer.contains("these readings cannot say: a map of the run would"), answer);
  }

  @Test
  void behindAGfciTheLowImpedanceReadingToGroundIsWarnedOfAndIfTakenToldToHaveTripped()
      throws CaseFileException {
    String text =
        OutletCase.text("120", List.of("hot-neutral 28 low", "hot-ground 119.9 high"))
            + "protection: GFCI\n";
    CaseFile without = new CaseFileReader().read("case", text);
    String answer = LocateText.of(without, Report.of(without.problem())).replaceAll("\\s+", " ");
    assertTrue(
        answer.contains("Do not hold low from a live conductor to ground behind the GFCI"), answer);
    assertTrue(answer.contains("it passes 40 mA and trips it"), answer);
    assertFalse(answer.contains("would have tripped"), answer);
    CaseFile with =
        new CaseFileReader()
            .read("case", text.replace("hot-ground 119.9 high", "hot-ground 119 low"));
    String told = LocateText.of(with, Report.of(with.problem())).replaceAll("\\s+", " ");
    assertTrue(told.contains("What would have tripped in the middle of the readings"), told);
    assertTrue(told.contains("outlet hot-ground with low, test idle"), told);
  }

  @Test
  void whatIsWrongInAReadingIsToldWithItsPlace() {
    CaseFileException refusal =
        assertThrows(CaseFileException.class, () -> read("120", "leg-1-leg-2 118.6 high"));
    assertTrue(refusal.getMessage().contains("(leg-1) at outlet"), refusal.getMessage());
    CaseFileException strange =
        assertThrows(CaseFileException.class, () -> read("120", "hot-neutrl 118.6 high"));
    assertTrue(strange.getMessage().contains("hot-neutral was meant"), strange.getMessage());
  }

  @Test
  void aCaseOfOneOutletTakesTenLines() {
    Stream.of("hobby-room-line-230", "laundry-gfci-hot", "porch-open-neutral")
        .forEach(
            name -> {
              String text = ExampleCase.named(name).text();
              assertTrue(text.getBytes(StandardCharsets.UTF_8).length > 0, name);
              assertTrue(ExampleCase.named(name).linesOfAPerson() <= MOST_LINES, name);
            });
  }

  @Test
  void theOhmsOfTheExamplesLieWithinTheStatedInterval() {
    List<String> missed = new ArrayList<>();
    for (String name : List.of("hobby-room-line-230", "laundry-gfci-hot", "porch-open-neutral")) {
      ExampleCase example = ExampleCase.named(name);
      CaseFile caseFile = example.caseFile();
      Diagnosis diagnosis = new Locator().locate(caseFile.problem());
      OhmsInterval ohms = diagnosis.suspects().get(0).ohms();
      double truth = example.degraded().get(0).ohms();
      boolean within =
          truth >= ohms.low().orElse(0) && truth <= ohms.high().orElse(Double.POSITIVE_INFINITY);
      if (!within) {
        missed.add(name + ": " + truth + " ohm, " + ohms);
      }
    }
    assertEquals(List.of(), missed);
  }
}
