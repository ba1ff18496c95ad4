package ohmtrail.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import ohmtrail.cli.build.Build;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/** A man page (roff, macros of man(7)) of a command, from what its help says. */
final class ManPage {
  private final CommandSpec command;
  private final Help help;
  private final StringBuilder page = new StringBuilder();

  private ManPage(CommandSpec command) {
    this.command = command;
    this.help = new Help(command, Help.defaultColorScheme(Ansi.OFF));
  }

  /** The page. */
  static String of(CommandSpec command) {
    return new ManPage(command).write();
  }

  private String write() {
    String name = command.qualifiedName("-");
    UsageMessageSpec usage = command.usageMessage();
    macro(
        "TH",
        name.toUpperCase(Locale.ROOT),
        "1",
        "",
        "Ohmtrail " + Build.current().version(),
        "Ohmtrail");
    heading("NAME");
    text(name + " \\- " + firstSentence(String.join(" ", usage.description())), true);
    heading("SYNOPSIS");
    page.append(".nf\n");
    text(help.synopsis(0).strip(), false);
    page.append(".fi\n");
    heading("DESCRIPTION");
    text(String.join(" ", usage.description()), false);
    parameters();
    options();
    commands();
    exitCodes(usage.exitCodeList());
    footer(List.of(usage.footer()));
    heading("CAUTION");
    text(
        "Readings are taken on live parts, and a bad joint is a fire in waiting. The local"
            + " electrical code and a licensed electrician come first.",
        false);
    return page.toString();
  }

  private static String firstSentence(String text) {
    int colon = text.indexOf(':');
    int stop = text.indexOf(". ");
    int end = colon > 0 ? colon : stop > 0 ? stop : text.length();
    String first = text.substring(0, end).replaceFirst("\\.$", "");
    return first.substring(0, 1).toLowerCase(Locale.ROOT) + first.substring(1);
  }

  private void parameters() {
    List<PositionalParamSpec> parameters =
        command.positionalParameters().stream().filter(each -> !each.hidden()).toList();
    if (!parameters.isEmpty()) {
      heading("PARAMETERS");
      parameters.forEach(each -> item(each.paramLabel(), each));
    }
  }

  private void options() {
    heading("OPTIONS");
    for (OptionSpec option : command.options()) {
      if (!option.hidden()) {
        String label = option.arity().max() == 0 ? "" : "=" + option.paramLabel();
        item(String.join(", ", option.names()) + label, option);
      }
    }
  }

  private void item(String label, ArgSpec argument) {
    page.append(".TP\n");
    macro("B", label);
    text(described(argument), false);
  }

  /** With the default and the candidates in their places. */
  private static String described(ArgSpec argument) {
    Iterable<String> candidates = argument.completionCandidates();
    return String.join(" ", argument.description())
        .replace("${DEFAULT-VALUE}", String.valueOf(argument.defaultValueString()))
        .replace(
            "${COMPLETION-CANDIDATES}", candidates == null ? "" : String.join(", ", candidates));
  }

  private void commands() {
    List<Map.Entry<String, CommandLine>> commands =
        command.subcommands().entrySet().stream()
            .filter(each -> !each.getValue().getCommandSpec().usageMessage().hidden())
            .toList();
    if (commands.isEmpty()) {
      return;
    }
    heading("COMMANDS");
    for (Map.Entry<String, CommandLine> each : commands) {
      page.append(".TP\n");
      macro("BR", "ohmtrail-" + each.getKey(), " (1)");
      text(String.join(" ", each.getValue().getCommandSpec().usageMessage().description()), false);
    }
  }

  private void exitCodes(Map<String, String> codes) {
    if (!codes.isEmpty()) {
      heading("EXIT STATUS");
      codes.forEach(
          (code, meaning) -> {
            page.append(".TP\n");
            macro("B", code);
            text(meaning, false);
          });
    }
  }

  private void footer(List<String> lines) {
    List<String> examples =
        lines.stream().map(String::strip).filter(line -> line.startsWith("ohmtrail")).toList();
    if (!examples.isEmpty()) {
      heading("EXAMPLES");
      page.append(".nf\n");
      examples.forEach(each -> text(each, false));
      page.append(".fi\n");
    }
  }

  private void heading(String words) {
    macro("SH", words);
  }

  private void macro(String name, String... arguments) {
    page.append('.').append(name);
    for (String argument : arguments) {
      page.append(" \"").append(escaped(argument).replace("\"", "\\(dq")).append('"');
    }
    page.append('\n');
  }

  private void text(String words, boolean escapedAlready) {
    for (String line : words.lines().toList()) {
      String safe = escapedAlready ? line : escaped(line);
      boolean control = safe.startsWith(".") || safe.startsWith("'");
      page.append(control ? "\\&" : "").append(safe).append('\n');
    }
  }

  private static String escaped(String text) {
    return text.replace("%n", " ").replace("\\", "\\e").replace("-", "\\-");
  }
}
