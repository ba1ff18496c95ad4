package ohmtrail.cli.casefile.text;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.names.Names;

/** The values of a mapping by their keys. A key without a value is taken as not given. */
public final class Fields {

  private final Map<String, Entry> entries = new LinkedHashMap<>();
  private final Problems problems;

  /** Notes every key that is not known. */
  public Fields(Mapping mapping, Names known, Problems problems) {
    this.problems = problems;
    for (Entry entry : mapping.entries()) {
      if (known.all().contains(entry.key().text())) {
        entries.put(entry.key().text(), entry);
      } else {
        problems.unknown(entry.key().word(), "Key", known);
      }
    }
  }

  /** Where the key stands, or the fallback where it does not. */
  public Place place(String key, Place fallback) {
    Entry entry = entries.get(key);
    return entry == null ? fallback : entry.key().place();
  }

  /** The value of a key. */
  public Optional<Node> node(String key) {
    return Optional.ofNullable(entries.get(key))
        .map(Entry::value)
        .filter(value -> !(value instanceof Scalar scalar && scalar.blank()));
  }

  /** The value of a key that takes a text; noted when it is none. */
  public Optional<Scalar> scalar(String key) {
    return node(key).flatMap(node -> as(Scalar.class, node, "Key (" + key + ")", "a text"));
  }

  /** The value of a key that takes a list; noted when it is none. */
  public Optional<Items> items(String key) {
    return node(key).flatMap(node -> as(Items.class, node, "Key (" + key + ")", "a list"));
  }

  /** The value of a key that takes keys of its own; noted when it is none. */
  public Optional<Mapping> mapping(String key) {
    return node(key)
        .flatMap(node -> as(Mapping.class, node, "Key (" + key + ")", "names with values"));
  }

  /** A node as what it should be; noted when it is something else. */
  public <T extends Node> Optional<T> as(Class<T> type, Node node, String what, String wanted) {
    if (type.isInstance(node)) {
      return Optional.of(type.cast(node));
    }
    problems.error(node.place(), what + " must hold " + wanted + ", not " + node.what() + ".");
    return Optional.empty();
  }
}
