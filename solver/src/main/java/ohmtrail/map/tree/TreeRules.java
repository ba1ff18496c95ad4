package ohmtrail.map.tree;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.UnknownRun;

/** Which trees fit what is known of a run. Immutable. */
public final class TreeRules {
  private final RunNodes nodes;
  private final boolean[][] allowed;
  private final boolean[] isLast;
  private final List<int[]> after;
  private final List<int[]> next;

  private TreeRules(
      RunNodes nodes, boolean[][] allowed, boolean[] isLast, List<int[]> after, List<int[]> next) {
    this.nodes = nodes;
    this.allowed = allowed;
    this.isLast = isLast;
    this.after = after;
    this.next = next;
  }

  /** The rules of a run. */
  public static TreeRules of(UnknownRun run) {
    RunNodes nodes = RunNodes.of(run);
    int count = nodes.count();
    boolean[][] allowed = new boolean[count][count];
    boolean[] isLast = new boolean[count];
    List<int[]> after = new ArrayList<>();
    List<int[]> next = new ArrayList<>();
    for (int node = 1; node < count; node++) {
      for (int feeder = 0; feeder < count; feeder++) {
        allowed[node][feeder] =
            nodes.isAnotherCircuit(node)
                ? feeder == 0
                : feeder != node && !nodes.isAnotherCircuit(feeder);
      }
    }
    for (Outlet outlet : run.outlets()) {
      int node = nodes.number(outlet.name());
      if (outlet.mayBeForeign()) {
        allowed[node][count - 1] = true;
      }
      outlet.fedBy().ifPresent(cable -> only(allowed[node], nodes.number(cable.from())));
      for (Hint hint : outlet.hints()) {
        if (hint instanceof Hint.First) {
          only(allowed[node], 0);
        } else if (hint instanceof Hint.Last) {
          isLast[node] = true;
          for (boolean[] others : allowed) {
            others[node] = false;
          }
        } else if (hint instanceof Hint.FedByOneOf some) {
          boolean[] kept = new boolean[count];
          some.feeders().forEach(box -> kept[nodes.number(box)] = true);
          for (int feeder = 0; feeder < count; feeder++) {
            allowed[node][feeder] &= kept[feeder];
          }
        } else if (hint instanceof Hint.After later) {
          after.add(new int[] {node, nodes.number(later.box())});
          allowed[node][0] = false;
          allowed[nodes.number(later.box())][node] = false;
        } else if (hint instanceof Hint.NextTo neighbour) {
          next.add(new int[] {node, nodes.number(neighbour.box())});
        } else if (hint instanceof Hint.NotNextTo other) {
          allowed[node][nodes.number(other.box())] = false;
          allowed[nodes.number(other.box())][node] = false;
        } else if (hint instanceof Hint.OnThisCircuit) {
          if (outlet.mayBeForeign()) {
            allowed[node][count - 1] = false;
          }
        } else if (hint instanceof Hint.OnAnotherCircuit && outlet.mayBeForeign()) {
          only(allowed[node], count - 1);
        }
      }
    }
    return new TreeRules(nodes, allowed, isLast, after, next);
  }

  private static void only(boolean[] allowed, int feeder) {
    boolean kept = allowed[feeder];
    Arrays.fill(allowed, false);
    allowed[feeder] = kept;
  }

  /** The boxes as nodes. */
  public RunNodes nodes() {
    return nodes;
  }

  /** Whether one node may feed another, as far as the two alone tell. */
  public boolean allows(int node, int feeder) {
    return allowed[node][feeder];
  }

  /** Whether a tree, each of whose cables is allowed by itself, fits what is known in all. */
  boolean fitsAsAWhole(RunTree tree) {
    for (int[] pair : after) {
      if (!tree.isOnTheWay(pair[1], pair[0])) {
        return false;
      }
    }
    for (int[] pair : next) {
      if (tree.parent(pair[0]) != pair[1] && tree.parent(pair[1]) != pair[0]) {
        return false;
      }
    }
    int[] children = tree.childCounts();
    boolean before = true;
    for (int node = 1; node < tree.size(); node++) {
      if (isLast[node] && children[node] > 0) {
        return false;
      }
      if (nodes.isHidden(node)) {
        boolean present = tree.isPresent(node);
        if (present && (children[node] == 0 || !before)) {
          return false;
        }
        before = present;
      }
    }
    return true;
  }

  /** Whether a tree fits what is known. */
  public boolean fit(RunTree tree) {
    for (int node = 1; node < tree.size(); node++) {
      boolean absent = !tree.isPresent(node);
      if (absent ? !nodes.isHidden(node) : !allowed[node][tree.parent(node)]) {
        return false;
      }
    }
    return fitsAsAWhole(tree);
  }
}
