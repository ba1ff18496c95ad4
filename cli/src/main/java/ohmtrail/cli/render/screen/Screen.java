package ohmtrail.cli.render.screen;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import ohmtrail.cli.render.text.Page;

/**
 * One screen: blocks of lines with a blank line between, of which the least important go where it
 * is full.
 */
public final class Screen {
  /** Lines of a terminal that nobody has made taller. */
  public static final int LINES = 24;

  /** The most columns that are written: longer lines are hard to read. */
  private static final int WIDEST = 80;

  /** The fewest columns: a phone held upright. */
  private static final int NARROWEST = 40;

  private final int width;
  private final int lines;
  private final List<Block> blocks = new ArrayList<>();

  /**
   * Begins.
   *
   * @param columns of the terminal; held to 40 to 80
   */
  public Screen(int columns) {
    this(columns, LINES);
  }

  /**
   * Begins one that shares the terminal with something else.
   *
   * @param columns of the terminal; held to 40 to 80
   * @param lines that it may take
   */
  public Screen(int columns, int lines) {
    this.width = Math.max(NARROWEST, Math.min(WIDEST, columns));
    this.lines = lines;
  }

  /** Lines that belong together; the higher the rank, the sooner they go. Rank 0 never goes. */
  private record Block(int rank, List<String> lines) {}

  /** What has to be said. */
  public Screen always(Consumer<Page> writing) {
    return unlessFull(0, writing);
  }

  /**
   * What is said where there is room.
   *
   * @param rank from 1; of two that do not both fit the higher goes
   */
  public Screen unlessFull(int rank, Consumer<Page> writing) {
    Page page = new Page(width);
    writing.accept(page);
    List<String> lines = page.toString().lines().toList();
    if (!lines.isEmpty()) {
      blocks.add(new Block(rank, lines));
    }
    return this;
  }

  private static int height(List<Block> shown) {
    return shown.stream().mapToInt(block -> block.lines().size() + 1).sum() - 1;
  }

  @Override
  public String toString() {
    List<Block> shown = new ArrayList<>(blocks);
    while (height(shown) > lines) {
      Optional<Block> least =
          shown.stream()
              .filter(block -> block.rank() > 0)
              .max(Comparator.comparingInt(Block::rank));
      if (least.isEmpty()) {
        break;
      }
      shown.remove(least.get());
    }
    StringBuilder text = new StringBuilder();
    for (Block block : shown) {
      text.append(text.isEmpty() ? "" : "\n");
      block.lines().forEach(line -> text.append(line).append('\n'));
    }
    return text.toString();
  }
}
