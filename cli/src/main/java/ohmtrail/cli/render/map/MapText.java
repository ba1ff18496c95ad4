package ohmtrail.cli.render.map;

import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.text.CheckText;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.text.Table;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.KnownWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.map.BadJoint;
import ohmtrail.map.BoxFeeders;
import ohmtrail.map.Estimate;
import ohmtrail.map.EstimatedCable;
import ohmtrail.map.MapReport;
import ohmtrail.map.RankedMap;
import ohmtrail.survey.Finding;

/** The map with all that is known of it. */
public final class MapText {
  private static final double WORTH_A_ROW = 0.01;
  private static final int MOST_MAPS = 5;

  private final CaseFile caseFile;
  private final MapReport report;
  private final MapWords words;
  private final Region region;
  private final Page page = new Page();

  private MapText(CaseFile caseFile, MapReport report) {
    this.caseFile = caseFile;
    this.report = report;
    this.words = new MapWords(report);
    this.region = Region.of(caseFile.circuit().supply());
  }

  /** Writes it. */
  public static String of(CaseFile caseFile, MapReport report) {
    return new MapText(caseFile, report).write();
  }

  private String write() {
    page.paragraph(words.headline());
    page.heading("Most probable map: each box below the one that feeds it");
    MapTree.draw(report, region, page);
    words.foreign().forEach(page::indented);
    page.gap().paragraph(words.joint());
    writeFeeders();
    writeCables();
    writeOtherMaps();
    writeJoint();
    if (!report.alike().isEmpty()) {
      page.heading("Boxes that read alike").items(words.alike());
    }
    page.heading("What was known of the run")
        .items(KnownWords.of(report.problem().run(), region))
        .items(CheckText.taken(caseFile));
    page.heading("How it was found").items(words.search());
    page.heading("Cautions").items(Cautions.forMeasuring(caseFile));
    return page.toString();
  }

  private void writeFeeders() {
    Table table = new Table().words("box").words("fed from").numbers("").words("");
    for (BoxFeeders feeders : report.boxes()) {
      String box = feeders.box();
      for (BoxFeeders.Share share : feeders.feeders()) {
        if (share.probability() >= WORTH_A_ROW) {
          table.row(
              box,
              share.feeder(),
              Figures.probability(share.probability()),
              box.isEmpty() ? "" : feeders.isSettled() ? "settled" : "open");
          box = "";
        }
      }
    }
    page.heading("What feeds each box").table(table);
  }

  private void writeCables() {
    Table table =
        new Table()
            .words("from")
            .words("to")
            .numbers(region.lengthUnit())
            .words("90 %")
            .numbers("there and back")
            .words("");
    for (EstimatedCable cable : report.cables()) {
      table.row(
          cable.feeder(),
          cable.box(),
          length(cable.metres().value()),
          between(cable.metres()),
          Figures.ohms(cable.loopOhms().value()),
          cable.isMeasured() ? "" : "as assumed, nothing read bears on it");
    }
    page.heading("Its cables, as long as the readings make them").table(table);
  }

  private String length(double metres) {
    return Figures.upToTenths(region.inLengthUnit(metres));
  }

  private String between(Estimate metres) {
    return length(metres.low()) + " to " + length(metres.high());
  }

  private void writeOtherMaps() {
    Table table = new Table().numbers("").words("");
    report.maps().stream()
        .limit(MOST_MAPS)
        .filter(map -> map.equals(report.likeliest()) || map.probability() >= WORTH_A_ROW)
        .forEach(map -> table.row(probability(map), MapWords.inLine(map.map())));
    page.heading("The most probable maps").table(table);
  }

  private static String probability(RankedMap map) {
    return Figures.probability(map.probability());
  }

  private void writeJoint() {
    BadJoint bad = report.badJoint();
    Table table = new Table().words("box").numbers("");
    table.row("(no bad joint)", Figures.probability(bad.soundProbability()));
    bad.boxes().stream()
        .filter(place -> place.probability() >= WORTH_A_ROW)
        .forEach(
            place ->
                table.row(
                    place.box().equals(Finding.SUPPLY) ? "(before the panel)" : place.box(),
                    Figures.probability(place.probability())));
    page.heading("Where a joint may be bad, over all maps").table(table);
  }
}
