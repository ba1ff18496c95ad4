package ohmtrail.cli.casefile.run;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Grounding;
import ohmtrail.circuit.Grounding.Conduit;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.cli.names.Names;
import ohmtrail.reference.BreakerFit;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;

/** Reads the size and the metal of a cable's conductors, and the conduit that is its ground. */
final class ConductorWords {

  private static final String AWG = "awg";
  private static final Set<String> SIZE_UNITS =
      Stream.concat(Stream.of(AWG), ConductorSize.SQUARE_MILLIMETRES.stream())
          .collect(Collectors.toUnmodifiableSet());
  private static final Names GAUGES = sizes("AWG");
  private static final Names METRIC_SIZES = sizes("mm2");

  /** Line and ground of different sizes; 1/0 and the like are gauges. */
  private static final Pattern TWO_SIZES =
      Pattern.compile(
          "^[0-9]+([.,][0-9]+)?/[0-9]*[1-9][0-9.,]*(?!.*awg)", Pattern.CASE_INSENSITIVE);

  /** Gauge and number of wires, as it is printed on a cable: 14/2, 12-3. */
  private static final Pattern WIRES = Pattern.compile("([0-9]{1,2})[-/]([2-5])(wg|w/g)?");

  private static final Set<String> WITH_GROUND = Set.of("wg", "w/g");

  private static final Pattern NUMBER = Pattern.compile("[0-9]+([.][0-9]+)?");
  private static final String EXAMPLES = "14 AWG copper was meant, or 2.5 mm2 copper.";

  private final OptionalDouble breakerAmperes;
  private final Problems problems;

  /** What words have said of a conductor so far. */
  static final class Draft {
    final Once<ConductorSize> size;
    final Once<ConductorMaterial> material;

    /** Of the ground, where it is another: 2.5/1.5 mm2. */
    final Once<ConductorSize> groundSize;

    /** What is its ground, where that is no wire. */
    final Once<Conduit> conduit;

    /** Whether a size stood there that is none; then nothing may be made up in its place. */
    private boolean wrong;

    Draft(Problems problems) {
      size = new Once<>("Cable size", problems);
      material = new Once<>("Metal of the cable", problems);
      groundSize = new Once<>("Size of the ground", problems);
      conduit = new Once<>("Conduit", problems);
    }

    boolean isGiven() {
      return saysWire() || conduit.isGiven();
    }

    /** Whether it says anything of the wires. */
    boolean saysWire() {
      return wrong || size.isGiven() || material.isGiven();
    }
  }

  /**
   * @param breakerAmperes the breaker's rating, where it is given: sizes are held against it
   */
  ConductorWords(OptionalDouble breakerAmperes, Problems problems) {
    this.breakerAmperes = breakerAmperes;
    this.problems = problems;
  }

  /**
   * What the whole of a scalar says of a cable.
   *
   * @param conductor its conductors
   * @param ground its ground, where that is another
   */
  record Wire(Conductor conductor, Optional<Grounding> ground) {}

  /** The whole of a scalar as a cable; empty when it is none, and noted. */
  Optional<Wire> only(Scalar scalar) {
    Draft draft = new Draft(problems);
    read(scalar, draft);
    return conductor(draft, Optional.empty(), scalar.place())
        .map(conductor -> new Wire(conductor, ground(draft, conductor)));
  }

  /** Reads the whole of a scalar; notes every word that is no part of a conductor. */
  void read(Scalar scalar, Draft draft) {
    Words words = new Words(scalar);
    while (words.hasNext()) {
      if (!take(words, draft)) {
        Word strange = words.next();
        problems.error(
            strange.place(),
            "A cable takes a size and a metal; (" + strange.text() + ") is neither.",
            EXAMPLES);
        draft.wrong = true;
      }
    }
  }

  /** Takes the next words if they say the size, the metal or the conduit. */
  boolean take(Words words, Draft draft) {
    Place place = words.peek().map(Word::place).orElse(words.place());
    Optional<ConductorMaterial> material = words.takeMeaning(Vocabulary.MATERIALS);
    if (material.isPresent()) {
      draft.material.give(material.get(), place);
      return true;
    }
    Optional<Conduit> conduit = words.takeMeaning(Vocabulary.CONDUITS);
    if (conduit.isPresent()) {
      draft.conduit.give(conduit.get(), place);
      return true;
    }
    Optional<Word> size = takeSize(words);
    size.ifPresent(word -> give(word, draft));
    return size.isPresent();
  }

