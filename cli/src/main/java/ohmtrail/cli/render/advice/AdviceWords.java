package ohmtrail.cli.render.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Outcome;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.advise.safety.HeatCheck;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** Choices, outcomes and hazards in words. Immutable. */
public final class AdviceWords {
  /** From here on a circuit is called sound. */
  private static final double MORE_THAN_NOT = 0.5;

  /** The boxes named hold so much of the probability of a bad joint. */
  private static final double COVERED = 0.8;

  private static final int MOST_BOXES = 3;

  /** From here on a terminal in a room is past 525 degrees Celsius: it glows (Draper point). */
  private static final double GLOW_KELVIN = 500;

  private final Circuit circuit;
  private final Survey survey;
  private final Assumptions assumptions;
  private final Region region;
  private final JointWords joints;
  private final VisitWords visits;
  private final WorkWords work;

  /** For a circuit, the meters and loads at hand, and the limits that hold. */
  public AdviceWords(Circuit circuit, Survey survey, Assumptions assumptions) {
    this.circuit = circuit;
    this.survey = survey;
    this.assumptions = assumptions;
    this.region = Region.of(circuit.supply());
    this.joints = new JointWords(circuit);
    this.visits = new VisitWords(circuit, survey);
    this.work = new WorkWords(circuit);
  }

  /** What to do, as an order. */
  public String choice(Choice choice) {
    if (choice instanceof Choice.Read read) {
      return "At " + read.box() + work.around(read.tests()) + ": " + visits.visit(read);
    }
    if (choice instanceof Choice.Open open) {
      return survey.places(Finding.State.BURNT).contains(open.box())
          ? "At " + open.box() + " a bad joint was seen. " + unstopped(work.remaking(open.box()))
          : work.open(open.box());
    }
    return ((Choice.Stop) choice).reason() == Choice.Stop.Reason.HEALTHY
        ? "Stop: call the circuit sound"
        : "Stop: have the supply looked into by the utility or a licensed electrician; no breaker"
            + " of this circuit unloads it, the main switch does";
  }

  private static String unstopped(String sentence) {
    return sentence.substring(0, sentence.length() - 1);
  }

  /** One reading of a visit: where, what has to be off for it, what, and while what is on. */
  public String reading(Test test, Reading reading) {
    return reading.box()
        + work.around(List.of(test.withReadings(List.of(reading))))
        + ": "
        + visits.reading(test, reading);
  }

  /** One outcome: what would be seen, how likely that is, and what it would mean. */
  public String outcome(Choice choice, Outcome outcome) {
    String seen = choice instanceof Choice.Read ? figure(choice, outcome) : found(choice, outcome);
    return seen
        + " ("
        + Figures.probability(outcome.probability())
        + "): "
        + meaning(choice, outcome);
  }

  private static String found(Choice choice, Outcome outcome) {
    boolean there = outcome.minutesLeft() == 0;
    if (choice instanceof Choice.Open) {
      return there ? "a joint looks bad" : "every joint looks fine";
    }
    return there ? "the fault is there" : "the supply is sound";
  }

  private String figure(Choice choice, Outcome outcome) {
    if (outcome.shows().isEmpty() || (outcome.above().isEmpty() && outcome.below().isEmpty())) {
      return "whatever it shows";
    }
    Outcome.Figure figure = outcome.shows().get();
    boolean one = ((Choice.Read) choice).readings().size() == 1;
    boolean falls = figure.from().isPresent();
    String which = falls ? "falls by " : one ? "" : visits.what(figure.reading()) + " ";
    Measurand measurand = figure.reading().measurand();
    OptionalDouble above = outcome.above();
    OptionalDouble below = outcome.below();
    if (above.isEmpty()) {
      String less = falls ? "less than " : "below ";
      return which + (isOpen(below) ? "not open" : less + shown(measurand, below));
    }
    if (below.isEmpty()) {
      String more = falls ? "more than " : "above ";
      return which + (isOpen(above) ? "open" : more + shown(measurand, above));
    }
    return which
        + (isOpen(below)
            ? "above " + shown(measurand, above) + " but not open"
            : from(measurand, above) + " to " + shown(measurand, below));
  }

  private static boolean isOpen(OptionalDouble bound) {
    return bound.isPresent() && Double.isInfinite(bound.getAsDouble());
  }

  /** Volts share their unit with the figure that follows; ohms may have another prefix. */
  private static String from(Measurand measurand, OptionalDouble bound) {
    return measurand == Measurand.VOLTAGE
        ? Figures.tenths(bound.orElse(0))
        : shown(measurand, bound);
  }

  private static String shown(Measurand measurand, OptionalDouble bound) {
    return ReadingWords.figure(measurand, Math.max(0, bound.orElse(0)));
  }

  /** What an outcome would mean. */
  private String meaning(Choice choice, Outcome outcome) {
    if (outcome.minutesLeft() == 0 && !(choice instanceof Choice.Read)) {
      return "found";
    }
    if (outcome.healthyProbability() >= MORE_THAN_NOT) {
      return "probably sound";
    }
    List<Outcome.LikelyBox> likely = likely(outcome);
    String boxes =
        likely.stream()
            .map(box -> box.box() + " " + Figures.probability(box.probability()))
            .collect(Collectors.joining(", "));
    return where(choice, likely) + boxes;
  }

  private static List<Outcome.LikelyBox> likely(Outcome outcome) {
    double degraded = 1 - outcome.healthyProbability();
    List<Outcome.LikelyBox> likely = new ArrayList<>();
    double sum = 0;
    for (Outcome.LikelyBox box : outcome.boxes()) {
      if (sum < COVERED * degraded && likely.size() < MOST_BOXES) {
        likely.add(box);
        sum += box.probability();
      }
    }
    return likely;
  }

