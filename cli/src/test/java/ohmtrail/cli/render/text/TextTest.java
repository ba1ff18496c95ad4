package ohmtrail.cli.render.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import ohmtrail.cli.Golden;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Answers;
import ohmtrail.locate.Diagnosis;
import ohmtrail.predict.Degradation;
import ohmtrail.report.Prediction;
import org.junit.jupiter.api.Test;

/** The texts against files that were read and found right. */
class TextTest {
  private static final CaseFile HALL = Answers.HALL;
  private static final CaseFile HALL_IEC = Answers.HALL_IEC;

  @Test
  void twoEndsOfACable() {
    hold("two-ends", HALL, Answers.twoEnds(HALL));
  }

  @Test
  void oneJointInTheWordsOfTheOtherRegion() {
    hold("one-joint-iec", HALL_IEC, Answers.oneJoint(HALL_IEC));
  }

  @Test
  void aLostNeutral() {
    hold("lost-neutral", HALL, Answers.lostNeutral(HALL));
  }

  @Test
  void aLostGround() {
    hold("lost-ground", HALL, Answers.lostGround(HALL));
  }

  @Test
  void nothingStandsOut() {
    hold("unsettled", HALL, Answers.unsettled(HALL));
  }

  @Test
  void aBoxTakesLongToOpen() {
    CaseFile slow = Answers.slow(HALL, "hall-2", 200);
    hold("slow-box", slow, Answers.twoEnds(slow));
  }

  @Test
  void twoJointsAreBad() {
    hold("two-bad-joints", HALL, Answers.twoBadJoints(HALL));
  }

  @Test
  void aJointIsUnstable() {
    hold("unstable", HALL, Answers.unstable(HALL));
  }

  @Test
  void aToleranceIsUnderStrain() {
    hold("strained", HALL, Answers.strained(HALL));
  }

  @Test
  void oneReadingIsWrong() {
    hold("one-wrong-reading", HALL, Answers.oneWrongReading(HALL));
  }

  @Test
  void copperExplainsIt() {
    hold("healthy", HALL, Answers.healthy(HALL));
  }

  @Test
  void nothingExplainsIt() {
    hold("unexplained", HALL, Answers.unexplained(HALL));
  }

  @Test
  void nothingWasRead() {
    CaseFile unread = Answers.unread(HALL);
    hold("unread", unread, Answers.healthy(unread));
  }

  @Test
  void aCaseAsUnderstood() {
    Golden.assertMatches("render/check.txt", CheckText.of(HALL));
  }

  @Test
  void aCaseAsUnderstoodInTheWordsOfTheOtherRegion() {
    Golden.assertMatches("render/check-iec.txt", CheckText.of(HALL_IEC));
  }

  @Test
  void aSoundCircuitPredicted() {
    Golden.assertMatches(
        "render/predict-sound.txt", PredictText.of(HALL, Prediction.of(HALL.problem(), List.of())));
  }

  @Test
  void degradedJointsPredicted() {
    List<Degradation> degradations =
        List.of(
            new Degradation("bed-1/neutral/incoming", 2.4),
            new Degradation("bath/hot/contact", Double.POSITIVE_INFINITY));

    Golden.assertMatches(
        "render/predict-degraded.txt",
        PredictText.of(HALL, Prediction.of(HALL.problem(), degradations)));
  }

  @Test
  void anUnreadCasePredicted() {
    CaseFile unread = Answers.unread(HALL_IEC);

    Golden.assertMatches(
        "render/predict-unread-iec.txt",
        PredictText.of(unread, Prediction.of(unread.problem(), List.of())));
  }

  @Test
  void whatNothingExplainsListsNoBoxes() {
    String text = LocateText.of(HALL, Answers.report(HALL, Answers.unexplained(HALL)));

    assertFalse(text.contains("Boxes, "), text);
    assertFalse(text.contains("Suspects"), text);
  }

  @Test
  void anAssumptionSetByTheCaseIsMarkedAndNoOther() {
    List<String> marked =
        LocateText.of(HALL, Answers.report(HALL, Answers.twoEnds(HALL)))
            .lines()
            .filter(line -> line.contains("* set by the case"))
            .toList();

    assertEquals(1, marked.size(), marked.toString());
    assertTrue(marked.get(0).contains("weight-push-in"), marked.toString());
  }

  @Test
  void theLocaleOfTheMachineIsOfNoConcern() {
    Locale before = Locale.getDefault();
    String usual = LocateText.of(HALL, Answers.report(HALL, Answers.twoEnds(HALL)));
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      assertEquals(usual, LocateText.of(HALL, Answers.report(HALL, Answers.twoEnds(HALL))));
    } finally {
      Locale.setDefault(before);
    }
  }

  private static void hold(String name, CaseFile caseFile, Diagnosis diagnosis) {
    String text = LocateText.of(caseFile, Answers.report(caseFile, diagnosis));
    text.lines().forEach(line -> assertTrue(line.length() <= Page.WIDTH, line));
    Golden.assertMatches("render/" + name + ".txt", text);
  }
}
