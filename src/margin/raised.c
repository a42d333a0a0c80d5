#include "margin/raised.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <math.h>

const double MARGIN_START[MARGIN_COUNT] = {1.0, 957.6, 40.0};

struct frame margin_raised(const struct frame *described, enum margin_load load, double value) {
    struct frame frame = *described;
    struct site *site = &frame.site;
    switch (load) {
    case MARGIN_TRAY:
        frame.tray_share = value;
        break;
    case MARGIN_SNOW:
        if (site->snow_depth.given)
            site->snow_depth.value = value / (table_snow_density(site->snow_kind).value *
                                              table_constant("gravity").value);
        else
            site->ground_snow = (struct optional){true, value};
        break;
    default:
        if (site->wind.given)
            site->wind.value = value;
        else {
            site->gust = (struct optional){true, value};
            site->wind_word = -1;
        }
    }
    site->given = true;
    return frame;
}

static void release_solver(void *solver) {
    gsl_root_fsolver_free(solver);
}

double margin_root(struct arena *arena, double (*excess)(double, void *), void *params, double low,
                   double high) {
    enum { STEPS = 200 };
    gsl_function over = {excess, params};
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    if (!solver)
        arena_exhausted(arena);
    arena_defer(arena, release_solver, solver);
    double found = NAN;
    if (gsl_root_fsolver_set(solver, &over, low, high) == GSL_SUCCESS)
        for (int k = 0; k < STEPS; k++) {
            if (gsl_root_fsolver_iterate(solver) != GSL_SUCCESS)
                break;
            low = gsl_root_fsolver_x_lower(solver);
            high = gsl_root_fsolver_x_upper(solver);
            found = gsl_root_fsolver_root(solver);
            if (gsl_root_test_interval(low, high, 0.0, 1e-10) == GSL_SUCCESS)
                break;
        }
    return found;
}
