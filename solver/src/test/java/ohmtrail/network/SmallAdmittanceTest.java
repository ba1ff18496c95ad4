package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The claim that {@link Elimination} makes of itself: a joint of half a milliohm that feeds nothing
 * but thirty metres of open cable still sees that cable's admittance to all digits.
 */
class SmallAdmittanceTest {

  private static final double JOINT_OHMS = 0.0005;
  private static final double CABLE_OHMS = 0.25;

  /** Thirty metres at 100 pF/m, half of it at each end, at 60 Hz. */
  private static final double HALF_SIEMENS = 2 * Math.PI * 60 * 3e-9 / 2;

  /** Series and parallel rules add positive numbers only; so does the elimination. */
  private static final double TO_ALL_DIGITS = 1e-12;

  /** A run of hot and neutral over some boxes, and the two branches of interest. */
  private record Run(Network network, int lastHotJoint, Complex exactAdmittance) {
    /** Neutral is the reference's conductor: hot and neutral carry the same current everywhere. */
    static Run of(int boxes) {
      Network.Builder builder = Network.builder();
      int hot = Network.REFERENCE;
      int neutral = Network.REFERENCE;
      int joint = -1;
      for (int box = 0; box < boxes; box++) {
        int nearNeutral = builder.addNode();
        int nearHot = builder.addNode();
        int farNeutral = builder.addNode();
        int farHot = builder.addNode();
        builder.addBranch(neutral, nearNeutral, Complex.real(1 / JOINT_OHMS));
        joint = builder.addBranch(hot, nearHot, Complex.real(1 / JOINT_OHMS));
        builder.addBranch(nearHot, nearNeutral, new Complex(0, HALF_SIEMENS));
        builder.addBranch(nearNeutral, farNeutral, Complex.real(1 / CABLE_OHMS));
        builder.addBranch(nearHot, farHot, Complex.real(1 / CABLE_OHMS));
        builder.addBranch(farHot, farNeutral, new Complex(0, HALF_SIEMENS));
        hot = farHot;
        neutral = farNeutral;
      }
      Complex behind = Complex.real(2 * CABLE_OHMS).plus(capacitance()).reciprocal();
      behind = behind.plus(capacitance().reciprocal()).reciprocal();
      Complex loop = behind.plus(Complex.real(2 * JOINT_OHMS)).plus(before(boxes - 1));
      return new Run(builder.build(), joint, loop.reciprocal());
    }

    /** Impedance between hot and neutral at the end of so many sections whose start is shorted. */
    private static Complex before(int sections) {
      Complex ohms = Complex.ZERO;
      for (int section = 0; section < sections; section++) {
        ohms = parallel(ohms.plus(Complex.real(2 * JOINT_OHMS)), capacitance());
        ohms = parallel(ohms.plus(Complex.real(2 * CABLE_OHMS)), capacitance());
      }
      return ohms;
    }

    private static Complex parallel(Complex first, Complex second) {
      return first.reciprocal().plus(second.reciprocal()).reciprocal();
    }

    private static Complex capacitance() {
      return new Complex(0, -1 / HALF_SIEMENS);
    }
  }

  private static double relativeError(Complex value, Complex exact) {
    return value.minus(exact).abs() / exact.abs();
  }

  @Test
  void theLastJointOfTwelveBoxesSeesTheAdmittanceThatSeriesAndParallelRulesGive() {
    Run run = Run.of(12);
    PortResponse response =
        PortResponse.ofAll(
            Elimination.of(run.network()), List.<Port>of(new Port.Gap(run.lastHotJoint())));
    assertEquals(0, relativeError(response.transfer(0, 0), run.exactAdmittance()), TO_ALL_DIGITS);
  }

  @Test
  void aFactorisationOfTheStoredNodalMatrixLosesHalfTheDigitsThere() {
    Run run = Run.of(12);
    Port gap = new Port.Gap(run.lastHotJoint());
    double error =
        relativeError(
            new DenseNodalSolution(run.network()).transfer(gap, gap), run.exactAdmittance());
    assertTrue(error > 1e-9, "the contrast has gone: relative error " + error);
    assertTrue(error < 1e-3, "not even the same network: relative error " + error);
  }

  @Test
  void aGapSeesWhatLittleLiesBesideItsOwnBranch() {
    // A capacitance of some picofarads straight across a joint of a tenth of an ohm.
    Network.Builder builder = Network.builder();
    builder.addNode();
    int joint = builder.addBranch(0, 1, Complex.real(10));
    builder.addBranch(0, 1, new Complex(0, 1e-9));
    PortResponse response =
        PortResponse.ofAll(Elimination.of(builder.build()), List.<Port>of(new Port.Gap(joint)));
    Complex exact = new Complex(0.1, -1e9).reciprocal();
    assertEquals(0, relativeError(response.transfer(0, 0), exact), TO_ALL_DIGITS);
  }
}
