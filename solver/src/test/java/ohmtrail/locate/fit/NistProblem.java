package ohmtrail.locate.fit;

/**
 * Nonlinear regression problems with certified answers, unit weights: NIST Statistical Reference
 * Datasets (StRD), nonlinear regression.
 */
@SuppressWarnings("ImmutableEnumChecker") // No test changes the data.
enum NistProblem {
  /** Lower difficulty; Misra, NIST 1978: y = b1 (1 - exp(-b2 x)). */
  MISRA1A(
      new double[] {
        77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1,
        760.0
      },
      new double[] {
        10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47,
        81.78
      },
      new double[][] {{500, 0.0001}, {250, 0.0005}},
      new double[] {2.3894212918E+02, 5.5015643181E-04},
      new double[] {2.7070075241E+00, 7.2668688436E-06},
      1.2455138894E-01),

  /** Higher difficulty; Kowalik and Osborne 1978: y = b1 (x2 + x b2)/(x2 + x b3 + b4). */
  MGH09(
      new double[] {4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625},
      new double[] {
        0.1957, 0.1947, 0.1735, 0.1600, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246
      },
      new double[][] {{25, 39, 41.5, 39}, {0.25, 0.39, 0.415, 0.39}},
      new double[] {1.9280693458E-01, 1.9128232873E-01, 1.2305650693E-01, 1.3606233068E-01},
      new double[] {1.1435312227E-02, 1.9633220911E-01, 8.0842031232E-02, 9.0025542308E-02},
      3.0750560385E-04),

  /** Higher difficulty; Box, Hunter and Hunter 1978: y = b1 (1 - exp(-b2 x)). */
  BOX_BOD(
      new double[] {1, 2, 3, 5, 7, 10},
      new double[] {109, 149, 149, 191, 213, 224},
      new double[][] {{1, 1}, {100, 0.75}},
      new double[] {2.1380940889E+02, 5.4723748542E-01},
      new double[] {1.2354515176E+01, 1.0455993237E-01},
      1.1680088766E+03),

  /** Higher difficulty; Ratkowsky 1983: y = b1/(1 + exp(b2 - b3 x))^(1/b4). */
  RAT43(
      new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15},
      new double[] {
        16.08, 33.83, 65.80, 97.20, 191.55, 326.20, 386.87, 520.53, 590.03, 651.92, 724.93, 699.56,
        689.96, 637.56, 717.41
      },
      new double[][] {{100, 10, 1, 1}, {700, 5, 0.75, 1.3}},
      new double[] {6.9964151270E+02, 5.2771253025E+00, 7.5962938329E-01, 1.2792483859E+00},
      new double[] {1.6302297817E+01, 2.0828735829E+00, 1.9566123451E-01, 6.8761936385E-01},
      8.7864049080E+03);

  private final double[] x;
  private final double[] y;
  private final double[][] starts;
  private final double[] certified;
  private final double[] certifiedSigma;
  private final double certifiedSumOfSquares;

  NistProblem(
      double[] x,
      double[] y,
      double[][] starts,
      double[] certified,
      double[] certifiedSigma,
      double certifiedSumOfSquares) {
    this.x = x;
    this.y = y;
    this.starts = starts;
    this.certified = certified;
    this.certifiedSigma = certifiedSigma;
    this.certifiedSumOfSquares = certifiedSumOfSquares;
  }

  double[] start(int number) {
    return starts[number - 1].clone();
  }

  double[] certified() {
    return certified.clone();
  }

  double[] certifiedSigma() {
    return certifiedSigma.clone();
  }

  double certifiedSumOfSquares() {
    return certifiedSumOfSquares;
  }

  /** Number of points less number of parameters. */
  int degreesOfFreedom() {
    return x.length - certified.length;
  }

  WeightedLeastSquares.Model model() {
    return new WeightedLeastSquares.Model() {
      @Override
      public int rows() {
        return x.length;
      }

      @Override
      public void evaluate(double[] parameters, double[] residuals, double[][] jacobian) {
        for (int i = 0; i < x.length; i++) {
          residuals[i] = y[i] - predict(parameters, x[i], jacobian[i]);
        }
      }
    };
  }

  private double predict(double[] b, double at, double[] slopes) {
    return switch (this) {
      case MISRA1A, BOX_BOD -> saturating(b, at, slopes);
      case MGH09 -> rational(b, at, slopes);
      case RAT43 -> sigmoid(b, at, slopes);
    };
  }

  private static double saturating(double[] b, double at, double[] slopes) {
    double left = Math.exp(-b[1] * at);
    slopes[0] = 1 - left;
    slopes[1] = b[0] * at * left;
    return b[0] * (1 - left);
  }

  private static double rational(double[] b, double at, double[] slopes) {
    double above = at * at + at * b[1];
    double below = at * at + at * b[2] + b[3];
    double value = b[0] * above / below;
    slopes[0] = above / below;
    slopes[1] = b[0] * at / below;
    slopes[2] = -value * at / below;
    slopes[3] = -value / below;
    return value;
  }

  private static double sigmoid(double[] b, double at, double[] slopes) {
    double rising = Math.exp(b[1] - b[2] * at);
    double base = 1 + rising;
    double value = b[0] * Math.pow(base, -1 / b[3]);
    double perRising = -value * rising / (base * b[3]);
    slopes[0] = value / b[0];
    slopes[1] = perRising;
    slopes[2] = -at * perRising;
    slopes[3] = value * Math.log(base) / (b[3] * b[3]);
    return value;
  }
}
