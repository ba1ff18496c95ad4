package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The programs of docs/library.md compile as they stand, and print what the page says. The outputs
 * are written anew, as the goldens are, with {@code mvn -pl solver,cli test
 * -Dohmtrail.golden=write}.
 */
class LibraryPageTest {
  private static final Path TOP =
      Path.of(System.getProperty("ohmtrail.shared", "../shared")).resolveSibling("");

  private static final Path PAGE = TOP.resolve("docs").resolve("library.md");

  /** A program, and the output that the page shows below it. */
  private static final Pattern PROGRAM =
      Pattern.compile("(?s)```java\n(.*?)```\n(.*?)```text\n(.*?)```");

  private static final Pattern NAME = Pattern.compile("public class (\\w+)");

  private static final Pattern PART = Pattern.compile("(?<!no )[Pp]art of the library");
  private static final Pattern PACKAGE = Pattern.compile("(?m)^package ([a-z.]+);");

  /** A row of the table that begins with packages. */
  private static final Pattern ROW = Pattern.compile("(?m)^\\| (`ohmtrail[^|]*)\\|");

  @TempDir private Path directory;

  @Test
  void theProgramsCompileAndPrintWhatThePageSays() throws IOException, InterruptedException {
    String page = Files.readString(PAGE);
    StringBuilder real = new StringBuilder();
    Matcher programs = PROGRAM.matcher(page);
    int count = 0;
    while (programs.find()) {
      String output = output(programs.group(1));
      programs.appendReplacement(
          real,
          Matcher.quoteReplacement(
              "```java\n"
                  + programs.group(1)
                  + "```\n"
                  + programs.group(2)
                  + "```text\n"
                  + output
                  + "```"));
      count++;
    }
    programs.appendTail(real);
    assertEquals(2, count);
    if (Golden.isWriting()) {
      Files.writeString(PAGE, real);
      return;
    }
    assertEquals(real.toString(), page);
  }

  @Test
  void thePageNamesThePackagesThatSayTheyArePartOfTheLibrary() throws IOException {
    Set<String> said = new TreeSet<>();
    try (Stream<Path> files = Files.walk(TOP.resolve("solver/src/main/java"))) {
      for (Path file : files.filter(each -> each.endsWith("package-info.java")).toList()) {
        String text = Files.readString(file);
        String prose = text.replaceAll("\\s*\\*?\\s+", " ");
        if (PART.matcher(prose).find()) {
          Matcher name = PACKAGE.matcher(text);
          assertTrue(name.find(), text);
          said.add(name.group(1));
        }
      }
    }
    Set<String> named = new TreeSet<>();
    Matcher rows = ROW.matcher(Files.readString(PAGE));
    while (rows.find()) {
      Matcher names = Pattern.compile("`(ohmtrail[a-z.]*)`").matcher(rows.group(1));
      while (names.find()) {
        named.add(names.group(1));
      }
    }
    named.remove("ohmtrail.cli.casefile");
    assertEquals(named, said);
  }

  /** What the program of a page prints, given the first example. */
  private String output(String source) throws IOException, InterruptedException {
    Matcher name = NAME.matcher(source);
    assertTrue(name.find(), source);
    Path file = Files.writeString(directory.resolve(name.group(1) + ".java"), source);
    compile(file);
    Path out = directory.resolve("out.txt");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                directory + File.pathSeparator + System.getProperty("java.class.path"),
                "-Duser.language=en",
                name.group(1),
                TOP.resolve("shared/cases/living-room-neutral.yaml").toString())
            .redirectErrorStream(true)
            .redirectOutput(out.toFile())
            .start();
    assertEquals(0, process.waitFor(), Files.readString(out));
    return Files.readString(out);
  }

  private void compile(Path file) throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    StringWriter messages = new StringWriter();
    try (var files = compiler.getStandardFileManager(null, Locale.ROOT, StandardCharsets.UTF_8)) {
      boolean sound =
          compiler
              .getTask(
                  messages,
                  files,
                  null,
                  List.of(
                      "-proc:none",
                      "-cp",
                      System.getProperty("java.class.path"),
                      "-d",
                      directory.toString()),
                  null,
                  files.getJavaFileObjects(file))
              .call();
      assertTrue(sound, messages.toString());
    }
  }
}
