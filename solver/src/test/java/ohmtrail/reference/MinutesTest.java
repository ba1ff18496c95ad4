package ohmtrail.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import ohmtrail.reference.table.TableFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class MinutesTest {

  @Test
  void theTableAndTheListHoldTheSameKeysInTheSameOrder() {
    List<String> inTable =
        TableFile.read(Chore.FILE).rows().stream().map(row -> row.text("key")).toList();
    assertEquals(inTable, Chore.keys());
  }

  @ParameterizedTest
  @EnumSource
  void eachChoreSaysItsMinutesSourceAndMeaning(Chore chore) {
    assertEquals(Optional.of(chore), Chore.byKey(chore.key()));
    assertEquals("assumption", chore.source(), "no published figure was found for " + chore.key());
    assertFalse(chore.meaning().isBlank(), chore.key());
    assertEquals(chore.defaultMinutes(), Minutes.defaults().of(chore));
    assertTrue(chore.defaultMinutes() > 0, chore.key());
  }

  @Test
  void oneValueCanBeReplacedAndTheRestStays() {
    Minutes slow = Minutes.defaults().with(Chore.OPEN_BOX, 45);
    assertEquals(45, slow.of(Chore.OPEN_BOX));
    assertEquals(Chore.WALK.defaultMinutes(), slow.of(Chore.WALK));
    assertEquals(Chore.OPEN_BOX.defaultMinutes(), Minutes.defaults().of(Chore.OPEN_BOX));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, 1441, Double.NaN, Double.POSITIVE_INFINITY})
  void minutesThatCannotBeAreRefusedByName(double minutes) {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> Minutes.defaults().with(Chore.WALK, minutes));
    assertTrue(refused.getMessage().contains("walk"), refused.getMessage());
    assertTrue(refused.getMessage().contains("(" + minutes + ")"), refused.getMessage());
  }
}
