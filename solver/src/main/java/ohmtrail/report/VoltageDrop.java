package ohmtrail.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Test;

/**
 * What is lost between the panel and a box in a test.
 *
 * @param box its name
 * @param metres along the cables from the panel
 * @param volts at the box, between the conductors that are usual there
 * @param dropVolts between the same at the panel less {@code volts}
 * @param fraction the drop as a fraction of the nominal voltage
 */
public record VoltageDrop(
    String box, double metres, double volts, double dropVolts, double fraction) {
  /**
   * One per box but the panel, in the order in which the supply reaches them; between the
   * conductors that are usual at the box. What is behind a switch is held against the panel's live
   * conductor, and left out where any switch was open.
   */
  public static List<VoltageDrop> along(VoltageProfile profile, Circuit circuit, Test test) {
    List<VoltageDrop> drops = new ArrayList<>();
    for (VoltageProfile.Point point : profile.points().subList(1, profile.points().size())) {
      ProbePoints pair = ProbePoints.usual(circuit, point.box());
      OptionalDouble atPanel = profile.points().get(0).volts(unswitched(pair, circuit));
      OptionalDouble there = point.volts(pair);
      boolean off = pair.first() == ConductorRole.SWITCHED && !test.switching().open().isEmpty();
      if (!off && atPanel.isPresent() && there.isPresent()) {
        double drop = atPanel.getAsDouble() - there.getAsDouble();
        double nominal = NominalVolts.between(circuit, pair);
        drops.add(
            new VoltageDrop(
                point.box(), point.metres(), there.getAsDouble(), drop, drop / nominal));
      }
    }
    return List.copyOf(drops);
  }

  private static ProbePoints unswitched(ProbePoints pair, Circuit circuit) {
    return pair.first() == ConductorRole.SWITCHED
        ? new ProbePoints(circuit.supply().legs().conductors().get(0), pair.second())
        : pair;
  }
}
