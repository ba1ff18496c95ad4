package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.locate.Diagnosis;
import org.junit.jupiter.api.Test;

class CautionsTest {
  private static final CaseFile HALL = Answers.HALL;

  @Test
  void everyAnswerWarnsOfLiveWorkAndDefersToCodeAndElectrician() {
    for (Diagnosis answer :
        List.of(Answers.oneJoint(HALL), Answers.healthy(HALL), Answers.unexplained(HALL))) {
      assertTrue(warns(answer, "live parts"));
      assertTrue(warns(answer, "measurement category CAT III"));
      assertTrue(warns(answer, "switch the circuit off at the breaker at any heat, smell"));
      assertTrue(warns(answer, "the tester proved on a live source, the conductors, the tester"));
      assertTrue(warns(answer, "CAT IV where the service is within reach"));
      assertTrue(warns(answer, "local electrical code and a licensed electrician come first"));
    }
  }

  @Test
  void aSuspectedLostNeutralIsNamedAndNothingIsPluggedInBeyondIt() {
    String words = "It may be the neutral tail at bed-2: nothing is plugged in beyond it to try";
    assertTrue(warns(Answers.lostNeutral(HALL), words));
    assertFalse(warns(Answers.lostGround(HALL), "plugged in beyond it to try"));
    assertFalse(warns(Answers.healthy(HALL), "plugged in beyond it to try"));
  }

  @Test
  void aSuspectedGroundProtectsNothing() {
    assertTrue(warns(Answers.lostGround(HALL), "A suspected ground"));
    assertFalse(warns(Answers.oneJoint(HALL), "A suspected ground"));
  }

  @Test
  void thePanelIsForALicensedElectrician() {
    assertTrue(warns(Answers.unsettled(HALL), "A suspect is in panel: main switch off and locked"));
    assertTrue(warns(Answers.unsettled(HALL), "its line side stays live all the same"));
    assertFalse(warns(Answers.oneJoint(HALL), "A suspect is in panel"));
  }

  @Test
  void theOtherRegionHearsItsOwnWords() {
    List<String> cautions =
        Cautions.forAnswer(
            Answers.HALL_IEC,
            Answers.report(Answers.HALL_IEC, Answers.lostGround(Answers.HALL_IEC)));

    assertTrue(cautions.stream().anyMatch(caution -> caution.contains("protective earth")));
    assertTrue(cautions.stream().anyMatch(caution -> caution.contains("RCD")));
    assertEquals(
        0, cautions.stream().filter(caution -> caution.contains("electrical code")).count());
  }

  private static boolean warns(Diagnosis answer, String words) {
    return Cautions.forAnswer(HALL, Answers.report(HALL, answer)).stream()
        .anyMatch(caution -> caution.contains(words));
  }
}
