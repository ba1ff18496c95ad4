package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The case and the answer in README.md are the real ones. Written anew, as the goldens are, with
 * {@code mvn -pl solver,cli test -Dohmtrail.golden=write}.
 */
class ReadmeTest {
  private static final String EXAMPLE = "living-room-neutral";
  private static final String UNMAPPED = "family-room-unmapped";

  private static final Path README =
      Path.of(System.getProperty("ohmtrail.shared", "../shared")).resolveSibling("README.md");

  @Test
  void caseAndAnswerAreThoseOfTheExample() throws IOException {
    ExampleCase example = ExampleCase.named(EXAMPLE);
    String written = Files.readString(README);
    String located =
        withBlock(withBlock(written, "yaml", example.text()), "text", answer("locate", example));
    ExampleCase unmapped = ExampleCase.named(UNMAPPED);
    int there = located.indexOf("ohmtrail map shared/cases/" + UNMAPPED);
    String real =
        located.substring(0, there)
            + withBlock(located.substring(there), "text", answer("map", unmapped));
    if (Golden.isWriting()) {
      Files.writeString(README, real);
      return;
    }
    assertEquals(real, written);
  }

  private static String answer(String command, ExampleCase example) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        Ohmtrail.run(
            new PrintWriter(out), new PrintWriter(err), command, example.file().toString());
    assertEquals(0, code, err.toString());
    return out.toString();
  }

  private static String withBlock(String page, String language, String content) {
    Pattern block = Pattern.compile("(?s)(```" + language + "\n).*?(```\n)");
    Matcher found = block.matcher(page);
    assertTrue(found.find(), "The page has no block of " + language);
    return found.replaceFirst("$1" + Matcher.quoteReplacement(content) + "$2");
  }
}
