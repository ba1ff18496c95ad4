package ohmtrail.cli.render.advice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ohmtrail.advise.Choice;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.SwitchWords;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/** What is done on a visit, as an order. Immutable. */
final class VisitWords {
  private final Circuit circuit;
  private final Survey survey;
  private final Region region;
  private final JointWords joints;
  private final WorkWords work;

  /** For a circuit and the meters and loads at hand. */
  VisitWords(Circuit circuit, Survey survey) {
    this.circuit = circuit;
    this.survey = survey;
    this.region = Region.of(circuit.supply());
    this.joints = new JointWords(circuit);
    this.work = new WorkWords(circuit);
  }

  /** Everything that is read on a visit, by which meter and while what is on. */
  String visit(Choice.Read read) {
    List<String> parts = new ArrayList<>();
    for (Test test : read.tests()) {
      parts.add("read " + readings(test) + during(test, read.box()));
    }
    return String.join("; then ", parts) + brief(read);
  }

  private String brief(Choice.Read read) {
    if (read.look() == Choice.Read.Look.USUAL) {
      return "";
    }
    boolean away =
        read.tests().stream()
            .flatMap(test -> LoadInUse.drawing(test, survey, circuit).stream())
            .anyMatch(use -> !use.box().equals(read.box()));
    return ", for a moment only: each reading by itself, the meter set to hold its lowest (between"
        + " neutral and ground its highest), the load flicked on and off again at once"
        + (away ? " by a second person at its switch" : "")
        + ", a minute between two";
  }

  private String readings(Test test) {
    Map<String, List<String>> byMeter = new LinkedHashMap<>();
    for (Reading reading : test.readings()) {
      byMeter.computeIfAbsent(reading.meter(), name -> new ArrayList<>()).add(what(reading));
    }
    List<String> parts = new ArrayList<>();
    byMeter.forEach(
        (meter, what) ->
            parts.add(
                JointWords.listed(what, "and")
                    + (survey.meters().size() > 1 ? " with the " + named(meter) : "")));
    return JointWords.listed(parts, "and");
  }

  /** "meter high", but "clamp meter" as it is. */
  private static String named(String meter) {
    return meter.endsWith("meter") || meter.endsWith("tester") ? meter : "meter " + meter;
  }

  /** One reading of a visit: what, and while what is on. */
  String reading(Test test, Reading reading) {
    String meter = survey.meters().size() > 1 ? ", meter " + reading.meter() : "";
    return what(reading) + during(test, reading.box()) + meter;
  }

  /** What is read, without its box. */
  String what(Reading reading) {
    Tap tap = reading.tap();
    if (tap instanceof Tap.Pair pair) {
      return conductor(pair.between().first()) + " to " + conductor(pair.between().second());
    }
    if (tap instanceof Tap.Points points) {
      return point(points.first(), points.box()) + " to " + point(points.second(), points.box());
    }
    if (tap instanceof Tap.AroundLoad around) {
      return "the current of the " + around.load();
    }
    if (tap instanceof Tap.AroundConductor around) {
      return "the current in the " + conductor(around.conductor()) + " to " + around.to();
    }
    return "across " + joints.joint(((Tap.AcrossJoint) tap).joint());
  }

  private String point(ProbePoint point, String box) {
    String conductor = conductor(point.conductor());
    return point.box().equals(box) ? conductor : conductor + " at " + point.box();
  }

  /** Every switch that is not said to be open is closed, and what is wired in left on. */
  private String during(Test test, String box) {
    String closed = switched(test);
    if (test.isolation().isPresent()) {
      return ", "
          + work.off(box)
          + " and proved dead, everything unplugged or disconnected"
          + closed
          + linked(test.isolation().get());
    }
    if (test.loads().isEmpty()) {
      boolean nothingOn = LoadInUse.drawing(test, survey, circuit).isEmpty();
      return (nothingOn ? ", nothing on" : ", nothing plugged in") + closed;
    }
    List<String> loads = new ArrayList<>();
    for (LoadInUse use : test.loads()) {
      loads.add(use.load() + (use.box().equals(box) ? " plugged in there" : " at " + use.box()));
    }
    return " while the " + JointWords.listed(loads, "and") + " is on" + closed;
  }

  private String switched(Test test) {
    List<String> changed = SwitchWords.of(test.switching());
    if (!changed.isEmpty()) {
      return ", " + JointWords.listed(changed, "and");
    }
    return circuit.switches().isEmpty() ? "" : ", every switch closed";
  }

  /** ", hot, neutral and ground linked at shed-door". */
  private String linked(Isolation isolation) {
    Map<String, Set<String>> byBox = new LinkedHashMap<>();
    for (Tap link : isolation.links()) {
      if (link instanceof Tap.Pair pair) {
        Set<String> there = byBox.computeIfAbsent(pair.box(), box -> new LinkedHashSet<>());
        there.add(conductor(pair.between().first()));
        there.add(conductor(pair.between().second()));
      }
    }
    StringBuilder words = new StringBuilder();
    byBox.forEach(
        (box, conductors) ->
            words.append(
                ", " + JointWords.listed(List.copyOf(conductors), "and") + " linked at " + box));
    return words.toString();
  }

  private String conductor(ConductorRole role) {
    return region.conductor(role);
  }
}
