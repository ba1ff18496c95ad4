package ohmtrail.cli.render.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import ohmtrail.cli.Golden;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Answers;
import ohmtrail.locate.Diagnosis;
import ohmtrail.predict.Degradation;
import ohmtrail.report.Prediction;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The documents against files that were read and found right, and against the schema. */
class JsonTest {
  private static final ObjectMapper JACKSON = new ObjectMapper();

  private static final Map<String, Function<CaseFile, Diagnosis>> ANSWERS =
      Map.ofEntries(
          Map.entry("one-joint", Answers::oneJoint),
          Map.entry("two-ends", Answers::twoEnds),
          Map.entry("lost-neutral", Answers::lostNeutral),
          Map.entry("lost-ground", Answers::lostGround),
          Map.entry("unsettled", Answers::unsettled),
          Map.entry("two-bad-joints", Answers::twoBadJoints),
          Map.entry("perhaps-two", Answers::perhapsTwo),
          Map.entry("unstable", Answers::unstable),
          Map.entry("strained", Answers::strained),
          Map.entry("one-wrong-reading", Answers::oneWrongReading),
          Map.entry("healthy", Answers::healthy),
          Map.entry("unexplained", Answers::unexplained));

  @Test
  void aDegradedJointIsTold() {
    Golden.assertMatches(
        "render/two-ends.json",
        LocateJson.of(Answers.HALL, Answers.report(Answers.HALL, Answers.twoEnds(Answers.HALL))));
  }

  @Test
  void aPredictionIsTold() {
    List<Degradation> degradations =
        List.of(
            new Degradation("bed-1/neutral/incoming", 2.4),
            new Degradation("bath/hot/contact", Double.POSITIVE_INFINITY));

    Golden.assertMatches(
        "render/predict.json",
        PredictJson.of(Answers.HALL, Prediction.of(Answers.HALL.problem(), degradations)));
  }

  @Test
  void aCaseIsTold() {
    Golden.assertMatches("render/check.json", CheckJson.of(Answers.HALL));
  }

  @TestFactory
  Stream<DynamicTest> everyAnswerKeepsToTheSchema() {
    DocumentSchema schema = DocumentSchema.named("locate");
    return ANSWERS.entrySet().stream()
        .flatMap(
            entry ->
                Stream.of(Answers.HALL, Answers.HALL_IEC)
                    .map(
                        caseFile ->
                            DynamicTest.dynamicTest(
                                entry.getKey() + " at " + caseFile.circuit().supply().volts(),
                                () ->
                                    assertEquals(
                                        Set.of(),
                                        schema.breaches(document(caseFile, entry.getValue()))))));
  }

  @Test
  void theSchemaWouldNoticeAMemberThatIsGoneOrOfAnotherKind() throws JsonProcessingException {
    DocumentSchema schema = DocumentSchema.named("locate");
    for (String member :
        List.of("verdict", "boxes", "suspects", "readings", "assumptions", "point", "format")) {
      ObjectNode gone = document(Answers.HALL, Answers::twoEnds);
      gone.remove(member);
      assertFalse(schema.breaches(gone).isEmpty(), member);

      ObjectNode other = document(Answers.HALL, Answers::twoEnds);
      other.put(member, "something else");
      assertFalse(schema.breaches(other).isEmpty(), member);
    }
  }

  @Test
  void whatTheReadingsDoNotBoundIsNull() throws JsonProcessingException {
    JsonNode ohms = document(Answers.HALL, Answers::lostNeutral).get("suspects").get(0).get("ohms");

    assertEquals(true, ohms.get("estimate").isNull());
    assertEquals(21_000, ohms.get("low").asDouble());
    assertEquals(true, ohms.get("high").isNull());
  }

  @Test
  void namesAreThoseOfTheCaseWhateverTheRegion() throws JsonProcessingException {
    JsonNode joint =
        document(Answers.HALL_IEC, Answers::lostGround).get("suspects").get(0).get("joints").get(0);

    assertEquals("ground", joint.get("conductor").asText());
  }

  @Test
  void anAssumptionSetByTheCaseIsMarked() throws JsonProcessingException {
    for (JsonNode assumption : document(Answers.HALL, Answers::twoEnds).get("assumptions")) {
      boolean own = assumption.get("key").asText().equals("weight-push-in");
      assertEquals(own, assumption.get("overridden").asBoolean(), assumption.toString());
      assertEquals(own, assumption.get("source").asText().equals("case"), assumption.toString());
    }
  }

  private static ObjectNode document(CaseFile caseFile, Function<CaseFile, Diagnosis> answer)
      throws JsonProcessingException {
    return (ObjectNode)
        JACKSON.readTree(LocateJson.of(caseFile, Answers.report(caseFile, answer.apply(caseFile))));
  }
}
