#include "check/dowel.h"

#include <math.h>
#include <stdlib.h>

static struct cited row_of(const char *table, const char *row) {
    struct cited cited;
    if (!table_value(table, row, &cited))
        abort(); /* a row of our own tables */
    return cited;
}

static struct cited hole_row(const char *row) {
    return row_of("lead-holes", row);
}

static bool dense(double gravity) {
    return gravity > hole_row("dense-over").value;
}

static struct dowel_hole lag_hole(const struct dowel *dowel, double gravity) {
    const char *least = "lag.light.least", *most = "lag.light.most";
    if (dense(gravity)) {
        least = "lag.dense.least";
        most = "lag.dense.most";
    } else if (gravity > hole_row("middle-from").value) {
        least = "lag.middle.least";
        most = "lag.middle.most";
    }
    struct cited share = hole_row(least);
    return (struct dowel_hole){dowel->D.value, share.value * dowel->D.value,
                               hole_row(most).value * dowel->D.value, share};
}

static struct dowel_hole lag_pull_hole(const struct dowel *dowel, double gravity) {
    struct cited to = hole_row("lag.none-to");
    if (dowel->D.value <= to.value * (1.0 + 1e-9) && gravity <= hole_row("middle-from").value)
        return (struct dowel_hole){.source = to};
    return lag_hole(dowel, gravity);
}

static struct dowel_hole nail_hole(const struct dowel *dowel, double gravity) {
    struct cited share = hole_row(dense(gravity) ? "nail.dense" : "nail.lighter");
    return (struct dowel_hole){0.0, 0.0, share.value * dowel->D.value, share};
}

static struct dowel_hole bolt_hole(const struct dowel *dowel) {
    struct cited over = hole_row("bolt.least");
    double least = dowel->D.value + over.value;
    return (struct dowel_hole){least, least, dowel->D.value + hole_row("bolt.most").value, over};
}

struct dowel_hole dowel_lead_hole_withdrawal(const struct dowel *dowel, double gravity) {
    switch (dowel->kind) {
    case DOWEL_NAIL:
        return nail_hole(dowel, gravity);
    case DOWEL_BOLT:
        return bolt_hole(dowel);
    case DOWEL_LAG:
        return lag_pull_hole(dowel, gravity);
    default:
        break;
    }
    struct cited share =
        hole_row(dense(gravity) ? "screw.withdrawal.dense" : "screw.withdrawal.middle");
    if (gravity < hole_row("middle-from").value)
        return (struct dowel_hole){.source = share};
    double thread = share.value * dowel->root.value;
    return (struct dowel_hole){0.0, thread, thread, share};
}

struct dowel_hole dowel_lead_hole_lateral(const struct dowel *dowel, double gravity) {
    switch (dowel->kind) {
    case DOWEL_NAIL:
        return nail_hole(dowel, gravity);
    case DOWEL_BOLT:
        return bolt_hole(dowel);
    case DOWEL_LAG:
        return lag_hole(dowel, gravity);
    default:
        break;
    }
    struct cited share = hole_row(dense(gravity) ? "screw.lateral.dense" : "screw.lateral.lighter");
    double thread = share.value * dowel->root.value;
    return (struct dowel_hole){share.value * dowel->D.value, thread, thread, share};
}

/* ORDER SPACING */
#define SPACING_ROWS(group, bored)                                                                 \
    {                                                                                              \
        group ".edge" bored, group ".edge-loaded" bored, group ".end-pull" bored,                  \
            group ".end-push" bored, group ".row-along" bored, group ".row-across" bored,          \
            group ".between-rows" bored, group ".staggered" bored                                  \
    }
static const char *const SMALL[] = SPACING_ROWS("small", ""),
                         *const SMALL_BORED[] = SPACING_ROWS("small", ".bored"),
                         *const LARGE[] = SPACING_ROWS("large", "");

struct dowel_spacing dowel_spacing(const struct dowel *dowel, bool prebored) {
    double D = dowel->D.value;
    bool large = D >= table_fastener_factor("large-from").value * (1.0 - 1e-9);
    const char *const *rows = large ? LARGE : prebored ? SMALL_BORED : SMALL;
    double distance[sizeof SMALL / sizeof *SMALL];
    for (size_t k = 0; k < sizeof SMALL / sizeof *SMALL; k++)
        distance[k] = row_of("fastener-spacing", rows[k]).value * D;
    return (struct dowel_spacing){distance[0], distance[1], distance[2],
                                  distance[3], distance[4], distance[5],
                                  distance[6], distance[7], row_of("fastener-spacing", rows[0])};
}
