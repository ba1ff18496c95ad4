package ohmtrail.cli.casefile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.circumstances.CircumstancesWriter;
import ohmtrail.cli.casefile.circumstances.TestTime;
import ohmtrail.cli.casefile.feeder.SettledText;
import ohmtrail.cli.casefile.survey.SurveyWriter;
import ohmtrail.cli.casefile.text.GrowingText;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.RunMap;
import ohmtrail.survey.Survey;

/**
 * The text of a case that goes on: what somebody wrote, comments and all, with what has come since
 * put under its keys. Where that would not say the case as it is now, the case is written anew.
 * Immutable.
 */
public final class CaseText {
  private final String name;
  private final Optional<String> written;

  private CaseText(String name, Optional<String> written) {
    this.name = name;
    this.written = written;
  }

  /** Of a case that nobody wrote yet. */
  public static CaseText unwritten() {
    return new CaseText("", Optional.empty());
  }

  /**
   * Of a case that somebody wrote.
   *
   * @param name the file that it was read from
   * @param written what it held
   */
  public static CaseText of(String name, String written) {
    return new CaseText(name, Optional.of(written));
  }

  /** What somebody wrote; empty where nobody did yet. */
  public Optional<String> written() {
    return written;
  }

  /**
   * A text of a case with lines more under one of its keys; with the key too, where it has not got
   * it.
   *
   * @param lines indented by two spaces or more, each with its line end
   */
  public static String plus(String text, String key, String lines) {
    return GrowingText.of(text).plus(key, lines).toString();
  }

  /** The text that says a case. */
  public String saying(CaseFile now) {
    return written
        .flatMap(text -> continued(mapped(text, now), now))
        .orElseGet(() -> new CaseFileWriter().write(now));
  }

  /**
   * The text with what feeds some boxes put in, all else as it is; empty where that would not say
   * it.
   *
   * @param feeders what feeds each of them; {@link RunMap#ANOTHER_CIRCUIT} for what is on another
   */
  public Optional<String> settling(Map<String, String> feeders) {
    return written.flatMap(text -> read(text).flatMap(before -> settled(text, before, feeders)));
  }

  /** The text with what feeds every box, where it left that open and the case knows it now. */
  private String mapped(String text, CaseFile now) {
    Optional<CaseFile> before = read(text).filter(read -> read.unknown().isPresent());
    if (before.isEmpty() || now.unknown().isPresent()) {
      return text;
    }
    Map<String, String> feeders = new LinkedHashMap<>();
    now.circuit().cables().forEach(cable -> feeders.put(cable.to(), cable.from()));
    before.get().unknown().orElseThrow().outlets().stream()
        .filter(outlet -> outlet.fedBy().isPresent() || outlet.hints().contains(new Hint.First()))
        .forEach(outlet -> feeders.remove(outlet.name()));
    return settled(text, before.get(), feeders).orElse(text);
  }

  private Optional<String> settled(String text, CaseFile before, Map<String, String> feeders) {
    boolean complete =
        before.unknown().stream()
            .flatMap(run -> run.outlets().stream())
            .allMatch(outlet -> outlet.fedBy().isPresent() || feeders.containsKey(outlet.name()));
    String after = SettledText.of(name, text, BoxNames.of(before.circuit()), feeders, complete);
    return read(after).filter(now -> says(now, before, feeders)).map(now -> after);
  }

  /** Whether a case says what feeds these boxes, and else what it said. */
  private static boolean says(CaseFile now, CaseFile before, Map<String, String> feeders) {
    return now.survey().equals(before.survey())
        && now.assumptions().equals(before.assumptions())
        && now.circumstances().equals(before.circumstances())
        && now.circuit().boxes().size() == before.circuit().boxes().size()
        && feeders.entrySet().stream().allMatch(feed -> says(now, feed.getKey(), feed.getValue()));
  }

  private static boolean says(CaseFile now, String box, String feeder) {
    return feeder.equals(RunMap.ANOTHER_CIRCUIT)
        ? now.unknown()
            .flatMap(run -> run.outlet(box))
            .filter(outlet -> outlet.hints().contains(new Hint.OnAnotherCircuit()))
            .isPresent()
        : now.circuit().cables().stream()
            .anyMatch(cable -> cable.to().equals(box) && cable.from().equals(feeder));
  }

  /** What was written with what has come since; empty where the case has changed otherwise. */
  private Optional<String> continued(String text, CaseFile now) {
    Optional<CaseFile> before = read(text);
    if (before.isEmpty()) {
      return Optional.empty();
    }
    if (saysTheSame(before.get(), now)) {
      return written;
    }
    Survey was = before.get().survey();
    Survey is = now.survey();
    SurveyWriter writer = new SurveyWriter(is, now.circuit());
    GrowingText longer =
        GrowingText.of(text)
            .plus("complaint", writer.complaints(added(was, is, Survey::complaints)))
            .plus("loads", writer.loads(added(was, is, Survey::loads)))
            .plus("tests", writer.tests(added(was, is, Survey::tests)))
            .plus("found", writer.findings(added(was, is, Survey::findings), was.findings()))
            .plus("times", CircumstancesWriter.times(newTimes(before.get(), now)));
    // A meter that goes without saying must not be listed: the others would go.
    GrowingText withMeters = longer.plus("meters", writer.meters(added(was, is, Survey::meters)));
    return Stream.of(longer, withMeters)
        .map(GrowingText::toString)
        .filter(each -> read(each).filter(read -> saysTheSame(read, now)).isPresent())
        .findFirst();
  }

  /** What a list has more than it had; of one that has changed otherwise, just what is new. */
  private static <T> List<T> added(Survey was, Survey is, Function<Survey, List<T>> list) {
    return list.apply(is).stream().filter(each -> !list.apply(was).contains(each)).toList();
  }

  private static List<TestTime> newTimes(CaseFile was, CaseFile is) {
    List<TestTime> known = was.circumstances().times();
    return is.circumstances().times().stream().filter(time -> !known.contains(time)).toList();
  }

  private Optional<CaseFile> read(String text) {
    try {
      return Optional.of(new CaseFileReader().read(name, text));
    } catch (CaseFileException broken) {
      return Optional.empty();
    }
  }

  /** But for the title, which nobody changes, and for what was odd in the text. */
  private static boolean saysTheSame(CaseFile one, CaseFile other) {
    return one.circuit().equals(other.circuit())
        && one.unknown().equals(other.unknown())
        && one.survey().equals(other.survey())
        && one.assumptions().equals(other.assumptions())
        && one.circumstances().equals(other.circumstances());
  }
}
