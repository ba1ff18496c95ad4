package ohmtrail.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.UniformRealDistribution;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.apache.commons.math3.stat.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;

class ChanceTest {
  private static final long SEED = 20250301;
  private static final int DRAWS = 4000;

  /** With fixed seeds this either always holds or never: no more than a fluke is kept out. */
  private static final double LEAST_P_VALUE = 0.001;

  /** Five standard errors of a correlation of independent numbers. */
  private static final double LARGEST_CORRELATION = 5 / Math.sqrt(DRAWS);

  private static double pValueOfNormal(double... values) {
    return new KolmogorovSmirnovTest()
        .kolmogorovSmirnovTest(new NormalDistribution(null, 0, 1), values);
  }

  @Test
  void gaussianNumbersAreNormal() {
    Chance chance = Chance.of(SEED, 0);
    double[] drawn = Stream.generate(chance::gaussian).limit(DRAWS).mapToDouble(d -> d).toArray();
    assertTrue(pValueOfNormal(drawn) > LEAST_P_VALUE, "seed " + SEED);
  }

  @Test
  void firstNumbersOfNeighbouringCasesAreNormalAndIndependent() {
    double[] first = new double[DRAWS];
    double[] second = new double[DRAWS];
    for (int i = 0; i < DRAWS; i++) {
      first[i] = Chance.of(SEED, i).gaussian();
      second[i] = Chance.of(SEED, i + 1L).gaussian();
    }
    assertTrue(pValueOfNormal(first) > LEAST_P_VALUE, "seed " + SEED);
    double correlation = new PearsonsCorrelation().correlation(first, second);
    assertEquals(0, correlation, LARGEST_CORRELATION, "seed " + SEED);
  }

  @Test
  void streamsSplitOffAreIndependentOfWhatIsDrawnFromTheOthers() {
    Chance busy = Chance.of(SEED, 3);
    Chance firstOfBusy = busy.split();
    firstOfBusy.gaussian();
    firstOfBusy.gaussian();
    Chance idle = Chance.of(SEED, 3);
    idle.split();
    assertEquals(busy.split().uniform(), idle.split().uniform());
  }

  @Test
  void anotherSeedGivesAnotherStream() {
    assertNotEquals(Chance.of(SEED, 1).uniform(), Chance.of(SEED + 1, 1).uniform());
  }

  @Test
  void logUniformIsUniformInTheLogarithm() {
    Chance chance = Chance.of(SEED, 1);
    double[] logarithms = new double[DRAWS];
    for (int i = 0; i < DRAWS; i++) {
      logarithms[i] = Math.log10(chance.logUniform(0.01, 1000));
    }
    double p =
        new KolmogorovSmirnovTest()
            .kolmogorovSmirnovTest(new UniformRealDistribution(null, -2, 3), logarithms);
    assertTrue(p > LEAST_P_VALUE, "seed " + SEED);
  }

  @Test
  void weightedPlacesComeAsOftenAsTheirWeight() {
    Chance chance = Chance.of(SEED, 2);
    List<Double> weights = List.of(3.0, 0.0, 1.0);
    int[] counts = new int[weights.size()];
    for (int i = 0; i < DRAWS; i++) {
      counts[chance.weighted(weights)]++;
    }
    double fiveSigma = 5 * Math.sqrt(0.75 * 0.25 * DRAWS);
    assertEquals(0.75 * DRAWS, counts[0], fiveSigma, "seed " + SEED);
    assertEquals(0, counts[1]);
  }

  @Test
  void someTakesEveryItemAsOftenAndKeepsTheOrder() {
    Chance chance = Chance.of(SEED, 4);
    List<Integer> items = List.of(0, 1, 2, 3, 4);
    int[] counts = new int[items.size()];
    for (int i = 0; i < DRAWS; i++) {
      List<Integer> chosen = chance.some(items, 2);
      assertEquals(2, chosen.size());
      assertEquals(new ArrayList<>(chosen).stream().sorted().toList(), chosen);
      chosen.forEach(item -> counts[item]++);
    }
    double fiveSigma = 5 * Math.sqrt(0.4 * 0.6 * DRAWS);
    for (int count : counts) {
      assertEquals(0.4 * DRAWS, count, fiveSigma, "seed " + SEED);
    }
  }
}
