package ohmtrail.predict;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What the model predicts for every reading of a survey, and how that changes. A buffer that is
 * written over and over while ohms are swept; it belongs to one thread.
 */
public final class Evaluation {
  private final int readings;
  private final int[] places;
  private final double[] volts;
  private final double[] jacobian;
  private final double[] ohmsSlope;
  private final double[] perSupply;
  private final Optional<Evaluation> watched;

  /**
   * An empty buffer for a survey in which nobody watched a GFCI or RCD.
   *
   * @param readings number of readings
   * @param parameters number of parameters, each with slopes
   */
  public Evaluation(int readings, int parameters) {
    this(readings, IntStream.range(0, parameters).toArray(), Optional.empty());
  }

  /**
   * An empty buffer.
   *
   * @param readings number of readings
   * @param places those of the parameters whose slopes are told, ascending
   * @param watched that of the GFCIs and RCDs that somebody watched, as if they were ammeters
   */
  Evaluation(int readings, int[] places, Optional<Evaluation> watched) {
    this.watched = watched;
    this.readings = readings;
    this.places = places;
    this.volts = new double[readings];
    this.jacobian = new double[readings * places.length];
    this.ohmsSlope = new double[readings];
    this.perSupply = new double[readings];
  }

  /** Number of readings. */
  public int readings() {
    return readings;
  }

  /** Number of parameters whose slopes are told. */
  public int parameters() {
    return places.length;
  }

  /**
   * The places among all parameters of those whose slopes are told, ascending. The array itself.
   */
  int[] places() {
    return places;
  }

  /** The column of a parameter; negative where its slopes are not told. */
  int columnOf(int place) {
    return Arrays.binarySearch(places, place);
  }

  /** Predicted volts, one per reading. The buffer itself. */
  public double[] volts() {
    return volts;
  }

  /**
   * Change of each prediction per unit of each parameter whose slopes are told, row by row. The
   * buffer itself.
   */
  public double[] jacobian() {
    return jacobian;
  }

  /**
   * Change of each prediction per unit of the natural logarithm of the added ohms. The buffer
   * itself.
   */
  public double[] ohmsSlope() {
    return ohmsSlope;
  }

  /**
   * What the GFCIs and RCDs that somebody watched saw, in amperes, and how that changes: one per
   * {@link ohmtrail.survey.Trip} in the order of the survey; empty where nobody watched one. The
   * buffer itself.
   */
  public Optional<Evaluation> watched() {
    return watched;
  }

  /**
   * Change of each prediction per unit of the natural logarithm of the supply voltage: the
   * prediction itself, but where a load follows its voltage. The buffer itself.
   */
  public double[] perSupply() {
    return perSupply;
  }
}
