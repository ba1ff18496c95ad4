package ohmtrail.cli.render;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ohmtrail.advise.AdviceReport;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.OhmsWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.VoltageDropGuidance;
import ohmtrail.report.OpeningOrder;
import ohmtrail.report.Report;
import ohmtrail.report.TestState;
import ohmtrail.report.VoltageDrop;
import ohmtrail.report.caution.SupplySide;
import ohmtrail.report.caution.SupplySide.OutOfRange;
import ohmtrail.report.caution.SupplySide.UnequalLegs;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Test;

/** The answer in the one or two sentences that a person with a screwdriver needs. */
public final class Headline {
  /** Below even odds, a suspect is a place to start and no finding. */
  private static final double EVEN_ODDS = 0.5;

  /** Below this, a finding is called no more than likely. */
  private static final double RATHER_SURE = 0.8;

  /** From even odds on, a reading is called wrong. */
  private static final double PROBABLY_WRONG = 0.5;

  /** Readings within this many standard deviations of the fit agree with it. */
  private static final double WELL_OFF_SIGMAS = 2;

  /** Probabilities closer than this are as good as equal. */
  private static final double WORTH_TELLING = 0.01;

  /** A second box is named from this probability on. */
  private static final double WORTH_NAMING = 0.1;

  /** Readings named where none can be explained. */
  private static final int MOST_READINGS_NAMED = 3;

  private final CaseFile caseFile;
  private final Diagnosis diagnosis;
  private final JointWords words;
  private final Region region;
  private final Report report;
  private final OpeningWords opening;
  private final WorkWords work;

  private Headline(CaseFile caseFile, Report report, OpeningOrder opening) {
    this.caseFile = caseFile;
    this.report = report;
    this.diagnosis = report.diagnosis();
    this.words = new JointWords(caseFile.circuit());
    this.opening = new OpeningWords(caseFile.circuit(), opening);
    this.work = new WorkWords(caseFile.circuit());
    this.region = Region.of(caseFile.circuit().supply());
  }

  /** Puts an answer into words. */
  public static String of(CaseFile caseFile, Report report) {
    return new Headline(caseFile, report, report.opening()).write();
  }

  /** Puts what is believed now into words, the boxes in the order of the advice. */
  public static String of(CaseFile caseFile, AdviceReport advice) {
    return new Headline(caseFile, advice.report(), advice.opening()).write();
  }

  private String write() {
    if (isUnread()) {
      return unread();
    }
    Optional<UnequalLegs> legs = SupplySide.unequalLegs(caseFile.problem());
    if (legs.isPresent()) {
      return unequal(legs.get());
    }
    Optional<String> slip = SlipWords.first(caseFile, diagnosis);
    if (slip.isPresent()) {
      return diagnosis.isLeftOpen()
          ? slip.get() + " The other readings do not tell where to look."
          : slip.get() + " With that: " + asRead();
    }
    return asRead();
  }

  private String asRead() {
    Optional<OutOfRange> supply = SupplySide.outOfRange(caseFile.problem(), diagnosis);
    if (supply.isPresent()) {
      return outOfRange(supply.get()) + leftOut();
    }
    Optional<String> outlet = OutletFinding.of(caseFile, report);
    if (outlet.isPresent()) {
      return outlet.get() + leftOut();
    }
    return switch (diagnosis.verdict()) {
      case DEGRADED ->
          SupportWords.hanging(caseFile, diagnosis) + degraded() + withoutFinds() + leftOut();
      case HEALTHY -> SupportWords.hanging(caseFile, diagnosis) + healthy() + leftOut();
      case UNDECIDED -> undecided();
      case UNEXPLAINED -> unexplained();
    };
  }

  /** With nothing on, no joint of the run sets the legs apart: the supply comes first. */
  private String unequal(UnequalLegs legs) {
    List<ConductorRole> conductors = caseFile.circuit().supply().legs().conductors();
    return "Open no box of this run and plug nothing in: with nothing on, "
        + region.conductor(conductors.get(0))
        + " and "
        + region.conductor(conductors.get(1))
        + " stand "
        + Figures.volts(legs.apartVolts())
        + " apart at "
        + legs.box()
        + " ("
        + Figures.tenths(legs.firstVolts())
        + " and "
        + Figures.volts(legs.secondVolts())
        + " to neutral), and no joint of the run can do that while no current flows in it. That is"
        + " the neutral of the supply until shown otherwise: main switch off, and the utility or a"
        + " licensed electrician.";
  }

