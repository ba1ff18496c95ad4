package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Reading;
import org.junit.jupiter.api.Test;

/** One grammar of numbers, units and names wherever somebody types them. */
class GrammarPropertyTest {
  private static final double ARITHMETIC = 1e-9;

  /** Exact since 1959: NIST SP 811, appendix B. */
  private static final double METRES_PER_FOOT = 0.3048;

  private static final int INCHES_PER_FOOT = 12;

  /** Of the ohmmeter that a case has without listing it: what is beyond it is open. */
  private static final double RANGE_OHMS = 2000;

  private static final List<String> FEET = List.of("ft", " ft", "'", "\u2032", " feet", "FT");
  private static final List<String> INCHES = List.of("in", " in", "\"", "\u2033", " inches");

  private static final List<String> PIECES =
      List.of(
          "hall-2",
          "living room",
          "3",
          "#3",
          "box 3",
          "fine",
          "loose",
          "burnt",
          "is",
          "118,6 V",
          "11' 6\"",
          "14/2",
          "14-2",
          "about",
          "~",
          "don't know",
          "?",
          "H-N",
          "l1-n",
          "88-117",
          "1,500",
          "OL",
          "o.l",
          "to",
          "-",
          "from",
          "at",
          "note",
          ":",
          ": ",
          ";",
          "off",
          "idle",
          "\u001b[2J",
          "\u202e",
          "\ud83d\udd0c",
          "'",
          "\"",
          "'''",
          ",",
          ".",
          ",5",
          "-3",
          "1e9",
          "AWG",
          "mm2",
          "receptacle",
          "switch",
          "unknown",
          "\u00a0",
          "",
          "x".repeat(300),
          "9".repeat(60));

  private static final String RUN =
      "run:\n  - panel\n  - a: receptacle 30 ft\n  - b: receptacle %s\n";

  private static <T> T one(List<T> all, Random random) {
    return all.get(random.nextInt(all.size()));
  }

  private static Reading read(String test, String words, String rest) throws CaseFileException {
    CaseFile file =
        CaseFiles.read(
            RUN.formatted("12 ft") + "tests:\n  - " + test + ":\n      - " + words + "\n" + rest);
    return file.survey().tests().get(0).readings().get(0);
  }

  private static String quoted(String text) {
    return "'" + text.replace("'", "''") + "'";
  }

  private record Asked(Measurand measurand, Dimension dimension, String test, String where) {}

  private static final List<Asked> ASKED =
      List.of(
          new Asked(Measurand.VOLTAGE, Dimension.VOLTAGE, "idle", "b hot-neutral %s high"),
          new Asked(Measurand.CURRENT, Dimension.CURRENT, "1 kW at b", "around panel to a hot %s"),
          new Asked(Measurand.RESISTANCE, Dimension.RESISTANCE, "off", "b hot-neutral %s"));

  @Test
  void everySpellingOfEveryUnitSaysTheSameInAFileAndWhereAMeterIsAskedFor()
      throws CaseFileException {
    int spellings = 0;
    for (Asked asked : ASKED) {
      for (Unit unit : Unit.values()) {
        if (unit.dimension() == asked.dimension()) {
          for (String spelling : unit.spellings()) {
            double value = unit.factor().doubleValue() * 0.25;
            for (String typed : List.of("0.25 " + spelling, "0,25" + spelling)) {
              String words = quoted(asked.where().formatted(typed));
              TypedFigure figure = TypedFigure.of(typed, asked.measurand());
              assertEquals(Optional.empty(), figure.wrong(), typed);
              assertEquals(value, figure.middle(), value * ARITHMETIC, typed);
              double shown = read(asked.test(), words, "").value();
              if (value > RANGE_OHMS) {
                assertEquals(Double.POSITIVE_INFINITY, shown, typed);
              } else {
                assertEquals(value, shown, value * ARITHMETIC, typed);
              }
              spellings++;
            }
          }
        }
      }
    }
    assertTrue(spellings > 50, spellings + " spellings");
  }

