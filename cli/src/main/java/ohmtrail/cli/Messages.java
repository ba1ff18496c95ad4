package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import ohmtrail.circuit.CircuitException;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.Problem;
import ohmtrail.cli.names.Shown;
import ohmtrail.predict.Room;
import ohmtrail.survey.SurveyException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Turns what went wrong into a message on standard error and an exit code; never a stack trace. */
final class Messages implements IExecutionExceptionHandler, IParameterExceptionHandler {
  private static final long BYTES_PER_MEGABYTE = 1L << 20;

  @Override
  public int handleExecutionException(
      Exception exception, CommandLine commandLine, ParseResult parsed) {
    return told(exception, commandLine.getErr());
  }

  @Override
  public int handleParseException(ParameterException exception, String[] arguments) {
    CommandLine commandLine = exception.getCommandLine();
    PrintWriter err = commandLine.getErr();
    say(exception.getMessage(), err);
    UnmatchedArgumentException.printSuggestions(exception, err);
    err.println("See: " + commandLine.getCommandSpec().qualifiedName() + " --help");
    return ExitCode.BAD_CASE;
  }

  /** Tells what went wrong. */
  static int told(Throwable thrown, PrintWriter err) {
    if (thrown instanceof CaseFileException bad) {
      bad.problems().stream().map(Problem::format).forEach(problem -> say(problem, err));
      return ExitCode.BAD_CASE;
    }
    if (thrown instanceof SurveyException || thrown instanceof CircuitException) {
      say(thrown.getMessage(), err);
      return ExitCode.BAD_CASE;
    }
    if (thrown instanceof IOException || thrown instanceof Room.TooLittleException) {
      say(thrown.getMessage(), err);
      return ExitCode.FAILURE;
    }
    if (thrown instanceof OutOfMemoryError) {
      say(tooBig(Runtime.getRuntime().maxMemory() / BYTES_PER_MEGABYTE), err);
      return ExitCode.FAILURE;
    }
    say(
        "Ohmtrail failed ("
            + thrown.getClass().getSimpleName()
            + (thrown.getMessage() == null ? "" : ": " + thrown.getMessage())
            + ").\nMaybe report it together with the case file: the fault is the program's.",
        err);
    return ExitCode.FAILURE;
  }

  private static String tooBig(long megabytes) {
    return "The answer does not fit into the "
        + megabytes
        + " MB of memory that Java has.\nMaybe give it more: java -Xmx"
        + 2 * megabytes
        + "m -jar ohmtrail.jar. Or leave out of the case the boxes behind the last one that was read.";
  }

  /** Says something that may quote what somebody typed. */
  static void say(@Nullable String message, PrintWriter err) {
    err.println(Shown.lines(String.valueOf(message)));
  }
}
