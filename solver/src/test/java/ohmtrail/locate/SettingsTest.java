package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import ohmtrail.locate.settings.Settings;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tuning constants tune: finer ones cost time and change no answer by what anybody acts on. */
class SettingsTest {
  private static final long SEED = 20261127;

  /** Two digits of a probability are shown. */
  private static final double SHOWN = 0.005;

  @Test
  void everySettingIsAPositiveNumber() throws ReflectiveOperationException {
    int settings = 0;
    for (RecordComponent group : Settings.class.getRecordComponents()) {
      Object values = group.getAccessor().invoke(Settings.usual());
      for (RecordComponent setting : values.getClass().getRecordComponents()) {
        Number value = (Number) setting.getAccessor().invoke(values);
        assertTrue(value.doubleValue() > 0, group.getName() + "." + setting.getName());
        settings++;
      }
    }
    assertTrue(settings > 50, "settings: " + settings);
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 1, 2, 3})
  void aGridTwiceAsFineChangesNoProbabilityThatIsShown(long number) {
    assertSame(number, withProfile(Settings.usual(), 0.5));
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 1, 2, 3})
  void roomForNoSweepAtAllChangesNothing(long number) {
    assertSame(number, withSweepBytes(Settings.usual(), 1));
  }

  private static void assertSame(long number, Settings other) {
    PracticeCase drawn =
        new Practice(Population.loose(), Assumptions.defaults(), SEED).caseOf(number);
    Diagnosis usual = new Locator().locate(drawn.problem());
    Diagnosis found = new Locator(other).locate(drawn.problem());
    assertEquals(usual.verdict(), found.verdict());
    for (RankedBox box : usual.boxes()) {
      double others =
          found.boxes().stream()
              .filter(each -> each.box().equals(box.box()))
              .mapToDouble(RankedBox::probability)
              .sum();
      assertEquals(box.probability(), others, SHOWN, "seed " + SEED + ", case " + number);
    }
  }

  private static Settings withProfile(Settings usual, double finer) {
    Settings.Profile profile = usual.profile();
    return new Settings(
        usual.screening(),
        usual.ascent(),
        usual.fit(),
        new Settings.Profile(
            profile.coarseStep() * finer,
            profile.fineStep() * finer,
            (int) (profile.fineSteps() / finer),
            profile.samePeak(),
            profile.leastDoubt(),
            profile.mostDoubt(),
            profile.sameHeight(),
            profile.mostRefinements(),
            profile.nodeReach(),
            profile.fewestNodes(),
            profile.mostNodes(),
            profile.negligible(),
            profile.aroundPeak(),
            profile.nothing(),
            profile.ohmsOfOpen()),
        usual.shortlist(),
        usual.several(),
        usual.outliers(),
        usual.answer());
  }

  private static Settings withSweepBytes(Settings usual, double bytes) {
    Settings.Screening screening = usual.screening();
    return new Settings(
        new Settings.Screening(
            screening.stepsPerDecade(),
            screening.mostValleys(),
            screening.outlierCost(),
            screening.farRatio(),
            screening.farMargin(),
            screening.capacitiveOhms(),
            screening.capacitiveMargin(),
            screening.twinMargin(),
            screening.twinShare(),
            screening.farTwinShare(),
            screening.farTwin(),
            bytes),
        usual.ascent(),
        usual.fit(),
        usual.profile(),
        usual.shortlist(),
        usual.several(),
        usual.outliers(),
        usual.answer());
  }
}
