package ohmtrail.predict;

import java.util.Locale;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.problem.Problem;
import ohmtrail.survey.Survey;

/**
 * The memory that an answer takes at least, told before anything is made of a problem: the models
 * of the survey at the few points of the parameters that are held side by side, the slopes of one
 * joint, and the covariances of the readings.
 *
 * @param boxes of the circuit
 * @param readings of the survey
 * @param bytes that an answer takes
 */
public record Room(int boxes, int readings, long bytes) {
  /** Gaps and pairs for each joint: itself, and its part of the cables and their capacitances. */
  private static final long PORTS_PER_JOINT = 2;

  private static final long COMPLEX_BYTES = 16;
  private static final long REAL_BYTES = 8;

  /** Points of the parameters whose models are held side by side. */
  private static final long MODELS = 4;

  /** Coefficients per reading and parameter of a joint's sweep, and of buffers. */
  private static final long SLOPES = 12;

  /** Covariances, their factors and inverses. */
  private static final long COVARIANCES = 6;

  private static final double BYTES_PER_MEGABYTE = 1024.0 * 1024;

  /** An answer would not fit into memory. */
  public static final class TooLittleException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private TooLittleException(String message) {
      super(message);
    }
  }

  /** What a problem takes. */
  public static Room of(Problem problem) {
    Circuit circuit = problem.circuit();
    Survey survey = problem.survey();
    long readings = survey.readingCount();
    long parameters = Parameters.of(circuit, survey, problem.assumptions()).size();
    long columns =
        ReadingStates.uses(circuit, survey, ReadingStates.Meters.STAY, Set.of()).values().stream()
            .mapToLong(use -> use.taps().size())
            .sum();
    long ports = PORTS_PER_JOINT * circuit.joints().size() + columns;
    long kept = columns + (ReadingState.keepsColumns(ports) ? 2 * readings : 2);
    long model = COMPLEX_BYTES * (ports * kept + readings * parameters);
    long slopes = REAL_BYTES * SLOPES * readings * parameters;
    long covariances = REAL_BYTES * COVARIANCES * readings * readings;
    return new Room(circuit.boxes().size(), (int) readings, MODELS * model + slopes + covariances);
  }

  /**
   * Refuses what does not fit.
   *
   * @param available bytes that there are
   * @throws TooLittleException when that is less than it takes
   */
  public void requireWithin(long available) {
    if (bytes > available) {
      throw new TooLittleException(
          String.format(
              Locale.ROOT,
              "An answer to %d boxes and %d readings takes %.0f MB of memory or more; there are"
                  + " %.0f MB.\nMaybe give Java more (java -Xmx%dm -jar ohmtrail.jar), or leave"
                  + " out of the case the boxes behind the last one that was read.",
              boxes,
              readings,
              Math.ceil(bytes / BYTES_PER_MEGABYTE),
              Math.floor(available / BYTES_PER_MEGABYTE),
              (long) Math.ceil(2 * bytes / BYTES_PER_MEGABYTE)));
    }
  }
}
