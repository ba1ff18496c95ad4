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
  /** Three complex coefficients per reading and parameter. */
  private static final double BYTES_PER_SLOPE = 48;

  private final double mostBytes;
  private final Map<Asked, Kept> kept;
  private double bytes;

  private Sweeps(double mostBytes, Map<Asked, Kept> kept) {
    this.mostBytes = mostBytes;
    this.kept = kept;
  }

  private record Asked(SurveyModel model, Joint joint) {}

  private record Kept(JointSweep sweep, List<Integer> felt, double bytes) {}

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
    int[] places = felt.stream().mapToInt(Integer::intValue).toArray();
    Asked asked = new Asked(model, joint);
    Kept known = kept.get(asked);
    if (known != null && known.felt().equals(felt)) {
      return known.sweep();
    }
    JointSweep sweep =
        known == null ? model.respond(joint).sweep(places) : known.sweep().only(places);
    keep(asked, new Kept(sweep, felt, BYTES_PER_SLOPE * model.readings() * places.length));
    return sweep;
  }

  private void keep(Asked asked, Kept made) {
    Kept replaced = kept.remove(asked);
    bytes += made.bytes() - (replaced == null ? 0 : replaced.bytes());
    Iterator<Kept> oldest = kept.values().iterator();
    while (bytes > mostBytes && oldest.hasNext()) {
      bytes -= oldest.next().bytes();
      oldest.remove();
    }
    kept.put(asked, made);
  }
}
