package ohmtrail.cli.casefile.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Cable.Companion;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.cli.casefile.feeder.FeederWords;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Conductors;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Limit;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.cli.names.Names;

/** Reads what an entry of a run says: words in any order, or keys with values. */
final class RunEntryReader {

  private static final String WHAT = "Run entry";
  private static final List<String> PLUS_OR_MINUS = List.of("±", "+-", "+/-");

  private final Problems problems;
  private final Quantities quantities;
  private final ConductorWords conductors;
  private final FeederWords feeders;

  /**
   * @param boxes the names of all boxes of the run
   * @param breakerAmperes the breaker's rating, where it is given
   */
  RunEntryReader(Names boxes, OptionalDouble breakerAmperes, Problems problems) {
    this.problems = problems;
    this.feeders = new FeederWords(boxes, problems);
    this.quantities = new Quantities(problems);
    this.conductors = new ConductorWords(breakerAmperes, problems);
  }

  /** Reads a value into its entry. */
  void read(Node value, RunEntry entry) {
    if (value instanceof Scalar scalar) {
      Words words = new Words(scalar);
      while (words.hasNext()) {
        takeWord(words, entry);
      }
    } else if (value instanceof Mapping mapping) {
      readKeys(new Fields(mapping, Keys.RUN_ENTRY, problems), entry);
    } else {
      problems.error(value.place(), WHAT + " must hold words or keys with values, not a list.");
    }
  }

  private void takeWord(Words words, RunEntry entry) {
    Word word = words.peek().orElseThrow();
    boolean taken =
        feeders.take(words, entry.feeder)
            || takeCompanion(words, entry)
            || takeDevice(words, entry)
            || takeProtection(words, entry)
            || takeRoles(words, entry)
            || takeUnknownLength(words, entry)
            || takeAbout(words, entry)
            || takeMeaning(words, Vocabulary.KINDS, entry.kind)
            || takeMeaning(words, Vocabulary.WIRINGS, entry.wiring)
            || takeMeaning(words, Vocabulary.JOINTS, entry.joints)
            || conductors.take(words, entry.conductor)
            || takeTolerance(words, entry)
            || takeLength(words, entry);
    if (!taken) {
      words.next();
      problems.unknown(word, "Word", Vocabulary.runWords());
    }
  }

  private static <T> boolean takeMeaning(Words words, Map<String, T> meanings, Once<T> slot) {
    Place place = words.peek().map(Word::place).orElse(words.place());
    Optional<T> meaning = words.takeMeaning(meanings);
    meaning.ifPresent(value -> slot.give(value, place));
    return meaning.isPresent();
  }

  private boolean takeCompanion(Words words, RunEntry entry) {
    Word with = words.peek().orElseThrow();
    if (!words.takeIf(Vocabulary.WITH)) {
      return false;
    }
    Optional<Companion> companion = words.takeMeaning(Vocabulary.COMPANIONS);
    if (companion.isPresent() && words.takeIf(Vocabulary.COMPANION)) {
      entry.companion.give(companion.get(), with.place());
    } else {
      skipCompanion(words);
      problems.error(with.place(), "Word (with) must be followed by the words (live companion).");
    }
    return true;
  }

  private boolean takeDevice(Words words, RunEntry entry) {
    Word on = words.peek().orElseThrow();
    if (!words.takeIf(Vocabulary.ON)) {
      return false;
    }
    List<ConductorRole> named =
        Conductors.takeSeveral(words)
            .orElseGet(() -> Conductors.take(words).map(List::of).orElse(List.of()));
    if (named.isEmpty()) {
      problems.error(on.place(), "Word (on) must be followed by a conductor, such as (on leg-1).");
    } else if (areEachOnce(named, on)) {
      entry.device.give(ConductorLists.device(named), on.place());
    }
    return true;
  }

  private boolean takeProtection(Words words, RunEntry entry) {
    Place place = words.peek().map(Word::place).orElse(words.place());
    Optional<Rating> rating = new Protection(problems).take(words);
    rating.ifPresent(value -> entry.protection.give(value, place));
    return rating.isPresent();
  }

  private boolean takeRoles(Words words, RunEntry entry) {
    Word word = words.peek().orElseThrow();
    Optional<List<ConductorRole>> roles = Conductors.takeSeveral(words);
    roles
        .filter(named -> areEachOnce(named, word))
        .ifPresent(named -> entry.roles.give(named.stream().sorted().toList(), word.place()));
    return roles.isPresent();
  }

  private boolean areEachOnce(List<ConductorRole> named, Word word) {
    boolean once = ConductorLists.areEachOnce(named);
    if (!once) {
      problems.error(
          word.place(),
          "Conductors "
              + named.stream().map(ConductorRole::word).toList()
              + " must be named once each.",
          "another one was meant, as in (leg-1/leg-2/neutral/ground).");
    }
    return once;
  }

  private static void skipCompanion(Words words) {
    if (words.peek(1).filter(word -> word.lower().equals(Vocabulary.COMPANION)).isPresent()) {
      words.next();
    }
    words.takeIf(Vocabulary.COMPANION);
  }

  private static boolean takeUnknownLength(Words words, RunEntry entry) {
    Place place = words.peek().map(Word::place).orElse(words.place());
    if (words.takeMeaning(Vocabulary.UNKNOWNS).isEmpty()) {
      return false;
    }
    if (words.peek().flatMap(word -> Unit.parse(word.text())).isPresent()) {
      words.next();
    }
    words.takeIf("length");
    entry.length.give(OptionalDouble.empty(), place);
    return true;
  }

