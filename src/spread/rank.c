#include "spread/rank.h"

#include <gsl/gsl_statistics.h>
#include <math.h>

static void keep_strongest(struct spread_check *check, struct spread_matter matter) {
    size_t at = check->matter_count;
    while (at > 0 && fabs(matter.rank_correlation) > fabs(check->matters[at - 1].rank_correlation))
        at--;
    if (at == SPREAD_MATTERS)
        return;
    if (check->matter_count < SPREAD_MATTERS)
        check->matter_count++;
    for (size_t k = check->matter_count - 1; k > at; k--)
        check->matters[k] = check->matters[k - 1];
    check->matters[at] = matter;
}

void rank_matters(struct arena *arena, const double *const *values, size_t inputs, size_t builds,
                  struct spread_check *check) {
    check->matter_count = 0;
    if (builds < SPREAD_FEWEST_TO_RANK || !check->changes)
        return;
    struct arena_mark mark = arena_mark(arena);
    double *work = ARENA_ARRAY(arena, double, 2 * builds);
    for (size_t k = 0; k < inputs; k++) {
        double found = gsl_stats_spearman(values[k], 1, check->ratios, 1, builds, work);
        if (fabs(found) > 3.0 / sqrt((double)builds - 1.0))
            keep_strongest(check, (struct spread_matter){k, found});
    }
    arena_rewind(arena, mark);
}
