/* buy/buy.h - what to buy for a frame and how to cut it: the order of it all. */
#ifndef BUY_BUY_H
#define BUY_BUY_H

#include "result/cut_answer.h"

struct cut_options {
    double kerf, trim;    /* m */
    const double *stocks; /* m, from the user; NULL: those of the prices, else 8 ft */
    size_t stock_count;
    bool together; /* sticks of the same wood are cut from the same boards */
};

/* In the arena. Problems of the description end up in the answer, with nothing else in it. */
struct cut_answer *cut_frame(struct arena *arena, const struct frame *frame,
                             const struct cut_options *options);

#endif
