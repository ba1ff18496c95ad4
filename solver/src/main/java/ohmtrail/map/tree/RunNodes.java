package ohmtrail.map.tree;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.RunMap;
import ohmtrail.map.known.UnknownRun;

/** The boxes of a run as the nodes of its trees. Immutable. */
public final class RunNodes {
  private final List<String> names;
  private final Map<String, Integer> numbers;
  private final int seen;
  private final boolean hasAnotherCircuit;

  private RunNodes(List<String> names, int seen, boolean hasAnotherCircuit) {
    this.names = List.copyOf(names);
    this.seen = seen;
    this.hasAnotherCircuit = hasAnotherCircuit;
    this.numbers = new HashMap<>();
    for (int node = 0; node < names.size(); node++) {
      numbers.put(names.get(node), node);
    }
  }

  /** The nodes of a run. */
  public static RunNodes of(UnknownRun run) {
    List<String> names = new ArrayList<>(List.of(run.panel().name()));
    run.outlets().forEach(outlet -> names.add(outlet.name()));
    int seen = names.size();
    for (int hidden = 1; hidden <= run.mayHide(); hidden++) {
      names.add(RunMap.hiddenBox(hidden));
    }
    boolean foreign = run.outlets().stream().anyMatch(Outlet::mayBeForeign);
    if (foreign) {
      names.add(RunMap.ANOTHER_CIRCUIT);
    }
    return new RunNodes(names, seen, foreign);
  }

  /** How many there are. */
  public int count() {
    return names.size();
  }

  /** The number of a box. */
  public int number(String box) {
    Integer number = numbers.get(box);
    if (number == null) {
      throw new IllegalArgumentException("Box (" + box + ") must be one of " + names);
    }
    return number;
  }

  /** The name of a node. */
  public String name(int node) {
    return names.get(node);
  }

  /** Whether a node is a box that nobody has seen. */
  public boolean isHidden(int node) {
    return node >= seen && !isAnotherCircuit(node);
  }

  /** Whether a node stands for another circuit. */
  public boolean isAnotherCircuit(int node) {
    return hasAnotherCircuit && node == names.size() - 1;
  }

  /** Whether a node is a box that somebody has seen, the panel apart. */
  public boolean isOutlet(int node) {
    return node > 0 && node < seen;
  }

  /** A tree as a map, each feeder before what it feeds. */
  public RunMap map(RunTree tree) {
    List<RunMap.Feed> feeds = new ArrayList<>();
    Deque<Integer> pending = new ArrayDeque<>(List.of(0));
    while (!pending.isEmpty()) {
      int feeder = pending.removeFirst();
      for (int node = 1; node < count(); node++) {
        if (tree.parent(node) == feeder) {
          pending.addLast(node);
          if (!isAnotherCircuit(node)) {
            feeds.add(new RunMap.Feed(name(node), name(feeder)));
          }
        }
      }
    }
    return new RunMap(feeds);
  }

  /** A map as a tree; a hidden box that the map leaves out is absent. */
  public RunTree tree(RunMap map) {
    int[] parents = new int[count()];
    for (int node = 1; node < count(); node++) {
      parents[node] = isAnotherCircuit(node) ? 0 : RunTree.ABSENT;
    }
    map.feeds().forEach(feed -> parents[number(feed.box())] = number(feed.feeder()));
    return RunTree.of(parents);
  }
}
