package ohmtrail.cli.casefile.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** A piece of a YAML document, with its place. */
public sealed interface Node {

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
    public Place at(int index) {
      return verbatim ? place.plus(text.codePointCount(0, index)) : place;
    }

    /** A part of the text, from an index up to another, without the spaces around it. */
    public Scalar part(int begin, int end) {
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

    /** The parts between the places where a character stands, without the spaces around them. */
    public List<Scalar> split(char separator) {
      List<Scalar> parts = new ArrayList<>();
      Place begin = place;
      for (String piece : text.split(Pattern.quote(String.valueOf(separator)), -1)) {
        int length = piece.length();
        Scalar whole = new Scalar(piece, begin, verbatim, length == 0);
        parts.add(whole.part(0, length));
        begin = whole.at(length).plus(verbatim ? 1 : 0);
      }
      return parts;
    }

    /** The text as one word. */
    public Word word() {
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
    /** Copies the list. */
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
    /** Copies the list. */
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
