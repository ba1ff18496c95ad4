package ohmtrail.practice.search;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.advise.Advisor;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Survey;

/** What is to be said to somebody who searches a made-up circuit. */
public final class Tutor {
  private final PracticeCase hidden;
  private final long seed;
  private final Advisor advisor;

  /**
   * Prepares.
   *
   * @param hidden circuit and truth
   * @param seed of the circuit's drifts and errors
   */
  public Tutor(PracticeCase hidden, long seed) {
    this.hidden = hidden;
    this.seed = seed;
    this.advisor = new Advisor(hidden.circuit(), hidden.assumptions(), Minutes.defaults());
  }

  /**
   * A search from its beginning to the box.
   *
   * @param steps what was done, one after the other
   * @param minutes that it took
   */
  public record Way(List<Choice> steps, double minutes) {
    /** Copies the list. */
    public Way {
      steps = List.copyOf(steps);
    }
  }

  /** The search of somebody who does what is advised. */
  public Way advised() {
    List<Choice> steps = new ArrayList<>();
    Advised advised = new Advised(advisor);
    Played played =
        new Game(new LiveCircuit(hidden, seed), Minutes.defaults())
            .play(
                (known, there) -> {
                  Choice choice = advised.next(known, there);
                  steps.add(choice);
                  return choice;
                });
    return new Way(steps, played.minutes());
  }

  /** What a visit could do by what is known: on a real circuit reason enough to leave it. */
  public List<Hazard> hazards(Choice.Read visit, Survey known, Situation situation) {
    return advisor.hazards(visit, known, situation);
  }
}
