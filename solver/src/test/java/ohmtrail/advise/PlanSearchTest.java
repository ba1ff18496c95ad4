package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Survey;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The advice on small circuits against a search of all plans: every sequence of visits, a few deep,
 * with boxes opened in between, each visit in the bands that the advice itself thinks of.
 */
class PlanSearchTest {
  /** The project's aim: at most so much more than the best of all plans. */
  private static final double MOST = 1.05;

  /** Weights below this are not followed; they move no mean by more than a few seconds. */
  private static final double NEGLIGIBLE = 1e-4;

  @ParameterizedTest
  @CsvSource({"2, 4, 15", "3, 3, 15", "3, 3, 40", "3, 3, 8"})
  void theAdviceCostsAtMostAFewPerCentMoreThanTheBestPlan(
      int receptacles, int visitsDeep, double openingMinutes) {
    Minutes minutes = Minutes.defaults().with(Chore.OPEN_BOX, openingMinutes);
    World world = new World(Runs.chain(receptacles), minutes);

    double best = world.best(world.prior(), visitsDeep, world.fetching);
    double advised = world.advised(world.prior(), visitsDeep, world.fetching);

    assertTrue(
        best <= advised + 1e-9 && advised <= MOST * best,
        "advised " + advised + " min, best of all plans " + best + " min");
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

    double[] prior() {
      double[] weights = new double[shares.beliefs()];
      for (int b = 0; b < weights.length; b++) {
        weights[b] = shares.prior(b);
      }
      return weights;
    }

    /** The least expected minutes with so many visits left. */
    double best(double[] weights, int left, double toFetch) {
      double best = opening.expected(masses(weights));
      if (left == 0) {
        return best;
      }
      best = Math.min(best, openFirst(weights, left, toFetch, true));
      for (BandedVisit visit : visits) {
        double own = visit.minutes(toFetch);
        if (own < best) {
          best = Math.min(best, own + after(visit, weights, left, toFetch, true));
        }
      }
      return best;
    }

    /** What the same minutes are when each step is the one that two steps ahead look best. */
    double advised(double[] weights, int left, double toFetch) {
      double opened = opening.expected(masses(weights));
      if (left == 0) {
        return opened;
      }
      double least = opened;
      int chosen = -1;
      for (int v = 0; v < visits.size(); v++) {
        double own = visits.get(v).minutes(toFetch) + twoSteps(visits.get(v), weights, toFetch);
        if (own < least) {
          least = own;
          chosen = v;
        }
      }
      if (chosen < 0) {
        return openFirst(weights, left, toFetch, false);
      }
      BandedVisit visit = visits.get(chosen);
      return visit.minutes(toFetch) + after(visit, weights, left, toFetch, false);
    }

    private double twoSteps(BandedVisit visit, double[] weights, double toFetch) {
      double sum = 0;
      for (int k = 0; k < BandedVisit.BANDS; k++) {
        double[] then = times(weights, visit, k);
        double total = normalise(then);
        if (total > NEGLIGIBLE) {
          double opened = opening.expected(masses(then));
          sum += total * second.expected(then, opened, visit.needsLoad() ? 0 : toFetch);
        }
      }
      return sum;
    }

    private double after(
        BandedVisit visit, double[] weights, int left, double toFetch, boolean all) {
      double sum = 0;
      double fetched = visit.needsLoad() ? 0 : toFetch;
      for (int k = 0; k < BandedVisit.BANDS; k++) {
        double[] then = times(weights, visit, k);
        double total = normalise(then);
        if (total > NEGLIGIBLE) {
          sum += total * (all ? best(then, left - 1, fetched) : advised(then, left - 1, fetched));
        }
      }
      return sum;
    }

    /** Opens the first box, and goes on from there when it looked fine. */
    private double openFirst(double[] weights, int left, double toFetch, boolean all) {
      double[] masses = masses(weights);
      int box = mostPerMinute(masses);
      if (masses[box] < NEGLIGIBLE) {
        return opening.expected(masses);
      }
      double[] rest = weights.clone();
      for (int b = 0; b < rest.length; b++) {
        rest[b] *= 1 - beliefs.all().get(b).boxes().get(box);
      }
      double missing = normalise(rest);
      // A belief of two boxes keeps its shares: what was opened is left in, a little too dear.
      double then =
          missing < NEGLIGIBLE
              ? 0
              : all
                  ? Math.min(opening.expected(masses(rest)), best(rest, left - 1, toFetch))
                  : advised(rest, left - 1, toFetch);
      return Math.min(opening.expected(masses), openings[box] + missing * then);
    }

    private int mostPerMinute(double[] masses) {
      int most = 0;
      for (int box = 1; box < masses.length; box++) {
        most = masses[box] / openings[box] > masses[most] / openings[most] ? box : most;
      }
      return most;
    }

    private double[] masses(double[] weights) {
      double[] masses = new double[shares.boxes()];
      shares.fill(masses, weights);
      return masses;
    }

    private static double[] times(double[] weights, BandedVisit visit, int band) {
      double[] then = new double[weights.length];
      for (int b = 0; b < then.length; b++) {
        then[b] = weights[b] * visit.bands().get(b)[band];
      }
      return then;
    }

    private static double normalise(double[] weights) {
      double total = 0;
      for (double weight : weights) {
        total += weight;
      }
      for (int b = 0; b < weights.length && total > 0; b++) {
        weights[b] /= total;
      }
      return total;
    }
  }
}
