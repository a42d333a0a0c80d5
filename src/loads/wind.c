#include "loads/wind.h"

#include "base/vector.h"
#include "weather/units.h"

#include <math.h>
#include <stdio.h>

static const char *const TABLE = "wind-factors";

const char *wind_way_name(enum wind_way way) {
    static const char *const NAMES[] = {/* ORDER WIND */ [WIND_IN] = "",
                                        [WIND_OUT] = "out",
                                        [WIND_OPEN] = "open",
                                        [WIND_OPEN_OUT] = "open-out"};
    return NAMES[way];
}

const double *wind_direction(enum wind_from from) {
    static const double DIRECTIONS[WIND_SIDES][3] = {/* ORDER WIND */ [WIND_FROM_LEFT] = {1, 0, 0},
                                                     [WIND_FROM_RIGHT] = {-1, 0, 0},
                                                     [WIND_FROM_FRONT] = {0, 1, 0},
                                                     [WIND_FROM_BACK] = {0, -1, 0}};
    return DIRECTIONS[from];
}

struct site_wind site_wind_of(const struct site *site, double height, enum unit_system units) {
    struct site_wind wind = {.given = site->wind.given || site->gust.given || site->wind_word >= 0};
    if (!wind.given)
        return wind;
    wind.real = !site->wind.given;
    wind.share = wind.real ? (struct cited){1.0, "a gust as it blows", MARK_TRADE}
                           : table_constant("map-wind-share");
    wind.service = table_constant(wind.real ? "service-gust" : "service-wind");
    double speed = site->wind.given   ? site->wind.value
                   : site->gust.given ? site->gust.value
                                      : table_wind_word_gust(site->wind_word).value;
    wind.question = (struct wind_question){.edition = site->edition,
                                           .speed = speed,
                                           .exposure = site->exposure ? site->exposure : 'C',
                                           .height = height,
                                           .units = units};
    wind.q = wind_pressure(&wind.question, NULL).q;
    return wind;
}

/* -1 where the wall meets this wind, 1 where it stands behind, 0 beside. */
static int facing(const struct cover *cover, enum wind_from from) {
    double along = vector_dot(cover->normal, wind_direction(from));
    return along < -0.5 ? -1 : along > 0.5 ? 1 : 0;
}

struct wind_box wind_box_of(const struct cover *covers, size_t count, bool beside_house) {
    struct wind_box box = {0};
    bool sides[WIND_SIDES] = {0}, roof = false;
    for (size_t k = 0; k < count; k++) {
        const struct cover *cover = &covers[k];
        if (cover->kind == COVER_INSIDE)
            continue;
        box.covered = true;
        box.opens += cover->panel->opens;
        roof |= cover->kind == COVER_ROOF;
        if (cover->kind != COVER_WALL)
            continue;
        box.walls = true;
        for (int from = 0; from < WIND_SIDES; from++)
            sides[from] |= cover->sided && facing(cover, from) < 0;
    }
    int closed = sides[0] + sides[1] + sides[2] + sides[3];
    box.gapes = roof && closed == 3 && !beside_house;
    return box;
}

bool wind_way_occurs(const struct wind_box *box, enum wind_way way) {
    if (way == WIND_IN)
        return true;
    return way == WIND_OUT ? box->covered : box->opens > 0;
}

bool wind_stands_open(const struct cover *cover, enum wind_way way) {
    return cover->panel->opens && (way == WIND_OPEN || way == WIND_OPEN_OUT);
}

/* A coefficient of the envelope, or that of a box with a hole. */
static struct cited envelope(const char *what, bool hole) {
    char row[40];
    snprintf(row, sizeof row, "%s%s", what, hole ? "-open" : "");
    return weather_row(TABLE, row);
}

/* A free roof: G times the mean of the two halves, straight between the slopes of the figure. */
static struct cited free_roof(const char *what, double slope) {
    static const struct {
        double degrees;
        const char *name;
    } SLOPES[] = {{0, "0"}, {7.5, "7.5"}, {15, "15"}, {22.5, "22.5"}, {30, "30"}, {45, "45"}};
    enum { ROWS = sizeof SLOPES / sizeof *SLOPES };
    double degrees = slope / WEATHER_DEGREE;
    int k = 0;
    while (k + 1 < ROWS && degrees >= SLOPES[k + 1].degrees * (1.0 - 1e-9))
        k++;
    char row[40];
    snprintf(row, sizeof row, "free-roof.%s.%s", what, SLOPES[k].name);
    struct cited value = weather_row(TABLE, row);
    if (k > 0 && k + 1 < ROWS) {
        snprintf(row, sizeof row, "free-roof.%s.%s", what, SLOPES[k + 1].name);
        value.value += (weather_row(TABLE, row).value - value.value) *
                       (degrees - SLOPES[k].degrees) / (SLOPES[k + 1].degrees - SLOPES[k].degrees);
    }
    value.value *= weather_row(TABLE, "gust").value;
    return value;
}

