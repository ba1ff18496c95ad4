package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Grounding;
import ohmtrail.circuit.Grounding.Conduit;
import ohmtrail.circuit.JointKind;
import ohmtrail.reference.Assumption;
import org.junit.jupiter.api.Test;

/** Metal conduit as the ground, in a case file. */
class ConduitCaseTest {
  private static final String HEAD = "breaker: 20 A\n";
  private static final String RUN =
      """
      cable: 12 AWG copper EMT
      run:
        - panel
        - bench: receptacle 30 ft
        - dock: receptacle 40 ft rigid conduit
        - office: receptacle 20 ft 12 AWG from bench
        - yard: {kind: receptacle, length: 9 m, cable: 10 AWG RMC, from: dock}
        - shed: receptacle 3 m 8 AWG conduit
      assume:
        emt-ohms: 1.8 mohm/m
      """;

  private static Optional<Grounding> ground(Circuit circuit, String to) {
    return circuit.cables().stream()
        .filter(cable -> cable.to().equals(to))
        .findFirst()
        .flatMap(Cable::ground);
  }

  @Test
  void eachCableHasTheConduitThatItSaysOrThatOfTheCase() throws CaseFileException {
    CaseFile read = CaseFiles.read(HEAD + RUN);
    Circuit circuit = read.circuit();
    assertEquals(List.of(), read.warnings());
    assertEquals(Optional.of(Conduit.EMT), ground(circuit, "bench"));
    assertEquals(Optional.of(Conduit.RIGID), ground(circuit, "dock"));
    assertEquals(Optional.empty(), ground(circuit, "office"), "a size of its own, a wire");
    assertEquals(Optional.of(Conduit.RIGID), ground(circuit, "yard"));
    assertEquals(Optional.of(Conduit.EMT), ground(circuit, "shed"));
    assertEquals("12 AWG", circuit.pathTo("dock").get(1).conductor().size().designation());
    assertEquals(1.8e-3, read.assumptions().value(Assumption.EMT_OHMS), 1e-15);
    assertEquals(
        JointKind.CONDUIT_FITTING, circuit.joint("dock/ground/incoming").orElseThrow().kind());
    assertEquals(JointKind.SCREW, circuit.joint("office/ground/incoming").orElseThrow().kind());
  }

  @Test
  void whatWasReadIsWrittenAndReadAgain() throws CaseFileException {
    CaseFile read = CaseFiles.read(HEAD + RUN);
    String written = new CaseFileWriter().write(read);
    CaseFile again = CaseFiles.read(written);
    assertEquals(read.circuit(), again.circuit(), written);
    assertEquals(read.assumptions(), again.assumptions(), written);
  }

  @Test
  void aConduitAloneKeepsTheUsualWireOfTheBreaker() throws CaseFileException {
    Circuit circuit =
        CaseFiles.read(HEAD + "run:\n  - panel\n  - bench: receptacle 30 ft EMT\n").circuit();
    assertEquals("12 AWG", circuit.cables().get(0).conductor().size().designation());
    assertEquals(Optional.of(Conduit.EMT), ground(circuit, "bench"));
  }

  @Test
  void aGroundWireAndAConduitAtOnceAreRefused() {
    String both = HEAD + "run:\n  - panel\n  - bench: receptacle 30 ft 2.5/1.5 mm2 EMT\n";
    CaseFileException refused = assertThrows(CaseFileException.class, () -> CaseFiles.read(both));
    assertTrue(refused.getMessage().contains("must be a wire or the conduit"), refused.toString());
    assertTrue(refused.getMessage().contains(":4:"), refused.getMessage());
  }
}
