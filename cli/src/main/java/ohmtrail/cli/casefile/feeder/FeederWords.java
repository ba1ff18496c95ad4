package ohmtrail.cli.casefile.feeder;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.cli.names.Names;

/** Reads what an entry says of what feeds its box: all of it, a part, or that nobody knows. */
public final class FeederWords {

  private static final Set<String> ALONE =
      Set.of(
          Vocabulary.FROM,
          Vocabulary.FIRST,
          Vocabulary.LAST,
          Vocabulary.AFTER,
          Vocabulary.PLAN,
          Vocabulary.STRAIGHT);

  private static final List<Map<String, String>> SEVERAL =
      List.of(
          Vocabulary.NEXT_TO,
          Vocabulary.NOT_NEXT_TO,
          Vocabulary.ELSEWHERE,
          Vocabulary.WENT_DARK,
          Vocabulary.STAYED_LIVE);

  private final Problems problems;
  private final Quantities quantities;
  private final Names boxes;

  /**
   * A place on a plan.
   *
   * @param x metres to the right of anything
   * @param y metres up from it
   * @param place where it is said
   */
  public record Spot(double x, double y, Place place) {}

  /**
   * A straight distance.
   *
   * @param metres how far
   * @param to the box there
   */
  public record Straight(double metres, Word to) {}

  /** What is known of the circuit that a box is on. */
  public enum Circuit {
    THIS,
    ANOTHER,
    PERHAPS_ANOTHER
  }

  /** What words have said of a feeder so far. */
  public static final class Draft {

    /** The boxes that may feed it; none where nobody knows. */
    public final Once<List<Word>> from;

    public final Once<Boolean> first;
    public final Once<Boolean> last;
    public final List<Word> after = new ArrayList<>();
    public final List<Word> nextTo = new ArrayList<>();
    public final List<Word> notNextTo = new ArrayList<>();
    public final Once<Spot> plan;
    public final List<Straight> straight = new ArrayList<>();
    public final Once<Circuit> circuit;

    /**
     * @param problems takes what is said twice
     */
    public Draft(Problems problems) {
      from = new Once<>("Box upstream", problems);
      first = new Once<>("That the box is the first", problems);
      last = new Once<>("That the box is the last", problems);
      plan = new Once<>("Place on the plan", problems);
      circuit = new Once<>("Circuit of the box", problems);
    }

    /** The one box that is said to feed it. */
    public Optional<Word> only() {
      return from.value().filter(named -> named.size() == 1).map(named -> named.get(0));
    }

    /** Whether it says that not all is known of what feeds the box. */
    public boolean isOpen() {
      return from.isGiven()
          ? only().isEmpty()
          : !first.isGiven() && (!(after.isEmpty() && nextTo.isEmpty()) || mayBeForeign());
    }

    /** Whether the box may be on another circuit. */
    public boolean mayBeForeign() {
      return circuit.value().filter(on -> on != Circuit.THIS).isPresent();
    }

    /** Whether it says anything that only a box has, not a further cable to one. */
    public boolean saysBox() {
      return first.isGiven()
          || last.isGiven()
          || plan.isGiven()
          || circuit.isGiven()
          || !(after.isEmpty() && nextTo.isEmpty() && notNextTo.isEmpty() && straight.isEmpty());
    }
  }

