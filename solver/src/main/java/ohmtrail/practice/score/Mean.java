package ohmtrail.practice.score;

import java.util.stream.DoubleStream;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;

/**
 * A mean over cases.
 *
 * @param value the mean
 * @param standardError of it; 0 for a single case
 */
public record Mean(double value, double standardError) {
  /** Of at least one figure. */
  static Mean of(DoubleStream figures) {
    SummaryStatistics statistics = new SummaryStatistics();
    figures.forEachOrdered(statistics::addValue);
    double count = statistics.getN();
    return new Mean(statistics.getMean(), statistics.getStandardDeviation() / Math.sqrt(count));
  }
}
