package ohmtrail.reference;

/**
 * Solid round wire from first figures, to hold tables against: the AWG diameter rule of ASTM B258
 * (No. 36 = 0.0050 in, No. 4/0 = 0.4600 in, 39 steps; the closed formula from memory) and the
 * resistivity of a metal.
 */
final class AwgGeometry {

  /** 100 % IACS copper at 20 °C, ohm mm²/m: IEC 60028:1925. */
  static final double COPPER_OHM_MM2_PER_METRE = 1.0 / 58;

  /** 61 % IACS aluminium at 20 °C: IEC 60889 hard-drawn maximum, from memory. */
  static final double ALUMINIUM_OHM_MM2_PER_METRE = 0.028264;

  /**
   * Industrial Power Engineering and Applications Handbook, Table 30.1: 100 % IACS copper, per
   * kelvin at 20 °C.
   */
  static final double COPPER_ALPHA_20 = 0.00393;

  /** The same, 61 % IACS aluminium. */
  static final double ALUMINIUM_ALPHA_20 = 0.00403;

  private static final double MILLIMETRES_PER_INCH = 25.4;
  private static final double METRES_PER_KFT = 304.8;

  private AwgGeometry() {}

  /** d(n) = 0.005 * 92^((36 - n) / 39) inches, with n = 0, -1, -2, -3 for 1/0 to 4/0. */
  static double diameterMillimetres(String designation) {
    return 0.005 * Math.pow(92, (36.0 - number(designation)) / 39) * MILLIMETRES_PER_INCH;
  }

  static double areaSquareMillimetres(String designation) {
    double diameter = diameterMillimetres(designation);
    return Math.PI / 4 * diameter * diameter;
  }

  static double copperOhmsPerKft(String designation, double celsius) {
    double at20 = COPPER_OHM_MM2_PER_METRE / areaSquareMillimetres(designation);
    return at20 * (1 + COPPER_ALPHA_20 * (celsius - 20)) * METRES_PER_KFT;
  }

  static double aluminiumOhmsPerKft(String designation, double celsius) {
    double at20 = ALUMINIUM_OHM_MM2_PER_METRE / areaSquareMillimetres(designation);
    return at20 * (1 + ALUMINIUM_ALPHA_20 * (celsius - 20)) * METRES_PER_KFT;
  }

  private static int number(String designation) {
    String gauge = designation.substring(0, designation.indexOf(' '));
    return gauge.endsWith("/0") ? 1 - (gauge.charAt(0) - '0') : Integer.parseInt(gauge);
  }
}
