package ohmtrail.locate;

import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.predict.Degradation;

/**
 * One hypothesis at its best fit.
 *
 * @param degradations the degraded joint with its ohms; empty for a healthy circuit
 * @param point u of every parameter
 * @param volts what it shows for every reading, the drift of each test included
 * @param wrongProbabilities how likely each reading is wrong outright
 */
record Explanation(
    List<Degradation> degradations,
    List<Double> point,
    List<Double> volts,
    List<Double> wrongProbabilities) {

  /** A copy in which the given readings are wrong for certain. */
  Explanation withWrong(BitSet wrong) {
    List<Double> changed =
        IntStream.range(0, wrongProbabilities.size())
            .mapToObj(r -> wrong.get(r) ? Double.valueOf(1) : wrongProbabilities.get(r))
            .toList();
    return new Explanation(degradations, point, volts, changed);
  }
}
