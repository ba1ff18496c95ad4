package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.Section;
import ohmtrail.cli.chart.ProfileChart.Branch;
import ohmtrail.cli.chart.ProfileChart.Condition;
import ohmtrail.cli.chart.ProfileChart.End;
import ohmtrail.cli.chart.ProfileChart.Guide;
import ohmtrail.cli.chart.ProfileChart.Lane;
import ohmtrail.cli.chart.ProfileChart.Line;
import ohmtrail.cli.chart.ProfileChart.Mark;
import ohmtrail.cli.chart.ProfileChart.Panel;
import ohmtrail.cli.chart.ProfileChart.Place;
import ohmtrail.cli.chart.ProfileChart.Point;
import ohmtrail.cli.chart.ProfileChart.Prominence;
import ohmtrail.cli.chart.ProfileChart.ReadingMark;
import ohmtrail.cli.chart.ProfileChart.Readings;
import ohmtrail.cli.chart.ProfileChart.Step;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;
import ohmtrail.reference.Assumption;
import ohmtrail.report.profile.Arrangement;
import ohmtrail.report.profile.ArrangementProfile;
import ohmtrail.report.profile.RunProfiles;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;

/** Puts a {@link ProfileChart} together by the rules that stand there. */
final class ProfileAssembly {
  /** Arrangements that are weighed for the main place: the heaviest loads. */
  private static final int CANDIDATES = 6;

  /** One for each arrangement that has a line. */
  private static final List<Prominence> WITH_LINE =
      List.of(Prominence.MAIN, Prominence.SECOND, Prominence.THIRD);

  /** Share of the largest departure from healthy that the main arrangement must show. */
  private static final double TELLING_SHARE = 0.5;

  /** Share of the heaviest load that the main arrangement must have. */
  private static final double HEAVY_SHARE = 0.5;

  private final RunProfiles profiles;
  private final Circuit circuit;
  private final Survey survey;
  private final Explanation explanation;
  private final Region region;
  private final Run run;

  ProfileAssembly(RunProfiles profiles, Explanation explanation) {
    this.profiles = profiles;
    this.circuit = profiles.problem().circuit();
    this.survey = profiles.problem().survey();
    this.explanation = explanation;
    this.region = Region.of(circuit.supply());
    this.run = Run.of(circuit, profiles.problem().assumptions());
  }

  ProfileChart chart(String title) {
    List<Arrangement> arrangements = profiles.arrangements();
    List<ArrangementProfile> drawn = drawn(arrangements);
    List<Arrangement> rest = new ArrayList<>(arrangements);
    drawn.forEach(expectation -> rest.remove(expectation.arrangement()));
    List<Panel> panels =
        RunProfiles.pairs(circuit).stream().map(pair -> panel(pair, drawn, rest)).toList();
    return new ProfileChart(
        title,
        explanation.sentence(),
        new ProfileWords(region, run.places()).of(explanation.sentence(), panels),
        region,
        run.lanes(),
        explanation.suspects().stream().map(this::mark).toList(),
        panels,
        notes(drawn.get(0).arrangement(), panels));
  }

  /** The arrangements with a line, the main one first. */
  private List<ArrangementProfile> drawn(List<Arrangement> arrangements) {
    List<ArrangementProfile> candidates =
        arrangements.stream().limit(CANDIDATES).map(profiles::profile).toList();
    double largest = candidates.stream().mapToDouble(ArrangementProfile::departure).max().orElse(0);
    List<ArrangementProfile> telling =
        candidates.stream().filter(each -> each.departure() >= TELLING_SHARE * largest).toList();
    double heaviest = telling.get(0).arrangement().watts();
    ArrangementProfile main =
        telling.stream()
            .filter(each -> each.arrangement().watts() >= HEAVY_SHARE * heaviest)
            .min(Comparator.comparingInt(each -> -each.arrangement().boxes()))
            .orElseThrow();
    return Stream.concat(Stream.of(main), candidates.stream().filter(each -> each != main))
        .limit(WITH_LINE.size())
        .toList();
  }

  private boolean shows(Arrangement arrangement, Place place) {
    return circuit.box(place.box()).map(box -> RunProfiles.shows(arrangement, box)).orElse(false);
  }

  private Mark mark(Explanation.Suspicion suspicion) {
    List<Double> metres =
        suspicion.boxes().stream().map(box -> run.place(box).metres()).sorted().toList();
    return new Mark(
        suspicion.label(), suspicion.boxes(), metres.get(0), metres.get(metres.size() - 1));
  }

