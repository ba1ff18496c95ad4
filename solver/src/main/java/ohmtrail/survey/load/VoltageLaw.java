package ohmtrail.survey.load;

/**
 * How an admittance follows its voltage. Voltages are given as a share of the rated one, sizes
 * relative to the size there.
 */
public sealed interface VoltageLaw {
  /** Whether the admittance is the same at every voltage. */
  default boolean isConstant() {
    return false;
  }

  /** Size of the admittance at a voltage, relative to that at the rated one. */
  double relativeSiemens(double voltsShare);

  /** Change of the logarithm of the admittance per unit of the logarithm of the voltage. */
  double steepness(double voltsShare);

  /** The same resistance at every voltage. */
  record ConstantResistance() implements VoltageLaw {
    @Override
    public boolean isConstant() {
      return true;
    }

    @Override
    public double relativeSiemens(double voltsShare) {
      return 1;
    }

    @Override
    public double steepness(double voltsShare) {
      return 0;
    }
  }

  /** The same power at every voltage. */
  record ConstantPower() implements VoltageLaw {
    @Override
    public double relativeSiemens(double voltsShare) {
      return 1 / (voltsShare * voltsShare);
    }

    @Override
    public double steepness(double voltsShare) {
      return -2;
    }
  }

  /**
   * A current that hardly depends on the voltage, but fades with it near zero: I(V) is proportional
   * to V/sqrt(V^2 + a^2), V and a in shares of the rated voltage.
   *
   * @param fadeShare a: below it the load is more of a resistor
   */
  record FadingCurrent(double fadeShare) implements VoltageLaw {
    @Override
    public double relativeSiemens(double voltsShare) {
      double square = fadeShare * fadeShare;
      return Math.sqrt((1 + square) / (voltsShare * voltsShare + square));
    }

    @Override
    public double steepness(double voltsShare) {
      double square = voltsShare * voltsShare;
      return -square / (square + fadeShare * fadeShare);
    }
  }

  /**
   * A tungsten filament: R(V)^2 = c^2 + (1 - c^2) V^n, in shares of the rated voltage and the hot
   * resistance.
   *
   * @param coldShare c: the cold resistance
   * @param squareExponent n: how the square of the resistance follows the voltage
   */
  record Filament(double coldShare, double squareExponent) implements VoltageLaw {
    @Override
    public double relativeSiemens(double voltsShare) {
      return 1 / Math.sqrt(coldSquare() + heated(voltsShare));
    }

    @Override
    public double steepness(double voltsShare) {
      double heated = heated(voltsShare);
      return -0.5 * squareExponent * heated / (coldSquare() + heated);
    }

    private double coldSquare() {
      return coldShare * coldShare;
    }

    private double heated(double voltsShare) {
      return (1 - coldSquare()) * Math.pow(voltsShare, squareExponent);
    }
  }
}
