package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages point at things that are there. */
class PagesTest {
  private static final Path TOP =
      Path.of(System.getProperty("ohmtrail.shared", "../shared"))
          .toAbsolutePath()
          .normalize()
          .getParent();

  private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
  private static final Pattern TEST_CLASS = Pattern.compile("`([A-Z][A-Za-z0-9]*Test)`");
  private static final Pattern HEADING = Pattern.compile("(?m)^#+ (.*)$");

  static Stream<Path> pages() throws IOException {
    List<Path> pages =
        new ArrayList<>(List.of(TOP.resolve("README.md"), TOP.resolve("DEVELOPERS.md")));
    for (String folder : List.of("docs", "shared")) {
      try (Stream<Path> files = Files.walk(TOP.resolve(folder))) {
        files.filter(file -> file.toString().endsWith(".md")).forEach(pages::add);
      }
    }
    return pages.stream().sorted().map(TOP::relativize);
  }

  @ParameterizedTest
  @MethodSource("pages")
  void everyLinkLeadsSomewhere(Path page) throws IOException {
    List<String> broken = new ArrayList<>();
    Matcher links = LINK.matcher(text(page));
    while (links.find()) {
      String target = links.group(1);
      if (!target.startsWith("http") && !leadsSomewhere(page, target)) {
        broken.add(target);
      }
    }
    assertEquals(List.of(), broken);
  }

  private static boolean leadsSomewhere(Path page, String target) throws IOException {
    int hash = target.indexOf('#');
    String file = hash < 0 ? target : target.substring(0, hash);
    Path path = file.isEmpty() ? page : page.resolveSibling(file).normalize();
    if (!Files.exists(TOP.resolve(path))) {
      return false;
    }
    return hash < 0 || anchors(path).contains(target.substring(hash + 1));
  }

  /** Headings as repository viewers name them: lower case, hyphens, no punctuation. */
  private static Set<String> anchors(Path page) throws IOException {
    Set<String> anchors = new TreeSet<>();
    Matcher headings = HEADING.matcher(text(page));
    while (headings.find()) {
      String heading = headings.group(1).toLowerCase(Locale.ROOT);
      anchors.add(heading.replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-'));
    }
    return anchors;
  }

  @ParameterizedTest
  @MethodSource("pages")
  void everyTestNamedIsThere(Path page) throws IOException {
    Set<String> named = new TreeSet<>();
    Matcher classes = TEST_CLASS.matcher(text(page));
    while (classes.find()) {
      named.add(classes.group(1));
    }
    named.removeAll(testClasses());
    assertTrue(named.isEmpty(), "not there: " + named);
  }

  private static Set<String> testClasses() throws IOException {
    try (Stream<Path> files = Files.walk(TOP)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith("Test.java"))
          .map(name -> name.substring(0, name.length() - ".java".length()))
          .collect(Collectors.toSet());
    }
  }

  private static String text(Path page) throws IOException {
    return Files.readString(TOP.resolve(page));
  }
}
