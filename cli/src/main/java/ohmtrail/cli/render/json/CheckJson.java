package ohmtrail.cli.render.json;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.Section;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.MissingWords;
import ohmtrail.cli.render.words.KnownWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.SwitchWords;
import ohmtrail.map.known.Outlet;
import ohmtrail.reference.Assumption;
import ohmtrail.report.Missing;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.Rating;

/** A case as understood, as a document. */
public final class CheckJson {
  private final CaseFile caseFile;
  private final JsonWriter json;

  private CheckJson(CaseFile caseFile) {
    this.caseFile = caseFile;
    this.json = Parts.begin("check", caseFile);
  }

  /** Writes it. */
  public static String of(CaseFile caseFile) {
    return new CheckJson(caseFile).write();
  }

  private String write() {
    Circuit circuit = caseFile.circuit();
    json.object("supply")
        .member("volts", circuit.supply().volts())
        .member("hertz", circuit.supply().hertz())
        .member("legs", circuit.supply().legs().conductors().size())
        .member("greatestVolts", circuit.supply().greatestVolts())
        .member("earthing", circuit.supply().earthing().word())
        .end()
        .member("breakerAmperes", circuit.breakerAmperes());
    writeAll("boxes", circuit.boxes(), this::writeBox);
    writeAll("cables", known(circuit), this::writeCable);
    writeAll("joints", joints(circuit), this::writeJoint);
    json.texts("feederUnknown", open());
    Survey survey = caseFile.survey();
    writeAll("meters", survey.meters(), this::writeMeter);
    writeAll("loads", survey.loads(), this::writeLoad);
    writeAll("tests", survey.tests(), this::writeTest);
    json.texts(
        "whatWouldHelp",
        caseFile.unknown().isPresent()
            ? List.of(KnownWords.HELP)
            : MissingWords.of(
                Region.of(caseFile.circuit().supply()), Missing.in(caseFile.problem())));
    json.texts("cautions", Cautions.forMeasuring(caseFile));
    Parts.taken(json, caseFile);
    Parts.assumptions(json, caseFile, List.of(Assumption.values()));
    Parts.warnings(json, caseFile);
    return json.end().toString();
  }

  /** The boxes of which it is not known what feeds them. */
  private List<String> open() {
    return caseFile.unknown().stream()
        .flatMap(run -> run.outlets().stream())
        .filter(outlet -> outlet.fedBy().isEmpty())
        .map(Outlet::name)
        .toList();
  }

  /** The cables that are known; not those that stand for a feeder that is not. */
  private List<Cable> known(Circuit circuit) {
    List<String> open = open();
    return circuit.cables().stream().filter(cable -> !open.contains(cable.to())).toList();
  }

  private List<Joint> joints(Circuit circuit) {
    List<String> open = open();
    Set<Joint> standIns =
        circuit.sections().stream()
            .filter(section -> open.contains(section.cable().to()))
            .map(Section::near)
            .collect(Collectors.toSet());
    return circuit.joints().stream().filter(joint -> !standIns.contains(joint)).toList();
  }

  private <T> void writeAll(String name, List<T> items, Consumer<T> writer) {
    json.array(name);
    items.forEach(
        item -> {
          json.object();
          writer.accept(item);
          json.end();
        });
    json.end();
  }

  private void writeBox(Box box) {
    json.member("box", box.name()).member("kind", word(box.kind()));
    if (box.kind() != BoxKind.PANEL && box.kind() != BoxKind.JUNCTION) {
      json.member("wiring", word(box.wiring()));
    }
  }

  private void writeCable(Cable cable) {
    json.member("from", cable.from())
        .member("to", cable.to())
        .member("metres", cable.lengthMetres())
        .member("size", cable.conductor().size().designation())
        .member("material", word(cable.conductor().material()))
        .member("companion", word(cable.companion()));
  }

  private void writeJoint(Joint joint) {
    json.member("id", joint.id())
        .member("box", joint.box())
        .member("conductor", joint.conductor().word())
        .member("role", joint.role().word())
        .member("kind", joint.kind().word());
  }

  private void writeMeter(Meter meter) {
    json.member("meter", meter.name())
        .member("inputOhms", meter.inputOhms())
        .member("inputFarads", meter.inputFarads())
        .member("testAmperes", meter.testAmperes())
        .member("unit", meter.measurand().unit())
        .member("resolution", meter.resolution())
        .member("resolutionVolts", meter.resolution())
        .member("accuracyShare", meter.accuracy().share())
        .member("accuracyCounts", meter.accuracy().counts());
  }

  private void writeLoad(Load load) {
    json.member("load", load.name())
        .member("kind", load.kind())
        .member(
            load.rating().quantity() == Rating.Quantity.POWER ? "watts" : "amperes",
            load.rating().value());
    caseFile.survey().hardWired().stream()
        .filter(use -> use.load().equals(load.name()))
        .forEach(use -> json.member("hardWiredAt", use.box()));
  }

  private void writeTest(Test test) {
    json.member("test", test.name()).member("readings", test.readings().size());
    json.array("loads");
    for (LoadInUse use : test.loads()) {
      json.object().member("load", use.load()).member("at", use.box()).end();
    }
    json.end();
    json.texts("wiredIn", SwitchWords.drawing(caseFile, test));
    Parts.switching(json, test.switching());
  }

  /** As case files write such words. */
  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
