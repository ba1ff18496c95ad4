package ohmtrail.cli.casefile.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;

/** Reads conductors: one, a pair such as {@code leg-1-neutral}, or several. */
public final class Conductors {

  /** A leg with its number, which a hyphen or a space may part. */
  private static final Pattern LEG = Pattern.compile("(leg|line)[- ]?([12])(?![0-9])");

  private static final Pattern PARTING = Pattern.compile("[-/\u2013+]");

  private Conductors() {}

  /** Takes the next word, or the next two of {@code leg 1}, if they name a conductor. */
  public static Optional<ConductorRole> take(Words words) {
    Optional<Word> first = words.peek();
    Optional<Word> second = words.peek(1);
    if (first.isPresent() && second.isPresent()) {
      Optional<ConductorRole> leg = one(first.get().lower() + " " + second.get().lower());
      if (leg.isPresent()) {
        words.next();
        words.next();
        return leg;
      }
    }
    Optional<ConductorRole> role = first.flatMap(word -> one(word.text()));
    role.ifPresent(taken -> words.next());
    return role;
  }

  /** Takes two conductors, in one word or with {@code to} or {@code and} between them. */
  public static Optional<List<ConductorRole>> takePair(Words words) {
    Optional<List<ConductorRole>> glued =
        words.peek().map(word -> several(word.text())).filter(roles -> roles.size() == 2);
    if (glued.isPresent()) {
      words.next();
      return glued;
    }
    if (words.peek().flatMap(word -> legThenMore(word, words)).isPresent()) {
      // "leg 1-neutral": the number belongs to the leg, the rest to the pair.
      Word leg = words.next();
      return Optional.of(several(leg.text() + words.next().text()));
    }
    return Optional.empty();
  }

  private static Optional<List<ConductorRole>> legThenMore(Word first, Words words) {
    return words
        .peek(1)
        .map(second -> several(first.lower() + " " + second.lower()))
        .filter(roles -> roles.size() == 2);
  }

  /** Takes one word of two or more conductors: {@code leg-1/neutral/ground}. */
  public static Optional<List<ConductorRole>> takeSeveral(Words words) {
    Optional<List<ConductorRole>> roles =
        words.peek().map(word -> several(word.text())).filter(found -> found.size() > 1);
    roles.ifPresent(taken -> words.next());
    return roles;
  }

  /** Takes every conductor up to the first word that is none. */
  public static List<ConductorRole> takeAll(Words words) {
    List<ConductorRole> all = new ArrayList<>();
    while (words.hasNext()) {
      Optional<List<ConductorRole>> several = takeSeveral(words);
      if (several.isPresent()) {
        all.addAll(several.get());
      } else {
        Optional<ConductorRole> one = take(words);
        if (one.isEmpty()) {
          return all;
        }
        all.add(one.get());
      }
    }
    return all;
  }

  /** The conductors of one word, parted by hyphens or strokes; empty when a part is none. */
  private static List<ConductorRole> several(String text) {
    String glued = LEG.matcher(text.toLowerCase(Locale.ROOT)).replaceAll("l$2");
    List<ConductorRole> roles = new ArrayList<>();
    for (String part : PARTING.split(glued, -1)) {
      Optional<ConductorRole> role = ConductorRole.parse(part);
      if (role.isEmpty()) {
        return List.of();
      }
      roles.add(role.get());
    }
    return roles;
  }

  private static Optional<ConductorRole> one(String text) {
    List<ConductorRole> roles = several(text);
    return roles.size() == 1 ? Optional.of(roles.get(0)) : Optional.empty();
  }

  /** As a case file writes them: {@code leg-1/neutral/ground}. */
  public static String text(List<ConductorRole> roles) {
    return roles.stream().map(ConductorRole::word).collect(Collectors.joining("/"));
  }
}
