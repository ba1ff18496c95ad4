package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Starts the one runnable jar as a process of its own, as its user does. */
class RunnableJarIT {

  @Test
  void theJarRunsAndSaysItsVersion() throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(java(), "-jar", System.getProperty("ohmtrail.jar"), "--version")
            .redirectErrorStream(true)
            .start();
    String output =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();

    assertEquals(0, process.waitFor(), output);
    assertEquals("Ohmtrail " + System.getProperty("ohmtrail.version"), output);
  }

  private static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }
}
