package ohmtrail.locate.fit;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.SurveyModel;

/**
 * The sweeps of joints that were last needed, as many as there is room for: each holds a few
 * numbers per reading and parameter. Belongs to one thread.
 */
public final class Sweeps {
  /** Two complex coefficients per reading and parameter. */
  private static final double BYTES_PER_SLOPE = 32;

  private final double mostBytes;
  private final Map<Asked, Kept> kept;
  private double bytes;

  private Sweeps(double mostBytes, Map<Asked, Kept> kept) {
    this.mostBytes = mostBytes;
    this.kept = kept;
  }

  private record Asked(SurveyModel model, Joint joint) {}

  private record Kept(JointSweep sweep, double bytes) {}

  /**
   * Makes room.
   *
   * @param mostBytes memory for them
   */
  public static Sweeps within(double mostBytes) {
    return new Sweeps(mostBytes, new LinkedHashMap<>(16, 0.75f, true));
  }

  /**
   * The readings of a model as ohms are added in one of its joints.
   *
   * @param felt places of the parameters whose slopes are wanted, ascending; of one model every
   *     call wants what the first one wanted, or less
   */
  public JointSweep of(SurveyModel model, Joint joint, List<Integer> felt) {
    Asked asked = new Asked(model, joint);
    Kept known = kept.get(asked);
    if (known != null) {
      return known.sweep();
    }
    JointSweep sweep =
        model.respond(joint).sweep(felt.stream().mapToInt(Integer::intValue).toArray());
    Kept made = new Kept(sweep, BYTES_PER_SLOPE * model.readings() * felt.size());
    bytes += made.bytes();
    Iterator<Kept> oldest = kept.values().iterator();
    while (bytes > mostBytes && oldest.hasNext()) {
      bytes -= oldest.next().bytes();
      oldest.remove();
    }
    kept.put(asked, made);
    return sweep;
  }
}
