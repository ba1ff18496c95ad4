package ohmtrail.practice.search;

import ohmtrail.advise.Advisor;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;

/** The ways to search that are held against each other. */
public enum Way {
  /** As advised. */
  ADVICE {
    @Override
    public Searcher on(Circuit circuit, Assumptions assumptions, Minutes minutes, long seed) {
      return new Advised(new Advisor(circuit, assumptions, minutes));
    }
  },
  /** {@link HalfSplit}. */
  HALF_SPLIT {
    @Override
    public Searcher on(Circuit circuit, Assumptions assumptions, Minutes minutes, long seed) {
      return new HalfSplit(circuit, assumptions, seed);
    }
  },
  /** {@link ReadEverythingFirst}. */
  EVERYTHING_FIRST {
    @Override
    public Searcher on(Circuit circuit, Assumptions assumptions, Minutes minutes, long seed) {
      return new ReadEverythingFirst(circuit, assumptions);
    }
  };

  /**
   * Somebody who searches that way, for one game.
   *
   * @param circuit the circuit as it is stated to be wired
   * @param assumptions what is taken for granted
   * @param minutes how long each step takes
   * @param seed decides what is left to chance
   */
  public abstract Searcher on(Circuit circuit, Assumptions assumptions, Minutes minutes, long seed);
}