  /** Before the box that is read at, past it, or at it. */
  private String where(Choice choice, List<Outcome.LikelyBox> likely) {
    if (!(choice instanceof Choice.Read read)) {
      return "then ";
    }
    Set<String> before =
        circuit.pathTo(read.box()).stream().map(Cable::from).collect(Collectors.toSet());
    before.add(Finding.SUPPLY);
    boolean here = likely.stream().anyMatch(box -> box.box().equals(read.box()));
    boolean allBefore =
        likely.stream().allMatch(box -> box.box().equals(read.box()) || before.contains(box.box()));
    boolean nonBefore = likely.stream().noneMatch(box -> before.contains(box.box()));
    if (likely.stream().allMatch(box -> box.box().equals(read.box()))) {
      return "the joint lies there: ";
    }
    if (allBefore) {
      return here
          ? "the joint lies there or before: "
          : "the joint lies before " + read.box() + ": ";
    }
    if (nonBefore) {
      return here
          ? "the joint lies there or past it: "
          : "the joint lies past " + read.box() + ": ";
    }
    return "";
  }

  /** A visit that was ruled out, without its box and its reason: the load, or what trips. */
  public String refused(Choice.Read out, Harm harm) {
    if (harm == Harm.TRIP || out.loads().isEmpty()) {
      return visits.visit(out) + ",";
    }
    List<String> loads = out.loads().stream().map(use -> use.load() + " at " + use.box()).toList();
    return JointWords.listed(loads, "and") + ", read";
  }

  /** Why a visit is ruled out, and what is done instead. */
  public String hazard(Choice.Read out, Hazard hazard) {
    return does(hazard) + instead(out, hazard.harm());
  }

  private String does(Hazard hazard) {
    String worst = figure(hazard.worst(), hazard);
    String limit = figure(hazard.limit(), hazard);
    String odds = Figures.probability(hazard.probability());
    String beyond = limit + " with a probability of " + odds;
    return switch (hazard.harm()) {
      case OVERLOAD -> "draws up to " + worst + "; more than the breaker's " + beyond;
      case OVERVOLTAGE ->
          "can put a "
              + region.receptacle()
              + " at up to "
              + worst
              + under(hazard)
              + "; above "
              + beyond;
      case TRIP ->
          "may trip "
              + region.aResidualCurrentDevice()
              + ": up to "
              + worst
              + " do not come back; above "
              + beyond;
      case CABLE ->
          "loads a cable with up to "
              + worst
              + " of what its conductors may carry"
              + under(hazard)
              + "; above "
              + beyond;
      case TOUCH ->
          "can put up to "
              + worst
              + " on "
              + region.conductor(ConductorRole.GROUND)
              + ", metal or a neutral that a hand takes for dead"
              + under(hazard)
              + "; above "
              + beyond;
      case NEUTRAL ->
          "puts up to "
              + worst
              + " on the neutral beyond the joint"
              + under(hazard)
              + ", which is probably lost; above "
              + beyond;
      case HEAT ->
          (hazard.worst() > GLOW_KELVIN
                  ? "can make a terminal glow"
                  : "can warm a terminal by up to " + worst)
              + " before it is off again"
              + under(hazard)
              + "; more than "
              + limit
              + " warmer with a probability of "
              + odds;
    };
  }

  private String instead(Choice.Read out, Harm harm) {
    return switch (harm) {
      case TOUCH, NEUTRAL -> ". " + dead();
      case HEAT -> ". " + (out.loads().isEmpty() ? switchedOff(out) : smaller());
      case OVERLOAD, CABLE, OVERVOLTAGE, TRIP -> "";
    };
  }

  /** What is wired in is taken off for it. */
  private String switchedOff(Choice.Read out) {
    List<LoadInUse> drawing =
        out.tests().stream()
            .flatMap(test -> LoadInUse.drawing(test, survey, circuit).stream())
            .distinct()
            .toList();
    List<String> off =
        drawing.stream()
            .map(
                use ->
                    use.switchedAt(circuit)
                        .map(box -> "the switch at " + box + " open")
                        .orElse("the " + use.load() + " off"))
            .distinct()
            .toList();
    return off.isEmpty() ? smaller() : "Instead: " + JointWords.listed(off, "and");
  }

  /** What is done instead where a conductor in doubt must not be made live. */
  private String dead() {
    String ground = region.conductor(ConductorRole.GROUND);
    boolean ohmmeter = !survey.meters(Measurand.RESISTANCE).isEmpty();
    return "Instead, breaker off and proved dead: two conductors linked at one end, their ohms"
        + " (R1 + R2 with the "
        + ground
        + ") read at the other"
        + (ohmmeter ? "" : ", with an ohmmeter, which the case does not list");
  }

  /** Whatever the ohms of the joint, it makes a quarter of the power of a load at most. */
  private String smaller() {
    String watts = Figures.watts(HeatCheck.harmlessWatts(assumptions));
    return "A load of up to " + watts + " beside its meter keeps within it";
  }

  /** The hypothesis that makes the most of the harm. */
  private String under(Hazard hazard) {
    Degradation supposed = hazard.under();
    return circuit
        .joint(supposed.joint())
        .filter(joint -> supposed.ohms() > 0)
        .map(
            joint ->
                " (with " + Figures.ohms(supposed.ohms()) + " in " + joints.jointAt(joint) + ")")
        .orElse("");
  }

  private static String figure(double value, Hazard hazard) {
    return switch (hazard.harm()) {
      case OVERLOAD, TRIP -> Figures.amperes(value);
      case OVERVOLTAGE, TOUCH, NEUTRAL -> Figures.volts(value);
      case CABLE -> Figures.number(value) + " %";
      case HEAT -> Figures.number(value) + " K";
    };
  }
}
