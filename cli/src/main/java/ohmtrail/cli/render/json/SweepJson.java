package ohmtrail.cli.render.json;

import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.words.Region;
import ohmtrail.report.sweep.Axis;
import ohmtrail.report.sweep.Sweep;

/** A sweep as a document. */
public final class SweepJson {
  private SweepJson() {}

  /** Writes it. */
  public static String of(CaseFile caseFile, Sweep sweep) {
    JsonWriter json =
        Parts.begin("sweep", caseFile)
            .member("test", sweep.test())
            .member("box", sweep.box())
            .member("between", sweep.between().word())
            .member("meter", sweep.meter());
    axis(json, "across", sweep.across());
    sweep
        .family()
        .ifPresentOrElse(family -> axis(json, "family", family), () -> json.nothing("family"));
    Parts.guidance(json, Region.of(caseFile.circuit().supply()).guidance());
    json.array("lines");
    for (Sweep.Line line : sweep.lines()) {
      json.object().member("value", line.value()).array("points");
      for (Sweep.Point point : line.points()) {
        json.object()
            .member("value", point.value())
            .member("volts", point.volts(), Parts.VOLTS)
            .member("shownVolts", point.shownVolts(), Parts.VOLTS)
            .member("dropVolts", point.dropVolts(), Parts.VOLTS)
            .member("dropFraction", point.dropFraction(), Parts.DRIFT)
            .member("loadAmperes", point.loadAmperes())
            .member("jointWatts", point.jointWatts())
            .end();
      }
      json.end().end();
    }
    json.end();
    json.texts("cautions", Cautions.forMeasuring(caseFile));
    Parts.taken(json, caseFile);
    Parts.warnings(json, caseFile);
    return json.end().toString();
  }

  private static void axis(JsonWriter json, String name, Axis axis) {
    json.object(name).member("what", axis.swept().what()).member("unit", axis.swept().unit()).end();
  }
}
