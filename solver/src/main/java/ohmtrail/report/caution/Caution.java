package ohmtrail.report.caution;

import java.util.Optional;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.locate.Suspect;
import ohmtrail.survey.Meter;

/** Something that must not be done, or not without care. */
public sealed interface Caution {
  /** A caution that says the same wherever it holds. */
  enum Standing implements Caution {
    /** The main switch stays off: the neutral of the supply may be lost. */
    MAIN_SWITCH_OFF,
    /** The loads come off until the joint is remade. */
    UNLOAD,
    /** Behind a lost neutral of a circuit of two legs the lighter one gets too much. */
    LEGS_DIVIDE,
    /** Beyond a suspected ground metal parts are not protected. */
    UNPROTECTED,
    /** The fault may lie at or before the panel. */
    SUPPLY_SIDE,
    /** A suspect lies in the panel. */
    PANEL,
    /** Readings are taken on live parts. */
    LIVE_PARTS,
    /** Off at any heat, smell or noise. */
    STOP,
    /** Off and proved dead before a box is opened. */
    PROVE_DEAD,
    /** A reading in an open box that is live. */
    OPEN_LIVE_BOX,
    /** What reads ohms goes on a dead circuit only. */
    DEAD_CIRCUIT,
    /** There are aluminium conductors. */
    ALUMINIUM,
    /** Local rules and licensed practice come first. */
    LOCAL_RULES
  }

  /**
   * Behind an open neutral a load puts the full voltage on it.
   *
   * @param leading the suspect that is meant; empty where a step of the advice plugs a load in
   */
  record LostNeutral(Optional<Suspect> leading) implements Caution {}

  /**
   * A meter that is not held from a live conductor to ground behind a GFCI or RCD.
   *
   * @param device what trips
   * @param meter what it does not carry
   * @param amperes that the meter passes or draws there
   */
  record Trips(ResidualCurrentDevice device, Meter meter, double amperes) implements Caution {}
}
