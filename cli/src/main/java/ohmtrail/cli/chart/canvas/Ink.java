package ohmtrail.cli.chart.canvas;

/**
 * The colours there are. The hues are those of Okabe and Ito (Color Universal Design, 2008; values
 * from memory), which stay apart for people who do not see red or green; nothing drawn is told from
 * anything else by hue alone.
 */
public enum Ink {
  /** Words and readings. */
  BLACK("#000000"),
  /** Lesser words. */
  DARK("#4a4a4a"),
  /** Axes, guidance. */
  GREY("#7a7a7a"),
  /** Grid. */
  LIGHT("#d4d4d4"),
  /** Bands behind everything else. */
  FAINT("#eeeeee"),
  /** The sheet. */
  WHITE("#ffffff"),
  /** Okabe-Ito vermillion. */
  VERMILLION("#d55e00"),
  /** Okabe-Ito bluish green. */
  GREEN("#009e73"),
  /** Okabe-Ito blue. */
  BLUE("#0072b2"),
  /** Okabe-Ito reddish purple. */
  PURPLE("#cc79a7");

  private final String hex;

  Ink(String hex) {
    this.hex = hex;
  }

  /** As {@code #rrggbb}. */
  public String hex() {
    return hex;
  }
}
