package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.CaseFile;
import org.junit.jupiter.api.Test;

class HeadlineTest {
  private static final CaseFile HALL = Answers.HALL;

  @Test
  void oneJointIsNamedWithItsBoxItsOhmsAndHowSureItIs() {
    assertEquals(
        "Open bed-1 first, the breaker off: the incoming neutral there is most likely bad, about"
            + " 2.4 ohm (1.9 to 3.1), 87 % sure. Next: hall-2, 10 %.",
        Headline.of(HALL, Answers.report(HALL, Answers.oneJoint(HALL))));
  }

  @Test
  void jointsAtTheTwoEndsOfACableAreNamedAsOneWithTheOddsOfEachEnd() {
    assertEquals(
        "Open hall-2 first, the breaker off: the neutral between hall-2 and bed-1 is most likely"
            + " bad, about 2.4 ohm (1.9 to 3.1), 91 % sure. Its joint may be at either end: hall-2"
            + " 60 %, bed-1 31 %. The two read alike; push-ins are assumed to fail 4 times as often"
            + " as screws.",
        Headline.of(HALL, Answers.report(HALL, Answers.twoEnds(HALL))));
  }

  @Test
  void endsThatAreAsLikelyAreSaidToBe() {
    assertEquals(
        "Open hall-2 first, the breaker off: the neutral between hall-2 and bed-1 is most likely"
            + " bad, about 2.4 ohm (1.9 to 3.1), 96 % sure. Its joint is as likely at either end:"
            + " hall-2 48 %, bed-1 48 %.",
        Headline.of(HALL, Answers.report(HALL, Answers.equalEnds(HALL))));
  }

  @Test
  void aBoxThatComesFirstForItsOtherSuspectsSaysSo() {
    String headline = Headline.of(HALL, Answers.report(HALL, Answers.firstForOtherReasons(HALL)));

    assertTrue(
        headline.endsWith(
            "either end: hall-2 28 %, bed-1 38 %. hall-2 comes first because other suspects lie"
                + " there too: 55 % in all."),
        headline);
  }

  @Test
  void aBoxThatTakesLongToOpenWaitsAndIsNamedWithItsMinutes() {
    CaseFile slow = Answers.slow(HALL, "hall-2", 200);
    String headline = Headline.of(slow, Answers.report(slow, Answers.twoEnds(slow)));

    assertTrue(
        headline.startsWith("Open bed-1 first, the breaker off: the neutral between"), headline);
    assertTrue(headline.contains("bed-1 31 %, hall-2 60 %."), headline);
    assertTrue(
        headline.matches(
            ".* bed-1 comes first because it takes \\d+ minutes to open, where hall-2 \\(60 %\\)"
                + " takes 200 minutes\\.$"),
        headline);
  }

  @Test
  void minutesThatChangeNothingChangeNoWord() {
    CaseFile slow = Answers.slow(HALL, "bath", 200);

    assertEquals(
        Headline.of(HALL, Answers.report(HALL, Answers.twoEnds(HALL))),
        Headline.of(slow, Answers.report(slow, Answers.twoEnds(slow))));
  }

  @Test
  void aFaultBeforeThePanelSendsNobodyToABox() {
    assertEquals(
        "Open no box of this run: the hot or neutral on the supply side, at or before the panel,"
            + " about 1.5 ohm (1.2 to 1.9), 96 % sure. That is a matter for the utility or a"
            + " licensed electrician, and no breaker of this circuit unloads it: the"
            + " main switch does. Do other circuits of this panel show it too?",
        Headline.of(HALL, Answers.report(HALL, Answers.supplySide(HALL))));
    assertTrue(
        Cautions.forAnswer(HALL, Answers.report(HALL, Answers.supplySide(HALL))).stream()
            .anyMatch(caution -> caution.contains("for the utility or a licensed electrician")));
  }

  @Test
  void anOpenJointIsBoundedFromBelow() {
    assertEquals(
        "Open bed-2 first, the breaker off: the neutral tail there is most likely bad, more than 21"
            + " kohm, perhaps fully open, >99 % sure.",
        Headline.of(HALL, Answers.report(HALL, Answers.lostNeutral(HALL))));
  }

  @Test
  void theSameIsSaidInTheWordsOfTheOtherRegion() {
    assertEquals(
        "Open bath first, the breaker off: the incoming protective earth there is most likely bad,"
            + " about 1.2 kohm (800 ohm to 2.1 kohm), 90 % sure.",
        Headline.of(
            Answers.HALL_IEC,
            Answers.report(Answers.HALL_IEC, Answers.lostGround(Answers.HALL_IEC))));
  }

  @Test
  void aSuspectBelowEvenOddsIsNoFinding() {
    assertEquals(
        "Open hall-1 first, the breaker off, though the readings do not settle it: the likeliest is"
            + " the hot between panel and hall-1, about 0.080 ohm (0.030 to 0.20), 46 % sure. Its"
            + " joint may be at either end: hall-1 34 %, panel 12 %. The two read alike; push-ins"
            + " are assumed to fail 4 times as often as screws. Before a box is opened: take a"
            + " reading under a load farther out, where `next` finds that it does no harm: no"
            + " current has flowed as far as bath, so the joints on the way there have not been"
            + " tried.",
        Headline.of(HALL, Answers.report(HALL, Answers.unsettled(HALL))));
  }