  /** Nothing that is read in the run tells more before the supply stands where it should. */
  private static String outOfRange(OutOfRange supply) {
    return "Open no box of this run and plug nothing in: by these readings the supply itself stands"
        + " at "
        + Figures.volts(supply.volts())
        + ", where "
        + Figures.volts(supply.limitVolts())
        + (supply.isAbove() ? " is the most" : " is the least")
        + " that it may stand at ("
        + supply.range().source()
        + "). Have that looked into first, by the utility or a licensed electrician; no breaker of"
        + " this circuit unloads it, the main switch does.";
  }

  private boolean isUnread() {
    return diagnosis.verdict() == Verdict.UNDECIDED && caseFile.survey().readingCount() == 0;
  }

  private String degraded() {
    return diagnosis.degradedJoints() > 1
        ? BadJoints.headline(
            caseFile.circuit(),
            diagnosis,
            opening.order(),
            caseFile.survey().places(Finding.State.BURNT))
        : oneJoint() + unstable() + furtherJoints() + missing();
  }

  /** Where nothing is settled, a reading is cheaper than a box. */
  private String missing() {
    return diagnosis.suspects().get(0).probability() >= EVEN_ODDS
        ? ""
        : MissingWords.of(caseFile, report).stream()
            .findFirst()
            .map(hint -> " Before a box is opened: " + lowerFirst(hint))
            .orElse("");
  }

