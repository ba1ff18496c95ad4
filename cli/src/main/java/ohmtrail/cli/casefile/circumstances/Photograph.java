package ohmtrail.cli.casefile.circumstances;

import java.time.LocalDateTime;
import java.util.Optional;
import ohmtrail.cli.casefile.text.Place;

/**
 * A photograph beside the case file. Nobody has opened it yet.
 *
 * @param file its name, a file in the folder of the case
 * @param taken when, local time
 * @param shows what is to be seen in it
 * @param place where the case names it
 */
public record Photograph(
    String file, Optional<LocalDateTime> taken, Optional<String> shows, Place place) {
  /** Wherever it is named, it is the same photograph. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Photograph that
        && file.equals(that.file)
        && taken.equals(that.taken)
        && shows.equals(that.shows);
  }

  @Override
  public int hashCode() {
    return file.hashCode();
  }
}
