package ohmtrail.cli.report.document;

import java.util.List;
import ohmtrail.cli.chart.canvas.Picture;

/** Something that stands in a section. */
public sealed interface Block {
  /** How a paragraph is set. */
  enum Weight {
    /** As any other. */
    PLAIN,
    /** What is to be read first. */
    LEAD,
    /** What somebody's safety hangs on. */
    CAUTION,
    /** What need not be read at once. */
    NOTE
  }

  /**
   * A paragraph.
   *
   * @param words what it says
   */
  record Paragraph(String words, Weight weight) implements Block {}

  /**
   * A heading within a section.
   *
   * @param words what it says
   */
  record Heading(String words) implements Block {}

  /**
   * A list.
   *
   * @param entries at least one
   */
  record Items(List<String> entries) implements Block {
    /** Copies the list. */
    public Items {
      entries = List.copyOf(entries);
    }
  }

  /**
   * A table.
   *
   * @param caption what it lists
   * @param columns at least one
   * @param rows a cell for each column, or one alone that stands over the rows after it
   */
  record Table(String caption, List<Column> columns, List<List<String>> rows) implements Block {
    /** Copies the lists. */
    public Table {
      columns = List.copyOf(columns);
      rows = rows.stream().map(List::copyOf).toList();
    }

    /** Whether a row is a heading over those after it. */
    public boolean isSection(List<String> row) {
      return row.size() == 1 && columns.size() > 1;
    }
  }

  /**
   * A column.
   *
   * @param heading what it lists
   * @param isNumeric whether its cells are numbers
   */
  record Column(String heading, boolean isNumeric) {}

  /**
   * Something drawn.
   *
   * @param caption what stands below it
   * @param alternative the same in words, for those who do not see it
   * @param picture the drawing
   */
  record Drawing(String caption, String alternative, Picture picture) implements Block {}

  /**
   * A photograph.
   *
   * @param caption what stands below it
   * @param alternative what is to be seen, for those who do not see it
   * @param file the picture
   */
  record Photo(String caption, String alternative, PictureFile file) implements Block {}

  /** A plain paragraph. */
  static Paragraph words(String words) {
    return new Paragraph(words, Weight.PLAIN);
  }
}
