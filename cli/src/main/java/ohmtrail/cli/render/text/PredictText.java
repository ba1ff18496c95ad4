package ohmtrail.cli.render.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.HeatWords;
import ohmtrail.cli.render.ResidualWords;
import ohmtrail.cli.render.TestFindings;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.VoltageDropGuidance;
import ohmtrail.report.Prediction;
import ohmtrail.report.Prediction.PredictedReading;
import ohmtrail.report.Prediction.PredictedTest;
import ohmtrail.report.TestState;
import ohmtrail.report.VoltageDrop;
import ohmtrail.report.heat.Heat;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Reading;

/** What meters would show. */
public final class PredictText {
  private final CaseFile caseFile;
  private final Prediction prediction;
  private final Region region;
  private final VoltageDropGuidance guidance;
  private final Page page = new Page();

  private PredictText(CaseFile caseFile, Prediction prediction) {
    this.caseFile = caseFile;
    this.prediction = prediction;
    this.region = Region.of(caseFile.circuit().supply());
    this.guidance = region.guidance();
  }

  /** Writes it. */
  public static String of(CaseFile caseFile, Prediction prediction) {
    return new PredictText(caseFile, prediction).write();
  }

  private String write() {
    page.paragraph(supposition());
    prediction.tests().forEach(this::writeTest);
    if (prediction.tests().stream().anyMatch(this::isLoaded)) {
      writeGuidance();
    }
    writeHeat();
    writeLoads();
    writeOvervoltage();
    writeTrips();
    page.heading("Cautions").items(Cautions.forMeasuring(caseFile));
    return page.toString();
  }

  private void writeLoads() {
    List<String> idle = TestFindings.cannotStart(caseFile.survey(), states());
    if (!idle.isEmpty()) {
      page.heading("Loads that cannot start").items(idle);
    }
  }

  private void writeOvervoltage() {
    List<String> above = TestFindings.overvoltages(caseFile.circuit().supply(), states());
    if (!above.isEmpty()) {
      page.heading("Receptacles above 110 % of nominal").items(above);
    }
  }

  private void writeTrips() {
    List<String> trips = ResidualWords.trips(caseFile, states());
    List<String> watched = ResidualWords.watched(caseFile, states());
    if (!watched.isEmpty()) {
      page.heading("What residual-current devices did, and would see").items(watched);
    }
    if (!trips.isEmpty()) {
      page.heading("What trips a residual-current device").items(trips);
    }
  }

  private List<TestState> states() {
    return prediction.tests().stream().map(PredictedTest::state).toList();
  }

  private String supposition() {
    if (prediction.degradations().isEmpty()) {
      return "What each meter would show if every joint of the case ("
          + caseFile.title()
          + ") were sound and everything were as stated.";
    }
    List<String> supposed = prediction.degradations().stream().map(this::supposed).toList();
    return "What each meter would show with "
        + JointWords.listed(supposed, "and")
        + ", everything else of the case ("
        + caseFile.title()
        + ") sound and as stated.";
  }

  private String supposed(Degradation degradation) {
    return degradation.joint()
        + (Double.isInfinite(degradation.ohms())
            ? " open"
            : " degraded by " + Figures.ohms(degradation.ohms()));
  }

  private boolean isLoaded(PredictedTest test) {
    return !caseFile.survey().loadsOn(test.test()).isEmpty() && !test.state().drops().isEmpty();
  }

  private void writeTest(PredictedTest test) {
    page.heading(CheckText.title(caseFile, test.test()));
    page.table(readings(test));
    if (isLoaded(test)) {
      page.gap().table(drops(test)).indented(farthest(test));
    }
  }

  private Table readings(PredictedTest test) {
    boolean anyRead = test.readings().stream().anyMatch(PredictedReading::isRead);
    boolean anyDegraded = !prediction.degradations().isEmpty();
    Table table = new Table().words("box").words("between").words("meter").numbers("shows, V");
    if (anyDegraded) {
      table.numbers("sound");
    }
    if (anyRead) {
      table.numbers("read").numbers("off");
    }
    for (PredictedReading reading : test.readings()) {
      table.row(cells(reading, anyDegraded, anyRead));
    }
    return table;
  }

  private List<String> cells(PredictedReading reading, boolean withHealthy, boolean withRead) {
    List<String> cells = new ArrayList<>();
    Reading taken = reading.reading();
    Measurand measurand = taken.measurand();
    cells.add(taken.box());
    cells.add(new ReadingWords(region).tap(taken.tap()));
    cells.add(taken.meter());
    cells.add(ReadingWords.cell(measurand, reading.predicted()));
    if (withHealthy) {
      cells.add(ReadingWords.cell(measurand, reading.healthy()));
    }
    if (withRead) {
      double off = taken.value() - reading.predicted();
      cells.add(ReadingWords.cell(taken));
      cells.add(Double.isFinite(off) ? ReadingWords.difference(measurand, off) : "");
    }
    return cells;
  }

  private Table drops(PredictedTest test) {
    Table table =
        new Table()
            .words("box")
            .numbers("from panel")
            .numbers("volts")
            .numbers("drop, V")
            .numbers("drop, %")
            .words("");
    for (VoltageDrop drop : test.state().drops()) {
      table.row(
          drop.box(),
          region.length(drop.metres()),
          Figures.tenths(drop.volts()),
          Figures.tenths(drop.dropVolts()),
          Figures.tenths(100 * drop.fraction()),
          TestFindings.against(guidance, drop));
    }
    return table;
  }

  private String farthest(PredictedTest test) {
    VoltageDrop farthest =
        test.state().drops().stream()
            .max(Comparator.comparingDouble(VoltageDrop::metres))
            .orElseThrow();
    String against = TestFindings.against(guidance, farthest);
    return "Farthest box "
        + farthest.box()
        + ": drop "
        + Figures.volts(farthest.dropVolts())
        + ", "
        + Figures.share(farthest.fraction())
        + ", "
        + (against.isEmpty() ? "within " + Figures.wholeShare(guidance.branchFraction()) : against)
        + ".";
  }

  private void writeGuidance() {
    page.heading("Advice on voltage drop")
        .indented(
            guidance.source()
                + ": "
                + guidance.meaning()
                + ". Advice, not an enforceable limit. The drops above are counted from the panel,"
                + " with the loads of the test alone.");
  }

  private void writeHeat() {
    if (prediction.degradations().isEmpty()) {
      return;
    }
    page.heading("Heat");
    for (int d = 0; d < prediction.degraded().size(); d++) {
      Prediction.Supposed supposed = prediction.degraded().get(d);
      page.item(
          supposed.joint().id()
              + ": "
              + inTests(d)
              + HeatWords.supposed(supposed.worst(), supposed.limit()));
    }
  }

  private String inTests(int degraded) {
    StringBuilder words = new StringBuilder();
    for (PredictedTest test : prediction.tests()) {
      if (isLoaded(test)) {
        Heat heat = test.heat().get(degraded);
        words
            .append(Figures.watts(heat.watts()))
            .append(" at ")
            .append(Figures.amperes(heat.amperes()))
            .append(" in test ")
            .append(test.test().name())
            .append(". ");
      }
    }
    return words.toString();
  }
}
