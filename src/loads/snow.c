#include "loads/snow.h"

#include "base/vector.h"
#include "weather/units.h"

#include <math.h>

const char *snow_way_name(enum snow_way way) {
    static const char *const NAMES[] = {/* ORDER SNOW WAYS */ [SNOW_EVEN] = "",
                                        [SNOW_ON_FRONT] = "front",
                                        [SNOW_ON_BACK] = "back",
                                        [SNOW_ON_LEFT] = "left",
                                        [SNOW_ON_RIGHT] = "right",
                                        [SNOW_DRIFT] = "drift",
                                        [SNOW_SLID] = "slid"};
    return NAMES[way];
}

/* The edge from corner `k` on, where its middle lies above that of the roof. */
static bool high_edge(const struct cover *roof, int k, const double **from, const double **to) {
    *from = roof->corners[k];
    *to = roof->corners[(k + 1) % 4];
    return ((*from)[2] + (*to)[2]) / 2.0 > roof->middle[2];
}

/* Do two straight edges lie on each other over some length? */
static bool edges_meet(const double a[3], const double b[3], const double c[3], const double d[3]) {
    double along[3], off[2][3], place[2];
    double length = vector_between(a, b, along);
    vector_unit(along);
    vector_between(a, c, off[0]);
    vector_between(a, d, off[1]);
    for (int k = 0; k < 2; k++) {
        double beside[3];
        vector_cross(along, off[k], beside);
        if (!(vector_length(beside) <= ALONG_TOLERANCE))
            return false;
        place[k] = vector_dot(along, off[k]);
    }
    return fmin(length, fmax(place[0], place[1])) - fmax(0.0, fmin(place[0], place[1])) >
           ALONG_TOLERANCE;
}

/* Do two roofs meet along the highest edge of both and fall away from each other? */
static bool is_gable_pair(const struct cover *one, const struct cover *other) {
    const double *a = one->normal, *b = other->normal, *ends[4];
    if (one->kind != COVER_ROOF || other->kind != COVER_ROOF || !(a[0] * b[0] + a[1] * b[1] < 0.0))
        return false;
    for (int i = 0; i < 4; i++)
        for (int k = 0; k < 4; k++)
            if (high_edge(one, i, &ends[0], &ends[1]) && high_edge(other, k, &ends[2], &ends[3]) &&
                edges_meet(ends[0], ends[1], ends[2], ends[3]))
                return true;
    return false;
}

static bool on_gable(const struct cover *covers, size_t count, size_t cover) {
    for (size_t k = 0; k < count; k++)
        if (k != cover && is_gable_pair(&covers[cover], &covers[k]))
            return true;
    return false;
}

/* The side to which a roof falls. */
static enum snow_way side_of(const struct cover *cover) {
    const double *n = cover->normal;
    if (fabs(n[1]) >= fabs(n[0]))
        return n[1] < 0.0 ? SNOW_ON_FRONT : SNOW_ON_BACK;
    return n[0] < 0.0 ? SNOW_ON_LEFT : SNOW_ON_RIGHT;
}

struct site_snow site_snow_of(const struct site *site) {
    struct site_snow snow = {.given = site->ground_snow.given || site->snow_depth.given,
                             .by_depth = !site->ground_snow.given,
                             /* read in 7-10; that 7-16 keeps it is recalled */
                             .share = {1.0, "ASCE 7-16 2.4.1", MARK_MEMORY},
                             .roof_heated = site->heated,
                             .beside_house = site->beside_house,
                             .eave = site->eave,
                             .step = {.fetch = site->depth, .slope = site->roof_slope}};
    snow.question = (struct snow_question){.edition = site->edition,
                                           .ground = site->ground_snow.value,
                                           .terrain = site->exposure ? site->exposure : 'C',
                                           .exposure = SNOW_PARTIAL,
                                           .thermal = SNOW_UNHEATED,
                                           .risk = site->risk ? site->risk : 1};
    if (site->snow_depth.given)
        snow.depth_load = snow_pressure_by_density(site->snow_depth.value,
                                                   table_snow_density(site->snow_kind).value);
    else if (site->edition == EDITION_ASCE7_22)
        snow.share = table_constant("snow-share-22");
    return snow;
}

/* The snow question of one roof. Heat that melts snow is counted on roofs of glass and plastic as
 * on greenhouses; not under 3 ft, where the snow beside the box does not melt with it. */