  private void give(Word written, Draft draft) {
    Word size = new Word(Quantities.withPoints(written.text()), written.place());
    if (TWO_SIZES.matcher(size.text()).find()) {
      int stroke = size.text().indexOf('/');
      String unit =
          size.text()
              .substring(Quantities.endOfNumber(size.text().substring(stroke + 1)) + stroke + 1);
      give(new Word(size.text().substring(0, stroke) + unit, size.place()), draft);
      Word ground = new Word(size.text().substring(stroke + 1), size.place());
      ConductorSize.parse(ground.text())
          .ifPresentOrElse(
              listed -> draft.groundSize.give(listed, ground.place()),
              () -> {
                draft.wrong = true;
                unlisted(ground);
              });
      return;
    }
    Optional<ConductorSize> listed = ConductorSize.parse(size.text());
    if (listed.isPresent()) {
      draft.size.give(listed.get(), size.place());
      return;
    }
    Optional<ConductorSize> meant = ofOtherKind(size).filter(this::suitsBreaker);
    if (meant.isPresent()) {
      warnOfOtherKind(size, meant.get());
      draft.size.give(meant.get(), size.place());
    } else {
      draft.wrong = true;
      unlisted(size);
    }
  }

  /** The size of the same number with the other unit: 14 AWG for (14 mm2). */
  private static Optional<ConductorSize> ofOtherKind(Word size) {
    return ConductorSize.parse(number(size) + (isMetric(size) ? " AWG" : " mm2"));
  }

  private static boolean isMetric(Word size) {
    return size.lower().indexOf('m') >= 0;
  }

  private static String number(Word size) {
    return NUMBER.matcher(size.text()).results().map(MatchResult::group).findFirst().orElse("");
  }

  private boolean suitsBreaker(ConductorSize size) {
    return breakerAmperes.isPresent()
        && new Conductor(size, ConductorMaterial.COPPER).fitOn(breakerAmperes.getAsDouble())
            == BreakerFit.USUAL;
  }

  private void warnOfOtherKind(Word size, ConductorSize meant) {
    problems.warn(
        size.place(),
        "Cable size ("
            + size.text()
            + ") is no listed size; it is read as ("
            + meant.designation()
            + "), which is usual on a breaker of ("
            + Numbers.plain(breakerAmperes.orElseThrow())
            + " A).",
        "write what is printed on the cable.");
  }

  /** Offers the same number of the other kind, else the nearest number of the same kind. */
  private void unlisted(Word size) {
    String number = number(size);
    Names listed = isMetric(size) ? METRIC_SIZES : GAUGES;
    String rule = "Cable size (" + size.text() + ") " + listed.rule() + ".";
    ofOtherKind(size)
        .map(ConductorSize::designation)
        .or(() -> nearest(number, listed))
        .ifPresentOrElse(
            meant -> problems.error(size.place(), rule, meant + " was meant."),
            () -> problems.error(size.place(), rule));
  }

  private static Optional<String> nearest(String number, Names sizes) {
    return number.isEmpty()
        ? Optional.empty()
        : sizes.all().stream()
            .filter(size -> size.indexOf('/') < 0)
            .min(
                Comparator.comparingDouble(
                    size -> Math.abs(numberOf(size) - Double.parseDouble(number))));
  }

  private static double numberOf(String designation) {
    return Double.parseDouble(designation.substring(0, designation.indexOf(' ')));
  }

  private static Names sizes(String ending) {
    return new Names(
        ConductorSize.designations().stream().filter(name -> name.endsWith(ending)).toList());
  }

