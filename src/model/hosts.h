/* model/hosts.h - which sticks meet at each joint, which of them is host, which joints are hinges.
 */
#ifndef MODEL_HOSTS_H
#define MODEL_HOSTS_H

#include "model/model.h"

enum meeting { MEETS_FROM_END, MEETS_TO_END, MEETS_THROUGH };

struct meets {
    int member;
    enum meeting how;
};

struct meetings { /* those of joint j: items[first[j]] ... items[first[j + 1] - 1], file order */
    struct meets *items;
    size_t *first;
};

struct meetings meetings_of(struct arena *arena, const struct frame *frame,
                            const struct along *along);

/* The named stick, else the first that runs through, else the first that ends there; -1: none. */
int host_of(const struct frame *frame, const struct meetings *meetings, int joint);

/* The connection in force at the end of a stick that is not host there; *said is false where the
 * file names none and has no default, so that `pinned` is assumed. */
int connection_in_force(const struct frame *frame, int member, int end, bool *said);

/* Hinge joint of the frame format: two or more sticks end, none runs through, every one but the
 * host is pinned, and neither a support nor a moment load acts on the turning. */
bool joint_is_hinge(const struct frame *frame, const struct meetings *meetings, int joint, int host,
                    const bool *turning_acted_on);

/* Per joint: a support holds some turning there, or a load twists it. */
bool *joints_turning_acted_on(struct arena *arena, const struct frame *frame);

#endif
