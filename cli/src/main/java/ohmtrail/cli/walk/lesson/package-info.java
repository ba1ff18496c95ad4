/**
 * A circuit made up for a learner, as a conversation: what can be asked of it, and how it ends.
 *
 * <p>May import {@code walk}, and what that may.
 */
@NullMarked
package ohmtrail.cli.walk.lesson;

import org.jspecify.annotations.NullMarked;
