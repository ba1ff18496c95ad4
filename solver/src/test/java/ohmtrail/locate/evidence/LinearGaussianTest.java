package ohmtrail.locate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.locate.settings.Settings;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;

/** The linear-Gaussian model against dense matrices and the normal density of another library. */
class LinearGaussianTest {
  /** It loses some digits to a covariance whose eigenvalues span four decades. */
  private static final double CLOSE = 1e-8;

  @Property(tries = 300)
  void theDensityIsThatOfTheMultivariateNormal(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    assertClose(
        normals.logDensity(new BitSet()), normals.model(new BitSet()).logDensity(), normals);
  }

  @Property(tries = 300)
  void aReadingLeftOutIsAsIfNeverTaken(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    for (int r = 0; r < normals.count(); r++) {
      BitSet leftOut = only(r);
      assertClose(normals.logDensity(leftOut), normals.model(leftOut).logDensity(), normals);
    }
  }

  @Property(tries = 300)
  void theMisfitIsTheSquaredDistance(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    RealVector residual = normals.residual();
    double expected = residual.dotProduct(normals.precision().operate(residual));
    assertClose(expected, normals.model(new BitSet()).squaredDistance(), normals);
  }

  @Property(tries = 300)
  void thePrecisionIsTheInverseOfTheCovariance(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    RealMatrix precision = normals.precision();
    LinearGaussian model = normals.model(new BitSet());
    double[] diagonal = model.precisionDiagonal();
    double[] scaledSlope = model.scaled(normals.slope().toArray());
    double[] scaledResidual = model.scaledResidual();
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
    double[] mean = normals.model(new BitSet()).mean();
    RealVector expected = normals.posteriorMean();
    for (int c = 0; c < mean.length; c++) {
      assertClose(expected.getEntry(c), mean[c], normals);
    }
  }

  /** The likelihood with one outlier allowed for, each term by a fit without that reading. */
  @Property(tries = 300)
  void anOutlierIsJudgedByTheOthers(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    Observations observations = normals.observations();
    int count = normals.count();
    double expected = count * observations.logRight() + normals.model(new BitSet()).logDensity();
    double most = Double.NEGATIVE_INFINITY;
    int worst = -1;
    double allRight = expected;
    for (int r = 0; r < count; r++) {
      double without =
          (count - 1) * observations.logRight()
              + observations.logWrong(r)
              + normals.model(only(r)).logDensity();
      expected = LogSpace.sum(expected, without);
      if (without > most) {
        most = without;
        worst = r;
      }
    }
    Likelihood likelihood = likelihood(normals);
    assertClose(allRight, likelihood.logNoOutlier(), normals);
    if (normals.model(new BitSet()).squaredDistance() > count + 2 * Math.sqrt(2.0 * count)) {
      assertClose(expected, likelihood.log(), normals);
      assertEquals(most > allRight ? worst : -1, likelihood.outlier(), normals.toString());
    } else {
      assertClose(allRight, likelihood.log(), normals);
      // What is not looked for there is worth little.
      assertTrue(expected - allRight < Math.log(2), normals.toString());
    }
  }

  /** The slope along ln R that the likelihood states, by central differences of the density. */
  @Property(tries = 300)
  void theSlopeAlongTheOhmsIsThatOfTheDensityWithItsCovarianceHeld(@ForAll long seed) {
    Normals normals = Normals.draw(seed);
    Likelihood likelihood = likelihood(normals);
    if (likelihood.hasOutlier()) {
      return;
    }
    RealMatrix precision = normals.precision();
    RealVector slope = normals.slope();
    assertClose(
        slope.dotProduct(precision.operate(normals.residual())), likelihood.slope(), normals);
    assertClose(slope.dotProduct(precision.operate(slope)), likelihood.curvature(), normals);
  }

  /** One reading, no parameter, next to no drift: the density of one normal number. */
  @Test
  void oneReadingIsANormalNumber() {
    Normals normals = Normals.draw(oneReadingSeed());
    double residual = normals.residual().getEntry(0);
    double variance = normals.covariance().getEntry(0, 0);
    double expected = -0.5 * (Math.log(2 * Math.PI * variance) + residual * residual / variance);
    assertEquals(expected, normals.model(new BitSet()).logDensity(), CLOSE);
  }

  private static long oneReadingSeed() {
    long seed = 0;
    while (Normals.draw(seed).count() != 1) {
      seed++;
    }
    return seed;
  }

  private static Likelihood likelihood(Normals normals) {
    return MarginalLikelihood.of(
            normals.observations(), normals.active(), Settings.usual().outliers())
        .at(normals.evaluation(), normals.point(), new BitSet());
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
