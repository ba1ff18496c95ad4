package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.advise.safety.SafetyCheck;
import ohmtrail.advise.stop.Soundness;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import ohmtrail.reference.UsualValue;
import ohmtrail.report.OpeningPlan;
import ohmtrail.report.caution.SupplySide;
import ohmtrail.slip.AveragedLocator;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;

/**
 * Says what to do next. Immutable; safe to share.
 *
 * <p>Every visit that does no harm under any believable hypothesis is simulated roughly, the best
 * of them closely. The same case always gets the same advice.
 */
public final class Advisor {
  /** Outcomes simulated of every visit, with none after it. */
  private static final int ROUGH_SAMPLES = 24;

  /** Visits looked at two steps ahead, and outcomes of each. */
  private static final int LIKELY = 12;

  private static final int LIKELY_SAMPLES = 16;

  /** Those of them that are looked at closely, and outcomes of each. */
  private static final int BEST = 4;

  private static final int BEST_SAMPLES = 96;

  /**
   * A visit earns so much of its own minutes by what it tells, as far as that is estimated; the
   * rest it may earn by what is better read after it.
   */
  private static final double LEAST_EARNED = 0.2;

  /** Of the joints that one look missed a second one finds so many. */
  private static final double SECOND_LOOK = UsualValue.SECOND_LOOK_SHARE.value();

  private final Circuit circuit;
  private final Assumptions assumptions;
  private final Timetable timetable;
  private final Set<Harm> minded;

  /**
   * Prepares.
   *
   * @param circuit the circuit
   * @param assumptions priors and tolerances
   * @param minutes how long each step takes
   */
  public Advisor(Circuit circuit, Assumptions assumptions, Minutes minutes) {
    this(circuit, assumptions, minutes, EnumSet.allOf(Harm.class));
  }

  /** With these harms to mind alone, for a test of what each of them keeps from being advised. */
  Advisor(Circuit circuit, Assumptions assumptions, Minutes minutes, Set<Harm> minded) {
    this.minded = Set.copyOf(minded);
    this.circuit = circuit;
    this.assumptions = assumptions;
    this.timetable = new Timetable(circuit, minutes, assumptions);
  }

  /**
   * Weighs what could be done next.
   *
   * @param survey the meters and loads at hand, and the readings taken so far
   * @param situation where the person who searches stands
   * @throws ohmtrail.survey.SurveyException when the survey does not fit the circuit
   */
  public Advice next(Survey survey, Situation situation) {
    return next(
        survey,
        situation,
        new AveragedLocator().posterior(new Problem(circuit, survey, assumptions)));
  }

  /**
   * The same where the readings have been weighed already.
   *
   * @param posterior of the same survey
   */
  public Advice next(Survey survey, Situation situation, Posterior posterior) {
    return new Turn(survey, situation, posterior).advice();
  }

  /**
   * What a visit of somebody's own choice could do under what is believed: {@link #next} would
   * refuse it. Empty where it does no harm.
   *
   * @param visit fits the circuit and the survey
   * @throws ohmtrail.survey.SurveyException when the survey does not fit the circuit
   */
  public List<Hazard> hazards(Choice.Read visit, Survey survey, Situation situation) {
    Posterior posterior =
        new AveragedLocator().posterior(new Problem(circuit, survey, assumptions));
    return new Turn(survey, situation, posterior).hazards(List.of(visit)).get(0);
  }

  /** One question. */
  private final class Turn {
    private final Survey survey;
    private final Situation situation;
    private final Problem problem;
    private final Circuit wired;
    private final Diagnosis diagnosis;
    private final Beliefs beliefs;
    private final Beliefs whole;
    private final OpeningMinutes opening;
    private final BoxShares shares;
    private final double[] point;
    private final boolean supplyFirst;
    private final Disputed disputed;

    Turn(Survey survey, Situation situation, Posterior posterior) {
      this.survey = survey;
      this.situation = situation;
      this.problem = new Problem(circuit, survey, assumptions);
      this.diagnosis = posterior.diagnosis();
      this.wired = posterior.wired().orElse(circuit);
      this.beliefs = Beliefs.of(wired, posterior, situation.openBox());
      // What is left out of planning for its little probability may do harm all the same.
      this.whole = Beliefs.whole(wired, posterior, situation.openBox());
      this.opening = new OpeningMinutes(timetable.openings(survey), timetable.wrongStop());
      this.shares = new BoxShares(beliefs);
      this.point = diagnosis.bestPointArray();
      this.supplyFirst = SupplySide.isAtFault(problem, diagnosis);
      this.disputed = new Disputed(survey, diagnosis);
    }

