package ohmtrail.reference;

/** Short ways to name conductors in the tests of this package. */
final class Conductors {

  static final double METRES_PER_KFT = 304.8;

  private Conductors() {}

  static Conductor copper(String size) {
    return new Conductor(ConductorSize.parse(size).orElseThrow(), ConductorMaterial.COPPER);
  }

  static Conductor aluminium(String size) {
    return new Conductor(ConductorSize.parse(size).orElseThrow(), ConductorMaterial.ALUMINIUM);
  }

  static double ohmsPerKft(Conductor conductor, Stranding stranding, double celsius) {
    return conductor.ohmsPerMetre(stranding, celsius).orElseThrow() * METRES_PER_KFT;
  }
}
