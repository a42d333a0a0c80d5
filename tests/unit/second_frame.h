/* second_frame.h - seeded random frames as the text of a frame description. */
#ifndef TESTS_UNIT_SECOND_FRAME_H
#define TESTS_UNIT_SECOND_FRAME_H

#include "base/arena.h"
#include "frame/frame.h"

#include <stdbool.h>
#include <stdint.h>

struct random_frame {
    unsigned seed;
    bool us;       /* written in inches and pounds; else mm and N: the same frame */
    bool plane;    /* joints of two numbers */
    bool held;     /* every support holds x, y, z; no moments: for turned copies */
    bool combine;  /* one combination, upright: {self: 1, a: 1, b: 1, c: 1} */
    double factor; /* on every explicit load */
};

/* 5 to 25 joints; sticks through joints, hosts, every kind of end, section and support; the cases
 * a (forces and moments on joints), b (along sticks), c (points on sticks), self and tray. */
const char *random_frame_text(struct arena *arena, struct random_frame how);

/* Read, or fail the test with the first problem. */
struct frame *frame_of_text(struct arena *arena, const char *text);
/* A file of the repository ("examples/truss.yaml"). */
const char *text_of_file(struct arena *arena, const char *path);

/* 0 <= r < 1 */
double random_next(uint64_t *state);

#endif
