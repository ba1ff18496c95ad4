package ohmtrail.map;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.map.evidence.MapEvidence;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;
import ohmtrail.map.tree.TreeMoves;
import ohmtrail.map.tree.TreeRules;

/**
 * Boxes between which the readings do not tell: in each other's place they explain them as well.
 */
final class Alike {
  /** A Bayes factor of less than e tells nothing. */
  private static final double TELLS_NOTHING = 1;

  private final RunNodes nodes;
  private final TreeMoves moves;
  private final MapEvidence evidence;

  Alike(TreeRules rules, MapEvidence evidence) {
    this.nodes = rules.nodes();
    this.moves = new TreeMoves(rules);
    this.evidence = evidence;
  }

  /** The sets of two or more, as the map has them. */
  List<List<String>> in(RunTree map) {
    double asItIs = evidence.log(map);
    List<List<String>> sets = new ArrayList<>();
    boolean[] taken = new boolean[nodes.count()];
    for (int one = 1; one < nodes.count(); one++) {
      List<String> alike = new ArrayList<>(List.of(nodes.name(one)));
      for (int other = one + 1; other < nodes.count() && !taken[one]; other++) {
        if (nodes.isOutlet(one) && nodes.isOutlet(other) && !taken[other]) {
          List<RunTree> exchanged = moves.exchanged(map, one, other);
          if (exchanged.size() > 1
              && Math.abs(evidence.log(exchanged.get(1)) - asItIs) < TELLS_NOTHING) {
            alike.add(nodes.name(other));
            taken[other] = true;
          }
        }
      }
      if (alike.size() > 1) {
        sets.add(alike);
      }
    }
    return sets;
  }
}
