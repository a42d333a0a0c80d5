/* fix/fix.h - the command `fix`: the cheapest changes of a catalogue with which every check passes.
 *
 * A change is an edit of the description, so what is judged is what the edited file says. The
 * catalogue is made of slots, of each of which at most one change is taken. A first set is guessed
 * (the change that mends most for its effort, again and again, then what is not needed taken out);
 * then sets are tried from the cheapest upwards until the cheapest that passes is met, or the tries
 * are used up. The search is exact: what a check needs is only narrowed to some slots where the
 * method makes it depend on nothing else. Same file, same answer: no clock is looked at.
 */
#ifndef FIX_FIX_H
#define FIX_FIX_H

#include "result/fix_answer.h"

struct fix_options {
    struct frame_limits limits;
    size_t tries; /* at most; 0: by the size of the frame */
    /* Called now and then; NULL: nobody asks. */
    void (*progress)(void *to, size_t tried);
    void *to;
};

/* `bytes` are the file that `frame` was read from. GSL's error handler must be off. */
struct fix_answer *fix_find(struct arena *arena, const char *bytes, size_t length,
                            const struct frame *frame, const struct fix_options *options);

#endif
