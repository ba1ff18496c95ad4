/**
 * The case file: one YAML 1.2 document, written as a person walks the run, turned into a {@link
 * ohmtrail.circuit.Circuit}, a {@link ohmtrail.survey.Survey} and {@link
 * ohmtrail.reference.Assumptions}, and back.
 *
 * <p>A <em>problem</em> is something wrong at a line and a column of the case file or of the table
 * of readings beside it. A reader tells as many problems at once as it can, and never throws
 * anything but {@link ohmtrail.cli.casefile.CaseFileException}, whatever the file holds.
 *
 * <p>May import its own packages, {@code text}, {@code words}, {@code feeder}, {@code run}, {@code
 * equipment}, {@code circumstances} and {@code survey}, each of which may import those before it,
 * and the solver's {@code reference}, {@code circuit}, {@code map.known} and {@code survey}. Knows
 * nothing of commands, of diagnoses and of how anything is shown. Nobody else need import them.
 */
@NullMarked
package ohmtrail.cli.casefile;

import org.jspecify.annotations.NullMarked;
