/**
 * Goes through the maps of a run: all of them where there are few, else uphill from several starts
 * and then by Gibbs sampling, with what was weighed remembered.
 *
 * <p>May import {@code ohmtrail.map.tree} and {@code ohmtrail.map.evidence}.
 */
@NullMarked
package ohmtrail.map.search;

import org.jspecify.annotations.NullMarked;
