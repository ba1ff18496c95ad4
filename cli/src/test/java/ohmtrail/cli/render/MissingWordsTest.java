package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Region;
import ohmtrail.report.Missing;
import org.junit.jupiter.api.Test;

class MissingWordsTest {
  @Test
  void receptaclesNeverReadAreNamed() {
    assertTrue(
        helps(Answers.HALL, "Read the receptacles never read so far: hall-1 and bath."),
        hints(Answers.HALL).toString());
  }

  @Test
  void aCaseWithoutALoadedTestIsToldToTakeOne() {
    assertTrue(helps(Answers.idleOnly(Answers.HALL), "Take readings under a load"));
    assertTrue(helps(Answers.unread(Answers.HALL), "Take readings under a load"));
  }

  @Test
  void aBranchThatNoCurrentHasFlowedInIsNamed() {
    assertTrue(helps(Answers.HALL, "no current has flowed as far as bath"));
  }

  @Test
  void onlyACaseWithoutALowImpedanceReadingIsToldToTakeOne() {
    assertTrue(helps(Answers.unread(Answers.HALL), "low-impedance meter"));
    assertTrue(!helps(Answers.HALL, "low-impedance meter"));
  }

  @Test
  void cablesOfUnknownLengthAreNamed() {
    CaseFile guessed = withUnknownLengthTo("bath");

    assertTrue(helps(guessed, "Estimate the length of the cable to bath"));
    assertTrue(!helps(Answers.HALL, "Estimate the length"));
  }

  @Test
  void theOtherRegionReadsSocketOutlets() {
    assertTrue(helps(Answers.HALL_IEC, "Read the socket-outlets never read so far"));
  }

  @Test
  void eachHintIsOneSentenceOrTwo() {
    hints(Answers.unread(Answers.HALL))
        .forEach(hint -> assertEquals('.', hint.charAt(hint.length() - 1), hint));
  }

  private static boolean helps(CaseFile caseFile, String words) {
    return hints(caseFile).stream().anyMatch(hint -> hint.contains(words));
  }

  private static CaseFile withUnknownLengthTo(String box) {
    Circuit circuit = Answers.HALL.circuit();
    List<Cable> cables = new ArrayList<>();
    for (Cable cable : circuit.cables()) {
      cables.add(
          cable.to().equals(box)
              ? new Cable(
                  cable.from(),
                  box,
                  OptionalDouble.empty(),
                  OptionalDouble.empty(),
                  cable.conductor(),
                  cable.companion())
              : cable);
    }
    return new CaseFile(
        Answers.HALL.title(),
        new Circuit(circuit.supply(), circuit.breakerAmperes(), circuit.boxes(), cables),
        Answers.HALL.survey(),
        Answers.HALL.assumptions(),
        List.of());
  }

  private static List<String> hints(CaseFile caseFile) {
    return MissingWords.of(Region.of(caseFile.circuit().supply()), Missing.in(caseFile.problem()));
  }
}
