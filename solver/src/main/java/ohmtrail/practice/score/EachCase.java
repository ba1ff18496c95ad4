package ohmtrail.practice.score;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;

/**
 * The first cases of a series, several at a time. What comes of them is in their order, whatever
 * the number of threads.
 */
final class EachCase {
  private final int cases;
  private final int threads;

  /**
   * Prepares.
   *
   * @param cases how many, from number 0; at least 1
   * @param threads how many at a time; at least 1
   * @throws IllegalArgumentException when there is nothing to do or nobody to do it
   */
  EachCase(int cases, int threads) {
    if (cases < 1 || threads < 1) {
      throw new IllegalArgumentException(
          "Cases (" + cases + ") and threads (" + threads + ") must be at least 1 each");
    }
    this.cases = cases;
    this.threads = threads;
  }

  /** How many. */
  int cases() {
    return cases;
  }

  /**
   * Does a task for each.
   *
   * @param task for the case of a number; must be safe to do on several threads
   * @param progress told how many are done, always by the calling thread
   */
  <T> List<T> list(IntFunction<T> task, IntConsumer progress) {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<T>> pending = new ArrayList<>();
      for (int number = 0; number < cases; number++) {
        int drawn = number;
        pending.add(pool.submit(() -> task.apply(drawn)));
      }
      List<T> done = new ArrayList<>();
      for (Future<T> each : pending) {
        done.add(result(each));
        progress.accept(done.size());
      }
      return List.copyOf(done);
    } finally {
      pool.shutdownNow();
    }
  }

  private static <T> T result(Future<T> pending) {
    try {
      return pending.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Scoring was interrupted before it was done", e);
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException cause
          ? cause
          : new IllegalStateException("A case could not be scored: " + e.getCause(), e);
    }
  }
}
