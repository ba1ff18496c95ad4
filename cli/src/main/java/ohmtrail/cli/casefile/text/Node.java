package ohmtrail.cli.casefile;

import java.util.List;

/** A piece of a YAML document, with its place. */
sealed interface Node {

  /** Where it begins. */
  Place place();

  /** How a message calls it. */
  String what();

  /**
   * A text: of YAML, or a cell of a table.
   *
   * @param text what it says; numbers and words such as {@code no} are texts too
   * @param place where the first character of the text stands
   * @param verbatim whether the text stands in the file character by character, so that a place in
   *     it can be told
   * @param blank whether nothing is said: no text, or YAML's null
   */
  record Scalar(String text, Place place, boolean verbatim, boolean blank) implements Node {

    /** Where the character at an index of the text stands, as near as can be told. */
    Place at(int index) {
      return verbatim ? place.plus(text.codePointCount(0, index)) : place;
    }

    /** A part of the text, from an index up to another, without the spaces around it. */
    Scalar part(int begin, int end) {
      int first = begin;
      int last = end;
      while (first < last && Character.isWhitespace(text.charAt(first))) {
        first++;
      }
      while (last > first && Character.isWhitespace(text.charAt(last - 1))) {
        last--;
      }
      return new Scalar(text.substring(first, last), at(first), verbatim, first == last);
    }

    /** The text as one word. */
    Word word() {
      return new Word(text, place);
    }

    @Override
    public String what() {
      return blank ? "nothing" : "a text";
    }
  }

  /**
   * A list.
   *
   * @param nodes what is listed
   * @param place where it begins
   */
  record Items(List<Node> nodes, Place place) implements Node {
    public Items {
      nodes = List.copyOf(nodes);
    }

    @Override
    public String what() {
      return "a list";
    }
  }

  /**
   * Keys with their values, no key twice.
   *
   * @param entries in the order of the file
   * @param place where it begins
   */
  record Mapping(List<Entry> entries, Place place) implements Node {
    public Mapping {
      entries = List.copyOf(entries);
    }

    @Override
    public String what() {
      return "keys with values";
    }
  }

  /**
   * A key and its value.
   *
   * @param key the key
   * @param value the value; a blank scalar where none is given
   */
  record Entry(Scalar key, Node value) {}
}
