package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The advice on small circuits against a search of all plans: every sequence of visits, a few deep,
 * with any box opened at any time in between, each visit in the bands that the advice itself thinks
 * of.
 */
class PlanSearchTest {
  /** The project's aim: at most so much more than the best of all plans. */
  private static final double AIM = 1.05;

  /**
   * Where the best plan opens a box before anything is read, the aim is missed: 8.3 and 6.7 % more
   * measured, for the advice weighs a box without the visit that could follow. So is it in places
   * by one step alone. Held here so that it does not get worse unseen.
   */
  private static final double HELD = 1.09;

  private static final double ROUNDING = 1e-9;

  /** Weights below this are not followed; they move no mean by more than a few seconds. */
  private static final double NEGLIGIBLE = 1e-4;

  /** A panel and three receptacles. */
  @ParameterizedTest
  @CsvSource({"3, 2, 15", "3, 2, 40", "3, 2, 8"})
  void theAdviceCostsAtMostAFewPerCentMoreThanTheBestPlan(
      int receptacles, int visitsDeep, double openingMinutes) {
    World world = world(receptacles, openingMinutes);
    double best = world.best(world.prior(), visitsDeep);

    assertNear(best, world.advised(world.prior(), visitsDeep, Ahead.TWO_STEPS), AIM);
    assertNear(best, world.advised(world.prior(), visitsDeep, Ahead.ONE_STEP), HELD);
  }

  @ParameterizedTest
  @CsvSource({"1, 3, 15", "2, 3, 15"})
  void whereABoxIsBestOpenedFirstTheAdviceCostsLittleMore(
      int receptacles, int visitsDeep, double openingMinutes) {
    assertHeld(receptacles, visitsDeep, openingMinutes);
  }

  /** Minutes of computing each. */
  @ParameterizedTest
  @Tag("study")
  @CsvSource({"2, 4, 15", "3, 3, 15", "3, 3, 40", "3, 3, 8", "4, 2, 15"})
  void soItDoesAgainstDeeperPlansAndOnMoreBoxes(
      int receptacles, int visitsDeep, double openingMinutes) {
    assertHeld(receptacles, visitsDeep, openingMinutes);
  }

  private static void assertHeld(int receptacles, int visitsDeep, double openingMinutes) {
    World world = world(receptacles, openingMinutes);
    double best = world.best(world.prior(), visitsDeep);
    for (Ahead ahead : Ahead.values()) {
      assertNear(best, world.advised(world.prior(), visitsDeep, ahead), HELD);
    }
  }

  private static World world(int receptacles, double openingMinutes) {
    return new World(
        Runs.chain(receptacles), Minutes.defaults().with(Chore.OPEN_BOX, openingMinutes));
  }

  private static void assertNear(double best, double advised, double most) {
    assertTrue(
        best <= advised + ROUNDING && advised <= most * best,
        "advised " + advised + " min, best of all plans " + best + " min");
  }

  /** How far the advice looks. */
  private enum Ahead {
    ONE_STEP,
    TWO_STEPS
  }

  /** What is known and at hand. */
  private static final class State {
    /** Of the beliefs by the readings alone, up to a factor. */
    private final double[] weights;

    /** A bit for each box that was opened and looked fine. */
    private final int opened;

    /** Minutes to get the load. */
    private final double toFetch;

    State(double[] weights, int opened, double toFetch) {
      this.weights = weights;
      this.opened = opened;
      this.toFetch = toFetch;
    }

    boolean isClosed(int box) {
      return (opened & 1 << box) == 0;
    }

    State fine(int box) {
      return new State(weights, opened | 1 << box, toFetch);
    }

    State after(BandedVisit visit, int band) {
      double[] then = weights.clone();
      for (int b = 0; b < then.length; b++) {
        then[b] *= visit.bands().get(b)[band];
      }
      return new State(then, opened, visit.needsLoad() ? 0 : toFetch);
    }
  }

  /** A circuit whose visits have a handful of outcomes, independent given the fault. */
  private static final class World {
    private final Beliefs beliefs;
    private final BoxShares shares;
    private final OpeningMinutes opening;
    private final double[] openings;
    private final SecondStep second;
    private final List<BandedVisit> visits = new ArrayList<>();
    private final double fetching;

    World(Circuit circuit, Minutes minutes) {
      Survey survey = Runs.survey(Runs.HEATER_WATTS);
      Timetable timetable = new Timetable(circuit, minutes);
      Posterior posterior = new Locator(circuit, Runs.USUAL).weigh(survey);
      double[] point =
          posterior.diagnosis().bestPoint().stream().mapToDouble(Double::doubleValue).toArray();
      beliefs = Beliefs.of(circuit, posterior);
      shares = new BoxShares(beliefs);
      openings = timetable.openings(survey);
      opening = new OpeningMinutes(openings, timetable.wrongStop());
      second = new SecondStep(shares, opening);
      fetching = timetable.fetching(Situation.START);
      List<Choice.Read> chosen =
          Visits.of(circuit, survey).stream().filter(World::isPlain).toList();
      Forecast forecast = new Forecast(circuit, survey, chosen, Runs.USUAL, point, beliefs);
      List<Forecast.Conditional> conditionals =
          beliefs.all().stream().map(forecast::under).toList();
      for (Choice.Read visit : chosen) {
        List<Gaussian> shows =
            conditionals.stream().map(conditional -> conditional.of(visit)).toList();
        BandedVisit banded =
            BandedVisit.of(timetable.following(visit), !visit.loads().isEmpty(), shows, shares);
        visits.add(banded);
        second.add(banded);
      }
    }

