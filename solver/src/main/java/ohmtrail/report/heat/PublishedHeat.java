package ohmtrail.report.heat;

import java.util.List;
import ohmtrail.reference.UsualValue;

/**
 * What a glowing connection was measured to make while loads worked as usual and no fuse, breaker
 * or GFCI operated: Meese and Beausoliel, NBSIR 76-1011 (1976), abstract. To hold a figure against;
 * a lesser one is not a safe one.
 *
 * @param watts up to so many
 * @param amperes at such a current
 */
public record PublishedHeat(double watts, double amperes) {
  /** Both figures of the abstract. */
  public static final List<PublishedHeat> ALL =
      List.of(
          new PublishedHeat(UsualValue.GLOWING_WATTS.value(), UsualValue.GLOWING_AMPERES.value()),
          new PublishedHeat(
              UsualValue.GLOWING_WATTS_LIGHT_LOAD.value(),
              UsualValue.GLOWING_AMPERES_LIGHT_LOAD.value()));

  /** Where they stand. */
  public static final String SOURCE = "Meese & Beausoliel, NBSIR 76-1011 (1976)";
}
