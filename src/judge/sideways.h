/* judge/sideways.h - what moves the frame sideways: somebody who pushes, and service wind.
 *
 * A push acts whole and each way; of the wind of each side and way 0.42 counts of a map speed, 0.7
 * of a real gust (IBC Table 1604.3 note f; [trade] for a gust). Each with empty and with full
 * shelves.
 */
#ifndef JUDGE_SIDEWAYS_H
#define JUDGE_SIDEWAYS_H

#include "judge/run.h"

struct sideways {
    const char *name; /* as a combination: "D+push right", "D+T+0.42W from left" */
    int sets[2];
    int set_count;
    double factor; /* on each of the sets */
    int axis;      /* along which it moves the frame: 0 x, 1 y */
    double sign;   /* and which way */
    bool full;     /* trays on the shelves */
    bool wind;
};

/* All that occur along an axis; returns how many, and the list in the arena. */
size_t sideways_along(struct arena *arena, const struct loads *loads, int axis,
                      struct sideways **list);

/* The share of the wind that counts for moving sideways. */
struct cited sideways_wind_share(const struct loads *loads);

#endif
