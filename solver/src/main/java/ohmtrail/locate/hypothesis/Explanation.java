package ohmtrail.locate.hypothesis;

import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.predict.Degradation;

/**
 * A hypothesis at its best fit.
 *
 * @param degradations the degraded joints with their ohms; empty for a sound circuit
 * @param point u of every parameter
 * @param volts what it shows for every reading, the drift of each test included
 * @param outlierProbabilities how likely each reading is an outlier
 */
public record Explanation(
    List<Degradation> degradations,
    List<Double> point,
    List<Double> volts,
    List<Double> outlierProbabilities) {

  /** Copies the lists. */
  public Explanation {
    degradations = List.copyOf(degradations);
    point = List.copyOf(point);
    volts = List.copyOf(volts);
    outlierProbabilities = List.copyOf(outlierProbabilities);
  }

  /** A copy in which the given readings are outliers for certain. */
  public Explanation withOutliers(BitSet outliers) {
    List<Double> changed =
        IntStream.range(0, outlierProbabilities.size())
            .mapToObj(r -> outliers.get(r) ? Double.valueOf(1) : outlierProbabilities.get(r))
            .toList();
    return new Explanation(degradations, point, volts, changed);
  }
}
