package ohmtrail.cli.casefile.circumstances;

import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.text.YamlText;
import ohmtrail.cli.casefile.words.Numbers;

/** Writes circumstances as the reader reads them. */
public final class CircumstancesWriter {
  private CircumstancesWriter() {}

  /** The keys {@code record} and {@code times}; nothing where nothing is said. */
  public static String write(Circumstances said) {
    StringBuilder out = new StringBuilder();
    line(out, "  person: ", said.person());
    line(out, "  date: ", said.date().map(Object::toString));
    line(out, "  place: ", said.place());
    line(out, "  claim: ", said.claim());
    line(out, "  job: ", said.job());
    line(out, "  weather: ", said.weather());
    line(out, "  temperature: ", said.temperature());
    if (said.hoursOfUse().isPresent()) {
      out.append("  hours-of-use: " + Numbers.plain(said.hoursOfUse().getAsDouble()) + "\n");
    }
    out.append(said.meters().isEmpty() ? "" : "  meters:\n");
    for (MeterIdentity meter : said.meters()) {
      boolean isBare =
          meter.description().isEmpty() && meter.serial().isEmpty() && meter.calibrated().isEmpty();
      out.append("    " + YamlText.of(meter.meter()) + (isBare ? ": {}\n" : ":\n"));
      line(out, "      description: ", meter.description());
      line(out, "      serial: ", meter.serial());
      line(out, "      calibrated: ", meter.calibrated().map(Object::toString));
    }
    out.append(said.notes().isEmpty() ? "" : "  notes:\n");
    said.notes().forEach(note -> out.append("    - " + YamlText.of(note) + "\n"));
    out.append(said.photographs().isEmpty() ? "" : "  photographs:\n");
    for (Photograph photograph : said.photographs()) {
      out.append("    - file: " + YamlText.of(photograph.file()) + "\n");
      line(out, "      taken: ", photograph.taken().map(Moments::text));
      line(out, "      shows: ", photograph.shows());
    }
    String times = times(said.times());
    return (out.isEmpty() ? "" : "record:\n" + out) + (times.isEmpty() ? "" : "times:\n" + times);
  }

  /** Lines of {@code times}, two spaces in. */
  public static String times(List<TestTime> times) {
    StringBuilder out = new StringBuilder();
    for (TestTime time : times) {
      out.append("  " + YamlText.of(time.test()) + ": \"" + Moments.text(time.at()) + "\"\n");
    }
    return out.toString();
  }

  private static void line(StringBuilder out, String key, Optional<String> value) {
    value.ifPresent(text -> out.append(key + YamlText.of(text) + "\n"));
  }
}
