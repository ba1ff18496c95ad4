package ohmtrail.reference;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.reference.table.TableConstant;
import ohmtrail.reference.table.TableFile;

/**
 * One step of a search and how long it takes. Default, source and meaning of each stand in the
 * project's {@code minutes.csv} under its {@link #key()}; what is in the table and what is in this
 * list are the same.
 */
public enum Chore implements TableConstant {
  /** Going from one box to another. */
  WALK,
  /** One number off the meter. */
  READING,
  /** Plugging a load in and taking it out again. */
  PLUG_LOAD,
  /** Fetching a load for the first time. */
  FETCH_LOAD,
  /** Breaker off for readings on the dead circuit, and on again after them. */
  BREAKER_OFF,
  /** Linking conductors at a box, and taking the link off. */
  PLACE_LINK,
  /** Having a second person stand at the switch of what is wired in. */
  SECOND_PERSON,
  /** Laying out a long lead to another box. */
  LAY_LEAD,
  /** Opening a box and looking. */
  OPEN_BOX,
  /** The same at the panel. */
  OPEN_PANEL,
  /** On top, for a box that cannot be reached as it is. */
  HARD_TO_REACH,
  /** Calling those who deliver the supply. */
  CALL_UTILITY,
  /** Calling a circuit sound that is not. */
  WRONG_STOP;

  static final String FILE = "minutes.csv";

  /** The chore of that key; empty if there is none. */
  public static Optional<Chore> byKey(String key) {
    return Stream.of(values()).filter(chore -> chore.key().equals(key)).findFirst();
  }

  /** Every key, in the order of this list. */
  public static List<String> keys() {
    return Stream.of(values()).map(Chore::key).toList();
  }

  /** Minutes taken for it when nobody says otherwise. */
  public double defaultMinutes() {
    return value();
  }

  @Override
  public TableFile table() {
    return Loaded.TABLE;
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final TableFile TABLE = TableFile.read(FILE);
  }
}