    Advice advice() {
      Optional<Choice.Read> again = disputed.again();
      List<Choice.Read> visits =
          Stream.concat(
                  Visits.of(circuit, survey, disputed.believed(), situation).stream(),
                  again.stream())
              .distinct()
              .toList();
      List<RuledOut> ruledOut = new ArrayList<>();
      List<Choice.Read> safe = new ArrayList<>();
      List<Choice.Read> brief = new ArrayList<>();
      List<List<Hazard>> hazards = hazards(visits);
      for (int place = 0; place < visits.size(); place++) {
        Choice.Read visit = visits.get(place);
        if (hazards.get(place).isEmpty()) {
          if (leavesTheSupplyAlone(visit)) {
            safe.add(visit);
          }
          continue;
        }
        ruledOut.add(new RuledOut(visit, hazards.get(place)));
        boolean hot = hazards.get(place).stream().allMatch(each -> each.harm() == Harm.HEAT);
        if (hot && leavesTheSupplyAlone(visit) && mayBeBrief(visit)) {
          brief.add(visit.briefly());
        }
      }
      List<List<Hazard>> ofBrief = hazards(brief);
      for (int place = 0; place < brief.size(); place++) {
        if (ofBrief.get(place).isEmpty()) {
          safe.add(brief.get(place));
        }
      }
      Map<Choice.Read, List<Gaussian>> forecasts = forecasts(safe);
      List<BandedVisit> further = further(forecasts);
      Remaining toGo =
          MinutesToGo.beyond(opening, timetable.openings(survey), further, beliefs.boxMasses());
      SecondStep second = new SecondStep(shares, toGo, further);
      Lookahead roughly = lookahead(opening, new SecondStep(shares, opening, further));
      Optional<Choice.Read> repeated =
          again.stream()
              .flatMap(visit -> Stream.of(visit, visit.briefly()))
              .filter(safe::contains)
              .findFirst();
      List<Option> options =
          new ArrayList<>(weighVisits(forecasts, roughly, lookahead(toGo, second), repeated));
      List<Option> stops = weighStops();
      Option look = weighOpening(second);
      if (stops.stream().noneMatch(stop -> stop.choice().equals(look.choice()))) {
        options.add(look);
      }
      options.addAll(stops);
      options.sort(Comparator.comparingDouble(Option::expectedMinutes));
      if (repeated.isPresent() && !(options.get(0).choice() instanceof Choice.Read)) {
        options.sort(
            Comparator.comparing(option -> !option.choice().equals(repeated.orElseThrow())));
      }
      if (repeated.isPresent() && !supplyFirst && diagnosis.verdict() == Verdict.UNEXPLAINED) {
        // On readings that nothing explains no box is opened and no plan is made.
        options.removeIf(option -> !option.choice().equals(repeated.orElseThrow()));
      }
      if (supplyFirst) {
        // Nothing read in the run tells more before the supply stands where it should.
        options.sort(
            Comparator.comparing(
                option ->
                    !option.choice().equals(new Choice.Stop(Choice.Stop.Reason.CALL_UTILITY))));
      }
      return new Advice(
          diagnosis, options, ruledOut, plan(), opening.expected(beliefs.boxMasses()));
    }

    /** What each visit could do, in their order. */
    List<List<Hazard>> hazards(List<Choice.Read> visits) {
      List<SafetyCheck> checks =
          SafetyCheck.all().stream().filter(check -> minded.contains(check.harm())).toList();
      Screening screening =
          new Screening(whole, survey, assumptions, timetable, point, visits, checks);
      ResidualScreening residual = new ResidualScreening(whole, survey, assumptions, point, visits);
      List<List<Hazard>> all = new ArrayList<>();
      for (Choice.Read visit : visits) {
        List<Hazard> hazards = new ArrayList<>(screening.hazards(visit));
        residual
            .hazard(visit)
            .filter(hazard -> minded.contains(hazard.harm()))
            .ifPresent(hazards::add);
        all.add(List.copyOf(hazards));
      }
      return all;
    }

    /** What is plugged in on a supply that is out of order may get any voltage. */
    private boolean leavesTheSupplyAlone(Choice.Read visit) {
      return !supplyFirst || visit.loads().isEmpty();
    }

    /** Where heat alone forbids it: loads that draw at once what they will draw. */
    private boolean mayBeBrief(Choice.Read visit) {
      return visit.tests().stream()
          .flatMap(test -> LoadInUse.drawing(test, survey, circuit).stream())
          .allMatch(use -> survey.load(use.load()).settlesAtOnce() && isWithinReach(use, visit));
    }

    /** A load with a plug is taken along; a second person stands at a switch, not at a plug. */
    private boolean isWithinReach(LoadInUse use, Choice.Read visit) {
      return use.box().equals(visit.box()) || survey.hardWired().contains(use);
    }

    private Lookahead lookahead(Remaining remaining, SecondStep second) {
      return new Lookahead(
          beliefs, shares, remaining, second, survey, assumptions.value(Assumption.WRONG_READING));
    }

