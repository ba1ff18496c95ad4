package ohmtrail.practice.exact;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.practice.FaultKind;
import org.ejml.data.DMatrixRMaj;

/** The evidence of one joint over the ohms that faults are drawn with. */
final class OhmsPosterior {
  private static final double TAIL = (1 - OhmsInterval.USUAL_COVERAGE) / 2;
  private static final double MEDIAN = 0.5;
  private static final double OPEN = Double.POSITIVE_INFINITY;

  private final OracleFit fit;
  private final Joint joint;

  /** By the logarithm of the ohms; each fit starts from the nearest one done so far. */
  private final TreeMap<Double, OracleFit.Mode> modes = new TreeMap<>();

  private final Optional<LogIntegral> conducting;
  private final double logConducting;
  private final double logOpen;

  OhmsPosterior(OracleFit fit, Joint joint, FaultKind faults) {
    this.fit = fit;
    this.joint = joint;
    if (faults.openShare() < 1) {
      double low = Math.log(faults.lowestOhms());
      double high = Math.log(faults.highestOhms());
      LogIntegral integral = LogIntegral.of(this::logEvidence, low, high);
      this.conducting = Optional.of(integral);
      this.logConducting = Math.log((1 - faults.openShare()) / (high - low)) + integral.logTotal();
    } else {
      this.conducting = Optional.empty();
      this.logConducting = Double.NEGATIVE_INFINITY;
    }
    this.logOpen =
        faults.openShare() > 0
            ? Math.log(faults.openShare()) + logEvidence(OPEN)
            : Double.NEGATIVE_INFINITY;
  }

  Joint joint() {
    return joint;
  }

  /** Over all ohms. */
  double logEvidence() {
    return LogIntegral.logSum(List.of(logConducting, logOpen));
  }

  private double logEvidence(double logOhms) {
    OracleFit.Mode mode = fit.mode(this::solve, nearest(logOhms), Math.exp(logOhms));
    modes.put(logOhms, mode);
    return mode.logEvidence();
  }

  private OracleFit.Solved solve(DMatrixRMaj point) {
    return fit.solve(joint, point);
  }

  private OracleFit.Solved nearest(double logOhms) {
    Map.Entry<Double, OracleFit.Mode> below = modes.floorEntry(logOhms);
    Map.Entry<Double, OracleFit.Mode> above = modes.ceilingEntry(logOhms);
    if (below == null && above == null) {
      return solve(fit.nominal());
    }
    boolean fromBelow =
        above == null || (below != null && logOhms - below.getKey() < above.getKey() - logOhms);
    Map.Entry<Double, OracleFit.Mode> start = fromBelow ? below : above;
    return start == null ? solve(fit.nominal()) : start.getValue().solved();
  }

  /** What sampling adds to the logarithm of the evidence at the most probable ohms. */
  double correction(ImportanceSampling sampling) {
    double logOhms = OPEN;
    if (logConducting > logOpen) {
      double highest = Double.NEGATIVE_INFINITY;
      for (Map.Entry<Double, OracleFit.Mode> each : modes.entrySet()) {
        if (each.getKey() < OPEN && each.getValue().logEvidence() > highest) {
          highest = each.getValue().logEvidence();
          logOhms = each.getKey();
        }
      }
    }
    OracleFit.Mode mode = modes.getOrDefault(logOhms, modes.lastEntry().getValue());
    return sampling.around(mode, this::solve, Math.exp(logOhms)).logEvidence() - mode.logEvidence();
  }

  /** Quantiles of the ohms, where an open joint counts as more than any. */
  OhmsInterval interval() {
    OptionalDouble low = quantile(TAIL);
    return new OhmsInterval(
        quantile(MEDIAN),
        low.isPresent() ? low : OptionalDouble.of(OPEN),
        quantile(1 - TAIL),
        OhmsInterval.USUAL_COVERAGE);
  }

  /** The ohms below which so much of the probability lies; empty where it is an open joint. */
  OptionalDouble quantile(double share) {
    double ofConducting = Math.exp(logConducting - logEvidence());
    return conducting
        .filter(integral -> share < ofConducting)
        .map(integral -> OptionalDouble.of(Math.exp(integral.quantile(share / ofConducting))))
        .orElse(OptionalDouble.empty());
  }
}
