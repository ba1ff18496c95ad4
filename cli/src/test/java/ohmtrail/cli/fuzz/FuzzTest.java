package ohmtrail.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import ohmtrail.cli.CommandRun;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.names.Shown;
import ohmtrail.cli.render.json.DocumentSchema;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever stands in a case, the reader answers with a case or with what is wrong and where, and
 * the program with an answer, or a message and an exit code of 1 or 2. A few texts in every build;
 * {@code mvn -Pfuzz test} takes a million for the reader and 20 000 for the commands. The seed is
 * printed with every failure, and can be given: {@code -Dohmtrail.fuzz.seed=7}.
 */
class FuzzTest {
  private static final Path SHARED = Path.of(System.getProperty("ohmtrail.shared"));
  private static final long SEED = Long.getLong("ohmtrail.fuzz.seed", 20261127);
  private static final int READ = Integer.getInteger("ohmtrail.fuzz.read", 3_000);
  private static final int RUN = Integer.getInteger("ohmtrail.fuzz.run", 30);

  /** Longer is a hang. */
  private static final int MOST_SECONDS = 10;

  private static final List<List<String>> COMMANDS =
      List.of(
          List.of("check", "--json"),
          List.of("check"),
          List.of("predict", "--json"),
          List.of("predict"),
          List.of("locate", "--json"),
          List.of("locate"),
          List.of("locate", "--full"),
          List.of("next", "--json"),
          List.of("next"),
          List.of("next", "--full"),
          List.of("sweep", "--json", "--over", "supply=110V..126V", "--points", "3"));

  @TempDir private Path directory;

  private static List<String> seeds() throws IOException {
    List<String> seeds = new ArrayList<>();
    for (Path folder :
        List.of(SHARED.resolve("cases"), Path.of("src", "test", "resources", "cases", "good"))) {
      if (Files.isDirectory(folder)) {
        try (Stream<Path> files = Files.list(folder)) {
          for (Path file :
              files.filter(each -> each.toString().endsWith(".yaml")).sorted().toList()) {
            if (!file.toString().endsWith(".truth.yaml")) {
              seeds.add(Files.readString(file));
            }
          }
        }
      }
    }
    return seeds;
  }

  @Test
  void theReaderAnswersWhateverStandsThere() throws IOException {
    Mutations mutations = new Mutations(seeds(), new Random(SEED));
    for (int run = 0; run < READ; run++) {
      byte[] bytes = mutations.nextBytes();
      try {
        read(bytes);
      } catch (RuntimeException | Error escaped) {
        fail(told("reader", run, bytes), escaped);
      }
    }
  }

  private static void read(byte[] bytes) {
    try {
      new CaseFileReader().read(new ByteArrayInputStream(bytes), "case");
    } catch (CaseFileException refused) {
      refused
          .problems()
          .forEach(
              problem -> {
                assertTrue(problem.line() > 0 && problem.column() > 0, problem.format());
                assertEquals(-1, Shown.firstSteering(problem.message().replace("\n", "")));
              });
    }
  }

  @Test
  void theProgramAnswersOrSaysWhyNot() throws Exception {
    Random random = new Random(SEED + 1);
    Mutations mutations = new Mutations(seeds(), random);
    ExecutorService apart = Executors.newSingleThreadExecutor(FuzzTest::daemon);
    for (int run = 0; run < RUN; run++) {
      byte[] bytes = mutations.nextBytes();
      List<String> command = COMMANDS.get(random.nextInt(COMMANDS.size()));
      String where = told(String.join(" ", command), run, bytes);
      Path file = Files.write(directory.resolve("case.yaml"), bytes);
      List<String> arguments = new ArrayList<>(command);
      arguments.add(1, file.toString());
      try {
        CommandRun ended =
            apart
                .submit(() -> CommandRun.of(arguments.toArray(String[]::new)))
                .get(MOST_SECONDS, TimeUnit.SECONDS);
        check(command, ended, where);
      } catch (TimeoutException hang) {
        fail("hangs: " + where);
      } catch (ExecutionException escaped) {
        fail(where, escaped.getCause());
      }
    }
  }

  private static void check(List<String> command, CommandRun ended, String where)
      throws IOException {
    assertTrue(Set.of(0, 1, 2).contains(ended.exitCode()), where);
    assertFalse(ended.err().contains("the fault is the program's"), where + "\n" + ended.err());
    for (String written : List.of(ended.out(), ended.err())) {
      int steering = Shown.firstSteering(written.replace("\n", "").replace("\r", ""));
      assertEquals(-1, steering, where + "\n" + written);
      assertFalse(written.contains("NaN") && !where.contains("NaN"), where + "\n" + written);
    }
    if (ended.exitCode() != 0) {
      assertEquals("", ended.out(), where);
      assertFalse(ended.err().isEmpty(), where);
    } else if (command.contains("--json")) {
      assertEquals(Set.of(), DocumentSchema.named(command.get(0)).breaches(ended.out()), where);
      new ObjectMapper().readTree(ended.out());
    }
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(null, work, "fuzz", 8L << 20);
    thread.setDaemon(true);
    return thread;
  }

  private static String told(String what, int run, byte[] bytes) {
    return what
        + ", seed "
        + SEED
        + ", run "
        + run
        + ":\n"
        + new String(bytes, StandardCharsets.UTF_8);
  }
}
