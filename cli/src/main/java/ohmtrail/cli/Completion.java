package ohmtrail.cli;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * The completion of shells: commands and options from the commands themselves, and after an option
 * that takes a name those of the case on the line, which the program lists.
 */
final class Completion {
  /** What the value of an option names, and how the program is asked for it. */
  private static final Map<String, List<String>> NAMES =
      Map.of(
          "boxes", List.of("--at", "--out-of-reach", "--looked-fine"),
          "joints", List.of("--degrade", "--over"),
          "tests", List.of("--test"));

  private Completion() {}

  /** A script for bash. */
  static String bash(CommandLine program) {
    StringBuilder script = new StringBuilder();
    script.append("# Completion of ohmtrail for bash.\n_ohmtrail() {\n");
    script.append("  local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]}\n");
    script.append("  local word case= kind= IFS=$'\\n'\n  COMPREPLY=()\n");
    script.append("  if [ \"$COMP_CWORD\" -eq 1 ]; then\n");
    script
        .append("    COMPREPLY=($(compgen -W '")
        .append(String.join("\n", shown(program).map(CommandSpec::name).toList()))
        .append("\n--help\n--version' -- \"$cur\"))\n    return\n  fi\n");
    script.append("  for word in \"${COMP_WORDS[@]:2}\"; do\n");
    script.append("    case $word in *.yaml | *.yml) [ -f \"$word\" ] && case=$word ;; esac\n");
    script.append("  done\n  case $prev in\n");
    NAMES.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            each ->
                script
                    .append("    ")
                    .append(String.join(" | ", each.getValue()))
                    .append(") kind=")
                    .append(each.getKey())
                    .append(" ;;\n"));
    script.append("  esac\n");
    script.append("  if [ -n \"$kind\" ] && [ -n \"$case\" ]; then\n");
    script.append(
        "    COMPREPLY=($(compgen -W \"$(\"${COMP_WORDS[0]}\" names $kind \"$case\" 2>/dev/null)\" -- \"$cur\"))\n");
    script.append(
        "    [ \"$kind\" = joints ] && compopt -o nospace 2>/dev/null\n    return\n  fi\n");
    script.append("  case $cur in\n    -*)\n      case ${COMP_WORDS[1]} in\n");
    shown(program)
        .forEach(
            command ->
                script
                    .append("        ")
                    .append(command.name())
                    .append(") COMPREPLY=($(compgen -W '")
                    .append(options(command))
                    .append("' -- \"$cur\")) ;;\n"));
    script.append("      esac\n      return\n      ;;\n  esac\n");
    script.append("  compopt -o filenames 2>/dev/null\n");
    script.append(
        "  COMPREPLY=($(compgen -f -X '!*.y?(a)ml' -- \"$cur\") $(compgen -d -- \"$cur\"))\n");
    script.append("}\nshopt -s extglob\ncomplete -F _ohmtrail ohmtrail\n");
    return script.toString();
  }

  /** The same for zsh, which knows how to take a completion of bash. */
  static String zsh(String bash) {
    return "#compdef ohmtrail\nautoload -U +X bashcompinit && bashcompinit\n"
        + bash.replace("shopt -s extglob\n", "setopt KSH_GLOB 2>/dev/null\n");
  }

  private static String options(CommandSpec command) {
    return command.options().stream()
        .filter(option -> !option.hidden())
        .map(OptionSpec::longestName)
        .sorted()
        .collect(Collectors.joining("\n"));
  }

  private static Stream<CommandSpec> shown(CommandLine program) {
    return program.getSubcommands().values().stream()
        .map(CommandLine::getCommandSpec)
        .filter(command -> !command.usageMessage().hidden());
  }
}
