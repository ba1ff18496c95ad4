package ohmtrail.reference;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/** A value for every {@link Assumption}: the defaults, or those with some overridden. Immutable. */
public final class Assumptions {

  private final Map<Assumption, Double> values;

  private Assumptions(Map<Assumption, Double> values) {
    this.values = values;
  }

  /** The defaults of the published table. */
  public static Assumptions defaults() {
    return Loaded.DEFAULTS;
  }

  /** The value of an assumption in its {@link Assumption#unit()}: finite, within its range. */
  public double value(Assumption assumption) {
    return Objects.requireNonNull(values.get(assumption));
  }

  /**
   * The same with one value replaced.
   *
   * @throws IllegalArgumentException if the value is not a number in the assumption's range
   */
  public Assumptions with(Assumption assumption, double value) {
    Map<Assumption, Double> changed = new EnumMap<>(values);
    changed.put(assumption, assumption.checked(value));
    return new Assumptions(changed);
  }

  /** The assumptions whose value differs from the default, in their declared order. */
  public Set<Assumption> overridden() {
    Set<Assumption> differing = EnumSet.noneOf(Assumption.class);
    values.forEach(
        (assumption, value) -> {
          if (value != assumption.defaultValue()) {
            differing.add(assumption);
          }
        });
    return Collections.unmodifiableSet(differing);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Assumptions assumptions && values.equals(assumptions.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  @Override
  public String toString() {
    return "Assumptions" + values;
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final Assumptions DEFAULTS = read();

    private static Assumptions read() {
      Map<Assumption, Double> defaults = new EnumMap<>(Assumption.class);
      for (Assumption assumption : Assumption.values()) {
        defaults.put(assumption, assumption.checked(assumption.defaultValue()));
      }
      return new Assumptions(defaults);
    }
  }
}
