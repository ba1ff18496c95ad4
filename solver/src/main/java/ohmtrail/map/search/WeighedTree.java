package ohmtrail.map.search;

import ohmtrail.map.tree.RunTree;

/**
 * A tree with its probability.
 *
 * @param tree the tree
 * @param logPrior natural logarithm of its prior
 * @param logEvidence natural logarithm of the density of the readings
 * @param probability after the readings
 */
public record WeighedTree(RunTree tree, double logPrior, double logEvidence, double probability) {}
