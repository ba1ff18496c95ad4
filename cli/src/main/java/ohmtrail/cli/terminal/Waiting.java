package ohmtrail.cli.terminal;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * For how long an answer has been worked on, told every second once two have passed; on a terminal
 * only.
 */
public final class Waiting implements AutoCloseable {
  /** Who waits no longer than that does not ask. */
  static final int QUIET_SECONDS = 2;

  private final Progress progress;
  private final String task;
  private final ScheduledExecutorService clock;
  private int seconds;
  private boolean over;

  public Waiting(Progress progress, String task) {
    this.progress = progress;
    this.task = task;
    this.clock = Executors.newSingleThreadScheduledExecutor(Waiting::aside);
  }

  /** It must not keep the process alive. */
  private static Thread aside(Runnable work) {
    Thread thread = new Thread(work, "waiting");
    thread.setDaemon(true);
    return thread;
  }

  /** Lets the seconds pass. */
  public void begin() {
    if (progress.isShown()) {
      var unused = clock.scheduleAtFixedRate(this::second, 1, 1, TimeUnit.SECONDS);
    }
  }

  /** Another second has passed. */
  synchronized void second() {
    seconds++;
    if (seconds >= QUIET_SECONDS && !over) {
      progress.tell(task + ": " + seconds + " s");
    }
  }

  /** Takes the line away. */
  @Override
  public synchronized void close() {
    over = true;
    clock.shutdownNow();
    if (seconds >= QUIET_SECONDS) {
      progress.end();
    }
  }
}
