package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** Phasor arithmetic. */
class ComplexTest {

  /** A few roundings, of the larger operand. */
  private static final double ROUNDING = 1e-12;

  @Property(tries = 200)
  void dividingUndoesMultiplying(
      @ForAll @DoubleRange(min = -100, max = 100) double re,
      @ForAll @DoubleRange(min = -100, max = 100) double im,
      @ForAll @DoubleRange(min = 0.01, max = 100) double size,
      @ForAll @DoubleRange(min = -3.2, max = 3.2) double angle) {
    Complex number = new Complex(re, im);
    Complex divisor = new Complex(size * Math.cos(angle), size * Math.sin(angle));
    Complex back = number.times(divisor).dividedBy(divisor);
    assertEquals(0, back.minus(number).abs(), ROUNDING * (1 + number.abs()));
    assertEquals(1, divisor.times(divisor.reciprocal()).re(), ROUNDING);
    assertEquals(number.abs() * size, number.times(divisor).abs(), ROUNDING * (1 + size) * 100);
  }

  @Example
  void aConjugateTimesItsNumberIsTheSquareOfItsSize() {
    Complex number = new Complex(3, -4);
    assertEquals(new Complex(25, 0), number.times(number.conjugate()));
    assertEquals(5, number.abs(), 0);
  }

  @Example
  void whatIsNoNumberIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Complex(Double.NaN, 0));
    assertThrows(IllegalArgumentException.class, () -> new Complex(0, Double.NEGATIVE_INFINITY));
    assertThrows(ArithmeticException.class, () -> Complex.ONE.dividedBy(Complex.ZERO));
    assertThrows(ArithmeticException.class, Complex.ZERO::reciprocal);
  }
}
