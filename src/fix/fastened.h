/* fix/fastened.h - one way to fasten an end: what it counts, in words and as keys. For src/fix
 * only.
 */
#ifndef FIX_FASTENED_H
#define FIX_FASTENED_H

#include "fix/work.h"

enum { BOLT_SIZES = 2 };

/* One way to fasten an end. */
struct fastened {
    enum connection_type type;
    int bolt;           /* 0: 1/4 in, 1: 5/16 in; -1: screws */
    const char *size;   /* of screws: "8" */
    const char *length; /* of screws, as the file writes it */
    int step;           /* of fix/screw_lengths.h: what the screws count for */
    int count;
    int plates; /* of a gusset */
    bool fine;  /* shorter screws or other numbers of them than a first try would take */
};

/* Of its screws, bolts, plates and blocks, board feet. */
double end_effort(const struct fastened *end);

/* A connection of the file, as far as its effort goes. */
struct fastened fastened_now(const struct work *work, const struct connection *now);

/* "use two No.8 screws 2 in long" */
const char *end_words(struct arena *arena, const struct fastened *end);

/* "type: screwed-lap, screw: 8, length: "2 in", count: 2" */
const char *end_keys(const struct work *work, const struct fastened *end);

#endif
