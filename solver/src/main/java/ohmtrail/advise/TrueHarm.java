package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import ohmtrail.advise.safety.Draw;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.SafetyCheck;
import ohmtrail.advise.safety.Trial;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.LoadState;
import ohmtrail.predict.LoadStates;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * What a test does to a circuit whose faults are known, held against every harm that hurts by
 * itself. For searches that are played.
 */
public final class TrueHarm {
  private TrueHarm() {}

  /**
   * One harm looked for at one moment of a test.
   *
   * @param harm the harm
   * @param figure what the test came to, in the harm's unit
   * @param limit the most that is allowed
   * @param wasThere whether it was so before anything was plugged in, switched on or read
   */
  public record Looked(Harm harm, double figure, double limit, boolean wasThere) {
    /** Whether the test does the harm. */
    public boolean isDone() {
      return figure > limit && !wasThere;
    }
  }

  /**
   * Looks for every harm.
   *
   * @param circuit as it is truly wired
   * @param survey the meters and loads as they truly are; its tests are of no effect
   * @param assumptions the limits among them
   * @param point u of every parameter of that survey
   * @param truth the degraded joints
   * @param timetable how long loads are on
   * @param read the visit
   * @param test one of its tests
   */
  public static List<Looked> of(
      Circuit circuit,
      Survey survey,
      Assumptions assumptions,
      double[] point,
      List<Degradation> truth,
      Timetable timetable,
      Choice.Read read,
      Test test) {
    List<Exposure> exposures = Exposure.of(read, test, survey, timetable, assumptions);
    if (exposures.isEmpty()) {
      return List.of();
    }
    List<Test> moments =
        Stream.concat(
                exposures.stream().map(Exposure::moment), Stream.of(Exposure.untouched(survey)))
            .toList();
    LoadStates states = new Predictor(circuit, survey, assumptions).states(moments, point);
    LoadState untouched = states.of(Exposure.untouched(survey));
    List<Looked> looked = new ArrayList<>();
    for (Exposure exposure : exposures) {
      Draw draw = exposure.draw();
      LoadState state = states.of(exposure.moment());
      Trial trial = new Trial(circuit, assumptions, state.with(truth), draw, truth);
      Trial before = new Trial(circuit, assumptions, untouched.with(truth), draw, truth);
      for (SafetyCheck check : SafetyCheck.all()) {
        if (check.hurts()) {
          double limit = check.limit(circuit, assumptions);
          looked.add(
              new Looked(check.harm(), check.figure(trial), limit, check.figure(before) > limit));
        }
      }
    }
    return looked;
  }
}
