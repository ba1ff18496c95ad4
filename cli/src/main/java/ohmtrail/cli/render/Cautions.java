package ohmtrail.cli.render;

import java.util.List;
import java.util.stream.Stream;
import ohmtrail.advise.Advice;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.report.Report;
import ohmtrail.report.caution.Caution;
import ohmtrail.report.caution.CautionsThatHold;
import ohmtrail.survey.Test;

/** What must not be done on the way, in the words of the case's region. */
public final class Cautions {
  private final Circuit circuit;
  private final Region region;

  private Cautions(Circuit circuit) {
    this.circuit = circuit;
    this.region = Region.of(circuit.supply());
  }

  /** The cautions that hold for every circuit that is measured, live or dead. */
  public static List<String> forMeasuring(CaseFile caseFile) {
    return words(caseFile, CautionsThatHold.forMeasuring(caseFile.problem()));
  }

  /** The cautions for a circuit and what was found out about it, the most pressing first. */
  public static List<String> forAnswer(CaseFile caseFile, Report report) {
    return words(caseFile, report.cautions());
  }

  /**
   * The same with those for what is advised.
   *
   * @param steps how many of the best choices are shown
   */
  public static List<String> forAdvice(CaseFile caseFile, Advice advice, int steps) {
    List<Test> advised =
        advice.options().stream()
            .limit(steps)
            .map(Option::choice)
            .flatMap(
                choice -> choice instanceof Choice.Read read ? read.tests().stream() : Stream.of())
            .toList();
    return words(
        caseFile, CautionsThatHold.forAnswer(caseFile.problem(), advice.diagnosis(), advised));
  }

  private static List<String> words(CaseFile caseFile, List<Caution> cautions) {
    Cautions words = new Cautions(caseFile.circuit());
    return cautions.stream().map(words::words).toList();
  }

  private String words(Caution caution) {
    if (caution instanceof Caution.LostNeutral lost) {
      return words(lost);
    }
    return caution instanceof Caution.Trips trips
        ? ResidualWords.caution(region, trips)
        : words((Caution.Standing) caution);
  }

  private String words(Caution.LostNeutral lost) {
    return "Behind an open neutral a load puts the full supply voltage on the neutral conductor"
        + lost.leading()
            .map(
                leading ->
                    ". It may be "
                        + new JointWords(circuit).suspect(leading, "")
                        + ": nothing is plugged in beyond it to try.")
            .orElse(
                ": none but what a step names goes in, nowhere else and no longer than it says.");
  }

  private String words(Caution.Standing caution) {
    return switch (caution) {
      case MAIN_SWITCH_OFF ->
          "Leave the main switch off until somebody has looked: behind a lost neutral of the supply"
              + " the lighter leg of the whole house gets far more than its loads are made for."
              + " Meter, service and main lugs are for the utility or a licensed electrician.";
      case UNLOAD ->
          "Take the loads off this circuit and leave them off until the joint is remade, but for a"
              + " reading: a bad joint heats only while current flows, and neither breaker nor "
              + region.residualCurrentDevice()
              + " trips on it.";
      case LEGS_DIVIDE ->
          "With a lost neutral the loads of the two legs divide the voltage between them: what is"
              + " plugged in on the lighter leg gets far more than it is made for. Take the loads"
              + " off both legs.";
      case UNPROTECTED ->
          "A suspected "
              + region.conductor(ConductorRole.GROUND)
              + ": metal parts of what is plugged in beyond it are not protected and may become"
              + " live.";
      case SUPPLY_SIDE ->
          "The fault may lie on the supply side, at or before the panel: meter, service and main"
              + " lugs are for the utility or a licensed electrician. No breaker of this circuit"
              + " unloads it; the main switch does.";
      case PANEL ->
          "A suspect is in "
              + circuit.panel().name()
              + ": main switch off and locked before it is opened, and its "
              + region.lineSide()
              + " stays live all the same. That work is for a licensed electrician.";
      case LIVE_PARTS ->
          "These readings are taken on live parts. Only a person trained for live work takes them,"
              + " with a meter and leads of measurement category CAT III for fixed wiring, CAT IV"
              + " where the service is within reach (the meter, the main switch and what leads to"
              + " it), rated for the voltage.";
      case STOP ->
          "Stop and switch the circuit off at the breaker at any heat, smell, smoke, buzzing or"
              + " crackling, and leave it off.";
      case PROVE_DEAD ->
          "Before opening a box: "
              + everyBreaker()
              + " off, secured against being switched on, and every conductor proved dead against"
              + " every other and against ground. Proved dead means: the tester proved on a live"
              + " source, the conductors, the tester proved again.";
      case OPEN_LIVE_BOX ->
          "A reading in an open panel or box is work on an open live box: only for a licensed"
              + " electrician, qualified and protected for it. Probes and clamp go on and come off"
              + " with the main switch off in the panel, whose "
              + region.lineSide()
              + " stays live all the same, and with the breaker off and proved dead elsewhere.";
      case DEAD_CIRCUIT ->
          "An ohmmeter or continuity tester goes on a dead circuit only: breaker off and locked,"
              + " every conductor proved dead first. Before switching on again take every link off"
              + " and make every lifted joint good.";
      case ALUMINIUM ->
          "This run has aluminium conductors: remake their joints only with connectors listed for"
              + " aluminium.";
      case LOCAL_RULES ->
          "The local "
              + region.rules()
              + " and a licensed electrician come first: where they say otherwise, do as they say.";
    };
  }

  private String everyBreaker() {
    return circuit.supply().legs().conductors().size() < 2
        ? "the breaker"
        : "every breaker that feeds it or shares its neutral";
  }
}
