package ohmtrail.sensitivity;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.function.Function;
import ohmtrail.locate.Diagnosis;
import ohmtrail.problem.Problem;
import ohmtrail.slip.AveragedLocator;

/** Answers variations of a problem, several at a time; each as if it stood alone. */
final class Variations {
  private final ExecutorService pool;
  private final Progress progress;
  private int done;
  private int all;

  Variations(ExecutorService pool, Progress progress) {
    this.pool = pool;
    this.progress = progress;
  }

  /** So many are coming. */
  void expect(int more) {
    all += more;
  }

  /** The conclusions, in the order of the problems. */
  List<Conclusion> conclusions(List<Problem> problems) {
    return each(problems, problem -> Conclusion.of(new AveragedLocator().locate(problem)));
  }

  /** The answers, in the order of the problems. */
  List<Diagnosis> answers(List<Problem> problems) {
    return each(problems, new AveragedLocator()::locate);
  }

  private <T> List<T> each(List<Problem> problems, Function<Problem, T> task) {
    List<Future<T>> pending =
        problems.stream().map(problem -> pool.submit(() -> task.apply(problem))).toList();
    List<T> results = new ArrayList<>();
    for (Future<T> next : pending) {
      results.add(result(next));
      done++;
      progress.tell(done, Math.max(done, all));
    }
    return results;
  }

  /** How many were answered. */
  int answered() {
    return done;
  }

  private static <T> T result(Future<T> pending) {
    try {
      return pending.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Interrupted before it was done", e);
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException cause
          ? cause
          : new IllegalStateException("A variation could not be answered: " + e.getCause(), e);
    }
  }
}
