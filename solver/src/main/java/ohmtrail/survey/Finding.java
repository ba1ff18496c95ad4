package ohmtrail.survey;

import java.util.Locale;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;

/**
 * What somebody found who went to a box, apart from readings. Of several at the same place the last
 * one holds.
 *
 * @param place name of the box, or {@link #SUPPLY}
 * @param state what was found there
 */
public record Finding(String place, State state) {
  /** What stands for the supply where a box is named: the utility has looked. */
  public static final String SUPPLY = "the supply";

  /** What can be found. */
  public enum State {
    /** Opened; every joint looked sound. */
    FINE,
    /** Opened; a joint looked burnt, loose or broken. */
    BURNT,
    /** Opened; a joint was made anew, and the others looked sound. */
    REMADE,
    /** Neither read at nor opened, as it is. */
    OUT_OF_REACH;

    /**
     * The word of case files: {@code fine}, {@code burnt}, {@code remade}, {@code out of reach}.
     */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** Whether the two cannot both be so of one box, looked into once. */
  public boolean contradicts(Finding other) {
    boolean oneIsBurnt = state == State.BURNT || other.state == State.BURNT;
    boolean oneIsFine = state == State.FINE || other.state == State.FINE;
    return place.equals(other.place) && oneIsBurnt && oneIsFine;
  }

  /** Where a joint is looked for: in its box, or where the panel is fed from. */
  public static String placeOf(Joint joint) {
    return joint.role() == JointRole.SUPPLY ? SUPPLY : joint.box();
  }

  /** Rejects a place without a name. */
  public Finding {
    if (place.isBlank()) {
      throw new SurveyException("Place (" + place + ") of a finding must not be blank");
    }
  }

  /** Whether every joint there was sound when it was left. */
  public boolean isSound() {
    return state == State.FINE || state == State.REMADE;
  }
}
