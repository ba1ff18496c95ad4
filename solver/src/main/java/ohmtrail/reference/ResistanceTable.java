package ohmtrail.reference;

import java.util.List;
import java.util.OptionalDouble;

/** A published table of conductor resistance: the sizes it lists and what each resists. */
interface ResistanceTable {

  /** The table of that size: NEC Table 8 for an AWG size, IEC 60228 for a metric one. */
  static ResistanceTable listing(ConductorSize size) {
    return size.isMetric() ? Iec60228Table.instance() : NecTable8.instance();
  }

  /** The sizes of the table, the smallest conductor first. */
  List<ConductorSize> sizes();

  /** Resistance in ohm/m of the size as it is usually built; empty if not listed in that metal. */
  OptionalDouble ohmsPerMetre(ConductorSize size, ConductorMaterial material, double celsius);

  /** Resistance in ohm/m of the size built so; empty if not listed so in that metal. */
  OptionalDouble ohmsPerMetre(
      ConductorSize size, ConductorMaterial material, Stranding stranding, double celsius);
}
