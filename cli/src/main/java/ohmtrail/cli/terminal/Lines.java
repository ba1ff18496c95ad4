package ohmtrail.cli.terminal;

import java.io.IOException;
import java.util.Optional;

/** Where answers come from. */
public interface Lines extends AutoCloseable {
  /**
   * Asks.
   *
   * @param prompt stands before the answer
   * @return the line; empty at the end of input
   * @throws IOException when nothing can be read
   */
  Optional<String> read(String prompt) throws IOException;

  /** Columns that a line may have. */
  int width();

  @Override
  default void close() throws IOException {}
}
