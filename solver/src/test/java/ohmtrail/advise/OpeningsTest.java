package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.slip.AveragedLocator;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;

/** Looking into a box before anything else. */
class OpeningsTest {
  private static final double ROUNDING = 1e-12;
  private static final double MINUTES = 16;
  private static final Minutes DEFAULTS = Minutes.defaults();

  private final Circuit circuit = Runs.chain(3);

  private Beliefs beliefs(Survey survey) {
    return Beliefs.of(
        circuit,
        new AveragedLocator().posterior(new Problem(circuit, survey, Runs.USUAL)),
        Optional.empty());
  }

  private static double[] minutes(Beliefs beliefs) {
    return IntStream.range(0, beliefs.boxNames().size()).mapToDouble(place -> MINUTES).toArray();
  }

  /** Bayes: p(other | not here) = p(other) / (1 - p(here)). */
  @Test
  void whatIsBelievedAfterALookIsWhatWasBelievedWithoutThatPlace() {
    Beliefs before = beliefs(Runs.survey(Runs.HEATER_WATTS));
    double[] masses = before.boxMasses();
    for (int place = 0; place < masses.length; place++) {
      Beliefs after = before.withoutPlace(place);
      assertEquals(before.all().size(), after.all().size());
      assertEquals(before.healthy() / (1 - masses[place]), after.healthy(), ROUNDING);
      for (int other = 0; other < masses.length; other++) {
        double expected = other == place ? 0 : masses[other] / (1 - masses[place]);
        assertEquals(expected, after.boxMasses()[other], ROUNDING);
      }
    }
  }

  @Test
  void aLookIsWorthItsMinutesAndWhatIsLeftWhereItShowsNothing() {
    Beliefs beliefs = beliefs(Runs.survey(Runs.HEATER_WATTS));
    double after = 10;
    Openings.Weighed best =
        new Openings(beliefs, minutes(beliefs), left -> after).best(List.of(0, 1, 2, 3));

    double likeliest =
        IntStream.range(0, 4).mapToDouble(b -> beliefs.boxMasses()[b]).max().getAsDouble();
    assertEquals(likeliest, best.found(), ROUNDING);
    assertEquals(MINUTES + (1 - likeliest) * after, best.expectedMinutes(), ROUNDING);
  }

  /** Not the likeliest box for its minutes, but the one whose absence leaves the least to do. */
  @Test
  void whatIsLeftDecidesWhichBoxIsOpened() {
    Beliefs beliefs = beliefs(Runs.survey(Runs.HEATER_WATTS));
    int settling = 2;
    Openings openings =
        new Openings(beliefs, minutes(beliefs), left -> left.boxMasses()[settling] == 0 ? 0 : 100);

    assertEquals(settling, openings.best(List.of(0, 1, 2, 3)).place());
  }

  @Test
  void aLookIsWorthNoMoreMinutesThanOpeningEverythingAfterIt() {
    Survey survey =
        Runs.filled(
            circuit,
            Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-2"), Runs.heater("box-2", "box-2")),
            new Degradation("box-3/neutral/incoming", 0.4));
    Beliefs beliefs = beliefs(survey);
    Advice advice = new Advisor(circuit, Runs.USUAL, DEFAULTS).next(survey, Situation.START);
    Option open =
        advice.options().stream()
            .filter(option -> option.choice() instanceof Choice.Open)
            .findFirst()
            .orElseThrow();
    double found = open.outcomes().get(0).probability();
    int place = beliefs.boxNames().indexOf(((Choice.Open) open.choice()).box());
    double opened =
        new OpeningMinutes(
                new Timetable(circuit, DEFAULTS, Runs.USUAL).openings(survey),
                DEFAULTS.of(Chore.WRONG_STOP))
            .expected(beliefs.withoutPlace(place).boxMasses());

    assertTrue(
        open.expectedMinutes() <= open.ownMinutes() + (1 - found) * opened + ROUNDING,
        open.expectedMinutes() + " min");
  }
}