  private static String lowerFirst(String sentence) {
    return sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1);
  }

  private String unstable() {
    return Notes.isUnstable(diagnosis) ? " " + Notes.unstable(diagnosis) : "";
  }

  private String oneJoint() {
    Suspect suspect = diagnosis.suspects().get(0);
    RankedBox box = opening.first();
    if (JointWords.isSupplySide(suspect)) {
      return supplySide(suspect);
    }
    if (!words.boxes(suspect).contains(box.box())) {
      return firstWork(box.box())
          + ": its joints together are "
          + Figures.probability(box.probability())
          + " likely to hold the bad one. "
          + (opening.firstIsNotLikeliest() ? opening.why() : "No joint stands out;").strip()
          + (opening.firstIsNotLikeliest() ? " The likeliest joint is " : " the likeliest is ")
          + finding(suspect, "")
          + ".";
    }
    boolean settled = suspect.probability() >= EVEN_ODDS;
    return firstWork(box.box())
        + (settled ? ": " : ", though the readings do not settle it: ")
        + (settled
            ? words.suspect(suspect, box.box())
                + " is most likely bad, "
                + OhmsWords.of(suspect.ohms())
                + ", "
                + Figures.probability(suspect.probability())
                + " sure."
            : "the likeliest is " + finding(suspect, box.box()) + ".")
        + ends(suspect, box)
        + next(suspect);
  }

  /** What the readings say without what was seen to be bad. */
  private String withoutFinds() {
    return report
        .withoutFinds()
        .map(
            without ->
                " Without what was seen: "
                    + (without.verdict() == Verdict.DEGRADED && !without.suspects().isEmpty()
                        ? words.suspect(without.suspects().get(0), "")
                            + ", "
                            + Figures.probability(without.suspects().get(0).probability())
                        : "no joint need be bad, "
                            + Figures.probability(without.healthyProbability()))
                    + ".")
        .orElse("");
  }

  /** Nobody is sent to open what was opened: there the bad joint was seen. */
  private String firstWork(String box) {
    return caseFile.survey().places(Finding.State.BURNT).contains(box)
        ? "A bad joint was seen at " + box + " and is to be made anew, the breaker off"
        : work.first(box);
  }

  private String supplySide(Suspect suspect) {
    return "Open no box of this run: "
        + finding(suspect, "")
        + ". That is a matter for the utility or a licensed electrician, and no breaker of this"
        + " circuit unloads it: the main switch does. Do other circuits of this panel show it too?";
  }

  private String finding(Suspect suspect, String opened) {
    return words.suspect(suspect, opened)
        + ", "
        + OhmsWords.of(suspect.ohms())
        + ", "
        + Figures.probability(suspect.probability())
        + " sure";
  }

  /** Where in a set of joints that spans several boxes the bad one is likeliest. */
  private String ends(Suspect suspect, RankedBox opened) {
    Map<String, Double> shares = shares(suspect, opened);
    if (shares.size() < 2) {
      return "";
    }
    double most = Collections.max(shares.values());
    double least = Collections.min(shares.values());
    boolean ranked = most - least > WORTH_TELLING;
    boolean otherwiseRanked = most - shares.getOrDefault(opened.box(), 0.0) > WORTH_TELLING;
    return (ranked ? " Its joint may be at " : " Its joint is as likely at ")
        + (shares.size() == 2 ? "either end: " : "any of them: ")
        + shares.entrySet().stream()
            .map(share -> share.getKey() + " " + Figures.probability(share.getValue()))
            .collect(Collectors.joining(", "))
        + "."
        + (ranked ? ranking(suspect, shares) : "")
        + (otherwiseRanked ? " " + whyFirst(opened) : "");
  }

  private String whyFirst(RankedBox opened) {
    return opening.firstIsNotLikeliest()
        ? opening.why()
        : opened.box()
            + " comes first because other suspects lie there too: "
            + Figures.probability(opened.probability())
            + " in all.";
  }

  /** Where nothing but an assumption ranks the ends. */
  private String ranking(Suspect suspect, Map<String, Double> shares) {
    double leading = shares.getOrDefault(suspect.first().box(), 0.0);
    return PriorWords.because(suspect, caseFile.survey(), caseFile.assumptions())
        .filter(because -> leading == Collections.max(shares.values()))
        .map(
            because ->
                (shares.size() == 2 ? " The two" : " They") + " read alike; " + because + ".")
        .orElse("");
  }

  /** The probability of a suspect's joints by box, that of the box to open first, then the rest. */
  private static Map<String, Double> shares(Suspect suspect, RankedBox opened) {
    Map<String, Double> shares = new LinkedHashMap<>();
    shares.put(opened.box(), 0.0);
    for (int j = 0; j < suspect.joints().size(); j++) {
      shares.merge(suspect.joints().get(j).box(), suspect.jointProbabilities().get(j), Double::sum);
    }
    return shares;
  }

  /** The box to open when the first one is sound, unless it has been named as the other end. */
  private String next(Suspect suspect) {
    return opening.order().plan().steps().stream()
        .skip(1)
        .findFirst()
        .filter(box -> box.probability() >= WORTH_NAMING)
        .filter(box -> !words.boxes(suspect).contains(box.box()))
        .map(
            box ->
                " Next: "
                    + work.named(box.box())
                    + ", "
                    + Figures.probability(box.probability())
                    + ".")
        .orElse("");
  }

  private String furtherJoints() {
    if (diagnosis.bestJoints().size() < 2) {
      return "";
    }
    List<String> joints = diagnosis.best().stream().map(this::withOhms).toList();
    return " Or more than one is bad at once, "
        + Figures.probability(diagnosis.severalProbability())
        + ": "
        + JointWords.listed(joints, "and")
        + ".";
  }

  private String withOhms(Degradation degradation) {
    return degradation.joint() + " (" + Figures.ohms(degradation.ohms()) + ")";
  }

  /** What would decide it is said where there is anything. */
  private String undecided() {
    return "These readings decide nothing: every probability is what it was before them."
        + MissingWords.of(caseFile, report).stream().findFirst().map(hint -> " " + hint).orElse("");
  }

  private String unread() {
    return "There is no reading yet, so nothing speaks for a bad joint or against one. Read every "
        + region.receptacle()
        + " with nothing on, then under a load where `next` finds that it does no harm.";
  }

  private String healthy() {
    double probability = diagnosis.healthyProbability();
    String finding =
        "No joint need be bad to explain these readings, "
            + (probability < RATHER_SURE ? "only " : "")
            + Figures.probability(probability)
            + " sure";
    return greatestDrop()
        .map(drop -> finding + ": copper explains it. " + sentence(drop))
        .orElse(
            finding
                + ". But none was taken with a load on, and a bad joint shows only when current"
                + " flows.");
  }

  /** A drop during a test with a load on. */
  private record LoadedDrop(Test test, VoltageDrop drop) {}

  /** Empty when nothing was on. */
  private Optional<LoadedDrop> greatestDrop() {
    return report.tests().stream()
        .filter(TestState::isLoaded)
        .flatMap(state -> state.drops().stream().map(drop -> new LoadedDrop(state.test(), drop)))
        .max(Comparator.comparingDouble(loaded -> loaded.drop().dropVolts()));
  }

  private String sentence(LoadedDrop loaded) {
    VoltageDrop drop = loaded.drop();
    VoltageDropGuidance guidance = region.guidance();
    boolean within = TestFindings.against(guidance, drop).isEmpty();
    return "The greatest drop, "
        + Figures.volts(drop.dropVolts())
        + " or "
        + Figures.share(drop.fraction())
        + " at "
        + drop.box()
        + loadsOn(loaded.test())
        + ", is that of "
        + cableTo(drop.box())
        + (within ? ", within the " : ": over the ")
        + Figures.wholeShare(guidance.branchFraction())
        + " of the advice ("
        + guidance.source()
        + ")"
        + (within ? "." : ", but a long run or a heavy load and not a fault.");
  }

  private String loadsOn(Test test) {
    List<String> loads =
        caseFile.survey().loadsOn(test).stream().map(LoadInUse::load).distinct().toList();
    return " with " + JointWords.listed(loads, "and") + " on";
  }

  private String cableTo(String box) {
    Circuit circuit = caseFile.circuit();
    List<Cable> path = circuit.pathTo(box);
    boolean allKnown = path.stream().allMatch(cable -> cable.lengthMetres().isPresent());
    double metres = path.stream().mapToDouble(cable -> cable.lengthMetres().orElse(0)).sum();
    List<String> sizes =
        path.stream().map(cable -> cable.conductor().size().designation()).distinct().toList();
    return (allKnown ? region.length(metres) + " of " : "a run of unknown length of ")
        + JointWords.listed(sizes, "and");
  }

  private String unexplained() {
    List<String> worst =
        diagnosis.readings().stream()
            .filter(reading -> misfit(reading) > WELL_OFF_SIGMAS)
            .sorted(Comparator.comparingDouble(Headline::misfit).reversed())
            .limit(MOST_READINGS_NAMED)
            .map(this::misfitting)
            .toList();
    return "No bad joint explains these readings, and neither does a sound circuit: open no box on"
        + " their account. "
        + (worst.isEmpty()
            ? "Take them again."
            : "Take again those that disagree most: " + String.join("; ", worst) + ".");
  }

  /** A reading that is given up must be named: it may be the one that matters. */
  private String leftOut() {
    List<String> wrong =
        IntStream.range(0, diagnosis.readings().size())
            .filter(r -> diagnosis.readings().get(r).wrongProbability() > PROBABLY_WRONG)
            .mapToObj(
                r ->
                    misfitting(diagnosis.readings().get(r))
                        + diagnosis
                            .instead(r)
                            .map(any -> ". " + SlipWords.instead(caseFile, diagnosis, r))
                            .orElse("."))
            .toList();
    return wrong.isEmpty()
        ? ""
        : " This leaves out what is probably wrong: " + String.join(" ", wrong);
  }

  private static double misfit(FittedReading reading) {
    return Math.abs(reading.residualSigmas());
  }

  private String misfitting(FittedReading reading) {
    return new ReadingWords(region).where(reading.reading())
        + " in test "
        + reading.test()
        + ", "
        + ReadingWords.figure(reading.reading())
        + " where "
        + ReadingWords.figure(reading.reading().measurand(), reading.fitted())
        + " fits";
  }
}
