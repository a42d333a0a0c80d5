/* fold/words.h - a movement of the joints as a sentence that a builder understands.
 *
 * Cells that go out of square name the faces that lean; a level that turns as a whole twists; what
 * none of these says names the joints. Movements are scaled to a largest entry of 1; entries under
 * 0.02 count as none; a cell leans where its corners turn by over 5 % of the largest of all.
 */
#ifndef FOLD_WORDS_H
#define FOLD_WORDS_H

#include "bracing/cells.h"
#include "fold/readable.h"
#include "result/result.h"

/* `moves`: per joint, any scale. The motion's moves are scaled to a largest entry of 1; entries
 * under 0.02 are left out. */
struct motion fold_motion(struct arena *arena, const struct cells *cells, const double (*moves)[3]);

#endif
