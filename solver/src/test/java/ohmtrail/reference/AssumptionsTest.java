package ohmtrail.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.reference.table.TableFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class AssumptionsTest {
  private static final Set<String> SOURCES =
      Set.of(
          "assumption",
          "common practice, no source",
          "IEC 60364-4-41, from memory",
          "IEC 60364-4-43, from memory",
          "IEC 60898-1, from memory",
          "IEC 61140, from memory");

  @Test
  void theTableAndTheListHoldTheSameKeysInTheSameOrder() {
    List<String> inTable =
        TableFile.read(Assumption.FILE).rows().stream().map(row -> row.text("key")).toList();
    assertEquals(inTable, Assumption.keys());
  }

  @ParameterizedTest
  @EnumSource
  void eachAssumptionSaysItsUnitSourceAndMeaning(Assumption assumption) {
    assertTrue(!assumption.unit().isBlank(), assumption.key());
    assertTrue(!assumption.meaning().isBlank(), assumption.key());
    assertTrue(
        SOURCES.contains(assumption.source()),
        assumption.key()
            + " has a source ("
            + assumption.source()
            + ") that this test does not know");
  }

  @ParameterizedTest
  @EnumSource
  void eachAssumptionIsFoundByItsKeyAndTakesItsOwnDefault(Assumption assumption) {
    assertEquals(Optional.of(assumption), Assumption.byKey(assumption.key()));
    double value = Assumptions.defaults().value(assumption);
    assertEquals(assumption.defaultValue(), value);
    assertEquals(Assumptions.defaults(), Assumptions.defaults().with(assumption, value));
  }

  @ParameterizedTest
  @EnumSource
  void noAssumptionTakesZeroInfinityOrWhatIsNoNumber(Assumption assumption) {
    double[] impossible =
        assumption == Assumption.CONDUCTOR_TEMPERATURE
            ? new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}
            : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, -1};
    for (double value : impossible) {
      IllegalArgumentException refused =
          assertThrows(
              IllegalArgumentException.class, () -> Assumptions.defaults().with(assumption, value));
      assertTrue(refused.getMessage().contains(assumption.key()), refused.getMessage());
      assertTrue(refused.getMessage().contains("(" + value + ")"), refused.getMessage());
      assertTrue(refused.getMessage().contains("\nMaybe "), refused.getMessage());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "supply-voltage-tolerance, 3",
    "open-share, 1",
    "wrong-reading, 1.5",
    "cable-capacitance, 100",
    "degraded-ohms-high, 10",
    "conductor-temperature, 303",
    "load-power-tolerance, 10"
  })
  void slipsOfUnitAreRefused(String key, double value) {
    Assumption assumption = Assumption.byKey(key).orElseThrow();
    assertThrows(
        IllegalArgumentException.class, () -> Assumptions.defaults().with(assumption, value));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Supply-Drift", "supply_drift", "supply drift", "no-such-thing"})
  void aKeyThatIsNoneFindsNothing(String key) {
    assertEquals(Optional.empty(), Assumption.byKey(key));
  }

  @Test
  void overridingLeavesTheOriginalAloneAndIsRemembered() {
    Assumptions defaults = Assumptions.defaults();
    Assumptions changed =
        defaults.with(Assumption.UNKNOWN_LENGTH, 3).with(Assumption.SUPPLY_DRIFT, 0.01);
    assertEquals(6, defaults.value(Assumption.UNKNOWN_LENGTH));
    assertEquals(Set.of(), defaults.overridden());
    assertEquals(3, changed.value(Assumption.UNKNOWN_LENGTH));
    assertEquals(
        List.of(Assumption.SUPPLY_DRIFT, Assumption.UNKNOWN_LENGTH),
        List.copyOf(changed.overridden().stream().toList()));
    assertNotEquals(defaults, changed);
  }

  @Test
  void settingTheDefaultAgainIsNoOverride() {
    Assumptions back =
        Assumptions.defaults()
            .with(Assumption.UNKNOWN_LENGTH, 3)
            .with(Assumption.UNKNOWN_LENGTH, 6);
    assertEquals(Set.of(), back.overridden());
    assertEquals(Assumptions.defaults(), back);
  }

  @Test
  void theSetOfOverridesCannotBeChanged() {
    Set<Assumption> overridden =
        Assumptions.defaults().with(Assumption.UNKNOWN_LENGTH, 3).overridden();
    assertThrows(
        UnsupportedOperationException.class, () -> overridden.add(Assumption.SUPPLY_DRIFT));
  }

  @Test
  void theDefaultDriftIsTwoFifthsOfAVoltInAHundredAndTwenty() {
    assertEquals(0.4, 120 * Assumptions.defaults().value(Assumption.SUPPLY_DRIFT), 0.005);
  }

  @Test
  void theDefaultsAgreeWithOneAnother() {
    Assumptions defaults = Assumptions.defaults();
    assertTrue(
        defaults.value(Assumption.HEALTHY_JOINT_OHMS)
            < defaults.value(Assumption.DEGRADED_OHMS_LOW));
    assertTrue(
        defaults.value(Assumption.SUPPLY_DRIFT)
            < defaults.value(Assumption.SUPPLY_VOLTAGE_TOLERANCE));
    assertTrue(
        defaults.value(Assumption.LENGTH_TOLERANCE)
            < defaults.value(Assumption.UNKNOWN_LENGTH_SPREAD));
  }

  @Test
  void pushInsFailMoreThanScrewsAndScrewsMoreThanSplices() {
    Assumptions defaults = Assumptions.defaults();
    double screw = defaults.value(Assumption.WEIGHT_SCREW);
    assertTrue(defaults.value(Assumption.WEIGHT_PUSH_IN) > screw);
    assertTrue(screw > defaults.value(Assumption.WEIGHT_WIRE_NUT));
    assertTrue(screw > defaults.value(Assumption.WEIGHT_CRIMP));
    assertTrue(defaults.value(Assumption.WEIGHT_GROUND_FACTOR) < 1);
  }
}
