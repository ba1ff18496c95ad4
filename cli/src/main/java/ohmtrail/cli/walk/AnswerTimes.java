package ohmtrail.cli.walk;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.circumstances.TestTime;
import ohmtrail.survey.Test;

/** When the first answer of each test came, taken down as it comes. */
public final class AnswerTimes {
  /** Takes nothing down. */
  static final AnswerTimes NONE = new AnswerTimes(Optional.empty());

  private final Optional<Supplier<LocalDateTime>> clock;

  /** The tests that were there before have what the case says of them, or nothing. */
  private final Map<String, Optional<TestTime>> known = new LinkedHashMap<>();

  private AnswerTimes(Optional<Supplier<LocalDateTime>> clock) {
    this.clock = clock;
  }

  /** Of all that comes after a case as it was read, if there was one. */
  static AnswerTimes since(Optional<CaseFile> caseFile, Supplier<LocalDateTime> clock) {
    AnswerTimes times = new AnswerTimes(Optional.of(clock));
    caseFile.ifPresent(
        read ->
            read.survey().tests().stream()
                .map(Test::name)
                .forEach(test -> times.known.put(test, read.circumstances().timeOf(test))));
    return times;
  }

  /** The case with the time of each test; a test that is new is stamped now. */
  CaseFile stamped(CaseFile caseFile) {
    if (clock.isEmpty()) {
      return caseFile;
    }
    known.keySet().retainAll(caseFile.survey().tests().stream().map(Test::name).toList());
    List<TestTime> times = new ArrayList<>();
    for (Test test : caseFile.survey().tests()) {
      known.computeIfAbsent(
          test.name(), name -> Optional.of(new TestTime(name, clock.get().get().withNano(0))));
      known.get(test.name()).ifPresent(times::add);
    }
    return caseFile.with(caseFile.circumstances().withTimes(times));
  }
}
