package ohmtrail.reference.table;

import java.util.Locale;

/**
 * A constant whose figure stands in one of the published tables, in the row of its key: {@code
 * key,value,unit,source,meaning}.
 */
public interface TableConstant {
  /** The constant's name in the code. */
  String name();

  /** The table, read when first asked for. */
  TableFile table();

  /** The table's key: lower case with hyphens. */
  default String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The value, in {@link #unit()}. */
  default double value() {
    return table().row(key()).number("value");
  }

  /** The unit of the value, as printed: {@code ohm}, {@code log sd}, {@code probability}, ... */
  default String unit() {
    return table().row(key()).text("unit");
  }

  /** Where it comes from: a citation, or the plain statement that there is none. */
  default String source() {
    return table().row(key()).text("source");
  }

  /** What it is, in half a sentence. */
  default String meaning() {
    return table().row(key()).text("meaning");
  }
}
