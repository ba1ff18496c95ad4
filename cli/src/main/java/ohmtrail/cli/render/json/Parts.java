package ohmtrail.cli.render.json;

import java.util.List;
import java.util.Set;
import ohmtrail.cli.build.Build;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.Problem;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.VoltageDropGuidance;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Tap;

/** What several documents have in common. */
final class Parts {
  /** Raised when a member is renamed, removed or changes its meaning; not when one is added. */
  private static final int FORMAT = 2;

  /** Decimals of a probability or a fraction. */
  static final int PROBABILITY = 5;

  /** Decimals of a voltage: a tenth of a millivolt. */
  static final int VOLTS = 4;

  /** Decimals of a test's drift: a tenth of a millivolt of 100 V. */
  static final int DRIFT = 6;

  /** Decimals of a number of standard deviations. */
  static final int SIGMAS = 3;

  private Parts() {}

  /** Opens a document and says what it is. */
  static JsonWriter begin(String document, CaseFile caseFile) {
    return begin(document).member("title", caseFile.title());
  }

  /** Opens a document that is not about a case. */
  static JsonWriter begin(String document) {
    return begin(document, Build.current());
  }

  /** Opens a document that a certain build writes. */
  static JsonWriter begin(String document, Build build) {
    return new JsonWriter()
        .object()
        .member("document", document)
        .member("format", FORMAT)
        .member("version", build.version())
        .member("commit", build.commit());
  }

  /** What the case was warned of. */
  static void warnings(JsonWriter json, CaseFile caseFile) {
    json.array("warnings");
    for (Problem problem : caseFile.warnings()) {
      json.object()
          .member("file", problem.file())
          .member("line", problem.line())
          .member("column", problem.column())
          .member("message", problem.message())
          .end();
    }
    json.end();
  }

  /** What the case does not say and was taken as usual. */
  static void taken(JsonWriter json, CaseFile caseFile) {
    json.array("takenAsUsual");
    for (CaseFile.Taken taken : caseFile.taken()) {
      json.object()
          .member("key", taken.key())
          .member("value", taken.value())
          .member("because", taken.because())
          .end();
    }
    json.end();
  }

  /** Every assumption with its value. */
  static void assumptions(JsonWriter json, CaseFile caseFile, Iterable<Assumption> used) {
    Set<Assumption> overridden = caseFile.assumptions().overridden();
    json.array("assumptions");
    for (Assumption assumption : used) {
      json.object()
          .member("key", assumption.key())
          .member("value", caseFile.assumptions().value(assumption))
          .member("unit", assumption.unit())
          .member("source", overridden.contains(assumption) ? "case" : assumption.source())
          .member("overridden", overridden.contains(assumption))
          .end();
    }
    json.end();
  }

  /** What was switched for a test; nothing where every switch was closed and all was on. */
  static void switching(JsonWriter json, Switching switching) {
    if (!switching.equals(Switching.USUAL)) {
      json.texts("switchesOpen", List.copyOf(switching.open()));
      json.texts("hardWiredOff", List.copyOf(switching.off()));
    }
  }

  /** Ohms with their bounds; null where the readings give none. */
  static void interval(JsonWriter json, OhmsInterval ohms) {
    json.object("ohms")
        .member("estimate", ohms.estimate())
        .member("low", ohms.low())
        .member("high", ohms.high())
        .member("coverage", ohms.coverage())
        .end();
  }

  /** Ohms, or null for open. */
  static void ohms(JsonWriter json, String name, double ohms) {
    if (Double.isInfinite(ohms)) {
      json.nothing(name);
    } else {
      json.member(name, ohms);
    }
  }

  /** What a meter is held to or closed around, as a case file says it. */
  static String between(Reading reading) {
    return reading.tap() instanceof Tap.Pair pair ? pair.between().word() : reading.tap().word();
  }

  /** A figure in its unit, or null where a meter of ohms shows that the way is open. */
  static void figure(JsonWriter json, String name, double value) {
    if (Double.isInfinite(value)) {
      json.nothing(name);
    } else {
      json.member(name, value, VOLTS);
    }
  }

  /** The advice on voltage drop. */
  static void guidance(JsonWriter json, VoltageDropGuidance guidance) {
    json.object("guidance")
        .member("branchFraction", guidance.branchFraction())
        .member("totalFraction", guidance.totalFraction())
        .member("source", guidance.source())
        .member("meaning", guidance.meaning())
        .end();
  }
}
