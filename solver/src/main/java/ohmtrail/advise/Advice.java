package ohmtrail.advise;

import java.util.List;
import ohmtrail.locate.Diagnosis;
import ohmtrail.report.OpeningPlan;

/**
 * What to do next.
 *
 * @param diagnosis what is believed now
 * @param options the best first; at least one
 * @param ruledOut what must not be done
 * @param opening the order in which to open boxes; {@link ohmtrail.survey.Finding#SUPPLY} stands
 *     for the supply
 * @param minutesByOpening expected if no further reading is taken and boxes are opened at once
 */
public record Advice(
    Diagnosis diagnosis,
    List<Option> options,
    List<RuledOut> ruledOut,
    OpeningPlan opening,
    double minutesByOpening) {
  /** Copies the lists; rejects advice to do nothing at all. */
  public Advice {
    options = List.copyOf(options);
    ruledOut = List.copyOf(ruledOut);
    if (options.isEmpty()) {
      throw new IllegalArgumentException("Advice must hold at least one choice");
    }
  }

  /** The best choice. */
  public Option best() {
    return options.get(0);
  }
}
