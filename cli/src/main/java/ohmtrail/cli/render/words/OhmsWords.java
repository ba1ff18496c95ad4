package ohmtrail.cli.render.words;

import java.util.OptionalDouble;
import ohmtrail.locate.OhmsInterval;

/** What the readings say of a joint's ohms, in words. */
public final class OhmsWords {
  /** Bounds further apart than this leave nothing to call an estimate. */
  private static final double WIDEST_FACTOR = 30;

  /** Ohms that let no load notice that anything is connected. */
  private static final double AS_GOOD_AS_OPEN = 1e6;

  private OhmsWords() {}

  /**
   * An estimate with its bounds: {@code about 2.4 ohm (1.9 to 3.1)}, {@code more than 2.0 kohm,
   * perhaps fully open}.
   */
  public static String of(OhmsInterval interval) {
    OptionalDouble estimate = interval.estimate();
    if (estimate.isEmpty() || isVague(interval)) {
      return withoutEstimate(interval);
    }
    String about = Figures.estimatedOhms(estimate.getAsDouble());
    String bounds = bounds(interval, unit(about));
    return "about " + about + (bounds.isEmpty() ? "" : " (" + bounds + ")");
  }

  /** Whether both bounds are known and so far apart that the estimate says next to nothing. */
  static boolean isVague(OhmsInterval interval) {
    return interval.low().isPresent()
        && interval.high().isPresent()
        && interval.high().getAsDouble() > WIDEST_FACTOR * interval.low().getAsDouble();
  }

  private static String withoutEstimate(OhmsInterval interval) {
    String bounds = bounds(interval, "");
    if (interval.high().isPresent()) {
      return interval.low().isPresent() ? "anywhere from " + bounds : bounds;
    }
    if (bounds.isEmpty()) {
      return "anything up to fully open";
    }
    return interval.low().orElse(0) >= AS_GOOD_AS_OPEN
        ? "fully open or nearly so (" + bounds + ")"
        : bounds + ", perhaps fully open";
  }

  private static String bounds(OhmsInterval interval, String saidUnit) {
    OptionalDouble low = interval.low();
    OptionalDouble high = interval.high();
    if (low.isPresent() && high.isPresent()) {
      return range(low.getAsDouble(), high.getAsDouble(), saidUnit);
    }
    if (low.isPresent()) {
      return "more than " + Figures.estimatedOhms(low.getAsDouble());
    }
    return high.isPresent() ? "less than " + Figures.estimatedOhms(high.getAsDouble()) : "";
  }

  /**
   * The unit stands once where both bounds have the same, and not at all where it was just said.
   */
  private static String range(double low, double high, String saidUnit) {
    String first = Figures.estimatedOhms(low);
    String last = Figures.estimatedOhms(high);
    if (!unit(first).equals(unit(last))) {
      return first + " to " + last;
    }
    return number(first) + " to " + (unit(last).equals(saidUnit) ? number(last) : last);
  }

  private static String unit(String quantity) {
    return quantity.substring(quantity.indexOf(' ') + 1);
  }

  private static String number(String quantity) {
    return quantity.substring(0, quantity.indexOf(' '));
  }
}
