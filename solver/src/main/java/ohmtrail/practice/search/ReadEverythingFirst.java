package ohmtrail.practice.search;

import java.util.List;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.Locator;
import ohmtrail.locate.RankedBox;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * Reads every receptacle with every meter while nothing is on, and under the load plugged in there;
 * then opens the boxes in the order of the ranking.
 */
public final class ReadEverythingFirst implements Searcher {
  private final Circuit circuit;
  private final Assumptions assumptions;

  /** On a circuit; the ranking works with those assumptions. */
  public ReadEverythingFirst(Circuit circuit, Assumptions assumptions) {
    this.circuit = circuit;
    this.assumptions = assumptions;
  }

  @Override
  public Choice next(Survey survey, Situation situation) {
    for (Box box : circuit.boxes()) {
      boolean isRead =
          survey.tests().stream()
              .flatMap(test -> test.readings().stream())
              .anyMatch(reading -> reading.box().equals(box.name()));
      if (box.hasReceptacle() && !isRead) {
        return visit(box.name(), survey);
      }
    }
    return new Locator()
        .locate(new Problem(circuit, survey, assumptions)).boxes().stream()
            .map(RankedBox::box)
            .filter(box -> !survey.lookedSound().contains(box))
            .<Choice>map(Choice.Open::new)
            .findFirst()
            .orElseGet(() -> new Choice.Stop(Choice.Stop.Reason.HEALTHY));
  }

  private Choice visit(String box, Survey survey) {
    List<Reading> idle =
        survey.meters(Measurand.VOLTAGE).stream()
            .map(Meter::name)
            .map(meter -> new Reading(box, ProbePoints.usual(circuit, box), meter, 0))
            .toList();
    Load load = survey.loads().get(0);
    return new Choice.Read(
        List.of(
            new Test("idle at " + box, List.of(), idle),
            new Test(
                load.name() + " at " + box,
                List.of(new LoadInUse(load.name(), box)),
                idle.subList(0, 1))));
  }
}
