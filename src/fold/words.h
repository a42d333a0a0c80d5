/* fold/words.h - a movement of the joints as a sentence that a builder understands. */
#ifndef FOLD_WORDS_H
#define FOLD_WORDS_H

#include "frame/frame.h"
#include "result/result.h"

/* `moves`: per joint, any scale. The motion's moves are scaled to a largest entry of 1; entries
 * under 0.02 are left out. */
struct motion fold_motion(struct arena *arena, const struct frame *frame, const double (*moves)[3]);

#endif