  @Test
  void aBoxThatHoldsSeveralSuspectsIsExplained() {
    assertEquals(
        "Open hall-1 first, the breaker off: its joints together are 45 % likely to hold the bad"
            + " one. No joint stands out; the likeliest is the incoming hot at bath, about 0.50 ohm"
            + " (0.30 to 0.80), 30 % sure. Before a box is opened: take a reading under a load"
            + " farther out, where `next` finds that it does no harm: no current has flowed as far"
            + " as bath, so the joints on the way there have not been tried.",
        Headline.of(HALL, Answers.report(HALL, Answers.scattered(HALL))));
  }

  @Test
  void twoBadJointsAreNamedEachWithItsBox() {
    assertEquals(
        "Two joints are bad at once, 85 % sure. Open bed-1 first, the breaker off: the neutral"
            + " between hall-2 and bed-1, about 2.4 ohm (1.9 to 3.1), 85 %; if it is sound, the"
            + " other end, hall-2. Then open bath, the breaker off: the hot blade contact there,"
            + " more than 21 kohm, perhaps fully open, 88 %.",
        Headline.of(HALL, Answers.report(HALL, Answers.twoBadJoints(HALL))));
  }

  @Test
  void aSecondBadJointThatDoesNotLeadIsMentioned() {
    String headline = Headline.of(HALL, Answers.report(HALL, Answers.perhapsTwo(HALL)));

    assertTrue(
        headline.startsWith("Open bed-1 first, the breaker off: the incoming neutral there"),
        headline);
    assertTrue(
        headline.endsWith(
            "Or more than one is bad at once, 30 %: bed-1/neutral/incoming (2.4 ohm) and"
                + " bath/hot/contact (open)."),
        headline);
  }

  @Test
  void aJointWhoseOhmsChangeWithTheCurrentIsOneJointAndSaidToBeSo() {
    String headline = Headline.of(HALL, Answers.report(HALL, Answers.unstable(HALL)));

    assertTrue(
        headline.endsWith(
            "Its ohms change with the current: 6.1 ohm with nothing on, 0.8 ohm under load (72 %"
                + " sure)."),
        headline);
    assertFalse(headline.contains("more than one"), headline);
  }

  @Test
  void aReadingThatIsGivenUpIsNamed() {
    String headline = Headline.of(HALL, Answers.report(HALL, Answers.oneWrongReading(HALL)));

    assertTrue(
        headline.endsWith(
            "This leaves out what is probably wrong: neutral-ground at bed-1 in test heater on,"
                + " 25.2 V where 18.2 V fits."),
        headline);
  }

  @Test
  void copperThatExplainsTheDropIsSaidWithTheDropAndTheAdvice() {
    String headline = Headline.of(HALL, Answers.report(HALL, Answers.healthy(HALL)));

    assertTrue(
        headline.startsWith(
            "No joint need be bad to explain these readings, 96 % sure: copper explains it. The"
                + " greatest drop, "),
        headline);
    assertTrue(headline.contains(" at bed-2 with heater on, is that of 68 ft of 14 AWG"), headline);
    assertTrue(headline.contains("NEC 210.19(A) informational note"), headline);
  }

  @Test
  void readingsWithoutALoadDoNotClearTheJoints() {
    CaseFile idle = Answers.idleOnly(HALL);

    assertEquals(
        "No joint need be bad to explain these readings, 96 % sure. But none was taken with a load"
            + " on, and a bad joint shows only when current flows.",
        Headline.of(idle, Answers.report(idle, Answers.healthy(idle))));
  }

  @Test
  void withoutReadingsNothingIsSaidOfAnyJoint() {
    CaseFile unread = Answers.unread(HALL);

    assertEquals(
        Headline.of(unread, Answers.report(unread, Answers.oneJoint(unread))),
        Headline.of(unread, Answers.report(unread, Answers.healthy(unread))));
    assertEquals(
        "There is no reading yet, so nothing speaks for a bad joint or against one. Read every"
            + " receptacle with nothing on, then under a load where `next` finds that it does no"
            + " harm.",
        Headline.of(unread, Answers.report(unread, Answers.healthy(unread))));
  }

  @Test
  void whatNothingExplainsPointsAtReadingsAndAtNoBox() {
    String headline = Headline.of(HALL, Answers.report(HALL, Answers.unexplained(HALL)));

    assertTrue(headline.contains("open no box on their account"), headline);
    assertTrue(
        headline.contains(
            "Take again those that disagree most: hot-neutral at bed-1 in test heater on, 93.1 V"
                + " where 86.1 V fits."),
        headline);
    for (Box box : HALL.circuit().boxes()) {
      assertFalse(headline.contains("Open " + box.name()), headline);
    }
  }
}
