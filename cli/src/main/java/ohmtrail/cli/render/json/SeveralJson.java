package ohmtrail.cli.render.json;

/** The answers to several cases, an array of documents each with the file that it answers. */
public final class SeveralJson {
  private final JsonWriter json = new JsonWriter().array();

  /** Adds an answer. */
  public void add(String file, String document) {
    json.object().member("file", file).member("exitCode", 0).document("answer", document).end();
  }

  /** Adds a file that has none. */
  public void add(String file, int exitCode) {
    json.object().member("file", file).member("exitCode", exitCode).nothing("answer").end();
  }

  @Override
  public String toString() {
    return json.end().toString();
  }
}
