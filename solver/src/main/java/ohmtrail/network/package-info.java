/**
 * Nodal analysis: nodes, branches and ports, and nothing of wiring.
 *
 * <p>A {@link ohmtrail.network.Network} is solved once ({@link ohmtrail.network.Elimination}); its
 * response between the {@link ohmtrail.network.Port ports} that matter is kept ({@link
 * ohmtrail.network.PortResponse}); whatever is put in series with a branch or across two nodes
 * afterwards ({@link ohmtrail.network.Attachments}) is algebra on a few rows of that response. All
 * quantities are phasors at one frequency, root mean square, in volts, amperes, ohms and siemens.
 *
 * <p>Results are invalid when a port was built for another network. The package imports nothing of
 * the project.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.network;

import org.jspecify.annotations.NullMarked;
