/* judge/sag_curve.h - how far a span of a stick sags from its chord (of an overhang: from the
 * tangent at its held end), along its length, with creep of what stands for long. m.
 */
#ifndef JUDGE_SAG_CURVE_H
#define JUDGE_SAG_CURVE_H

#include "judge/run.h"
#include "solve/stations.h"

/* One span of a rail: between two holding joints, or past the last one. */
struct span {
    double from, to;      /* m along the member */
    bool overhang_before; /* free at `from`, held at `to` */
    bool overhang_after;  /* held at `from`, free at `to` */
};

struct sag_line { /* a rail under the standing and the brief part of one combination */
    const struct run *run;
    const struct model_member *rail;
    double up[3];                         /* upward normal of the stick in its vertical plane */
    struct stick_state *standing, *brief; /* per segment of the rail */
};

struct sag_found {
    double standing, brief, total;
    double slope; /* of the total against its baseline */
};

/* Upward normal of a stick in its vertical plane. */
void sag_upward(const struct model_member *rail, double up[3]);

/* The worst place of a span: sixteen parts, then where the slope vanishes beside the worst. */
struct sag_found sag_of_span(const struct sag_line *line, const struct span *span);

#endif