static struct snow_question question_for(const struct site_snow *snow, double slope, double height,
                                         bool wood, bool roof) {
    struct snow_question question = snow->question;
    question.slope = slope;
    question.low = height < table_constant("low-lid-height").value * (1.0 - 1e-12);
    if (roof && snow->roof_heated)
        question.thermal = wood || question.low ? SNOW_HEATED : SNOW_GREENHOUSE;
    return question;
}

/* Does the wind of this way blow across the ridge of the gable that the roof belongs to? */
static bool blown_over(const struct cover *covers, size_t count, size_t cover, enum snow_way way) {
    enum snow_way side = side_of(&covers[cover]);
    bool front_back = way == SNOW_ON_FRONT || way == SNOW_ON_BACK;
    bool left_right = way == SNOW_ON_LEFT || way == SNOW_ON_RIGHT;
    bool faces_so = side == SNOW_ON_FRONT || side == SNOW_ON_BACK ? front_back : left_right;
    return faces_so && on_gable(covers, count, cover);
}

static struct snow_question cover_question(const struct site_snow *snow,
                                           const struct cover *cover) {
    return question_for(snow, cover->slope, (cover->top + cover->low) / 2.0, cover->wood, true);
}

/* The even snow of a map load. */
static double even(const struct snow_question *question, double level_run,
                   struct working *working) {
    struct roof_snow roof = snow_on_roof(question, working);
    double rain = snow_rain(question, level_run);
    double load = roof.sloped + rain;
    const char *formula = "ps";
    if (rain > 0.0) {
        working_given(working, "pr", "rain on the snow of a flat roof", rain, QUANTITY_PRESSURE);
        formula = "ps + pr";
    }
    if (isfinite(roof.minimum)) {
        load = fmax(load, roof.minimum);
        formula = rain > 0.0 ? "max(ps + pr, pm)" : "max(ps, pm)";
    }
    return working_step(working, "s", "snow that counts, on the level area", formula, load,
                        QUANTITY_PRESSURE, "");
}

/* What lies there besides, or in place of it: the pressure of one way. */
static double lies(const struct site_snow *snow, const struct snow_question *question, double top,
                   double level_run, enum snow_way way) {
    if (snow->by_depth)
        return snow->depth_load;
    double load = even(question, level_run, NULL);
    struct snow_step step = snow->step;
    step.height = snow->beside_house ? snow->eave - top : 0.0;
    if (way == SNOW_SLID)
        load += snow_slid(question, &step);
    if (way == SNOW_DRIFT) {
        struct roof_snow roof = snow_on_roof(question, NULL);
        load += snow_step_drift(question, &roof, &step).peak;
    }
    return load;
}

/* One side of a gable under snow blown over its ridge; of typed snow, which has no rule, one side
 * bare. */
static double blown(const struct site_snow *snow, const struct cover *cover, bool lee) {
    struct snow_question question = cover_question(snow, cover);
    if (snow->by_depth)
        return lee ? snow->depth_load : 0.0;
    struct roof_snow roof = snow_on_roof(&question, NULL);
    struct unbalanced_snow over = snow_unbalanced(&question, &roof, cover->level_run);
    if (!over.applies)
        return even(&question, cover->level_run, NULL);
    return lee ? over.lee : over.windward;
}

double snow_on_cover(const struct site_snow *snow, const struct cover *covers, size_t count,
                     size_t cover, enum snow_way way, struct working *working) {
    const struct cover *roof = &covers[cover];
    if (!snow->given || roof->kind == COVER_INSIDE ||
        roof->slope >= weather_row("snow-factors", "Cs.none").value ||
        !covers_leave_open(covers, count, roof->middle))
        return 0.0;
    if (blown_over(covers, count, cover, way))
        return blown(snow, roof, side_of(roof) == way);
    if (working && snow->by_depth)
        return working_given(working, "s", "snow typed by depth and kind, as it lies",
                             snow->depth_load, QUANTITY_PRESSURE);
    struct snow_question question = cover_question(snow, roof);
    if (working && way == SNOW_EVEN)
        return even(&question, roof->level_run, working);
    return lies(snow, &question, roof->top, roof->level_run, way);
}

double snow_on_shelf(const struct site_snow *snow, double height, double width, enum snow_way way) {
    if (!snow->given)
        return 0.0;
    struct snow_question question = question_for(snow, 0.0, height, true, false);
    return lies(snow, &question, height, width, way);
}
