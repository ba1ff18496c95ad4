package ohmtrail.cli.chart;

/** What a picture shows, as data. */
public sealed interface Chart permits ProfileChart, MapChart, CalibrationChart {
  /** What it is, in a line. */
  String title();

  /** The same content in words and figures, for those who do not see the picture. */
  String description();
}
