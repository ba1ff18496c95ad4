package ohmtrail.slip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a mistyped number may have been meant to be. */
class TypingTest {
  private static final double RESOLUTION = 0.1;

  @ParameterizedTest
  @CsvSource({"118.2, 181.2", "118.2, 108.2", "118.2, 1182", "118.2, 11.82", "118.2, 118.7"})
  void aDigitTwoExchangedAndThePointAreAllUndone(double meant, double written) {
    Map<Double, Double> numbers = Typing.meant(written, RESOLUTION);

    assertTrue(
        numbers.keySet().stream().anyMatch(number -> Math.abs(number - meant) < RESOLUTION / 2),
        numbers.toString());
  }

  /** 118.2 can be written in 36 ways by one digit, in two by an exchange, in two by the point. */
  @Test
  void noNumberIsMoreLikelyThanAllSlipsOfItsKind() {
    Map<Double, Double> numbers = Typing.meant(118.2, RESOLUTION);

    assertEquals(36 + 2 + 2, numbers.size());
    assertTrue(numbers.values().stream().allMatch(share -> share > 0 && share <= 1.0 / 3));
    assertTrue(numbers.values().stream().mapToDouble(Double::doubleValue).sum() <= 1 + 1e-12);
  }
}
