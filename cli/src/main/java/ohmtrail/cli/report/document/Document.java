package ohmtrail.cli.report.document;

import java.util.List;

/**
 * A document.
 *
 * @param title what it is called
 * @param subject what it is about, in half a sentence
 * @param footer what stands at the foot of every page beside its number
 * @param sections in the order in which they are read, at least one
 */
public record Document(String title, String subject, String footer, List<Section> sections) {
  /** Copies the list. */
  public Document {
    sections = List.copyOf(sections);
  }

  /**
   * A part of it that can be read alone.
   *
   * @param id names it in the document, letters and hyphens
   * @param heading its heading
   * @param startsPage whether it begins a page
   * @param blocks what stands in it
   */
  public record Section(String id, String heading, boolean startsPage, List<Block> blocks) {
    /** Copies the list. */
    public Section {
      blocks = List.copyOf(blocks);
    }
  }
}
