package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Symptom;

/** Reads what is complained of: {@code lights dim at tv with heater at bookcase}. */
public final class ComplaintReader {

  /** The words for what is noticed, as people say them. */
  private static final Map<String, Symptom> SYMPTOMS = symptoms();

  /** Words that say nothing by themselves. */
  private static final Set<String> PASSED_OVER =
      Set.of(
          "the",
          "a",
          "it",
          "is",
          "are",
          "gets",
          "get",
          "light",
          "lights",
          "lamp",
          "lamps",
          "outlet",
          "outlets",
          "receptacle",
          "receptacles",
          "socket",
          "sockets",
          "everything",
          "all",
          "works",
          "but",
          "breaker",
          "gfci",
          "rcd",
          "when",
          "on",
          "burnt",
          "of",
          "there");

  private final Names symptoms = new Names(SYMPTOMS.keySet());
  private final Names boxes;
  private final Names loads;
  private final Problems problems;

  /**
   * @param boxes the boxes of the run
   * @param loads the loads of the case
   * @param problems takes what is wrong
   */
  public ComplaintReader(Names boxes, Names loads, Problems problems) {
    this.boxes = boxes;
    this.loads = loads;
    this.problems = problems;
  }

  private static Map<String, Symptom> symptoms() {
    Map<String, Symptom> words = new LinkedHashMap<>();
    for (Symptom symptom : Symptom.values()) {
      words.put(symptom.word(), symptom);
    }
    words.put("dim", Symptom.DIMS);
    words.put("dimming", Symptom.DIMS);
    words.put("weak", Symptom.DIMS);
    words.put("flicker", Symptom.FLICKERS);
    words.put("flickering", Symptom.FLICKERS);
    words.put("bright", Symptom.BRIGHTER);
    words.put("hot", Symptom.WARM);
    words.put("trip", Symptom.TRIPS);
    words.put("tripping", Symptom.TRIPS);
    words.put("smell", Symptom.SMELLS);
    words.put("crackles", Symptom.SMELLS);
    words.put("buzzes", Symptom.SMELLS);
    return words;
  }

  /** Reads one text or a list of them; what is wrong is noted and left out. */
  public List<Complaint> read(Node node) {
    List<Complaint> complaints = new ArrayList<>();
    List<Node> said = node instanceof Items items ? items.nodes() : List.of(node);
    for (Node each : said) {
      if (each instanceof Scalar scalar && !scalar.blank()) {
        read(scalar).ifPresent(complaints::add);
      } else {
        problems.error(
            each.place(),
            "Complaint must be a text, not " + each.what() + ".",
            "write dims at hall with heater at tv.");
      }
    }
    return complaints.stream().distinct().toList();
  }

  private Optional<Complaint> read(Scalar scalar) {
    Words words = new Words(scalar);
    int before = problems.count();
    Optional<Symptom> symptom = symptom(words, scalar);
    if (symptom.isEmpty()) {
      return Optional.empty();
    }
    passOver(words);
    Optional<String> box = words.takeIf("at") ? name(words, "Box", boxes) : Optional.empty();
    passOver(words);
    Optional<String> load = words.takeIf("with") ? name(words, "Load", loads) : Optional.empty();
    Optional<String> loadBox =
        load.isPresent() && words.takeIf("at") ? name(words, "Box", boxes) : Optional.empty();
    passOver(words);
    if (words.hasNext() && problems.count() == before) {
      Word odd = words.next();
      problems.error(
          odd.place(),
          "Complaint goes on with (" + odd.text() + "), which is not understood.",
          "write dims at BOX with LOAD at BOX.");
    }
    return problems.count() == before
        ? Optional.of(new Complaint(symptom.get(), box, load, loadBox))
        : Optional.empty();
  }

  private Optional<Symptom> symptom(Words words, Scalar scalar) {
    passOver(words);
    Optional<Word> word = words.peek();
    Optional<Symptom> symptom = word.flatMap(each -> symptoms.find(each.text())).map(SYMPTOMS::get);
    if (symptom.isEmpty()) {
      problems.unknown(word.orElse(scalar.word()), "Complaint: word", symptoms);
    } else {
      words.next();
    }
    return symptom;
  }

  private static void passOver(Words words) {
    while (words.peek().filter(word -> PASSED_OVER.contains(word.lower())).isPresent()) {
      words.next();
    }
  }

  private Optional<String> name(Words words, String what, Names names) {
    Optional<Word> called = words.takeName(names);
    boolean behindArticle = called.isEmpty() && (words.takeIf("the") || words.takeIf("a"));
    Optional<Word> name = behindArticle ? words.takeName(names) : called;
    if (name.isEmpty()) {
      problems.unknown(words.peek().orElseGet(() -> new Word("", words.place())), what, names);
    }
    return name.map(Word::text);
  }
}