  @Test
  void aCapitalMIsNeverAThousandthAndASmallOneNeverAMillion() {
    for (Unit unit : Unit.values()) {
      for (String spelling : unit.spellings()) {
        for (String typed :
            List.of(spelling.toUpperCase(Locale.ROOT), spelling.toLowerCase(Locale.ROOT))) {
          Optional<Unit> read = Unit.parse(typed);
          boolean same = read.isEmpty() || read.get() == unit;
          assertTrue(same || typed.equalsIgnoreCase(spelling), typed);
          read.ifPresent(
              is -> {
                assertFalse(typed.startsWith("M") && is.factor().doubleValue() == 0.001, typed);
                boolean small = typed.startsWith("m") && !typed.startsWith("meg");
                assertFalse(small && is == Unit.MEGOHM, typed);
              });
        }
      }
    }
  }

  @Property(tries = 400)
  void aNumberIsTheSameInAFileInATableAtAKeyAndTypedAlone(@ForAll long seed)
      throws CaseFileException {
    Random random = new Random(seed);
    BigDecimal volts =
        BigDecimal.valueOf(random.nextDouble() * 150)
            .setScale(random.nextInt(5), RoundingMode.DOWN);
    String point = volts.toPlainString();
    boolean ambiguous = volts.scale() == 3 && !point.startsWith("0.");
    String typed = random.nextBoolean() && !ambiguous ? point.replace('.', ',') : point;
    String unit = one(List.of(" V", "V", "v", " volts", " VAC"), random);
    String shown = "seed " + seed + ": " + typed + unit;
    double expected = volts.doubleValue();

    assertEquals(expected, TypedFigure.of(typed, Measurand.VOLTAGE).middle(), shown);
    assertEquals(expected, TypedFigure.of(typed + unit, Measurand.VOLTAGE).middle(), shown);
    assertEquals(
        expected, read("idle", "b hot-neutral " + typed + unit + " high", "").value(), shown);
    String keyed = "{at: b, between: hot-neutral, meter: high, volts: '" + typed + unit + "'}";
    assertEquals(expected, read("idle", keyed, "").value(), shown);
  }

  @Property(tries = 400)
  void aLengthInFeetAndInchesIsReadHoweverItIsWritten(@ForAll long seed) throws CaseFileException {
    Random random = new Random(seed);
    int feet = 1 + random.nextInt(200);
    int inches = random.nextInt(INCHES_PER_FOOT);
    String foot = one(FEET, random);
    String between = foot.startsWith(" ") ? " " : one(List.of("", " ", "-"), random);
    String written =
        one(List.of("", "about ", "~"), random)
            + feet
            + foot
            + between
            + inches
            + one(INCHES, random);
    double metres = (feet + (double) inches / INCHES_PER_FOOT) * METRES_PER_FOOT;

    CaseFile file = CaseFiles.read("run:\n  - panel\n  - b: " + quoted("duplex " + written) + "\n");
    assertEquals(
        metres,
        file.circuit().cables().get(0).lengthMetres().orElseThrow(),
        metres * ARITHMETIC,
        "seed " + seed + ": " + written);
    TypedAnswer.Named named = TypedAnswer.named("living room " + written);
    assertEquals("living room", named.name(), written);
  }

  @Property(tries = 300)
  void nothingThatIsTypedEndsInAnException(@ForAll long seed) throws CaseFileException {
    Random random = new Random(seed);
    CaseFile file = CaseFiles.read(RUN.formatted("12 ft"));
    List<String> pieces = new ArrayList<>();
    for (int count = random.nextInt(6); count >= 0; count--) {
      pieces.add(one(PIECES, random));
    }
    String line = String.join(random.nextBoolean() ? " " : "", pieces);

    for (Measurand measurand : Measurand.values()) {
      TypedFigure figure = TypedFigure.of(line, measurand);
      assertTrue(figure.lowest() <= figure.highest(), "seed " + seed + ": " + line);
    }
    TypedAnswer.seen(line);
    TypedAnswer.yes(line);
    TypedAnswer.isUnknown(line);
    TypedAnswer.saysKind(TypedAnswer.named(line).words());
    BoxNames.of(file.circuit()).find(line);
    TypedTest typed = TypedTest.of(file, line);
    assertTrue(typed.test().isPresent() || !typed.wrong().isEmpty(), "seed " + seed + ": " + line);
    CaseFiles.problems(RUN.formatted(CaseFileWriter.text(line)) + "\n");
  }
}
