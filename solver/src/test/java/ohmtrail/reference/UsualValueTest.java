package ohmtrail.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.reference.table.TableFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class UsualValueTest {
  @Test
  void theTableAndTheListHoldTheSameKeysInTheSameOrder() {
    List<String> inTable =
        TableFile.read(UsualValue.FILE).rows().stream().map(row -> row.text("key")).toList();
    assertEquals(inTable, UsualValue.keys());
  }

  @ParameterizedTest
  @EnumSource
  void eachIsAPositiveNumberAndSaysItsUnitSourceAndMeaning(UsualValue each) {
    assertTrue(each.value() > 0 && Double.isFinite(each.value()), each.key());
    assertTrue(
        !each.unit().isBlank() && !each.source().isBlank() && !each.meaning().isBlank(),
        each.key());
  }
}
