package ohmtrail.cli.casefile;

import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.survey.TestLine;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * A test as people type it, on one line and in the words of a case file: {@code heater at hall-2:
 * hall-2 hot-neutral 117.9 V; around panel to hall-1 hot 12.4 A}.
 *
 * @param before the case with the meters and loads that the test takes, but without the test; as it
 *     was where anything is wrong
 * @param test what was typed; empty where anything is wrong
 * @param wrong what is wrong, in sentences
 */
public record TypedTest(CaseFile before, Optional<Test> test, List<String> wrong) {
  /** Copies the list. */
  public TypedTest {
    wrong = List.copyOf(wrong);
  }

  /** Reads it. */
  public static TypedTest of(CaseFile taken, String line) {
    TestLine read = TestLine.of(taken.survey(), taken.circuit(), line);
    Survey survey = read.survey();
    List<Test> tests = survey.tests();
    return read.wrong().isEmpty()
        ? new TypedTest(
            taken.with(survey.withTests(taken.survey().tests())),
            Optional.of(tests.get(tests.size() - 1)),
            List.of())
        : new TypedTest(taken, Optional.empty(), read.wrong());
  }
}
