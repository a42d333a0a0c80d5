/* fold/rigid.h - do some joints move as one solid body? */
#ifndef FOLD_RIGID_H
#define FOLD_RIGID_H

#include "frame/frame.h"

struct rigid {
    double slide[3]; /* of the joints' middle */
    double turn[3];  /* rad for movements in m */
    double radius;   /* m: the joint farthest from the middle */
    double off;      /* the largest movement that is left over */
};

/* The solid movement that fits best (least squares). `joints` lists `count` joints. */
struct rigid rigid_fit(const struct frame *frame, const int *joints, size_t count,
                       const double (*moves)[3]);

#endif