    /** By the low-impedance meter with nothing on, or before and under the heater plugged in. */
    private static boolean isPlain(Choice.Read visit) {
      boolean here = visit.loads().stream().allMatch(use -> use.box().equals(visit.box()));
      return visit.loads().isEmpty()
          ? visit.readings().size() == 1 && visit.readings().get(0).meter().equals("low")
          : here && visit.tests().size() == 2 && visit.readings().size() == 2;
    }

    State prior() {
      double[] weights = new double[shares.beliefs()];
      for (int b = 0; b < weights.length; b++) {
        weights[b] = shares.prior(b);
      }
      return new State(weights, 0, fetching);
    }

    /** The least expected minutes with so many visits left. */
    double best(State state, int left) {
      double best = opening.expected(masses(state));
      for (int box = 0; box < openings.length && left > 0; box++) {
        if (openings[box] < best && isWorthFollowing(state, box)) {
          double then = openings[box] + missing(state, box) * best(state.fine(box), left);
          best = Math.min(best, then);
        }
      }
      for (int v = 0; v < visits.size() && left > 0; v++) {
        double own = visits.get(v).minutes(state.toFetch);
        if (own < best) {
          ToDoubleFunction<State> then = after -> best(after, left - 1);
          best = Math.min(best, own + mean(visits.get(v), state, then));
        }
      }
      return best;
    }

    /** What the same minutes are when each step is the one that looks best. */
    double advised(State state, int left, Ahead ahead) {
      double opened = opening.expected(masses(state));
      if (left == 0) {
        return opened;
      }
      ToDoubleFunction<State> looks = after -> looks(after, ahead);
      double least = opened;
      Optional<BandedVisit> chosen = Optional.empty();
      for (BandedVisit visit : visits) {
        double expected = visit.minutes(state.toFetch) + mean(visit, state, looks);
        if (expected < least) {
          least = expected;
          chosen = Optional.of(visit);
        }
      }
      if (chosen.isEmpty()) {
        return openFirst(state, left, ahead);
      }
      ToDoubleFunction<State> then = after -> advised(after, left - 1, ahead);
      return chosen.get().minutes(state.toFetch) + mean(chosen.get(), state, then);
    }

    private double looks(State after, Ahead ahead) {
      double opened = opening.expected(masses(after));
      return switch (ahead) {
        case ONE_STEP -> opened;
        case TWO_STEPS -> second.expected(lookedAt(after), opened, after.toFetch);
      };
    }

    private double mean(BandedVisit visit, State state, ToDoubleFunction<State> minutes) {
      double sum = 0;
      double all = notFound(state);
      for (int k = 0; k < BandedVisit.BANDS; k++) {
        State after = state.after(visit, k);
        double probability = notFound(after) / all;
        if (probability > NEGLIGIBLE) {
          sum += probability * minutes.applyAsDouble(after);
        }
      }
      return sum;
    }

    /** Opens the box that is likeliest for its minutes, and goes on when it looked fine. */
    private double openFirst(State state, int left, Ahead ahead) {
      double[] masses = masses(state);
      double stopped = opening.expected(masses);
      int box = mostPerMinute(masses);
      if (!isWorthFollowing(state, box)) {
        return stopped;
      }
      double then = missing(state, box) * advised(state.fine(box), left, ahead);
      return Math.min(stopped, openings[box] + then);
    }

    private int mostPerMinute(double[] masses) {
      int most = 0;
      for (int box = 1; box < masses.length; box++) {
        most = masses[box] / openings[box] > masses[most] / openings[most] ? box : most;
      }
      return most;
    }

    /** A box that may hold the joint, and may not. */
    private boolean isWorthFollowing(State state, int box) {
      double mass = masses(state)[box];
      return mass > NEGLIGIBLE && mass < 1 - NEGLIGIBLE;
    }

    private double missing(State state, int box) {
      return 1 - masses(state)[box];
    }

    /** Probability of each box, those that were opened apart; with the sound circuit it is one. */
    private double[] masses(State state) {
      double[] masses = new double[shares.boxes()];
      double all = notFound(state);
      for (int box = 0; box < masses.length; box++) {
        for (int b = 0; b < state.weights.length && state.isClosed(box); b++) {
          masses[box] += state.weights[b] * share(b, box) / all;
        }
      }
      return masses;
    }

    /** The beliefs by the readings and by what was opened; they sum to one. */
    private double[] lookedAt(State state) {
      double all = notFound(state);
      double[] weights = new double[state.weights.length];
      for (int b = 0; b < weights.length; b++) {
        weights[b] = state.weights[b] * elsewhere(state, b) / all;
      }
      return weights;
    }

    private double notFound(State state) {
      double sum = 0;
      for (int b = 0; b < state.weights.length; b++) {
        sum += state.weights[b] * elsewhere(state, b);
      }
      return sum;
    }

    /** What a belief leaves for other places than the boxes that were opened. */
    private double elsewhere(State state, int belief) {
      double sum = 1;
      for (int box = 0; box < shares.boxes(); box++) {
        sum -= state.isClosed(box) ? 0 : share(belief, box);
      }
      return Math.max(0, sum);
    }

    private double share(int belief, int box) {
      return beliefs.all().get(belief).boxes().get(box);
    }
  }
}
