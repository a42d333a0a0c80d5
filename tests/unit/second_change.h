/* second_change.h - copies of a frame that must give the same answer: mirrored, turned, in another
 * order, with a joint more, with other loads. The copy lives in the frame's arena.
 */
#ifndef TESTS_UNIT_SECOND_CHANGE_H
#define TESTS_UNIT_SECOND_CHANGE_H

#include "frame/frame.h"

#include <stdint.h>

struct frame *frame_copy(const struct frame *frame);

/* x becomes -x. */
struct frame *frame_mirrored(const struct frame *frame);

/* About z, right-handed, rad. */
struct frame *frame_turned(const struct frame *frame, double angle);

/* Joints and members in another order; `host` (per joint) is written down. */
struct frame *frame_shuffled(const struct frame *frame, const int *host, uint64_t seed,
                             int *joint_at, int *member_at);

/* A joint more at a share of a member, nothing fastened to it. */
struct frame *frame_split(const struct frame *frame, int member, double share);

/* Every explicit load times a factor. */
struct frame *frame_loaded(const struct frame *frame, double factor);

#endif