static struct cited roof_push(const struct wind_box *box, const struct cover *cover, bool hole) {
    if (!box->walls)
        return free_roof("push", cover->slope);
    bool steep = cover->slope > weather_row(TABLE, "lid-push-slope").value * (1.0 + 1e-9);
    return envelope(steep ? "lid-push-steep" : "lid-push", hole);
}

static struct cited roof_lift(const struct wind_box *box, const struct cover *cover, bool hole) {
    return box->walls ? envelope("lid-lift", hole) : free_roof("lift", cover->slope);
}

/* Coefficient along the outward normal: out is positive. */
static double coefficient(const struct wind_box *box, const struct cover *cover,
                          enum wind_from from, enum wind_way way) {
    bool out = way == WIND_OUT || way == WIND_OPEN_OUT;
    bool hole = box->gapes || way == WIND_OPEN || way == WIND_OPEN_OUT;
    if (cover->kind == COVER_INSIDE)
        return 0.0;
    if (cover->kind == COVER_ROOF)
        return out ? roof_lift(box, cover, hole).value : -roof_push(box, cover, hole).value;
    double whole = weather_row(TABLE, "box-push").value;
    double in = envelope("wall-in", hole).value;
    int side = facing(cover, from);
    if (!cover->sided) /* a lone wall: pressed along with the wind */
        return side * whole;
    if (side < 0)
        return out ? 0.0 : -in;
    if (side > 0 && !out)
        return fmax(0.0, whole - in);
    return envelope("wall-out", hole).value;
}

void wind_on_cover(const struct site_wind *wind, const struct wind_box *box,
                   const struct cover *cover, enum wind_from from, enum wind_way way,
                   double force[3]) {
    double size = wind->q * coefficient(box, cover, from, way) * cover->area;
    for (int c = 0; c < 3; c++)
        force[c] = size * cover->normal[c];
}

/* The way across the shut panel from its hinges to the edge that opens, a unit vector. */
static void across_from_hinge(const struct cover *cover, double across[3]) {
    const struct panel *panel = cover->panel;
    double hinge[3] = {0}, edge[3] = {0};
    for (int k = 0; k < 4; k++) {
        bool hung = panel->corners[k] == panel->hinge[0] || panel->corners[k] == panel->hinge[1];
        for (int c = 0; c < 3; c++)
            (hung ? hinge : edge)[c] += cover->corners[k][c] / 2.0;
    }
    vector_between(hinge, edge, across);
    vector_unit(across);
}

void wind_on_plate(const struct site_wind *wind, const struct cover *cover, enum wind_from from,
                   enum wind_way way, double at_hinges[3], double at_edge[3]) {
    double across[3], open[3];
    across_from_hinge(cover, across);
    double cosine = cos(cover->panel->opens_angle), sine = sin(cover->panel->opens_angle);
    for (int c = 0; c < 3; c++)
        open[c] = cover->normal[c] * cosine - across[c] * sine;
    double along = vector_dot(open, wind_direction(from));
    double sign = along < -0.1 ? -1.0 : 1.0;
    if (way == WIND_OPEN_OUT)
        sign = -sign;
    double size = sign * weather_row(TABLE, "lid-open").value * wind->q * cover->area;
    for (int c = 0; c < 3; c++) {
        at_edge[c] = size / 2.0 * cover->normal[c];
        at_hinges[c] = size * open[c] - at_edge[c];
    }
}

struct cover_wind wind_worst_on_cover(const struct wind_box *box, const struct cover *cover) {
    bool hole = box->gapes || box->opens > (cover->panel->opens ? 1u : 0u);
    if (cover->kind == COVER_WALL)
        return (struct cover_wind){envelope("wall-in", hole), envelope("wall-out", hole),
                                   envelope("wall-out", hole)};
    struct cover_wind worst = {roof_push(box, cover, hole), roof_lift(box, cover, hole),
                               envelope("lid-lift-edge", hole)};
    if (worst.edge.value < worst.out.value)
        worst.edge = worst.out;
    return worst;
}
