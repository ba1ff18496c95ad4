package ohmtrail.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ConductorSizeTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "14 AWG | 14 AWG",
        "14AWG | 14 AWG",
        "14 awg | 14 AWG",
        "'  14  AWG ' | 14 AWG",
        "AWG 14 | 14 AWG",
        "#14 | 14 AWG",
        "#14 AWG | 14 AWG",
        "2/0 AWG | 2/0 AWG",
        "2/0 | 2/0 AWG",
        "00 AWG | 2/0 AWG",
        "#0000 | 4/0 AWG",
        "2.5 mm2 | 2.5 mm2",
        "2.5mm² | 2.5 mm2",
        "2.50 MM2 | 2.5 mm2",
        "1.0 mm2 | 1 mm2",
        "1 mm^2 | 1 mm2",
        "16 sq mm | 16 mm2",
        "0.75mm2 | 0.75 mm2"
      })
  void sizesAreReadAsPeopleWriteThem(String text, String designation) {
    assertEquals(
        Optional.of(designation), ConductorSize.parse(text).map(ConductorSize::designation));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "14",
        "2.5",
        "#",
        "AWG",
        "mm2",
        "13 AWG",
        "-14 AWG",
        "14 gauge",
        "2,5 mm2",
        "2.5.0 mm2",
        ". mm2",
        "-2.5 mm2",
        "1e1 mm2",
        "NaN mm2",
        "3 mm2",
        "2/1",
        "##14"
      })
  void whatNamesNoListedSizeIsNoSize(String text) {
    assertEquals(Optional.empty(), ConductorSize.parse(text));
  }

  @Test
  void everyListedSizeIsReadBackFromItsOwnDesignation() {
    assertEquals(29, ConductorSize.all().size());
    for (ConductorSize size : ConductorSize.all()) {
      assertEquals(Optional.of(size), ConductorSize.parse(size.designation()));
    }
  }

  @Test
  void designationsAreUniqueAndInTheOrderOfTheSizes() {
    assertEquals(
        ConductorSize.all().stream().map(ConductorSize::designation).toList(),
        ConductorSize.designations());
    assertEquals(
        ConductorSize.designations().size(), new HashSet<>(ConductorSize.designations()).size());
  }

  @Test
  void twoAndAHalfSquareMillimetresIsItsAreaInSquareMetres() {
    assertEquals(2.5e-6, ConductorSize.parse("2.5 mm2").orElseThrow().areaSquareMetres(), 1e-18);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void anAreaThatIsNoneIsRefusedByName(double area) {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> new ConductorSize("9 AWG", area));
    assertTrue(refused.getMessage().contains("9 AWG"), refused.getMessage());
    assertTrue(refused.getMessage().contains("Maybe"), refused.getMessage());
  }

  @Test
  void aBlankDesignationIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new ConductorSize(" ", 1e-6));
  }

  @Test
  void aConductorOfASizeMadeUpIsRefused() {
    ConductorSize invented = new ConductorSize("14 AWG", 5e-6);
    assertThrows(
        IllegalArgumentException.class, () -> new Conductor(invented, ConductorMaterial.COPPER));
  }

  @Property
  void anyTextAtAllIsEitherAListedSizeOrNone(@ForAll String text) {
    assertTrue(ConductorSize.parse(text).map(ConductorSize.all()::contains).orElse(true));
  }
}
