package ohmtrail.cli.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import ohmtrail.cli.chart.CalibrationChart.Bin;
import ohmtrail.problem.Problem;
import ohmtrail.survey.LoadInUse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

class ChartFileTest {
  /** No drawing takes a second; this only stops one that never ends. */
  private static final Duration HANG = Duration.ofSeconds(60);

  /** A sheet with next to nothing on it has fewer shades than this. */
  private static final int LEAST_COLOURS = 8;

  private static final List<Arguments> CHARTS = allCharts();

  static List<Arguments> charts() {
    return CHARTS;
  }

  private static List<Arguments> allCharts() {
    return List.of(
        Arguments.of("one box", oneBox()),
        Arguments.of("forty boxes", fortyBoxes()),
        Arguments.of("a branching run", branching()),
        Arguments.of("an open hot", open()),
        Arguments.of("everything at zero", allZero()),
        Arguments.of("nothing read", InventedRun.northAmerican().chain(4, 5).plain("Nothing yet")),
        Arguments.of("names of many letters", longNames()),
        Arguments.of("names out of markup", oddNames()),
        Arguments.of("calibration", calibration()),
        Arguments.of("calibration of nothing", new CalibrationChart("None", List.of())));
  }

  private static ProfileChart oneBox() {
    return InventedRun.northAmerican()
        .receptacle("shed", "panel", 20)
        .carry(InventedRun.HEATER, List.of("shed"))
        .diagnosed("The shed");
  }

  private static ProfileChart fortyBoxes() {
    InventedRun run =
        InventedRun.northAmerican().chain(40, 1.5).degraded("hall-20/hot/outgoing", 1);
    return run.carry(InventedRun.HEATER, run.receptacles()).predicted("Forty boxes");
  }

  private static ProfileChart branching() {
    InventedRun run =
        InventedRun.northAmerican()
            .receptacle("kitchen", "panel", 8)
            .junction("attic", "kitchen", 4)
            .receptacle("bath", "attic", 9)
            .receptacle("porch", "attic", 3)
            .receptacle("garage", "porch", 7)
            .degraded("porch/hot/outgoing", 0.8);
    return run.carry(InventedRun.HEATER, run.receptacles()).diagnosed("A tee in the attic");
  }

  private static ProfileChart open() {
    InventedRun run =
        InventedRun.northAmerican()
            .chain(5, 6)
            .degraded("hall-3/hot/outgoing", Double.POSITIVE_INFINITY);
    return run.idle(InventedRun.DMM, run.receptacles()).diagnosed("Half of the hall is dead");
  }

  private static ProfileChart allZero() {
    InventedRun run = InventedRun.northAmerican().chain(3, 5);
    run.idle(InventedRun.DMM, run.receptacles());
    return ProfileChart.of(
        "All dead", new Problem(run.circuit(), run.blankSurvey(), run.assumptions()), List.of());
  }

  private static ProfileChart longNames() {
    InventedRun run =
        InventedRun.international()
            .receptacle("behind the wardrobe in the smaller of the two guest rooms", "panel", 3)
            .receptacle(
                "under the stairs, left, next to the water meter",
                "behind the wardrobe in the smaller of the two guest rooms",
                0.2)
            .receptacle(
                "Donaudampfschifffahrtsgesellschaftskapitaenskajuete",
                "under the stairs, left, next to the water meter",
                40);
    return run.carry(InventedRun.HEATER, run.receptacles())
        .plain("The whole story of this circuit, ".repeat(20));
  }

  private static ProfileChart oddNames() {
    InventedRun run =
        InventedRun.northAmerican()
            .receptacle("a & b <i>\"'", "panel", 3)
            .receptacle("bell\u0007 \uD83D\uDD0C 台所", "a & b <i>\"'", 5);
    return run.carry(InventedRun.HEATER, run.receptacles()).plain("</title><script>&amp;");
  }

  private static CalibrationChart calibration() {
    List<Bin> bins = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      bins.add(new Bin(i / 10.0, (i + 1) / 10.0, 7L * i, (i + 0.5) / 10, i / 10.0));
    }
    return new CalibrationChart("Stated against observed", bins);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("charts")
  void anSvgIsWellFormedWithItsTitleAndDescription(String what, Chart chart) {
    Document document = assertTimeoutPreemptively(HANG, () -> parse(ChartFile.svg(chart)));
    Element svg = document.getDocumentElement();
    assertEquals("svg", svg.getTagName());
    assertEquals("img", svg.getAttribute("role"));
    Element title = firstChild(svg, "title");
    Element description = firstChild(svg, "desc");
    assertEquals(readable(chart.title()), title.getTextContent());
    assertEquals(readable(chart.description()), description.getTextContent());
    assertEquals(
        title.getAttribute("id") + " " + description.getAttribute("id"),
        svg.getAttribute("aria-labelledby"));
    if (chart instanceof ProfileChart) {
      assertTrue(texts(document).size() > 10, "words in " + what);
    }
  }