    private List<Option> weighVisits(
        Map<Choice.Read, List<Gaussian>> forecasts,
        Lookahead roughly,
        Lookahead closely,
        Optional<Choice.Read> repeated) {
      Map<Choice.Read, Double> rough = new LinkedHashMap<>();
      forecasts.forEach(
          (visit, forecast) ->
              rough.put(
                  visit,
                  timetable.of(visit, survey, situation)
                      + roughly.oneStep(
                          visit,
                          forecast,
                          timetable.fetching(timetable.after(visit, situation)),
                          ROUGH_SAMPLES)));
      List<Choice.Read> likely = best(rough, LIKELY);
      followers(forecasts.keySet()).stream()
          .filter(visit -> !likely.contains(visit))
          .forEach(likely::add);
      Map<Choice.Read, Double> closer = new LinkedHashMap<>();
      likely.stream()
          .filter(visit -> pays(visit, forecasts, closely))
          .forEach(
              visit ->
                  closer.put(
                      visit, weigh(visit, forecasts, roughly, LIKELY_SAMPLES).expectedMinutes()));
      return Stream.concat(best(closer, BEST).stream(), repeated.stream())
          .distinct()
          .map(visit -> weigh(visit, forecasts, closely, BEST_SAMPLES))
          .toList();
    }

    /** What tells too little for its minutes is not offered, whatever might come after it. */
    private boolean pays(
        Choice.Read visit, Map<Choice.Read, List<Gaussian>> forecasts, Lookahead lookahead) {
      double fetching = timetable.fetching(timetable.after(visit, situation));
      double without = lookahead.without(timetable.fetching(situation));
      double left =
          lookahead.oneStep(
              visit, forecasts.getOrDefault(visit, List.of()), fetching, BEST_SAMPLES);
      return without - left > LEAST_EARNED * timetable.of(visit, survey, situation);
    }

    private static List<Choice.Read> best(Map<Choice.Read, Double> minutes, int count) {
      List<Choice.Read> best = new ArrayList<>();
      minutes.entrySet().stream()
          .sorted(Map.Entry.comparingByValue())
          .limit(count)
          .forEach(entry -> best.add(entry.getKey()));
      return best;
    }

    /** The visits that are thought of as second ones. */
    private List<BandedVisit> further(Map<Choice.Read, List<Gaussian>> forecasts) {
      return followers(forecasts.keySet()).stream()
          .map(
              visit ->
                  BandedVisit.of(
                      timetable.following(visit, survey),
                      !visit.loads().isEmpty(),
                      forecasts.getOrDefault(visit, List.of()),
                      shares))
          .toList();
    }

    /** Those that may follow: one with a meter alone and one under a load for each box. */
    private List<Choice.Read> followers(Collection<Choice.Read> visits) {
      Map<List<Object>, Choice.Read> first = new LinkedHashMap<>();
      visits.stream()
          .filter(this::mayFollow)
          .forEach(
              visit -> first.putIfAbsent(List.of(visit.box(), visit.loads().isEmpty()), visit));
      return List.copyOf(first.values());
    }

    /**
     * One reading with a meter that draws current, or one under a load plugged in there: beside one
     * with nothing on until the supply's voltage was read so.
     */
    private boolean mayFollow(Choice.Read visit) {
      List<Meter> meters =
          visit.readings().stream().map(reading -> survey.meter(reading.meter())).toList();
      if (visit.isDead()
          || meters.stream().anyMatch(meter -> meter.measurand() != Measurand.VOLTAGE)) {
        return false;
      }
      if (visit.loads().isEmpty()) {
        return meters.size() == 1
            && meters.get(0).inputOhms() < assumptions.value(Assumption.LOW_IMPEDANCE_LIMIT);
      }
      boolean here = visit.loads().stream().allMatch(use -> use.box().equals(visit.box()));
      int tests = isReadIdle() ? 1 : 2;
      return here && meters.size() == tests && visit.tests().size() == tests;
    }

    private boolean isReadIdle() {
      return disputed.believed().tests().stream()
          .filter(test -> !test.isDead() && survey.loadsOn(test).isEmpty())
          .flatMap(test -> test.readings().stream())
          .anyMatch(reading -> reading.measurand() == Measurand.VOLTAGE);
    }

    private Option weigh(
        Choice.Read visit,
        Map<Choice.Read, List<Gaussian>> forecasts,
        Lookahead lookahead,
        int samples) {
      List<Gaussian> forecast = forecasts.getOrDefault(visit, List.of());
      Situation after = timetable.after(visit, situation);
      List<Lookahead.Simulated> outcomes =
          lookahead.twoSteps(visit, forecast, timetable.fetching(after), samples);
      double own = timetable.of(visit, survey, situation);
      double left = outcomes.stream().mapToDouble(Lookahead.Simulated::minutes).average().orElse(0);
      return new Option(
          visit,
          own,
          own + left,
          Bands.of(
              visit, outcomes, beliefs.boxNames(), survey, lookahead.posterior(visit, forecast)));
    }

