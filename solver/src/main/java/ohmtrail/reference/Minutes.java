package ohmtrail.reference;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/** Minutes for every {@link Chore}: the defaults, or those with some overridden. Immutable. */
public final class Minutes {
  /** A day and a night: more than any step of a search takes. */
  private static final double MOST = 1440;

  private final Map<Chore, Double> values;

  private Minutes(Map<Chore, Double> values) {
    this.values = values;
  }

  /** The defaults of the published table. */
  public static Minutes defaults() {
    Map<Chore, Double> values = new EnumMap<>(Chore.class);
    for (Chore chore : Chore.values()) {
      values.put(chore, chore.defaultMinutes());
    }
    return new Minutes(values);
  }

  /** Minutes that a chore takes; not negative. */
  public double of(Chore chore) {
    return Objects.requireNonNull(values.get(chore));
  }

  /**
   * The same with one value replaced.
   *
   * @throws IllegalArgumentException if it is not a number from 0 to 1440
   */
  public Minutes with(Chore chore, double minutes) {
    if (!(minutes >= 0 && minutes <= MOST)) {
      throw new IllegalArgumentException(
          "Minutes ("
              + minutes
              + ") of "
              + chore.key()
              + " must lie between 0 and "
              + MOST
              + ".\nMaybe they were given in seconds.");
    }
    Map<Chore, Double> changed = new EnumMap<>(values);
    changed.put(chore, minutes);
    return new Minutes(changed);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Minutes minutes && values.equals(minutes.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  @Override
  public String toString() {
    return "Minutes" + values;
  }
}
