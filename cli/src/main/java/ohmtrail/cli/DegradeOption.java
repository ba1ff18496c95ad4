package ohmtrail.cli;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Reads {@code JOINT=OHMS} as people write it. */
final class DegradeOption {
  private static final int MOST_OFFERED = 4;
  private static final double KILO = 1e3;
  private static final double MEGA = 1e6;
  private static final double MILLI = 1e-3;

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
    String id = value.substring(0, equals).strip();
    if (circuit.joint(id).isEmpty()) {
      throw wrong(
          "Joint ("
              + id
              + ") must be one of the circuit's.\nMaybe one of these: "
              + String.join(", ", nearest(id))
              + ".");
    }
    String text = value.substring(equals + 1).strip();
    OptionalDouble ohms = ohms(text);
    if (ohms.isEmpty()) {
      throw wrong(
          "Ohms ("
              + text
              + ") of joint "
              + id
              + " must be a number that is not negative, with or without a unit.\n"
              + "Maybe write 2, 0.5ohm, 3kohm or open.");
    }
    return new Degradation(id, ohms.getAsDouble());
  }

  private ParameterException wrong(String message) {
    return new ParameterException(commandLine, message);
  }

  private List<String> nearest(String id) {
    return NearestNames.to(id, circuit.joints().stream().map(Joint::id).toList()).stream()
        .limit(MOST_OFFERED)
        .toList();
  }

  private static OptionalDouble ohms(String text) {
    if (text.toLowerCase(Locale.ROOT).equals("open")) {
      return OptionalDouble.of(Double.POSITIVE_INFINITY);
    }
    int end = 0;
    while (end < text.length() && "0123456789.".indexOf(text.charAt(end)) >= 0) {
      end++;
    }
    OptionalDouble factor = factor(text.substring(end).strip());
    String number = text.substring(0, end);
    boolean isNumber =
        number.chars().anyMatch(Character::isDigit)
            && number.indexOf('.') == number.lastIndexOf('.');
    return isNumber && factor.isPresent()
        ? OptionalDouble.of(Double.parseDouble(number) * factor.getAsDouble())
        : OptionalDouble.empty();
  }

  /** A small m is milli and a capital one mega; a k is kilo either way. */
  private static OptionalDouble factor(String unit) {
    return switch (unit) {
      case "", "ohm", "ohms", "Ohm", "Ohms", "\u03a9", "\u2126" -> OptionalDouble.of(1);
      case "k", "K", "kohm", "kohms", "kOhm", "k\u03a9", "k\u2126" -> OptionalDouble.of(KILO);
      case "M", "Mohm", "Mohms", "MOhm", "M\u03a9", "M\u2126", "megohm" -> OptionalDouble.of(MEGA);
      case "m", "mohm", "mohms", "mOhm", "m\u03a9", "m\u2126" -> OptionalDouble.of(MILLI);
      default -> OptionalDouble.empty();
    };
  }
}
