package ohmtrail.predict.operating;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.network.Attachment;
import ohmtrail.network.Complex;

/** Admittances by port: what is plugged in beside a meter shares its port. */
public final class Shunts {
  private final List<Integer> ports = new ArrayList<>();
  private final List<Complex> admittances = new ArrayList<>();

  /** Nothing yet. */
  public Shunts() {}

  /** The same admittances, to add more to. */
  public Shunts(Shunts others) {
    ports.addAll(others.ports);
    admittances.addAll(others.admittances);
  }

  /** Puts an admittance, in siemens, across a pair of nodes, beside what is there. */
  public void add(int port, Complex admittance) {
    int place = ports.indexOf(port);
    if (place < 0) {
      ports.add(port);
      admittances.add(admittance);
    } else {
      admittances.set(place, admittances.get(place).plus(admittance));
    }
  }

  /** One attachment per port. */
  public List<Attachment> attachments() {
    List<Attachment> result = new ArrayList<>();
    for (int i = 0; i < ports.size(); i++) {
      result.add(Attachment.shunt(ports.get(i), admittances.get(i)));
    }
    return result;
  }
}
