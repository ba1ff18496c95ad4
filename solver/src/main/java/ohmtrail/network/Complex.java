package ohmtrail.network;

/**
 * A complex number: a phasor (volts or amperes, root mean square), an impedance (ohms) or an
 * admittance (siemens).
 *
 * @param re real part, finite
 * @param im imaginary part, finite
 */
public record Complex(double re, double im) {
  /** Zero. */
  public static final Complex ZERO = new Complex(0, 0);

  /** One. */
  public static final Complex ONE = new Complex(1, 0);

  /** Rejects NaN and infinities: nothing in a solved network has either. */
  public Complex {
    if (!Double.isFinite(re) || !Double.isFinite(im)) {
      throw new IllegalArgumentException("Complex number (" + re + ", " + im + ") must be finite");
    }
  }

  /** A number without an imaginary part. */
  public static Complex real(double value) {
    return new Complex(value, 0);
  }

  /** The sum. */
  public Complex plus(Complex other) {
    return new Complex(re + other.re, im + other.im);
  }

  /** The difference. */
  public Complex minus(Complex other) {
    return new Complex(re - other.re, im - other.im);
  }

  /** The product. */
  public Complex times(Complex other) {
    return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
  }

  /** This number times a real factor. */
  public Complex times(double factor) {
    return new Complex(re * factor, im * factor);
  }

  /**
   * The quotient.
   *
   * @throws ArithmeticException when the divisor is zero
   */
  public Complex dividedBy(Complex divisor) {
    double square = divisor.re * divisor.re + divisor.im * divisor.im;
    if (square == 0) {
      throw new ArithmeticException("Division of " + this + " by zero");
    }
    return new Complex(
        (re * divisor.re + im * divisor.im) / square, (im * divisor.re - re * divisor.im) / square);
  }

  /** One over this number. */
  public Complex reciprocal() {
    return ONE.dividedBy(this);
  }

  /** The complex conjugate. */
  public Complex conjugate() {
    return new Complex(re, -im);
  }

  /** The magnitude, never negative. */
  public double abs() {
    return Math.hypot(re, im);
  }
}
