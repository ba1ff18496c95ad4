package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Voltages as people type them. */
class TypedVoltsTest {
  private static final double ARITHMETIC = 1e-9;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "118.6|118.6|118.6",
        "118,6|118.6|118.6",
        "118.6 V|118.6|118.6",
        "118.6v|118.6|118.6",
        "350 mV|0.35|0.35",
        "0.1 kV|100|100",
        "88-117|88|117",
        "117 to 88 V|88|117",
        ".5|0.5|0.5",
        "120.|120|120",
        "118 VAC|118|118",
        "0|0|0"
      })
  void aVoltageIsReadHoweverItIsTyped(String typed, double lowest, double highest) {
    TypedVolts read = TypedVolts.of(typed);

    assertEquals(Optional.empty(), read.wrong());
    assertEquals(lowest, read.lowest(), ARITHMETIC);
    assertEquals(highest, read.highest(), ARITHMETIC);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "118 A|a current", "2.4 ohm|a resistance", "1.5 kW|a power",
            "12 parsecs|must be V, mV or kV",
        "1,234.5|must be plain", "1e3|must be V, mV or kV", "-3|must be plain", "12 3|must be plain"
      })
  void whatIsNoVoltageIsRefusedWithAReason(String typed, String reason) {
    Optional<String> wrong = TypedVolts.of(typed).wrong();

    assertTrue(wrong.orElse("").contains(reason), typed + ": " + wrong);
    assertTrue(wrong.orElse("").contains("\nMaybe "), typed + ": " + wrong);
  }

  @Property(tries = 500)
  void nothingThatIsTypedIsTooMuch(@ForAll String typed) {
    TypedVolts read = TypedVolts.of(typed);

    assertTrue(Double.isFinite(read.lowest()) && read.lowest() >= 0);
    assertFalse(read.lowest() > read.highest());
  }
}