  /** Takes the word before a length that was estimated: about 13 ft, ~13 ft. */
  private static boolean takeAbout(Words words, RunEntry entry) {
    Word word = words.peek().orElseThrow();
    if (word.text().startsWith("~") && word.text().length() > 1) {
      words.part(1, 1);
    }
    boolean taken = words.takeMeaning(Vocabulary.ABOUT).isPresent();
    entry.estimated |= taken;
    return taken;
  }

  private boolean takeTolerance(Words words, RunEntry entry) {
    Word word = words.peek().orElseThrow();
    int sign =
        PLUS_OR_MINUS.stream().filter(word.text()::startsWith).mapToInt(String::length).sum();
    if (sign == 0) {
      return false;
    }
    words.next();
    if (word.text().length() > sign) {
      words.putBack(word.from(sign));
    }
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      problems.error(
          word.place(), "Length tolerance must be a share of the length, such as (±20 %).");
      return true;
    }
    quantities
        .take(words)
        .filter(
            quantity ->
                quantities.requireDimension(
                    quantity, Limit.LENGTH_TOLERANCE.what(), Dimension.SHARE))
        .ifPresent(
            quantity ->
                quantities
                    .within(quantity, Limit.LENGTH_TOLERANCE)
                    .ifPresent(share -> entry.tolerance.give(share, quantity.place())));
    return true;
  }

  private boolean takeLength(Words words, RunEntry entry) {
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      return false;
    }
    Optional<Quantity> taken = quantities.take(words);
    if (taken.isEmpty()) {
      return true;
    }
    if (taken.get().unit().isEmpty() && isStrange(words)) {
      quantities.strange(words.next(), Limit.LENGTH.what(), Dimension.LENGTH);
    } else if (taken.get().is(Dimension.TIME)) {
      giveMinutes(taken.get(), entry);
    } else if (quantities.requireDimension(taken.get(), Limit.LENGTH.what(), Dimension.LENGTH)) {
      Quantity length = quantities.withInches(taken.get(), words);
      quantities
          .within(length, Limit.LENGTH)
          .ifPresent(metres -> entry.length.give(OptionalDouble.of(metres), length.place()));
    }
    return true;
  }

  private void giveMinutes(Quantity quantity, RunEntry entry) {
    quantities
        .within(quantity, Limit.OPENING_MINUTES)
        .ifPresent(minutes -> entry.minutes.give(minutes, quantity.place()));
  }

  /** Whether the next word means nothing in a run, and so was meant to be a unit. */
  private boolean isStrange(Words words) {
    return words
        .peek()
        .filter(word -> Vocabulary.runWords().find(word.text()).isEmpty())
        .filter(word -> !Quantities.isNumber(word))
        .isPresent();
  }

  private void readKeys(Fields fields, RunEntry entry) {
    readMeaning(fields, "kind", Vocabulary.KINDS, entry.kind);
    readMeaning(fields, "wiring", Vocabulary.WIRINGS, entry.wiring);
    readMeaning(fields, "joints", Vocabulary.JOINTS, entry.joints);
    readMeaning(fields, "terminals", Vocabulary.JOINTS, entry.terminals);
    readMeaning(fields, "splices", Vocabulary.JOINTS, entry.splices);
    readMeaning(fields, "companion", Vocabulary.COMPANIONS, entry.companion);
    fields.scalar("from").ifPresent(from -> feeders.readFrom(from, entry.feeder));
    fields.scalar("order").ifPresent(order -> feeders.readOrder(order, entry.feeder));
    fields.scalar("length").ifPresent(length -> readLength(length, entry));
    fields.scalar("tolerance").ifPresent(tolerance -> readTolerance(tolerance, entry));
    fields
        .scalar("conductors")
        .ifPresent(
            text ->
                ConductorLists.only(text, "conductors", problems)
                    .ifPresent(roles -> entry.roles.give(roles, text.place())));
    fields
        .scalar("protection")
        .ifPresent(
            text ->
                new Protection(problems)
                    .only(text)
                    .ifPresent(rating -> entry.protection.give(rating, text.place())));
    fields
        .scalar("device")
        .ifPresent(
            text ->
                ConductorLists.only(text, "device", problems)
                    .map(ConductorLists::device)
                    .ifPresent(roles -> entry.device.give(roles, text.place())));
    fields.scalar("minutes").ifPresent(minutes -> readMinutes(minutes, entry));
    fields.scalar("cable").ifPresent(cable -> conductors.read(cable, entry.conductor));
  }

  private <T> void readMeaning(Fields fields, String key, Map<String, T> meanings, Once<T> slot) {
    fields
        .scalar(key)
        .ifPresent(
            scalar ->
                Vocabulary.only(scalar, key, meanings, problems)
                    .ifPresent(meaning -> slot.give(meaning, scalar.place())));
  }

  private void readLength(Scalar scalar, RunEntry entry) {
    Words words = new Words(scalar);
    if (takeUnknownLength(words, entry)) {
      return;
    }
    if (words.hasNext()) {
      takeAbout(words, entry);
    }
    if (!takeLength(words, entry)) {
      quantities.only(scalar, Limit.LENGTH);
    }
    if (words.hasNext()) {
      quantities.strange(words.next(), Limit.LENGTH.what(), Dimension.LENGTH);
    }
  }

  private void readMinutes(Scalar scalar, RunEntry entry) {
    quantities
        .onlyIn(Unit.MINUTE, scalar, Limit.OPENING_MINUTES)
        .ifPresent(minutes -> entry.minutes.give(minutes, scalar.place()));
  }

  private void readTolerance(Scalar scalar, RunEntry entry) {
    Words words = new Words(scalar);
    if (takeTolerance(words, entry)) {
      return;
    }
    quantities
        .only(scalar, Limit.LENGTH_TOLERANCE)
        .ifPresent(share -> entry.tolerance.give(share, scalar.place()));
  }
}