  /**
   * @param boxes the names of all boxes of the case
   * @param problems takes what is wrong
   */
  public FeederWords(Names boxes, Problems problems) {
    this.boxes = boxes;
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  /** Whether the next words say something of a feeder; they are left where they are. */
  public static boolean beginsAt(Words words) {
    int here = words.position();
    boolean said =
        ALONE.contains(words.peek().orElseThrow().lower())
            || SEVERAL.stream().anyMatch(meanings -> takes(words, meanings));
    words.back(here);
    return said;
  }

  /** Takes the next words where they say something of a feeder. */
  public boolean take(Words words, Draft draft) {
    return takeFrom(words, draft) || takeOrder(words, draft);
  }

  /** Reads the whole of a text that says from where. */
  public void readFrom(Scalar text, Draft draft) {
    Optional<String> whole = boxes.find(text.text());
    if (whole.isPresent()) {
      draft.from.give(List.of(new Word(whole.get(), text.place())), text.place());
      return;
    }
    Words words = new Words(text);
    giveFrom(words, text.place(), draft);
    if (words.hasNext()) {
      problems.unknown(words.next(), "Box upstream", boxes);
    }
  }

  /** Reads the whole of a text that says where in the order. */
  public void readOrder(Scalar text, Draft draft) {
    Words words = new Words(text);
    while (words.hasNext()) {
      if (!takeOrder(words, draft)) {
        problems.unknown(words.next(), "Key (order): word", Vocabulary.orderWords());
      }
    }
  }

  private boolean takeFrom(Words words, Draft draft) {
    Word from = words.peek().orElseThrow();
    if (!words.takeIf(Vocabulary.FROM)) {
      return false;
    }
    giveFrom(words, from.place(), draft);
    return true;
  }

  /** One box, several with the word or between, or that nobody knows. */
  private void giveFrom(Words words, Place place, Draft draft) {
    boolean named = words.peek().filter(word -> boxes.find(word.text()).isPresent()).isPresent();
    if (!named && words.takeMeaning(Vocabulary.UNKNOWNS).isPresent()) {
      draft.from.give(List.of(), place);
      return;
    }
    List<Word> feeders = takeNames(words, Vocabulary.FROM, place, List.of(Vocabulary.OR));
    if (!feeders.isEmpty()) {
      draft.from.give(feeders, feeders.get(0).place());
    }
  }

  private boolean takeOrder(Words words, Draft draft) {
    Word word = words.peek().orElseThrow();
    Place place = word.place();
    List<String> several = List.of(Vocabulary.AND, Vocabulary.OR);
    if (words.takeIf(Vocabulary.FIRST)) {
      draft.first.give(true, place);
    } else if (words.takeIf(Vocabulary.LAST)) {
      draft.last.give(true, place);
    } else if (words.takeIf(Vocabulary.AFTER)) {
      draft.after.addAll(takeNames(words, Vocabulary.AFTER, place, several));
    } else if (takes(words, Vocabulary.NOT_NEXT_TO)) {
      draft.notNextTo.addAll(takeNames(words, "not next to", place, several));
    } else if (takes(words, Vocabulary.NEXT_TO)) {
      draft.nextTo.addAll(takeNames(words, "next to", place, several));
    } else if (words.takeIf(Vocabulary.PLAN)) {
      takeSpot(words, place).ifPresent(spot -> draft.plan.give(spot, place));
    } else if (words.takeIf(Vocabulary.STRAIGHT)) {
      takeStraight(words, place).ifPresent(draft.straight::add);
    } else if (takes(words, Vocabulary.ELSEWHERE)) {
      draft.circuit.give(Circuit.PERHAPS_ANOTHER, place);
    } else if (takes(words, Vocabulary.WENT_DARK)) {
      draft.circuit.give(Circuit.THIS, place);
    } else if (takes(words, Vocabulary.STAYED_LIVE)) {
      draft.circuit.give(Circuit.ANOTHER, place);
    } else {
      return false;
    }
    return true;
  }

  private static boolean takes(Words words, Map<String, String> meanings) {
    return words.takeMeaning(meanings).isPresent();
  }

  /** The names behind a word, as many as are joined. */
  private List<Word> takeNames(Words words, String behind, Place place, List<String> joining) {
    List<Word> names = new ArrayList<>();
    do {
      Optional<Word> name = words.takeName(boxes);
      if (name.isEmpty() && !words.hasNext()) {
        problems.error(place, "Word (" + behind + ") must be followed by the name of a box.");
        return List.of();
      }
      names.add(name.orElseGet(words::next));
    } while (joining.stream().anyMatch(words::takeIf));
    return names;
  }

  private Optional<Spot> takeSpot(Words words, Place place) {
    Optional<Quantity> across = takeLength(words);
    Optional<Quantity> up = across.flatMap(first -> takeLength(words));
    if (across.isEmpty() || up.isEmpty()) {
      problems.error(
          place,
          "Word (plan) must be followed by two lengths, across and up.",
          "(plan 3.2 m 4.5 m) was meant.");
      return Optional.empty();
    }
    OptionalDouble x = metres(across.get().or(up.get().unit()), Limit.PLAN);
    OptionalDouble y = metres(up.get().or(across.get().unit()), Limit.PLAN);
    return x.isPresent() && y.isPresent()
        ? Optional.of(new Spot(x.getAsDouble(), y.getAsDouble(), place))
        : Optional.empty();
  }

  private Optional<Straight> takeStraight(Words words, Place place) {
    Optional<Quantity> length = takeLength(words);
    if (length.isEmpty() || !words.takeIf(Vocabulary.TO)) {
      problems.error(
          place,
          "Word (straight) must be followed by a length and the box that far away.",
          "(straight 4 m to hall-1) was meant.");
      return Optional.empty();
    }
    List<Word> to = takeNames(words, Vocabulary.TO, place, List.of());
    OptionalDouble metres = metres(length.get(), Limit.LENGTH);
    return to.isEmpty() || metres.isEmpty()
        ? Optional.empty()
        : Optional.of(new Straight(metres.getAsDouble(), to.get(0)));
  }

  private Optional<Quantity> takeLength(Words words) {
    return words.peek().filter(Quantities::isNumber).isEmpty()
        ? Optional.empty()
        : quantities.take(words).map(length -> quantities.withInches(length, words));
  }

  private OptionalDouble metres(Quantity length, Limit limit) {
    return quantities.requireDimension(length, limit.what(), Dimension.LENGTH)
        ? quantities.within(length, limit)
        : OptionalDouble.empty();
  }
}