  private Panel panel(ProbePoints between, List<ArrangementProfile> drawn, List<Arrangement> rest) {
    List<Line> lines = new ArrayList<>();
    List<Readings> readings = new ArrayList<>();
    for (int i = 0; i < drawn.size(); i++) {
      Prominence prominence = WITH_LINE.get(i);
      lines.addAll(lines(between, drawn.get(i), prominence));
      String words = ArrangementWords.of(drawn.get(i).arrangement(), survey);
      readings(words, prominence, between, List.of(drawn.get(i).arrangement()))
          .ifPresent(readings::add);
    }
    readings("all other tests", Prominence.OTHER, between, rest).ifPresent(readings::add);
    boolean overRun = between.first().isLive();
    List<Guide> guides = overRun ? guides(nominal(between)) : List.of();
    VoltRange range = overRun ? VoltRange.ofSupply(nominal(between)) : VoltRange.ofRise();
    for (Guide guide : guides) {
      range = range.with(guide.volts());
    }
    range = range.with(lines).withReadings(readings);
    return new Panel(quantity(between), range.low(), range.high(), guides, lines, readings);
  }

  private String quantity(ProbePoints between) {
    return region.conductor(between.first()) + " to " + region.conductor(between.second());
  }

  private double nominal(ProbePoints between) {
    return between.second().isLive() ? circuit.supply().greatestVolts() : circuit.supply().volts();
  }

  private List<Guide> guides(double nominal) {
    return Stream.of(region.guidance().branchFraction(), region.guidance().totalFraction())
        .distinct()
        .map(fraction -> guide(nominal, fraction))
        .toList();
  }

  private static Guide guide(double nominal, double fraction) {
    return new Guide(Figures.wholeShare(fraction) + " below nominal", nominal * (1 - fraction));
  }

  private List<Line> lines(
      ProbePoints between, ArrangementProfile expectation, Prominence prominence) {
    List<Condition> conditions = new ArrayList<>();
    if (prominence == Prominence.MAIN || explanation.word().isEmpty()) {
      conditions.add(Condition.HEALTHY);
    }
    explanation.word().ifPresent(word -> conditions.add(Condition.EXPLAINED));
    return conditions.stream()
        .map(
            condition ->
                new Line(
                    ArrangementWords.of(expectation.arrangement(), survey),
                    prominence,
                    condition,
                    word(condition),
                    branches(between, expectation, condition)))
        .toList();
  }

  private static ArrangementProfile.Condition of(Condition condition) {
    return condition == Condition.HEALTHY
        ? ArrangementProfile.Condition.SOUND
        : ArrangementProfile.Condition.EXPLAINED;
  }

  private String word(Condition condition) {
    return condition == Condition.HEALTHY ? "sound" : explanation.word().orElse("sound");
  }

  private List<Branch> branches(
      ProbePoints between, ArrangementProfile expectation, Condition condition) {
    List<Branch> branches = new ArrayList<>();
    Predicate<Place> shown =
        place ->
            shows(expectation.arrangement(), place)
                && RunProfiles.reaches(circuit, place.box(), between);
    for (Lane lane : run.lanes()) {
      List<Place> own = ownPlaces(lane).filter(shown).toList();
      if (!own.isEmpty()) {
        Stream<Place> from = before(own.get(0), shown).stream();
        List<Point> points =
            Stream.concat(from, own.stream())
                .map(place -> point(place, expectation.volts(of(condition), place.box(), between)))
                .toList();
        boolean explained = condition == Condition.EXPLAINED;
        branches.add(
            new Branch(points, explained ? steps(points, between, expectation) : List.of()));
      }
    }
    return List.copyOf(branches);
  }

  /** What the degraded joints take between the points of a line. */
  private List<Step> steps(
      List<Point> points, ProbePoints between, ArrangementProfile expectation) {
    List<Step> steps = new ArrayList<>();
    for (int i = 1; i < points.size(); i++) {
      Point near = points.get(i - 1);
      Point far = points.get(i);
      for (Section section : circuit.sections()) {
        boolean felt =
            section.conductor() == between.first() || section.conductor() == between.second();
        if (felt
            && section.cable().from().equals(near.box())
            && section.cable().to().equals(far.box())) {
          step(section, near, far, expectation).ifPresent(steps::add);
        }
      }
    }
    return steps;
  }

  private Optional<Step> step(
      Section section, Point near, Point far, ArrangementProfile expectation) {
    for (Joint joint : section.joints()) {
      List<String> boxes = explanation.boxesOfJoint().getOrDefault(joint.id(), List.of());
      boolean known = boxes.equals(List.of(joint.box()));
      boolean either = boxes.size() == 2 && boxes.containsAll(List.of(near.box(), far.box()));
      if (known || either) {
        double fall = near.volts() - far.volts();
        double across = Math.min(Math.abs(fall), expectation.across(joint.id(), far.box()));
        End own = joint.equals(section.near()) ? End.NEAR : End.FAR;
        return Optional.of(
            new Step(far.box(), Math.copySign(across, fall), either ? End.EITHER : own));
      }
    }
    return Optional.empty();
  }

