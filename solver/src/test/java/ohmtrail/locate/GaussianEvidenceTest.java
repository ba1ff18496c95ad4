package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;

/** The evidence against dense matrices and the normal density of another library. */
class GaussianEvidenceTest {
  /** Both ways lose some digits to a covariance whose eigenvalues span four decades. */
  private static final double CLOSE = 1e-8;

  @Property(tries = 300)
  void theDensityIsThatOfTheMultivariateNormal(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    assertClose(
        normals.logDensity(new BitSet()), normals.evidence(new BitSet()).logDensity(), normals);
  }

  @Property(tries = 300)
  void aReadingLeftOutIsAsIfNeverTaken(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    for (int r = 0; r < normals.count(); r++) {
      BitSet leftOut = only(r);
      assertClose(normals.logDensity(leftOut), normals.evidence(leftOut).logDensity(), normals);
    }
  }

  @Property(tries = 300)
  void theMisfitIsTheSquaredDistance(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    RealVector residual = normals.residual();
    double expected = residual.dotProduct(normals.precision().operate(residual));
    assertClose(expected, normals.evidence(new BitSet()).misfit(), normals);
  }

  @Property(tries = 300)
  void thePrecisionIsTheInverseOfTheCovariance(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    RealMatrix precision = normals.precision();
    GaussianEvidence evidence = normals.evidence(new BitSet());
    double[] diagonal = evidence.precisionDiagonal();
    double[] scaledSlope = evidence.scaled(normals.slope().toArray());
    double[] scaledResidual = evidence.scaledResidual();
    RealVector expectedSlope = precision.operate(normals.slope());
    RealVector expectedResidual = precision.operate(normals.residual());
    for (int r = 0; r < normals.count(); r++) {
      assertClose(precision.getEntry(r, r), diagonal[r], normals);
      assertClose(expectedSlope.getEntry(r), scaledSlope[r], normals);
      assertClose(expectedResidual.getEntry(r), scaledResidual[r], normals);
    }
  }

  @Property(tries = 300)
  void thePosteriorMeanIsThatOfTheJointNormal(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    double[] mean = normals.evidence(new BitSet()).mean();
    RealVector expected = normals.posteriorMean();
    for (int c = 0; c < mean.length; c++) {
      assertClose(expected.getEntry(c), mean[c], normals);
    }
  }

  /** The weight with one wrong reading allowed for, each term by a fit without that reading. */
  @Property(tries = 300)
  void aWrongReadingIsWeighedByTheOthers(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    Observations observations = normals.observations();
    int count = normals.count();
    double expected = count * observations.logRight() + normals.evidence(new BitSet()).logDensity();
    double most = Double.NEGATIVE_INFINITY;
    int worst = -1;
    double allRight = expected;
    for (int r = 0; r < count; r++) {
      double without =
          (count - 1) * observations.logRight()
              + observations.logWrong(r)
              + normals.evidence(only(r)).logDensity();
      expected = Weigher.logSum(expected, without);
      if (without > most) {
        most = without;
        worst = r;
      }
    }
    Weigher weigher = new Weigher(observations, normals.active(), new BitSet());
    Weigher.Weight weight = weigher.weigh(normals.evaluation(), normals.point());
    assertClose(allRight, weight.logAllRight(), normals);
    if (normals.evidence(new BitSet()).misfit() > count + 2 * Math.sqrt(2.0 * count)) {
      assertClose(expected, weight.logWeight(), normals);
      assertEquals(most > allRight ? worst : -1, weight.wrongReading(), normals.toString());
    } else {
      assertClose(allRight, weight.logWeight(), normals);
      // What is not looked for there is worth little.
      assertTrue(expected - allRight < Math.log(2), normals.toString());
    }
  }

  /** The slope along ln R that the weight states, by central differences of the density. */
  @Property(tries = 300)
  void theSlopeAlongTheOhmsIsThatOfTheDensityWithItsCovarianceHeld(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    Weigher weigher = new Weigher(normals.observations(), normals.active(), new BitSet());
    Weigher.Weight weight = weigher.weigh(normals.evaluation(), normals.point());
    if (weight.wrongReading() >= 0) {
      return;
    }
    RealMatrix precision = normals.precision();
    RealVector slope = normals.slope();
    assertClose(slope.dotProduct(precision.operate(normals.residual())), weight.slope(), normals);
    assertClose(slope.dotProduct(precision.operate(slope)), weight.curvature(), normals);
  }

  /** One reading, no parameter, next to no drift: the density of one normal number. */
  @Test
  void oneReadingIsANormalNumber() {
    Normals normals = Normals.draw(oneReadingSeed());
    double residual = normals.residual().getEntry(0);
    double variance = normals.covariance().getEntry(0, 0);
    double expected = -0.5 * (Math.log(2 * Math.PI * variance) + residual * residual / variance);
    assertEquals(expected, normals.evidence(new BitSet()).logDensity(), CLOSE);
  }

  private static long oneReadingSeed() {
    long seed = 0;
    while (Normals.draw(seed).count() != 1) {
      seed++;
    }
    return seed;
  }

  private static BitSet only(int reading) {
    BitSet set = new BitSet();
    set.set(reading);
    return set;
  }

  private static void assertClose(double expected, double found, Normals normals) {
    double scale = Math.max(1, Math.abs(expected));
    assertEquals(expected, found, CLOSE * scale, normals.toString());
  }
}
