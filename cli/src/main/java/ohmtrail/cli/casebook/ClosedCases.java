package ohmtrail.cli.casebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.stream.Stream;
import ohmtrail.circuit.CircuitException;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.names.Shown;
import ohmtrail.report.casebook.ClosedCase;
import ohmtrail.survey.SurveyException;

/**
 * The closed cases of a folder and of those in it.
 *
 * @param closed those that say where the bad joint was found, in the order of their files
 * @param unstated how many cases do not say it
 * @param passedOver files that are no case, with the reason
 */
public record ClosedCases(List<ClosedCase> closed, int unstated, List<PassedOver> passedOver) {
  private static final List<String> ENDINGS = List.of(".yaml", ".yml");
  private static final String TRUTH = ".truth.yaml";

  /** Copies the lists. */
  public ClosedCases {
    closed = List.copyOf(closed);
    passedOver = List.copyOf(passedOver);
  }

  /**
   * A file that was passed over.
   *
   * @param file its path
   * @param reason why, in one line, with its place
   */
  public record PassedOver(String file, String reason) {}

  /**
   * The case files of a folder and of the folders in it, in the order of their names; no link is
   * followed.
   *
   * @throws IOException when it is no folder that can be read
   */
  public static List<Path> files(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      throw new IOException(
          "Folder ("
              + folder
              + ") must be a folder that can be read.\nMaybe its name was mistyped.");
    }
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).filter(ClosedCases::isCase).sorted().toList();
    } catch (UncheckedIOException e) {
      throw new IOException(
          "Folder (" + folder + ") could not be read.\nMaybe its permissions need changing.", e);
    }
  }

  private static boolean isCase(Path file) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    return ENDINGS.stream().anyMatch(name::endsWith) && !name.endsWith(TRUTH);
  }

  /**
   * Reads and answers each.
   *
   * @param files the case files
   * @param done told how many are, from whatever thread
   */
  public static ClosedCases read(List<Path> files, IntConsumer done) {
    AtomicInteger count = new AtomicInteger();
    List<Outcome> outcomes =
        files.parallelStream()
            .map(
                file -> {
                  Outcome outcome = read(file);
                  done.accept(count.incrementAndGet());
                  return outcome;
                })
            .toList();
    List<ClosedCase> closed = new ArrayList<>();
    List<PassedOver> passedOver = new ArrayList<>();
    for (Outcome outcome : outcomes) {
      outcome.closed().ifPresent(closed::add);
      outcome.passedOver().ifPresent(passedOver::add);
    }
    return new ClosedCases(closed, files.size() - closed.size() - passedOver.size(), passedOver);
  }

  private record Outcome(Optional<ClosedCase> closed, Optional<PassedOver> passedOver) {}

  private static Outcome read(Path file) {
    try {
      return new Outcome(
          ClosedCase.of(new CaseFileReader().read(file).problem()), Optional.empty());
    } catch (CaseFileException bad) {
      return passedOver(file, bad.problems().get(0).format());
    } catch (CircuitException | SurveyException | OutOfMemoryError | StackOverflowError bad) {
      return passedOver(file, file + ": " + bad.getMessage());
    }
  }

  private static Outcome passedOver(Path file, String reason) {
    String line = Shown.of(reason.lines().findFirst().orElse(""));
    return new Outcome(
        Optional.empty(), Optional.of(new PassedOver(Shown.of(file.toString()), line)));
  }
}