  /** A lane's boxes without the one that belongs to another lane. */
  private Stream<Place> ownPlaces(Lane lane) {
    boolean trunk = lane.equals(run.lanes().get(0));
    return lane.places().stream().skip(trunk ? 0 : 1);
  }

  /** The nearest box shown on the way from the panel to a place. */
  private Optional<Place> before(Place place, Predicate<Place> shown) {
    Optional<Place> at = run.parent(place.box()).map(run::place);
    while (at.isPresent() && !shown.test(at.get())) {
      at = run.parent(at.get().box()).map(run::place);
    }
    return at;
  }

  private static Point point(Place place, double volts) {
    return new Point(place.box(), place.metres(), volts);
  }

  private Optional<Readings> readings(
      String words, Prominence prominence, ProbePoints between, List<Arrangement> arrangements) {
    List<ReadingMark> marks =
        arrangements.stream()
            .flatMap(arrangement -> arrangement.readings().stream())
            .filter(taken -> taken.reading().between().equals(Optional.of(between)))
            .sorted(Comparator.comparingInt(Arrangement.Taken::number))
            .map(this::mark)
            .toList();
    return marks.isEmpty() ? Optional.empty() : Optional.of(new Readings(words, prominence, marks));
  }

  private ReadingMark mark(Arrangement.Taken taken) {
    Reading reading = taken.reading();
    Meter meter = survey.meter(reading.meter());
    double limit =
        meter.accuracy().limit(reading.value(), meter.resolution()) + meter.resolution() / 2;
    List<Double> wrong = explanation.wrongProbabilities();
    return new ReadingMark(
        taken.test(),
        reading.box(),
        run.place(reading.box()).metres(),
        reading.value(),
        Math.min(limit, reading.value()),
        limit,
        taken.number() < wrong.size() ? wrong.get(taken.number()) : 0);
  }

  /** The marks over the run send a hand into the boxes under them. */
  private List<String> beforeABoxIsOpened() {
    if (explanation.suspects().isEmpty()) {
      return List.of();
    }
    List<String> notes = new ArrayList<>();
    notes.add(
        "Before a box is opened: every breaker that feeds it off, tester proved, dead, tester"
            + " proved again.");
    String panel = circuit.panel().name();
    if (explanation.suspects().stream().anyMatch(each -> each.boxes().contains(panel))) {
      notes.add(
          "In "
              + panel
              + ": main switch off, its supply side live all the same; for a licensed"
              + " electrician.");
    }
    return notes;
  }

  /** What is not where it is, or may be elsewhere. */
  private static List<String> howItIsDrawn(List<Panel> panels) {
    List<String> notes = new ArrayList<>();
    if (panels.stream()
        .flatMap(panel -> panel.readings().stream())
        .anyMatch(readings -> readings.prominence() != Prominence.MAIN)) {
      notes.add("Marks of other tests are moved sideways from their box, to be told apart.");
    }
    if (panels.stream()
        .flatMap(panel -> panel.lines().stream())
        .flatMap(line -> line.branches().stream())
        .flatMap(branch -> branch.steps().stream())
        .anyMatch(step -> step.end() == End.EITHER)) {
      notes.add(
          "Band: the joint may lie at either end of it; the line steps at the one or the other.");
    }
    return notes;
  }

  private List<String> notes(Arrangement main, List<Panel> panels) {
    List<String> notes = new ArrayList<>(howItIsDrawn(panels));
    if (main.watts() == 0
        && main.meter().isEmpty()
        && !profiles.explained().degradations().isEmpty()) {
      notes.add("With nothing on, a joint that still conducts shows nothing: no current, no drop.");
    }
    if (survey.readingCount() > 0) {
      notes.add("Bars: the meter's stated accuracy and half a step of its display.");
    }
    notes.add(explanation.soundness());
    notes.addAll(beforeABoxIsOpened());
    notes.add(
        "Dotted guidance: "
            + region.guidance().source()
            + "; advice for a sound circuit, not a limit.");
    long elsewhere =
        survey.tests().stream()
            .flatMap(test -> test.readings().stream())
            .flatMap(reading -> reading.between().stream())
            .filter(between -> !RunProfiles.pairs(circuit).contains(between))
            .count();
    if (elsewhere > 0) {
      notes.add(
          "Not in the picture: "
              + elsewhere
              + (elsewhere == 1 ? " reading " : " readings ")
              + region.conductor(ConductorRole.HOT)
              + " to "
              + region.conductor(ConductorRole.GROUND)
              + ".");
    }
    if (run.lengthsAssumed()) {
      double assumed = profiles.problem().assumptions().value(Assumption.UNKNOWN_LENGTH);
      String length = region.length(assumed);
      notes.add("A cable whose length is not stated is drawn " + length + " long.");
    }
    return List.copyOf(notes);
  }
}
