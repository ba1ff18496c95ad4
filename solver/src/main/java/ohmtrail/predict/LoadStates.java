package ohmtrail.predict;

import java.util.function.Function;
import ohmtrail.survey.Test;

/**
 * A circuit under the loads of several tests, each to be had when it is looked at: what is worked
 * out for one is not kept for the next.
 */
public final class LoadStates {
  private final Function<Test, LoadState> settling;

  LoadStates(Function<Test, LoadState> settling) {
    this.settling = settling;
  }

  /**
   * The circuit under the loads of one of the tests.
   *
   * @throws IllegalArgumentException when nothing was laid out for it
   */
  public LoadState of(Test test) {
    return settling.apply(test);
  }
}