    private Map<Choice.Read, List<Gaussian>> forecasts(List<Choice.Read> visits) {
      Forecast forecast =
          new Forecast(wired, disputed.believed(), visits, assumptions, point, beliefs);
      Map<Choice.Read, List<Gaussian>> forecasts = new LinkedHashMap<>();
      visits.forEach(visit -> forecasts.put(visit, new ArrayList<>()));
      for (Belief belief : beliefs.all()) {
        Forecast.Conditional conditional = forecast.under(belief);
        forecasts.forEach((visit, list) -> list.add(conditional.of(visit)));
      }
      return forecasts;
    }

    /** The boxes and the supply; what looked fine comes later than its probability says. */
    private OpeningPlan plan() {
      double[] minutes = timetable.openings(survey);
      List<String> names = beliefs.boxNames();
      List<OpeningPlan.Step> steps = new ArrayList<>();
      for (int place = 0; place < minutes.length; place++) {
        steps.add(
            new OpeningPlan.Step(names.get(place), holding(names.get(place)), minutes[place]));
      }
      List<OpeningPlan.Step> looked = steps.stream().map(this::asASecondLookFinds).toList();
      List<String> order = OpeningPlan.quickest(looked).boxes();
      return new OpeningPlan(order.stream().map(box -> steps.get(names.indexOf(box))).toList());
    }

    /** The marginal probability of the answer that a place holds a degraded joint. */
    private double holding(String place) {
      String panel = circuit.panel().name();
      double supply =
          diagnosis.suspects().stream().mapToDouble(Suspect::supplySideProbability).sum();
      if (place.equals(Finding.SUPPLY)) {
        return Math.min(supply, diagnosis.probabilityOf(panel));
      }
      double box = diagnosis.probabilityOf(place);
      return place.equals(panel) ? Math.max(0, box - supply) : box;
    }

    private OpeningPlan.Step asASecondLookFinds(OpeningPlan.Step step) {
      double share = survey.lookedSound().contains(step.box()) ? SECOND_LOOK : 1;
      return new OpeningPlan.Step(step.box(), share * step.probability(), step.minutes());
    }

    /** The best look into a box, or into the supply. */
    private Option weighOpening(SecondStep second) {
      List<String> names = beliefs.boxNames();
      double[] minutes =
          names.stream().mapToDouble(name -> timetable.of(look(name), survey, situation)).toArray();
      double fetching = timetable.fetching(situation);
      // As many visits as are thought of where a visit comes first.
      Openings openings =
          new Openings(beliefs, minutes, left -> second.from(left).expectedWithTwo(fetching));
      Openings.Weighed best = openings.best(closed(names));
      Choice choice = look(names.get(best.place()));
      double own = timetable.of(choice, survey, situation);
      double holds = holding(names.get(best.place()));
      return new Option(
          choice,
          own,
          own + (best.left().isPresent() ? (1 - holds) * best.minutesLeft() : 0),
          openings.outcomes(best, best.left().isPresent() ? holds : 1));
    }

    private static Choice look(String place) {
      return place.equals(Finding.SUPPLY)
          ? new Choice.Stop(Choice.Stop.Reason.CALL_UTILITY)
          : new Choice.Open(place);
    }

    /**
     * Where a bad joint was seen, to make it anew; else the places that nobody looked into yet, or
     * the first one again where there is none left.
     */
    private List<Integer> closed(List<String> names) {
      List<String> order = plan().boxes();
      Set<String> bad = survey.places(Finding.State.BURNT);
      List<Integer> closed =
          order.stream()
              .filter(
                  box -> bad.isEmpty() ? !survey.lookedSound().contains(box) : bad.contains(box))
              .map(names::indexOf)
              .toList();
      return closed.isEmpty() ? List.of(names.indexOf(order.get(0))) : closed;
    }

    private List<Option> weighStops() {
      List<Option> stops = new ArrayList<>();
      double price = timetable.wrongStop();
      if (Soundness.mayBeCalled(problem, diagnosis)) {
        stops.add(
            new Option(
                new Choice.Stop(Choice.Stop.Reason.HEALTHY),
                0,
                (1 - beliefs.healthy()) * price,
                List.of()));
      }
      if (supplyFirst) {
        Choice call = new Choice.Stop(Choice.Stop.Reason.CALL_UTILITY);
        double own = timetable.of(call, survey, situation);
        stops.add(new Option(call, own, own, List.of()));
      }
      return stops;
    }
  }
}
