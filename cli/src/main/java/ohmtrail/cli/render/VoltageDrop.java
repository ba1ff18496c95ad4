package ohmtrail.cli.render;

import java.util.List;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.reference.VoltageDropGuidance;

/**
 * What is lost between the panel and a box.
 *
 * @param box its name
 * @param metres along the cables from the panel
 * @param volts hot to neutral at the box
 * @param dropVolts hot to neutral at the panel less {@code volts}
 * @param fraction the drop as a fraction of the nominal voltage
 */
public record VoltageDrop(
    String box, double metres, double volts, double dropVolts, double fraction) {
  /** One per box but the panel, in the order in which the supply reaches them. */
  public static List<VoltageDrop> along(VoltageProfile profile, Supply supply) {
    double atPanel = profile.points().get(0).hotNeutralVolts();
    return profile.points().stream()
        .skip(1)
        .map(
            point ->
                new VoltageDrop(
                    point.box(),
                    point.metres(),
                    point.hotNeutralVolts(),
                    atPanel - point.hotNeutralVolts(),
                    (atPanel - point.hotNeutralVolts()) / supply.volts()))
        .toList();
  }

  /** Which figure of the advice the drop is above, in words; empty when it is within both. */
  public String against(VoltageDropGuidance guidance) {
    if (fraction > guidance.totalFraction()) {
      return "above " + Figures.wholeShare(guidance.totalFraction());
    }
    return fraction > guidance.branchFraction()
        ? "above " + Figures.wholeShare(guidance.branchFraction())
        : "";
  }
}
