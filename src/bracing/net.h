/* bracing/net.h - the sticks as a net that can be walked: from a joint along a stick to the next.
 *
 * Sticks that act as brace or tie are no part of it: they bound no opening and divide none.
 */
#ifndef BRACING_NET_H
#define BRACING_NET_H

#include "model/hosts.h"
#include "model/model.h"

struct net {
    const struct model *model;
    struct meetings meetings;
    size_t *where;  /* per entry of meetings: its place in model->along.joints */
    bool *standing; /* per joint: a support bears it upwards */
    bool *held;     /* per joint: it cannot move at all */
};

/* A direction in which a stick leaves a joint. */
struct heading {
    int member;
    size_t place; /* in model->along.joints */
    int step;     /* 1 towards the to-end, -1 towards the from-end */
};

struct net net_of(struct arena *arena, const struct model *model);

/* Are there joints further on? */
bool heading_goes_on(const struct net *net, const struct heading *heading);

/* The k-th of the up to two headings of a meeting; false where it is a stick of no concern or ends
 * there. */
bool net_heading(const struct net *net, size_t meeting, int k, struct heading *out);

/* The joint one step further, moving the heading there; -1 past the end. */
int heading_next(const struct net *net, struct heading *heading);

/* Unit direction of the heading. */
void heading_direction(const struct net *net, const struct heading *heading, double out[3]);

/* A stick that both joints lie on; -1. */
int net_common_stick(const struct net *net, int one, int other);

const double *net_at(const struct net *net, int joint);

#endif
