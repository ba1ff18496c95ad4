package ohmtrail.cli.casefile.circumstances;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Size;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.names.Shown;

/** Reads what a case says under {@code record} and {@code times}. */
public final class CircumstancesReader {
  private static final List<String> PICTURES = List.of(".jpg", ".jpeg", ".png");

  private static final Pattern HOURS =
      Pattern.compile("([0-9]{1,7}(?:\\.[0-9]{1,3})?)(?: ?h| hours)?");

  /** A century. */
  private static final double MOST_HOURS = 1e6;

  private final Fields fields;
  private final Problems problems;

  /**
   * @param fields the keys of the case
   * @param problems takes what is wrong
   */
  public CircumstancesReader(Fields fields, Problems problems) {
    this.fields = fields;
    this.problems = problems;
  }

  /**
   * Reads it; what is wrong is noted and left out.
   *
   * @param meters names of the meters of the case
   * @param tests names of its tests
   */
  public Circumstances read(Collection<String> meters, Collection<String> tests) {
    Optional<Fields> record =
        fields.mapping("record").map(mapping -> new Fields(mapping, Keys.RECORD, problems));
    Circumstances said =
        record.map(keys -> read(keys, new Names(meters))).orElse(Circumstances.UNSAID);
    Moments moments = new Moments(said.date(), problems);
    return said.withTimes(
        fields
            .mapping("times")
            .map(mapping -> times(mapping, new Names(tests), moments))
            .orElse(List.of()));
  }

  private Circumstances read(Fields record, Names meters) {
    Optional<LocalDate> date =
        record.scalar("date").flatMap(new Moments(Optional.empty(), problems)::date);
    Moments moments = new Moments(date, problems);
    return new Circumstances(
        text(record, "person"),
        date,
        text(record, "place"),
        text(record, "claim"),
        text(record, "job"),
        text(record, "weather"),
        text(record, "temperature"),
        record.scalar("hours-of-use").map(this::hours).orElse(OptionalDouble.empty()),
        record.mapping("meters").map(mapping -> meters(mapping, meters, moments)).orElse(List.of()),
        record.node("notes").map(this::notes).orElse(List.of()),
        record.items("photographs").map(items -> photographs(items, moments)).orElse(List.of()),
        List.of());
  }

  private OptionalDouble hours(Scalar scalar) {
    Matcher hours = HOURS.matcher(scalar.text().strip());
    double given = hours.matches() ? Double.parseDouble(hours.group(1)) : 0;
    if (given > 0 && given <= MOST_HOURS) {
      return OptionalDouble.of(given);
    }
    problems.error(
        scalar.place(),
        "Hours of use (" + scalar.text() + ") must be a number above 0 and up to 1000000.",
        "write 400 for 400 hours.");
    return OptionalDouble.empty();
  }

  private static Optional<String> text(Fields fields, String key) {
    return fields.scalar(key).map(CircumstancesReader::shown);
  }

  private static String shown(Scalar scalar) {
    return Shown.of(scalar.text().strip().replaceAll("[\\n\\r\\t]+", " "));
  }

  private List<MeterIdentity> meters(Mapping mapping, Names names, Moments moments) {
    List<MeterIdentity> meters = new ArrayList<>();
    for (Entry entry : mapping.entries()) {
      Optional<String> name = named(entry, "Meter", names);
      Optional<Fields> keys =
          fields
              .as(
                  Mapping.class,
                  entry.value(),
                  "Meter (" + entry.key().text() + ")",
                  "keys with values")
              .map(each -> new Fields(each, Keys.METER_RECORD, problems));
      if (name.isPresent() && keys.isPresent()) {
        Optional<LocalDate> calibrated = keys.get().scalar("calibrated").flatMap(moments::date);
        meters.add(
            new MeterIdentity(
                name.get(),
                text(keys.get(), "description"),
                text(keys.get(), "serial"),
                calibrated));
      }
    }
    return meters;
  }

  private Optional<String> named(Entry entry, String what, Names names) {
    Optional<String> name = names.find(entry.key().text());
    if (name.isEmpty()) {
      problems.unknown(entry.key().word(), what, names);
    }
    return name;
  }

  private List<String> notes(Node node) {
    List<String> notes = new ArrayList<>();
    for (Node each : node instanceof Items items ? items.nodes() : List.of(node)) {
      fields
          .as(Scalar.class, each, "Note", "a text")
          .map(CircumstancesReader::shown)
          .ifPresent(notes::add);
    }
    return notes;
  }

  private List<Photograph> photographs(Items items, Moments moments) {
    List<Photograph> photographs = new ArrayList<>();
    for (Node node : items.nodes()) {
      Size.PHOTOGRAPHS.require(photographs.size() + 1L, node.place(), problems);
      if (node instanceof Scalar name) {
        file(name)
            .map(file -> new Photograph(file, Optional.empty(), Optional.empty(), name.place()))
            .ifPresent(photographs::add);
      } else {
        fields
            .as(Mapping.class, node, "Photograph", "the name of a file, or keys with values")
            .map(mapping -> new Fields(mapping, Keys.PHOTOGRAPH, problems))
            .flatMap(keys -> photograph(keys, node, moments))
            .ifPresent(photographs::add);
      }
    }
    return photographs;
  }

  private Optional<Photograph> photograph(Fields keys, Node node, Moments moments) {
    Optional<Scalar> name = keys.scalar("file");
    if (name.isEmpty()) {
      problems.error(
          node.place(), "Photograph must name its file.", "write file: in front of the name.");
    }
    Optional<LocalDateTime> taken = keys.scalar("taken").flatMap(moments::time);
    Optional<String> shows = text(keys, "shows");
    return name.flatMap(
        scalar -> file(scalar).map(file -> new Photograph(file, taken, shows, scalar.place())));
  }

  /** A plain name of a picture: what lies beside the case is handed on with it. */
  private Optional<String> file(Scalar scalar) {
    String text = scalar.text();
    problems.requireVisible(scalar);
    if (!isPlainName(text)) {
      problems.error(
          scalar.place(),
          "Photograph (" + text + ") must be a file beside the case file.",
          "move it there and give its name only.");
      return Optional.empty();
    }
    if (PICTURES.stream().noneMatch(text.toLowerCase(Locale.ROOT)::endsWith)) {
      problems.error(
          scalar.place(),
          "Photograph (" + text + ") must end in .jpg, .jpeg or .png.",
          "save it as one of these.");
      return Optional.empty();
    }
    return Optional.of(text);
  }

  private static boolean isPlainName(String text) {
    try {
      Path path = Path.of(text);
      return !text.isBlank()
          && !path.isAbsolute()
          && path.getNameCount() == 1
          && text.indexOf('/') < 0
          && text.indexOf('\\') < 0;
    } catch (InvalidPathException invalid) {
      return false;
    }
  }

  private List<TestTime> times(Mapping mapping, Names names, Moments moments) {
    List<TestTime> times = new ArrayList<>();
    for (Entry entry : mapping.entries()) {
      Optional<String> test = named(entry, "Test", names);
      Optional<LocalDateTime> at =
          fields
              .as(Scalar.class, entry.value(), "Test (" + entry.key().text() + ")", "a time")
              .flatMap(moments::time);
      if (test.isPresent() && at.isPresent()) {
        times.add(new TestTime(test.get(), at.get()));
      }
    }
    return times;
  }
}
