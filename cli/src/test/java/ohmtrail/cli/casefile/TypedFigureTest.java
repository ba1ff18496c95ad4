package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.survey.Measurand;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What meters show as people type it. */
class TypedFigureTest {
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
        "118 V AC|118|118",
        "0,125|0.125|0.125",
        "88 V to 117 V|88|117",
        "88,5-117,5v|88.5|117.5",
        "0|0|0"
      })
  void aVoltageIsReadHoweverItIsTyped(String typed, double lowest, double highest) {
    TypedFigure read = TypedFigure.of(typed, Measurand.VOLTAGE);

    assertEquals(Optional.empty(), read.wrong());
    assertEquals(lowest, read.lowest(), ARITHMETIC);
    assertEquals(highest, read.highest(), ARITHMETIC);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "118 A|a current",
        "2.4 ohm|a resistance",
        "1.5 kW|a power",
        "12 parsecs|must be a number in V, mV or kV",
        "1,234.5|must be a plain number",
        "1,234|1.234 was meant, or 1234",
        "1e3|must be a plain number",
        "-3|must not be negative",
        "12 3|must be a number in V",
        "much|must be a number of volts"
      })
  void whatIsNoVoltageIsRefusedWithAReason(String typed, String reason) {
    Optional<String> wrong = TypedFigure.of(typed, Measurand.VOLTAGE).wrong();

    assertTrue(wrong.orElse("").contains(reason), typed + ": " + wrong);
    assertTrue(wrong.orElse("").contains("\nMaybe "), typed + ": " + wrong);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "RESISTANCE|0.43|0.43",
        "RESISTANCE|430 mohm|0.43",
        "RESISTANCE|1.2 Mohm|1200000",
        "RESISTANCE|3k|3000",
        "RESISTANCE|3,5 kΩ|3500",
        "RESISTANCE|open|Infinity",
        "RESISTANCE|1.2 MOHM|1200000",
        "RESISTANCE|3 KOHM|3000",
        "RESISTANCE|OL|Infinity",
        "RESISTANCE|o.l|Infinity",
        "LOOP_IMPEDANCE|1,04|1.04",
        "CURRENT|9.8 A|9.8",
        "CURRENT|350 mA|0.35"
      })
  void ohmsAndAmperesAreReadToo(Measurand measurand, String typed, double figure) {
    TypedFigure read = TypedFigure.of(typed, measurand);

    assertEquals(Optional.empty(), read.wrong());
    assertEquals(figure, read.middle(), ARITHMETIC);
    assertEquals(0, read.halfRange());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "RESISTANCE|118 V|must be a resistance",
        "CURRENT|OL|higher range",
        "CURRENT|3 ohm|must be a current",
        "LOOP_IMPEDANCE|2 furlongs|a number alone is ohms"
      })
  void anotherQuantityThanTheOneAskedForIsRefused(Measurand measurand, String typed, String why) {
    Optional<String> wrong = TypedFigure.of(typed, measurand).wrong();

    assertTrue(wrong.orElse("").contains(why), typed + ": " + wrong);
  }

  @Property(tries = 500)
  void nothingThatIsTypedIsTooMuch(@ForAll String typed, @ForAll Measurand measurand) {
    TypedFigure read = TypedFigure.of(typed, measurand);

    assertTrue(read.lowest() >= 0, typed);
    assertFalse(read.lowest() > read.highest(), typed);
    assertTrue(Double.isFinite(read.lowest()) || !measurand.followsSupply(), typed);
  }
}
