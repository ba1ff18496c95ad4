package ohmtrail.cli.casefile.range;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.names.Names;
import ohmtrail.report.sweep.Axis;
import ohmtrail.report.sweep.Swept;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.Rating;

/**
 * Reads {@code WHAT=FROM..TO}: a joint for ohms added to it, a box for the length of the cable to
 * it, a load for its rating, {@code supply} for its voltage, a meter for its input resistance.
 */
public final class Ranges {
  private static final String SUPPLY = "supply";
  private static final String TO = "..";

  /** Ohms added to a joint: from a tenth of a milliohm, hardly worse than sound, to open. */
  private static final double LEAST_JOINT_OHMS = 1e-4;

  private static final double MOST_JOINT_OHMS = 1e9;

  private final CaseFile caseFile;

  /** Of what a case names. */
  public Ranges(CaseFile caseFile) {
    this.caseFile = caseFile;
  }

  /**
   * Reads one.
   *
   * @param count how many values
   * @throws RangeException when it is none
   */
  public Axis read(String text, int count) {
    int equals = text.lastIndexOf('=');
    int to = text.indexOf(TO, Math.max(equals, 0));
    if (equals < 0 || to < 0) {
      throw new RangeException(
          "Range ("
              + text
              + ") must say what, = and from where to where.\nMaybe write "
              + caseFile.circuit().joints().get(0).id()
              + "=0.01ohm..100ohm.");
    }
    Variable variable = variable(text.substring(0, equals).strip());
    double least = value(text.substring(equals + 1, to), variable);
    double most = value(text.substring(to + TO.length()), variable);
    if (least >= most) {
      throw new RangeException("Range (" + text + ") must rise.\nMaybe its ends were exchanged.");
    }
    return Axis.between(variable.swept(), least, most, count);
  }

  /**
   * Something of the case that can be varied.
   *
   * @param swept what
   * @param called as a message calls its values
   * @param dimension of its values
   * @param limit what they are held to; empty for ohms added to a joint
   */
  private record Variable(Swept swept, String called, Dimension dimension, Optional<Limit> limit) {}

  private Variable variable(String written) {
    Map<String, Variable> variables = variables();
    Names names = new Names(List.copyOf(variables.keySet()));
    String name =
        names.find(written).orElseThrow(() -> new RangeException(unknown(written, names)));
    return Objects.requireNonNull(variables.get(name));
  }

  private static String unknown(String written, Names names) {
    return "What is varied ("
        + written
        + ") must be a joint, supply, or a meter, load or box of the case."
        + names.nearest(written).map(nearest -> "\nMaybe " + nearest + " was meant.").orElse("");
  }

  /** What comes later gives way to what came earlier by the same name. */
  private Map<String, Variable> variables() {
    Map<String, Variable> variables = new LinkedHashMap<>();
    for (Joint joint : caseFile.circuit().joints()) {
      variables.put(
          joint.id(),
          new Variable(
              new Swept.JointOhms(joint.id()), "Ohms", Dimension.RESISTANCE, Optional.empty()));
    }
    variables.put(
        SUPPLY,
        new Variable(
            new Swept.SupplyVolts(),
            "Supply voltage",
            Dimension.VOLTAGE,
            Optional.of(Limit.SUPPLY_VOLTS)));
    for (Meter meter : caseFile.survey().meters(Measurand.VOLTAGE)) {
      variables.putIfAbsent(
          meter.name(),
          new Variable(
              new Swept.MeterOhms(meter.name()),
              Limit.METER_OHMS.what(),
              Dimension.RESISTANCE,
              Optional.of(Limit.METER_OHMS)));
    }
    for (Load load : caseFile.survey().loads()) {
      Limit limit =
          load.rating().quantity() == Rating.Quantity.POWER ? Limit.LOAD_WATTS : Limit.LOAD_AMPERES;
      variables.putIfAbsent(
          load.name(),
          new Variable(
              new Swept.LoadRating(load.name(), load.rating().quantity().unit()),
              limit.what(),
              limit.dimension(),
              Optional.of(limit)));
    }
    for (Cable cable : caseFile.circuit().cables()) {
      variables.putIfAbsent(
          cable.to(),
          new Variable(
              new Swept.CableLength(cable.to()),
              Limit.LENGTH.what(),
              Dimension.LENGTH,
              Optional.of(Limit.LENGTH)));
    }
    return variables;
  }

  private static double value(String text, Variable variable) {
    Problems problems = new Problems("range");
    Quantities quantities = new Quantities(problems);
    Scalar scalar = new Scalar(text.strip(), Place.startOf("range"), true, text.isBlank());
    if (text.isBlank()) {
      throw new RangeException(variable.called() + " must be given at both ends of a range.");
    }
    Optional<Quantity> quantity = quantities.only(scalar, variable.called(), variable.dimension());
    Optional<Double> value =
        quantity.flatMap(given -> within(given, variable, quantities)).filter(given -> given > 0);
    return value.orElseThrow(() -> new RangeException(said(problems, variable, text)));
  }

  private static Optional<Double> within(
      Quantity quantity, Variable variable, Quantities quantities) {
    if (variable.limit().isEmpty()) {
      double ohms = quantity.value();
      return ohms >= LEAST_JOINT_OHMS && ohms <= MOST_JOINT_OHMS
          ? Optional.of(ohms)
          : Optional.empty();
    }
    return quantities.within(quantity, variable.limit().get()).stream().boxed().findFirst();
  }

  private static String said(Problems problems, Variable variable, String text) {
    return problems.errors().isEmpty()
        ? variable.called()
            + " ("
            + text.strip()
            + ") must lie between 0.1 mohm and 1000 Mohm.\nMaybe the unit or the decimal point is wrong."
        : problems.errors().get(0).message();
  }
}
