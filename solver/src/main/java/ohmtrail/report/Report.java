package ohmtrail.report;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Explained;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.OperatingConditions;
import ohmtrail.problem.Problem;
import ohmtrail.report.caution.Caution;
import ohmtrail.report.caution.CautionsThatHold;
import ohmtrail.report.heat.SuspectHeat;
import ohmtrail.slip.AveragedLocator;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;

/**
 * The answer to a problem.
 *
 * <p>Probabilities are those of every hypothesis together. Voltages, currents and heat are worked
 * out at one point, {@link #at}: the fit of the most probable explanation, with the supply of each
 * test where its readings put it. What a sound circuit would show is worked out at {@link
 * #soundAt}: the same supply, loads and lengths with every joint sound; where nothing fits,
 * everything as stated.
 *
 * @param problem what was asked
 * @param diagnosis verdict, probabilities, boxes, suspects, readings and parameters; what is shown
 *     for a reading is shown at {@code at}
 * @param at the point of every figure
 * @param soundAt the point of what a sound circuit would show
 * @param opening in which order to open boxes
 * @param suspects the suspects of the diagnosis with their heat
 * @param danger what comes before everything else; empty where no likely joint can get hot
 * @param tests every test, in the order of the survey
 * @param ghosts boxes of receptacles at which a voltage is held up by next to nothing, by the best
 *     explanation
 * @param missing what would help, the most telling first; empty where the readings settle it, or
 *     contradict each other: then more of the same is no help
 * @param cautions what must not be done on the way, the most pressing first
 * @param withoutFinds the answer without what was seen to be bad; empty where nothing was, or
 *     nothing was read
 */
public record Report(
    Problem problem,
    Diagnosis diagnosis,
    OperatingConditions at,
    OperatingConditions soundAt,
    OpeningOrder opening,
    List<RankedSuspect> suspects,
    Optional<Danger> danger,
    List<TestState> tests,
    List<String> ghosts,
    List<Missing> missing,
    List<Caution> cautions,
    Optional<Diagnosis> withoutFinds) {
  /** No heat is worked out for a suspect less probable than this. */
  private static final double WORTH_HEATING = 1e-3;

  /** From here on more readings are not asked for. */
  private static final double SETTLED = 0.8;

  /**
   * A suspect with its heat.
   *
   * @param suspect the suspect
   * @param heat empty where every joint is on the ground, which carries current only in a fault,
   *     and for suspects of less than one in a thousand
   */
  public record RankedSuspect(Suspect suspect, Optional<SuspectHeat> heat) {}

  /** Copies the lists. */
  public Report {
    suspects = List.copyOf(suspects);
    tests = List.copyOf(tests);
    ghosts = List.copyOf(ghosts);
    missing = List.copyOf(missing);
    cautions = List.copyOf(cautions);
  }

  /** Answers a problem. */
  public static Report of(Problem problem) {
    return of(problem, new AveragedLocator().locate(problem));
  }

  /**
   * States an answer in full.
   *
   * @param located of the same problem
   */
  public static Report of(Problem problem, Diagnosis located) {
    Set<String> joints =
        worthHeating(located)
            .flatMap(suspect -> suspect.joints().stream().limit(1))
            .map(Joint::id)
            .collect(Collectors.toSet());
    Problem explained = located.explained().map(Explained::problem).orElse(problem);
    FittedPoint point = FittedPoint.of(explained, located.asExplained(), joints);
    boolean isAlike = located.likelySlip().isEmpty() || located.explained().isPresent();
    Diagnosis diagnosis =
        located
            .withReadings(isAlike ? point.restated(located.readings()) : located.readings())
            .withVerdict(Undecided.verdict(problem, located));
    List<RankedSuspect> suspects =
        diagnosis.suspects().stream()
            .map(suspect -> new RankedSuspect(suspect, heat(suspect, point)))
            .toList();
    return new Report(
        explained,
        diagnosis,
        point.explained().conditions(),
        point.sound().conditions(),
        OpeningOrder.of(problem, diagnosis),
        suspects,
        diagnosis.verdict() == Verdict.DEGRADED && !diagnosis.isLeftOpen()
            ? Danger.of(suspects)
            : Optional.empty(),
        TestState.of(point.explained(), explained.circuit(), explained.survey()),
        GhostVoltage.boxes(problem, diagnosis),
        isSettled(diagnosis) ? List.of() : Missing.in(problem),
        CautionsThatHold.forAnswer(problem, diagnosis, List.of()),
        withoutFinds(problem));
  }

  private static Optional<Diagnosis> withoutFinds(Problem problem) {
    Survey survey = problem.survey();
    Set<String> seenBad = survey.places(Finding.State.BURNT);
    if (seenBad.isEmpty() || survey.readingCount() == 0) {
      return Optional.empty();
    }
    for (String place : seenBad) {
      survey = survey.without(place);
    }
    return Optional.of(new AveragedLocator().locate(problem.withSurvey(survey)));
  }

  private static Stream<Suspect> worthHeating(Diagnosis diagnosis) {
    return diagnosis.suspects().stream().filter(suspect -> suspect.probability() >= WORTH_HEATING);
  }

  private static Optional<SuspectHeat> heat(Suspect suspect, FittedPoint point) {
    return suspect.probability() < WORTH_HEATING
        ? Optional.empty()
        : SuspectHeat.of(
            suspect,
            point.problem(),
            point.explained(),
            point.explained().conditions().degradations());
  }

  private static boolean isSettled(Diagnosis diagnosis) {
    return switch (diagnosis.verdict()) {
      case UNEXPLAINED -> true;
      case UNDECIDED -> false;
      case HEALTHY -> diagnosis.healthyProbability() >= SETTLED;
      case DEGRADED ->
          diagnosis.badSuspects().stream().mapToDouble(Suspect::probability).min().orElse(0)
              >= SETTLED;
    };
  }

  /** The heat of a suspect of this report. */
  public Optional<SuspectHeat> heatOf(Suspect suspect) {
    return suspects.stream()
        .filter(ranked -> ranked.suspect().equals(suspect))
        .findFirst()
        .flatMap(RankedSuspect::heat);
  }
}
