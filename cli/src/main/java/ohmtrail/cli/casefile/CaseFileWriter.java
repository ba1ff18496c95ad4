package ohmtrail.cli.casefile;

import java.math.BigDecimal;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.DeviceWiring;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** Writes a case as an ordinary case file. */
public final class CaseFileWriter {

  /**
   * Writes a case.
   *
   * @param caseFile the case; its warnings are left out
   * @return the text of a case file
   */
  public String write(CaseFile caseFile) {
    StringBuilder out = new StringBuilder();
    Circuit circuit = caseFile.circuit();
    out.append("title: ").append(caseFile.title()).append('\n');
    out.append("supply: ").append(plain(circuit.supply().volts())).append(" V ");
    out.append(plain(circuit.supply().hertz())).append(" Hz\n");
    out.append("breaker: ").append(plain(circuit.breakerAmperes())).append(" A\n");
    out.append("cable: ").append(circuit.cables().get(0).conductor().size().designation());
    out.append("\nrun:\n  - ").append(circuit.panel().name()).append('\n');
    for (Cable cable : circuit.cables()) {
      out.append("  - ").append(entry(circuit.box(cable.to()).orElseThrow(), cable)).append('\n');
    }
    appendSurvey(out, caseFile.survey());
    return out.toString();
  }

  private static String entry(Box box, Cable cable) {
    String kind =
        box.kind() == BoxKind.JUNCTION
            ? "junction"
            : box.wiring() == DeviceWiring.PIGTAIL
                ? "receptacle pigtail"
                : "receptacle " + box.terminals().word();
    String length =
        cable.lengthMetres().isPresent()
            ? " " + plain(cable.lengthMetres().getAsDouble()) + " m"
            : "";
    return box.name() + ": " + kind + length + " from " + cable.from();
  }

  private static void appendSurvey(StringBuilder out, Survey survey) {
    out.append("meters:\n");
    survey
        .meters()
        .forEach(
            meter ->
                out.append(
                    "  " + meter.name() + ": " + plain(meter.inputOhms() / 1e3) + " kohm\n"));
    out.append("loads:\n");
    survey
        .loads()
        .forEach(load -> out.append("  " + load.name() + ": " + plain(load.ratedWatts()) + " W\n"));
    out.append("tests:\n");
    for (Test test : survey.tests()) {
      String loads =
          test.loads().stream()
              .map(use -> use.load() + " at " + use.box())
              .collect(Collectors.joining(" + "));
      out.append("  - ").append(loads.isEmpty() ? "idle" : loads).append(":\n");
      for (Reading reading : test.readings()) {
        out.append("      - " + reading.box() + " " + reading.between().word());
        out.append(" " + plain(reading.volts()) + " V " + reading.meter() + "\n");
      }
    }
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
