package ohmtrail.cli;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.Advice;
import ohmtrail.advise.Advisor;
import ohmtrail.advise.Situation;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.json.NextJson;
import ohmtrail.cli.render.text.NextText;
import ohmtrail.cli.walk.Equipment;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Says what to do next. */
@Command(
    name = "next",
    description =
        "Says what to do next: the reading that settles it soonest or the box to open, what each"
            + " outcome would mean, and what must not be done.",
    footer = {
      "  ohmtrail next kitchen.yaml",
      "  ohmtrail next kitchen.yaml --out-of-reach fridge --minutes open-box=8"
    })
final class NextCommand extends CaseCommand {
  @Option(names = "--at", paramLabel = "BOX", description = "Where you stand.")
  private Optional<String> at = Optional.empty();

  @Option(
      names = "--out-of-reach",
      paramLabel = "BOX",
      description = "A box that cannot be reached as it is; may be given for several.")
  private List<String> outOfReach = List.of();

  @Option(
      names = "--looked-fine",
      paramLabel = "BOX",
      description = "A box that was opened and looked fine; may be given for several.")
  private List<String> lookedFine = List.of();

  @Option(
      names = "--minutes",
      paramLabel = "STEP=MINUTES",
      description = {
        "How long a step takes here; may be given for several.",
        "STEP: walk, reading, plug-load, fetch-load, breaker-off, place-link, lay-lead, open-box,",
        "open-panel, hard-to-reach, call-utility, wrong-stop."
      })
  private Map<String, Double> minutes = new LinkedHashMap<>();

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) {
    CaseFile completed = completed(caseFile);
    Advice advice =
        new Advisor(completed.circuit(), completed.assumptions(), minutes())
            .next(completed.survey(), situation(completed));
    out.print(form == Form.JSON ? NextJson.of(completed, advice) : NextText.of(completed, advice));
  }

  /** The case with what the command line adds; without a load it gets a heater. */
  private CaseFile completed(CaseFile caseFile) {
    Circuit circuit = caseFile.circuit();
    Survey survey = caseFile.survey();
    for (String box : outOfReach) {
      requireBox(circuit, box);
      survey = survey.with(new Finding(box, Finding.State.OUT_OF_REACH));
    }
    for (String box : lookedFine) {
      requireBox(circuit, box);
      survey = survey.with(new Finding(box, Finding.State.FINE));
    }
    return Equipment.of(caseFile.with(survey));
  }

  private Situation situation(CaseFile caseFile) {
    at.ifPresent(box -> requireBox(caseFile.circuit(), box));
    Set<String> fetched =
        caseFile.survey().tests().stream()
            .flatMap(test -> test.loads().stream())
            .map(LoadInUse::load)
            .collect(Collectors.toSet());
    return new Situation(at, fetched);
  }

  private void requireBox(Circuit circuit, String box) {
    if (circuit.box(box).isEmpty()) {
      List<String> names = circuit.boxes().stream().map(Box::name).toList();
      throw wrong(
          "Box ("
              + box
              + ") must be one of the case's.\nMaybe "
              + NearestNames.to(box, names).get(0)
              + " was meant.");
    }
  }

  private Minutes minutes() {
    Minutes changed = Minutes.defaults();
    for (Map.Entry<String, Double> entry : minutes.entrySet()) {
      Chore chore =
          Chore.byKey(entry.getKey())
              .orElseThrow(
                  () ->
                      wrong(
                          "Step ("
                              + entry.getKey()
                              + ") must be one of "
                              + String.join(", ", Chore.keys())
                              + ".\nMaybe "
                              + NearestNames.to(entry.getKey(), Chore.keys()).get(0)
                              + " was meant."));
      try {
        changed = changed.with(chore, entry.getValue());
      } catch (IllegalArgumentException e) {
        throw wrong(String.valueOf(e.getMessage()));
      }
    }
    return changed;
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec().commandLine(), message);
  }
}
