package ohmtrail.cli;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.TypedFigure;
import ohmtrail.cli.names.Names;
import ohmtrail.predict.Degradation;
import ohmtrail.survey.Measurand;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Reads {@code JOINT=OHMS} as people write it. */
final class DegradeOption {
  private static final int MOST_OFFERED = 4;

  private final CommandLine commandLine;
  private final Circuit circuit;

  /** For the joints of a circuit. */
  DegradeOption(CommandLine commandLine, Circuit circuit) {
    this.commandLine = commandLine;
    this.circuit = circuit;
  }

  /**
   * Reads every value of the option.
   *
   * @throws ParameterException when one names no joint, no ohms, or a joint that was named before
   */
  List<Degradation> parse(List<String> values) {
    Set<String> named = new HashSet<>();
    List<Degradation> degradations = new ArrayList<>();
    for (String value : values) {
      Degradation degradation = parse(value);
      if (!named.add(degradation.joint())) {
        throw wrong("Joint (" + degradation.joint() + ") must be given once only.");
      }
      degradations.add(degradation);
    }
    return degradations;
  }

  private Degradation parse(String value) {
    int equals = value.lastIndexOf('=');
    if (equals < 0) {
      throw wrong(
          "Option --degrade ("
              + value
              + ") must be a joint, = and ohms.\nMaybe write "
              + circuit.joints().get(0).id()
              + "=2.");
    }
    String joint = joint(value.substring(0, equals).strip());
    TypedFigure ohms = TypedFigure.of("Ohms", value.substring(equals + 1), Measurand.RESISTANCE);
    ohms.wrong().ifPresent(this::refuse);
    return new Degradation(joint, ohms.middle());
  }

  private String joint(String written) {
    Names joints = new Names(circuit.joints().stream().map(Joint::id).toList());
    return joints
        .find(written)
        .orElseThrow(
            () ->
                wrong(
                    "Joint ("
                        + written
                        + ") must be one of the circuit's.\nMaybe one of these: "
                        + joints
                            .nearestFirst(written)
                            .limit(MOST_OFFERED)
                            .collect(Collectors.joining(", "))
                        + "."));
  }

  private void refuse(String message) {
    throw wrong(message);
  }

  private ParameterException wrong(String message) {
    return new ParameterException(commandLine, message);
  }
}
