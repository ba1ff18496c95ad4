package ohmtrail.map.tree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.map.known.CableKind;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TreeEnumerationTest {
  private static final CableKind CABLE =
      CableKind.of(
          new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER));

  private static Outlet outlet(int box) {
    return Outlet.unknown(Box.feedThrough("box-" + box, JointKind.SCREW));
  }

  private static List<Outlet> outlets(int boxes) {
    return IntStream.rangeClosed(1, boxes).mapToObj(TreeEnumerationTest::outlet).toList();
  }

  private static UnknownRun run(List<Outlet> outlets) {
    return UnknownRun.of(Supply.NORTH_AMERICA_120, 15, Box.panel("panel"), outlets, CABLE);
  }

  private static UnknownRun hiding(UnknownRun run, int hidden) {
    return new UnknownRun(
        run.supply(),
        run.breakerAmperes(),
        run.panel(),
        run.panelPlace(),
        run.outlets(),
        run.usualCable(),
        run.distances(),
        hidden,
        run.devices(),
        run.wet());
  }

  /** Cayley (1889, from memory): n labelled nodes and the root make (n + 1)^(n - 1) trees. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void everyLabelledTreeIsListedOnce(int boxes) {
    TreeRules rules = TreeRules.of(run(outlets(boxes)));
    List<RunTree> trees = TreeEnumeration.of(rules);

    assertEquals(Math.round(Math.pow(boxes + 1, boxes - 1)), trees.size());
    assertEquals(trees.size(), new HashSet<>(trees).size());
    assertEquals(trees.size(), TreeCount.of(rules), 1e-6 * trees.size());
  }

  @Test
  void theCountWithoutListingHoldsUnderWhatIsKnown() {
    List<Outlet> known =
        List.of(
            outlet(1).with(new Hint.First()),
            outlet(2).with(new Hint.FedByOneOf(List.of("box-1", "box-3"))),
            outlet(3),
            outlet(4).with(new Hint.NotNextTo("box-1")),
            outlet(5).with(new Hint.Last()));
    TreeRules rules = TreeRules.of(run(known));

    List<RunTree> trees = TreeEnumeration.of(rules);

    assertEquals(trees.size(), TreeCount.of(rules), 1e-6);
    assertTrue(trees.stream().allMatch(tree -> tree.parent(1) == 0 && tree.childCounts()[5] == 0));
    assertTrue(trees.stream().allMatch(tree -> tree.parent(2) == 1 || tree.parent(2) == 3));
    assertTrue(trees.stream().noneMatch(tree -> tree.parent(4) == 1 || tree.parent(1) == 4));
  }

  @Test
  void aBoxThatComesAfterAnotherHasItOnItsWay() {
    List<Outlet> known = List.of(outlet(1), outlet(2), outlet(3).with(new Hint.After("box-1")));

    for (RunTree tree : TreeEnumeration.of(TreeRules.of(run(known)))) {
      assertTrue(tree.isOnTheWay(1, 3), tree.toString());
    }
  }

  @Test
  void neighboursHaveACableBetweenThem() {
    List<Outlet> known = List.of(outlet(1), outlet(2), outlet(3).with(new Hint.NextTo("box-1")));

    for (RunTree tree : TreeEnumeration.of(TreeRules.of(run(known)))) {
      assertTrue(tree.parent(3) == 1 || tree.parent(1) == 3, tree.toString());
    }
  }

  /** With a hidden box there are the trees without it, and those in which it feeds something. */
  @Test
  void aHiddenBoxIsThereOrNotAndNeverAtAnEnd() {
    List<RunTree> trees = TreeEnumeration.of(TreeRules.of(hiding(run(outlets(2)), 1)));

    long without = trees.stream().filter(tree -> !tree.isPresent(3)).count();
    assertEquals(3, without);
    // Of the 16 labelled trees of three boxes under the panel, the third is a leaf in 9.
    assertEquals(7, trees.size() - without);
    assertTrue(trees.stream().allMatch(tree -> !tree.isPresent(3) || tree.childCounts()[3] > 0));
  }

  /** All that can be laid, and nothing else: the prior is a probability. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 5})
  void thePriorsOfAllTreesSumToOne(int boxes) {
    UnknownRun run = run(outlets(boxes));
    TreeRules rules = TreeRules.of(run);
    TreePrior prior = new TreePrior(run, rules.nodes(), Assumptions.defaults());

    double sum =
        TreeEnumeration.of(rules).stream().mapToDouble(tree -> Math.exp(prior.log(tree))).sum();

    assertEquals(1, sum, 1e-12);
  }

  /** 7/8 for each further box of a chain, over the orders of its names. */
  @Test
  void aChainIsLaidInOneWay() {
    UnknownRun run = run(outlets(4));
    TreePrior prior = new TreePrior(run, RunNodes.of(run), Assumptions.defaults());

    double chain = Math.exp(prior.log(RunTree.of(new int[] {-1, 0, 1, 2, 3})));

    assertEquals(Math.pow(7.0 / 8, 3) / 24, chain, 1e-12);
  }
}