  /** Takes all words of a size, as one; empty when the next words are none. */
  private static Optional<Word> takeSize(Words words) {
    Word first = words.peek().orElseThrow();
    Optional<Word> gauge = gaugeOfWires(words);
    if (gauge.isPresent()) {
      return gauge;
    }
    String text = first.lower();
    boolean gaugeFirst = text.equals(AWG) && words.peek(1).filter(Quantities::isNumber).isPresent();
    boolean unitBehind =
        words.peek(1).filter(unit -> SIZE_UNITS.contains(unit.lower())).isPresent();
    boolean bare = Quantities.isNumber(first) && Quantities.endOfNumber(text) == text.length();
    boolean two = TWO_SIZES.matcher(text).matches();
    boolean number = text.startsWith("#") || (Quantities.isNumber(first) && text.endsWith("/0"));
    if (gaugeFirst || ((bare || number || two) && unitBehind)) {
      words.next();
      return Optional.of(new Word(first.text() + " " + words.next().text(), first.place()));
    }
    boolean glued =
        (text.startsWith(AWG) && text.length() > AWG.length() && endsInDigit(text))
            || (Quantities.isNumber(first) && SIZE_UNITS.stream().anyMatch(text::endsWith));
    return number || glued ? Optional.of(words.next()) : Optional.empty();
  }

  /** Takes 14/2 as the gauge that it says; the number of wires is for the conductors to say. */
  private static Optional<Word> gaugeOfWires(Words words) {
    Word first = words.peek().orElseThrow();
    Matcher wires = WIRES.matcher(first.lower());
    Optional<String> gauge = wires.matches() ? Optional.of(wires.group(1)) : Optional.empty();
    boolean metric =
        words
            .peek(1)
            .filter(unit -> isMetric(unit) && SIZE_UNITS.contains(unit.lower()))
            .isPresent();
    Optional<Word> size =
        gauge
            .map(number -> new Word(number + " AWG", first.place()))
            .filter(word -> !metric && ConductorSize.parse(word.text()).isPresent());
    if (size.isPresent()) {
      words.next();
      words.takeIf(AWG);
      words.peek().filter(word -> WITH_GROUND.contains(word.lower())).ifPresent(w -> words.next());
    }
    return size;
  }

  private static boolean endsInDigit(String text) {
    char last = text.charAt(text.length() - 1);
    return last >= '0' && last <= '9';
  }

  /** The conductor of a draft, with the usual one's size or metal where it names only the other. */
  Optional<Conductor> conductor(Draft draft, Optional<Conductor> usual, Place place) {
    Optional<ConductorSize> size = draft.size.value().or(() -> usual.map(Conductor::size));
    if (draft.wrong) {
      return Optional.empty();
    }
    if (size.isEmpty()) {
      problems.error(draft.material.place(place), "Cable size is missing.", EXAMPLES);
      return Optional.empty();
    }
    ConductorMaterial usualMaterial =
        usual.map(Conductor::material).orElse(ConductorMaterial.COPPER);
    try {
      return Optional.of(new Conductor(size.get(), draft.material.or(usualMaterial)));
    } catch (IllegalArgumentException unlisted) {
      problems.error(draft.size.place(draft.material.place(place)), unlisted);
      return Optional.empty();
    }
  }

  /** What carries the ground, where the draft says another size or a conduit. */
  Optional<Grounding> ground(Draft draft, Conductor rest) {
    if (draft.groundSize.isGiven() && draft.conduit.isGiven()) {
      problems.error(
          draft.conduit.place(draft.groundSize.place(Place.startOf(""))),
          "Ground of a cable must be a wire or the conduit, not both.",
          "the wire carries nearly all: then leave out the conduit.");
    }
    return draft
        .groundSize
        .value()
        .<Grounding>map(size -> new Grounding.Wire(new Conductor(size, rest.material())))
        .or(draft.conduit::value);
  }

  /** Warns of a conductor that is absurd for its breaker, where that is given. */
  void warnOfMisfit(Conductor conductor, Place place) {
    if (breakerAmperes.isPresent()) {
      warnOfMisfit(conductor, breakerAmperes.getAsDouble(), place);
    }
  }

  private void warnOfMisfit(Conductor conductor, double amperes, Place place) {
    BreakerFit fit = conductor.fitOn(amperes);
    String cable = "Cable (" + conductor.size().designation() + ") is far too ";
    String breaker = " for a breaker of (" + Numbers.plain(amperes) + " A).";
    if (fit == BreakerFit.TOO_BIG) {
      problems.warn(
          place, cable + "big" + breaker, "AWG was written as mm2 or the other way round.");
    } else if (fit == BreakerFit.TOO_SMALL) {
      problems.warn(
          place,
          cable + "small" + breaker,
          "it was mistyped; if not, it can overheat: have a licensed electrician see it.");
    }
  }
}
