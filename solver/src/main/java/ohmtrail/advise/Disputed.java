package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.SlipBelief;
import ohmtrail.locate.Verdict;
import ohmtrail.problem.Slip;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * The readings that an answer doubts, or hangs on: what further readings are not planned on, and
 * what is taken again before a box is opened.
 *
 * @param survey the readings
 * @param diagnosis of them
 */
record Disputed(Survey survey, Diagnosis diagnosis) {
  /** A reading more probably wrong than this is not planned on. */
  private static final double PROBABLY_WRONG = 0.5;

  /** The survey without the readings that are probably not what they are written down as. */
  Survey believed() {
    Set<String> slipped = slippedTests();
    List<Test> tests = new ArrayList<>();
    int place = 0;
    for (Test test : survey.tests()) {
      List<Reading> kept = new ArrayList<>();
      for (Reading reading : test.readings()) {
        FittedReading fitted = diagnosis.readings().get(place++);
        boolean isRight = fitted.wrongProbability() < PROBABLY_WRONG;
        if (isRight && !slipped.contains(test.name())) {
          kept.add(reading);
        }
      }
      tests.add(test.withReadings(kept));
    }
    return survey.withTests(tests);
  }

  /** The tests that the likeliest slip, where one is likely, takes for something else. */
  private Set<String> slippedTests() {
    Optional<Slip> slip = diagnosis.likelySlip().map(SlipBelief::slip);
    if (slip.isEmpty()) {
      return Set.of();
    }
    if (slip.get() instanceof Slip.LoadDidNotDraw off) {
      return Set.copyOf(off.tests());
    }
    if (slip.get() instanceof Slip.LoadDrewLess low) {
      return Set.copyOf(low.tests());
    }
    if (slip.get() instanceof Slip.NoSupply none) {
      return namesFrom(none.test());
    }
    if (slip.get() instanceof Slip.UnlistedLoad load) {
      return namesFrom(load.test());
    }
    if (slip.get() instanceof Slip.SharedNeutral shared) {
      return namesFrom(shared.test());
    }
    // The supply is what it is now.
    return slip.get() instanceof Slip.SupplyMoved moved
        ? names(survey.tests().subList(0, place(moved.test())))
        : Set.of();
  }

  private Set<String> namesFrom(String test) {
    return names(survey.tests().subList(place(test), survey.tests().size()));
  }

  private int place(String test) {
    return survey.tests().stream().map(Test::name).toList().indexOf(test);
  }

  private static Set<String> names(List<Test> tests) {
    return tests.stream().map(Test::name).collect(Collectors.toUnmodifiableSet());
  }

  /** What is taken again before a box is opened; empty where nothing asks for it. */
  Optional<Choice.Read> again() {
    return carrying().or(this::slipped).filter(visit -> !isRepeated(visit)).or(this::farthest);
  }

  /** Where nothing explains the readings, the one farthest off that was not read twice yet. */
  private Optional<Choice.Read> farthest() {
    return diagnosis.verdict() == Verdict.UNEXPLAINED
        ? IntStream.range(0, diagnosis.readings().size())
            .boxed()
            .sorted(Comparator.comparingDouble(place -> -sigmasOff(place)))
            .flatMap(place -> visit(place).stream())
            .filter(visit -> !isRepeated(visit))
            .findFirst()
        : Optional.empty();
  }

  private double sigmasOff(int place) {
    return Math.abs(diagnosis.readings().get(place).residualSigmas());
  }

  private Optional<Choice.Read> carrying() {
    return diagnosis.support().carrying().stream()
        .findFirst()
        .flatMap(carrying -> visit(carrying.reading()));
  }

  /** The reading of that place alone. */
  private Optional<Choice.Read> visit(int place) {
    int before = 0;
    for (Test test : survey.tests()) {
      int at = place - before;
      if (at < test.readings().size()) {
        return Optional.of(again(test, test.readings().get(at)));
      }
      before += test.readings().size();
    }
    return Optional.empty();
  }

  /** Under a name of its own, as every test that is taken. */
  private Choice.Read again(Test test, Reading reading) {
    return new Choice.Read(
        List.of(
            test.withReadings(List.of(reading.showing(0)))
                .named(survey.freeTestName(test.name()))));
  }

  /** The first reading of what a likely slip is about, of a step one before it with nothing on. */
  private Optional<Choice.Read> slipped() {
    boolean stepped =
        diagnosis.likelySlip().filter(it -> it.slip() instanceof Slip.SupplyMoved).isPresent();
    Set<String> slipped = slippedTests();
    return survey.tests().stream()
        .filter(test -> slipped.contains(test.name()) && !test.readings().isEmpty())
        .filter(test -> !stepped || test.loads().isEmpty())
        .findFirst()
        .map(test -> again(test, test.readings().get(0)));
  }

  /** Whether that was read twice already. */
  private boolean isRepeated(Choice.Read visit) {
    Test asked = visit.tests().get(0);
    Reading wanted = asked.readings().get(0);
    return survey.tests().stream()
            .filter(test -> test.loads().equals(asked.loads()))
            .filter(test -> test.isDead() == asked.isDead())
            .flatMap(test -> test.readings().stream())
            .filter(
                reading ->
                    reading.tap().equals(wanted.tap()) && reading.meter().equals(wanted.meter()))
            .count()
        > 1;
  }
}
