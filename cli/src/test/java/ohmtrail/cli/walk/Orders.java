package ohmtrail.cli.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;

/**
 * Reads what was written as somebody would who goes by it, and says where it sends a hand without a
 * word of what has to be off. It knows the words, and nothing of how they came about.
 */
final class Orders {
  private static final Pattern BLOCK = Pattern.compile("\n\\s*\n|\n(?=\\s*- )|\n(?=\\d+\\. )");
  private static final Pattern PLUG_IN =
      Pattern.compile("plugged in there is on|while the [\\w -]+ is on|^plug the ");
  private static final Pattern LOADED_STEP =
      Pattern.compile("[Aa]t ([\\w-]+): .*while the ([\\w -]+) plugged in there is on");
  private static final Pattern NO_PLUG =
      Pattern.compile("\\bno load\\b|plug nothing in|nothing is plugged in");
  private static final Pattern SOUND = Pattern.compile("call the circuit sound");
  private static final Pattern DANGER =
      Pattern.compile("^Leave (this breaker|the breakers|the main)");
  private static final Pattern COMFORT = Pattern.compile("less than the [0-9.]+ W");

  private final Circuit circuit;
  private final String panel;

  Orders(Circuit circuit) {
    this.circuit = circuit;
    this.panel = circuit.panel().name();
  }

  /** What one page or screen says that it must not; empty where it is as it should be. */
  List<String> breaches(String page) {
    List<String> blocks = blocks(page);
    List<String> breaches = new ArrayList<>();
    for (String block : blocks) {
      if (sendsInto(panel, block) && !saysMainSwitch(block)) {
        breaches.add("Into the panel without the main switch: " + block);
      }
      closedBoxes()
          .filter(box -> isReadAt(box, block) && !isDead(block))
          .filter(box -> !block.contains(box + " open and live, for a licensed electrician"))
          .forEach(box -> breaches.add("Into a live box without a word: " + block));
      circuit.boxes().stream()
          .map(Box::name)
          .filter(box -> circuit.liveThrough(box).size() > 1 && !box.equals(panel))
          .filter(box -> sendsInto(box, block) && !namesBothLegs(block))
          .forEach(box -> breaches.add("Into a box of two breakers without both: " + block));
      if (COMFORT.matcher(block).find()) {
        breaches.add("A smaller figure as a comfort: " + block);
      }
    }
    boolean plugsIn = blocks.stream().anyMatch(block -> PLUG_IN.matcher(block).find());
    blocks.stream()
        .filter(block -> plugsIn && NO_PLUG.matcher(block).find())
        .forEach(block -> breaches.add("A load beside an order to plug it in: " + block));
    boolean danger = blocks.stream().anyMatch(block -> DANGER.matcher(block).find());
    blocks.stream()
        .filter(block -> danger && SOUND.matcher(block).find())
        .forEach(block -> breaches.add("Sound beside a danger: " + block));
    refusedAndAdvised(blocks, breaches);
    return breaches;
  }

  /** The page without what is told of elsewhere: tables, pictures, what was typed. */
  private static List<String> blocks(String page) {
    return Stream.of(BLOCK.split(page))
        .map(block -> block.replaceAll("\\s+", " ").strip().replaceFirst("^- ", ""))
        .filter(block -> !block.isEmpty())
        .collect(Collectors.toList());
  }

  /** Panel, switch, junction and luminaire boxes: nothing is read there but with the cover off. */
  private Stream<String> closedBoxes() {
    return circuit.boxes().stream().filter(box -> !box.hasReceptacle()).map(Box::name);
  }

  private boolean sendsInto(String box, String block) {
    String name = Pattern.quote(box) + "(?![\\w-])";
    return Pattern.compile(
                "Open "
                    + name
                    + "|open "
                    + name
                    + "|Have "
                    + name
                    + "|Then have "
                    + name
                    + "|Next: "
                    + name
                    + "|Found, in "
                    + name
                    + "|if it is sound, [^:.]*\\b"
                    + name
                    + "|^"
                    + name
                    + ".{0,120}: do all joints|By probability alone: [^;]*\\b"
                    + name
                    + "|linked at "
                    + name)
            .matcher(block)
            .find()
        || (box.equals(panel) && isReadAt(box, block));
  }

  private static boolean isReadAt(String box, String block) {
    String name = Pattern.quote(box) + "(?![\\w-])";
    return Pattern.compile(
            "^(?:\\d+\\. |Next, )?(?:At |at )?"
                + name
                + "(?: \\([^)]*\\))?: (?:read |(?:hot|line|leg"
                + " \\d|switched|neutral|ground|across|the current))")
        .matcher(block)
        .find();
  }

  private static boolean isDead(String block) {
    return block.contains("off and proved dead, everything unplugged");
  }

  private static boolean saysMainSwitch(String block) {
    return block.contains("main switch")
        && (block.contains("line side") || block.contains("supply side"))
        && block.contains("licensed electrician");
  }

  private static boolean namesBothLegs(String block) {
    return block.contains("leg 1 and leg 2") || block.contains("line 1 and line 2");
  }

  /** A load at a box that a step asks for, and what is not to be done asks for nowhere. */
  private static void refusedAndAdvised(List<String> blocks, List<String> breaches) {
    for (String block : blocks) {
      Matcher step = LOADED_STEP.matcher(block);
      if (step.find()) {
        String refused = step.group(2) + " at " + step.group(1) + ", read at " + step.group(1);
        blocks.stream()
            .filter(other -> other.startsWith(refused + ":"))
            .forEach(other -> breaches.add("Refused and advised: " + other + " / " + block));
      }
    }
  }
}