  /** XML has no place for control characters. */
  private static String readable(String words) {
    return words.replace('\u0007', '\uFFFD');
  }

  private static Element firstChild(Element parent, String name) {
    return (Element) parent.getElementsByTagName(name).item(0);
  }

  private static Document parse(byte[] svg)
      throws ParserConfigurationException, IOException, SAXException {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));
  }

  private static List<String> texts(Document document) {
    NodeList elements = document.getElementsByTagName("text");
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < elements.getLength(); i++) {
      texts.add(elements.item(i).getTextContent());
    }
    return texts;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("charts")
  void nothingIsDrawnOffTheSheet(String what, Chart chart) throws Exception {
    Document document = parse(ChartFile.svg(chart));
    Element svg = document.getDocumentElement();
    double width = Double.parseDouble(svg.getAttribute("width"));
    double height = Double.parseDouble(svg.getAttribute("height"));
    for (String shape : List.of("polyline", "polygon")) {
      NodeList shapes = document.getElementsByTagName(shape);
      for (int i = 0; i < shapes.getLength(); i++) {
        String points = ((Element) shapes.item(i)).getAttribute("points");
        for (String point : points.split(" ", -1)) {
          String[] place = point.split(",", -1);
          assertWithin(width, place[0], what);
          assertWithin(height, place[1], what);
        }
      }
    }
    NodeList words = document.getElementsByTagName("text");
    for (int i = 0; i < words.getLength(); i++) {
      assertWithin(width, ((Element) words.item(i)).getAttribute("x"), what);
      assertWithin(height, ((Element) words.item(i)).getAttribute("y"), what);
    }
  }

  private static void assertWithin(double size, String place, String what) {
    double value = Double.parseDouble(place);
    assertTrue(value >= 0 && value <= size, place + " of " + size + " in " + what);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("charts")
  void aPngHasTwoPixelsPerPointAndSomethingOnIt(String what, Chart chart) throws Exception {
    byte[] png = assertTimeoutPreemptively(HANG, () -> ChartFile.png(chart));
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    Element svg = parse(ChartFile.svg(chart)).getDocumentElement();
    assertEquals(
        Math.ceil(2 * Double.parseDouble(svg.getAttribute("width"))), image.getWidth(), 1, what);
    assertEquals(
        Math.ceil(2 * Double.parseDouble(svg.getAttribute("height"))), image.getHeight(), 1, what);
    assertTrue(colours(image).size() >= LEAST_COLOURS, what);
    assertEquals(0xFFFFFFFF, image.getRGB(0, 0), "a white sheet");
  }

  private static Set<Integer> colours(BufferedImage image) {
    Set<Integer> colours = new HashSet<>();
    for (int y = 0; y < image.getHeight(); y += 3) {
      for (int x = 0; x < image.getWidth(); x += 3) {
        colours.add(image.getRGB(x, y));
      }
    }
    return colours;
  }

  @Test
  void everyBoxAndTestIsNamedInTheSvg() throws Exception {
    InventedRun run = InventedRun.northAmerican().chain(5, 6).degraded("hall-3/hot/outgoing", 1);
    run.carry(InventedRun.HEATER, run.receptacles())
        .read(
            "evening",
            List.of(new LoadInUse(InventedRun.LAMP, "hall-5")),
            InventedRun.DMM,
            List.of("hall-5"));
    List<String> texts = texts(parse(ChartFile.svg(run.predicted("Hall"))));
    for (String box : run.receptacles()) {
      assertTrue(texts.contains(box), box + " among " + texts);
    }
    assertTrue(texts.contains("sound") && texts.contains("predicted") && texts.contains("read"));
    assertTrue(texts.contains("heater (1500 W) at the box read (5 tests)"), texts.toString());
    assertTrue(texts.contains("lamp (60 W) at hall-5 (test \"evening\")"), texts.toString());
    assertTrue(texts.contains("distance from the panel along the cables, ft"), texts.toString());
    assertTrue(texts.contains("3 % below nominal"), texts.toString());
  }

  @Test
  void longNamesAreShortenedInThePictureAndStandInFullInTheDescription() throws Exception {
    ProfileChart chart = longNames();
    List<String> texts = texts(parse(ChartFile.svg(chart)));
    assertTrue(texts.contains("Donaudampfschifffah…"), texts.toString());
    assertTrue(chart.description().contains("Donaudampfschifffahrtsgesellschaftskapitaenskajuete"));
  }

  @Test
  void aReadingThatIsProbablyWrongIsRinged() throws Exception {
    String ringed = "ringed: this reading is probably wrong";
    InventedRun run = InventedRun.northAmerican().chain(6, 5).degraded("hall-4/hot/incoming", 1);
    run.carry(InventedRun.HEATER, run.receptacles());
    Document doubting = parse(ChartFile.svg(run.of("x", run.doubting(2))));
    Document trusting = parse(ChartFile.svg(run.diagnosed("x")));
    assertTrue(texts(doubting).contains(ringed), texts(doubting).toString());
    assertFalse(texts(trusting).contains(ringed), texts(trusting).toString());
    int oneInTheLegendAndOneInThePanel = 2;
    assertEquals(
        oneInTheLegendAndOneInThePanel,
        doubting.getElementsByTagName("circle").getLength()
            - trusting.getElementsByTagName("circle").getLength());
  }

  @Test
  void theSameChartGivesTheSameSvg() {
    assertArrayEquals(ChartFile.svg(branching()), ChartFile.svg(branching()));
    assertArrayEquals(ChartFile.svg(calibration()), ChartFile.svg(calibration()));
  }

  @Test
  void calibrationsOfDifferentFiguresAreDifferentPicturesWithDifferentIds() {
    CalibrationChart one = new CalibrationChart("x", List.of(new Bin(0.6, 0.8, 50, 0.7, 0.66)));
    CalibrationChart other = new CalibrationChart("x", List.of(new Bin(0.6, 0.8, 50, 0.7, 0.36)));
    assertFalse(Arrays.equals(ChartFile.png(one), ChartFile.png(other)));
    assertFalse(idOf(ChartFile.svgElement(one)).equals(idOf(ChartFile.svgElement(other))));
  }

  @Test
  void twoChartsInOnePageHaveDifferentIds() {
    String first = ChartFile.svgElement(oneBox());
    String second = ChartFile.svgElement(open());
    assertTrue(first.startsWith("<svg "), "no declaration inside a page");
    assertFalse(idOf(first).equals(idOf(second)));
  }

  private static String idOf(String svg) {
    int from = svg.indexOf(" id=\"") + 5;
    return svg.substring(from, svg.indexOf('"', from));
  }

  @Test
  void theEndingChoosesTheFormatInWhateverCase(@TempDir Path folder) throws IOException {
    Chart chart = oneBox();
    ChartFile.write(chart, folder.resolve("a.SVG"));
    ChartFile.write(chart, folder.resolve("b.Png"));
    assertArrayEquals(ChartFile.svg(chart), Files.readAllBytes(folder.resolve("a.SVG")));
    assertArrayEquals(ChartFile.png(chart), Files.readAllBytes(folder.resolve("b.Png")));
  }

  @Test
  void anotherEndingIsRefusedAndBothAreNamed(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("chart.pdf");
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> ChartFile.write(oneBox(), file));
    assertTrue(refused.getMessage().contains(".svg") && refused.getMessage().contains(".png"));
    assertTrue(isEmpty(folder));
  }

  @Test
  void aFileThatIsThereIsReplacedAndNothingIsLeftBesideIt(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("chart.svg");
    Files.writeString(file, "old");
    ChartFile.write(oneBox(), file);
    assertTrue(Files.readString(file, StandardCharsets.UTF_8).startsWith("<?xml"));
    try (Stream<Path> all = Files.list(folder)) {
      assertEquals(List.of(file), all.toList());
    }
  }

  @Test
  void aFailureLeavesNothingBehind(@TempDir Path folder) throws IOException {
    Path directory = Files.createDirectories(folder.resolve("taken.svg/full"));
    assertThrows(IOException.class, () -> ChartFile.write(oneBox(), directory.getParent()));
    try (Stream<Path> all = Files.list(folder)) {
      assertEquals(List.of(directory.getParent()), all.toList());
    }
  }

  private static boolean isEmpty(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.findAny().isEmpty();
    }
  }
}
