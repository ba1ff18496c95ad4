package ohmtrail.cli;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Situation;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.BoxNames;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.render.json.NextJson;
import ohmtrail.cli.render.screen.CaseLines;
import ohmtrail.cli.render.screen.NextScreen;
import ohmtrail.cli.render.text.NextText;
import ohmtrail.cli.walk.Equipment;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
  @Mixin private final FullOption full = new FullOption();

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
    AdviceReport advice = advice(completed);
    out.print(form == Form.JSON ? NextJson.of(completed, advice) : text(completed, advice));
  }

  private AdviceReport advice(CaseFile completed) {
    return AdviceReport.of(completed.problem(), situation(completed), minutes());
  }

  @Override
  String line(CaseFile caseFile) {
    CaseFile completed = completed(caseFile);
    return CaseLines.advised(completed, advice(completed));
  }

  @Override
  String document(CaseFile caseFile) {
    CaseFile completed = completed(caseFile);
    return NextJson.of(completed, advice(completed));
  }

  private String text(CaseFile caseFile, AdviceReport advice) {
    return full.isFull()
        ? NextText.of(caseFile, advice)
        : NextScreen.of(caseFile, advice, full.columns());
  }

  /** The case with what the command line adds; without a load it gets a heater. */
  private CaseFile completed(CaseFile caseFile) {
    Circuit circuit = caseFile.circuit();
    Survey survey = caseFile.survey();
    for (String box : outOfReach) {
      survey = survey.with(new Finding(box(circuit, box), Finding.State.OUT_OF_REACH));
    }
    for (String box : lookedFine) {
      survey = survey.with(new Finding(box(circuit, box), Finding.State.FINE));
    }
    return Equipment.of(caseFile.with(survey));
  }

  private Situation situation(CaseFile caseFile) {
    Set<String> fetched =
        caseFile.survey().tests().stream()
            .flatMap(test -> test.loads().stream())
            .map(LoadInUse::load)
            .collect(Collectors.toSet());
    return new Situation(at.map(box -> box(caseFile.circuit(), box)), fetched);
  }

  /** The box that is meant. */
  private String box(Circuit circuit, String written) {
    return named("Box", written, BoxNames.of(circuit));
  }

  private String named(String what, String written, Names names) {
    return names
        .find(written)
        .orElseThrow(
            () ->
                wrong(
                    what
                        + " ("
                        + written
                        + ") "
                        + names.rule()
                        + ".\nMaybe "
                        + names.nearestFirst(written).findFirst().orElse("another one")
                        + " was meant."));
  }

  private Minutes minutes() {
    Minutes changed = Minutes.defaults();
    for (Map.Entry<String, Double> entry : minutes.entrySet()) {
      String key = named("Step", entry.getKey(), new Names(Chore.keys()));
      Chore chore = Chore.byKey(key).orElseThrow();
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
