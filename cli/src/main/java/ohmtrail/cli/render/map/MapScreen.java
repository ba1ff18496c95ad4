package ohmtrail.cli.render.map;

import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.screen.Blocks;
import ohmtrail.cli.render.screen.Screen;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.words.Region;
import ohmtrail.map.MapReport;

/** The map on one screen. */
public final class MapScreen {
  private static final String FULL =
      "Other maps, every feeder, lengths, assumptions, every caution: --full.";

  private MapScreen() {}

  /**
   * Writes it.
   *
   * @param columns of the terminal
   */
  public static String of(CaseFile caseFile, MapReport report, int columns) {
    MapWords words = new MapWords(report);
    Region region = Region.of(caseFile.circuit().supply());
    boolean dead =
        !caseFile.survey().tests().isEmpty()
            && caseFile.survey().tests().stream().allMatch(test -> test.isDead());
    return new Screen(columns)
        .always(page -> page.paragraph(words.headline()))
        .always(page -> MapTree.draw(report, region, page))
        .always(page -> page.paragraph(words.joint()))
        .unlessFull(1, page -> words.foreign().forEach(page::paragraph))
        .unlessFull(2, page -> open(words, page))
        .unlessFull(3, page -> words.alike().forEach(page::paragraph))
        .always(page -> Blocks.cautions(caseFile, dead, page))
        .unlessFull(4, page -> page.paragraph(FULL))
        .toString();
  }

  private static void open(MapWords words, Page page) {
    words.open().forEach(line -> page.paragraph("? " + line + "."));
  }
}
