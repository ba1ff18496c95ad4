package ohmtrail.cli.install;

import java.io.IOException;
import java.util.List;

/** The schemas (JSON Schema, draft 2020-12) of the case file and of every document. */
public final class Schemas {
  /** Of the case file, for editors. */
  public static final String CASE = "case";

  private static final String ENDING = ".schema.json";

  private Schemas() {}

  /** What there is a schema of: the case file and each document, by name. */
  public static List<String> names() {
    return Kept.names("schema", ENDING);
  }

  /**
   * The schema of that name, as the project keeps it.
   *
   * @param name one of {@link #names}
   * @throws IOException when the build left it out
   */
  public static String text(String name) throws IOException {
    return Kept.text("schema/" + fileName(name));
  }

  /** What its file is called. */
  public static String fileName(String name) {
    return name + ENDING;
  }
}
