package ohmtrail.cli.casefile.words;

import java.util.List;
import ohmtrail.cli.names.Names;
import ohmtrail.reference.Assumption;

/** Every key of a case file. The schema that editors complete from lists the same. */
public final class Keys {

  /** Of the case itself. */
  public static final Names CASE =
      new Names(
          List.of(
              "title",
              "outlet",
              "supply",
              "breaker",
              "cable",
              "conductors",
              "protection",
              "surroundings",
              "joints",
              "run",
              "boxes",
              "hidden",
              "complaint",
              "meters",
              "loads",
              "tests",
              "readings",
              "found",
              "assume",
              "record",
              "times"));

  /** Of a run entry written key by key. */
  public static final Names RUN_ENTRY =
      new Names(
          List.of(
              "kind",
              "length",
              "tolerance",
              "from",
              "order",
              "wiring",
              "joints",
              "terminals",
              "splices",
              "cable",
              "conductors",
              "device",
              "protection",
              "companion",
              "minutes"));

  /** Of a meter written key by key. */
  public static final Names METER =
      new Names(
          List.of(
              "resistance",
              "capacitance",
              "accuracy",
              "resolution",
              "kind",
              "range",
              "test-current"));

  /** Of a load written key by key. */
  public static final Names LOAD =
      new Names(
          List.of(
              "power",
              "current",
              "voltage",
              "kind",
              "cut-out",
              "stall",
              "power-factor",
              "hard-wired",
              "between"));

  /** Of a test written key by key. */
  public static final Names TEST = new Names(List.of("name", "loads", "readings"));

  /** Of a load in use, or of a switch, written key by key. */
  public static final Names USE = new Names(List.of("load", "at", "between", "open", "off"));

  /** Of a reading written key by key. */
  public static final Names READING =
      new Names(List.of("at", "between", "volts", "amperes", "ohms", "meter"));

  /** Of who measured, when and with what. */
  public static final Names RECORD =
      new Names(
          List.of(
              "person",
              "date",
              "place",
              "claim",
              "job",
              "weather",
              "temperature",
              "hours-of-use",
              "meters",
              "notes",
              "photographs"));

  /** Of what a meter is, under {@code record}. */
  public static final Names METER_RECORD =
      new Names(List.of("description", "serial", "calibrated"));

  /** Of a photograph written key by key. */
  public static final Names PHOTOGRAPH = new Names(List.of("file", "taken", "shows"));

  /** Of the assumptions. */
  public static final Names ASSUME = new Names(Assumption.keys());

  private Keys() {}
}
