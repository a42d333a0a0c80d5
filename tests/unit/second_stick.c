#include "second_stick.h"

#include <math.h>
#include <string.h>

#define PSI 6894.757293168361
#define INCH 0.0254

/* Table lumber, by the names that tests give their sticks: E in psi (2018 supplement, Table 4A) and
 * specific gravity of the species. Ungraded: the lower of the species' and Northern Species' No.3.
 */
static const struct {
    const char *name;
    double E, gravity, thickness, width;
} lumber[] = {
    {"spf-2x4", 1.4e6, 0.42, 1.5, 3.5},  {"dfl-2x2", 1.6e6, 0.50, 1.5, 1.5},
    {"hf-2x6", 1.3e6, 0.43, 1.5, 5.5},   {"spf-1x2", 1.0e6, 0.42, 0.75, 1.5},
    {"dfl-1x3", 1.0e6, 0.50, 0.75, 2.5}, {"spf-4x4", 1.4e6, 0.42, 3.5, 3.5},
};

bool second_wet(const struct frame *frame) {
    return frame->site.wet_service_given ? frame->site.wet_service
                                         : frame->site.place != PLACE_INDOORS;
}

static void cross(const double a[3], const double b[3], double out[3]) {
    out[0] = a[1] * b[2] - a[2] * b[1];
    out[1] = a[2] * b[0] - a[0] * b[2];
    out[2] = a[0] * b[1] - a[1] * b[0];
}

static double dot(const double a[3], const double b[3]) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static double weight_density(double gravity, double moisture) {
    return 1000.0 * gravity * (1.0 + moisture / 100.0) / (1.0 + 0.009 * gravity * moisture);
}

static bool upright(const double x[3]) {
    return hypot(x[0], x[1]) < 1e-6;
}

static void find_axes(const struct frame *frame, int m, struct second_stick *stick) {
    const struct member *member = &frame->members.items[m];
    const struct stick *kind = &frame->sticks.items[member->stick];
    const double *a = frame->joints.items[member->from].at;
    const double *b = frame->joints.items[member->to].at;
    double x[3] = {b[0] - a[0], b[1] - a[1], b[2] - a[2]}, y[3], z[3] = {0.0, 1.0, 0.0};
    stick->length = sqrt(dot(x, x));
    for (int c = 0; c < 3; c++)
        x[c] /= stick->length;
    if (!upright(x)) {
        double run = hypot(x[0], x[1]);
        z[0] = -x[2] * x[0] / run;
        z[1] = -x[2] * x[1] / run;
        z[2] = run;
    }
    cross(z, x, y);
    double turn = member->turn.given ? member->turn.value
                  : kind->turn.given ? kind->turn.value
                                     : 0.0;
    for (int c = 0; c < 3; c++) {
        stick->axes[0][c] = x[c];
        stick->axes[1][c] = cos(turn) * y[c] + sin(turn) * z[c];
        stick->axes[2][c] = cos(turn) * z[c] - sin(turn) * y[c];
    }
}

static void find_sizes(const struct member *member, const struct stick *kind, double t, double w,
                       struct second_stick *stick) {
    enum stands stands = member->stands ? member->stands : kind->stands;
    enum faces faces = member->faces ? member->faces : kind->faces;
    bool wide_y = upright(stick->axes[0]) ? faces != FACES_SIDE : stands == STANDS_FLAT;
    double y = wide_y ? w : t, z = wide_y ? t : w;
    stick->size_y = y;
    stick->size_z = z;
    stick->A = y * z;
    stick->Iz = z * y * y * y / 12.0;
    stick->Iy = y * z * z * z / 12.0;
    double r = t / w;
    stick->J = w * t * t * t * (1.0 / 3.0 - 0.21 * r * (1.0 - r * r * r * r / 12.0));
}

struct second_stick second_stick_of(const struct frame *frame, int m) {
    struct second_stick stick = {0};
    const struct member *member = &frame->members.items[m];
    const struct stick *kind = &frame->sticks.items[member->stick];
    bool wet = second_wet(frame);
    double density = 0.0;
    find_axes(frame, m, &stick);
    if (kind->has_section) {
        const struct own_section *own = &kind->section;
        bool shears = kind->material.G.given;
        stick.A = own->A, stick.Iy = own->Iy, stick.Iz = own->Iz, stick.J = own->J;
        stick.Ay = shears ? own->Ay : 0.0;
        stick.Az = shears ? own->Az : 0.0;
        /* pages silent: the rectangle of the same area and inertias */
        stick.size_y = sqrt(12.0 * own->Iz / own->A);
        stick.size_z = sqrt(12.0 * own->Iy / own->A);
    } else if (kind->has_material) {
        find_sizes(member, kind, kind->thickness, kind->width, &stick);
    }
    if (kind->has_material) {
        stick.E = kind->material.E;
        stick.G = kind->material.G.given ? kind->material.G.value : stick.E / 16.0;
        density = stick.slip_density = kind->material.density.value;
    }
    for (size_t k = 0; k < sizeof lumber / sizeof *lumber && !kind->has_material; k++)
        if (strcmp(lumber[k].name, kind->name) == 0) {
            find_sizes(member, kind, lumber[k].thickness * INCH, lumber[k].width * INCH, &stick);
            stick.E = lumber[k].E * PSI * (wet ? 0.9 : 1.0);
            stick.G = stick.E / 16.0;
            density = weight_density(lumber[k].gravity, wet ? 25.0 : 15.0);
            stick.slip_density = weight_density(lumber[k].gravity, 12.0);
        }
    stick.weight = stick.A * density * 9.80665;
    return stick;
}

/* 1: local y is nearer to the direction, 2: local z */
static int nearer(const struct second_stick *stick, const double direction[3]) {
    return fabs(dot(stick->axes[1], direction)) > fabs(dot(stick->axes[2], direction)) + 1e-9 ? 1
                                                                                              : 2;
}

static double across(const struct second_stick *stick, int screw) {
    return screw == 1 ? stick->size_z : stick->size_y;
}

static void lap(const struct connection *by, const struct second_stick *ending,
                const struct second_stick *host, bool wet, int range, double springs[6]) {
    double normal[3];
    cross(ending->axes[0], host->axes[0], normal);
    int screw = sqrt(dot(normal, normal)) < 1e-6 ? 2 : nearer(ending, normal);
    int other = screw == 1 ? 2 : 1;
    double w1 = across(ending, screw), w2 = across(host, nearer(host, ending->axes[screw]));
    double d = by->diameter, rho = sqrt(ending->slip_density * host->slip_density);
    double one = pow(rho, 1.5) * (d * 1000.0) / 23.0 * 1000.0 * (wet ? 2.0 / 3.0 : 1.0);
    double line = hypot(fmax(0.0, w1 - 5.0 * d), fmax(0.0, w2 - 5.0 * d)), sum = 0.0;
    int n = by->count;
    if (by->spacing.given)
        line = fmin(line, by->spacing.value * (n - 1));
    for (int k = 0; k < n && n > 1; k++) {
        double r = line * ((double)k / (n - 1) - 0.5);
        sum += r * r;
    }
    double share = range == SECOND_LOW ? 0.5 : range == SECOND_HIGH ? 2.0 : 1.0;
    double third = range == SECOND_LOW ? 1.0 / 3.0 : range == SECOND_HIGH ? 3.0 : 1.0;
    double small = fmin(w1, w2) / 0.038;
    springs[0] = springs[other] = n * one * share;
    springs[screw] = springs[3] = INFINITY;
    springs[3 + other] = 0.0;
    springs[3 + screw] = sum > 0.0 ? one * sum * share : 100.0 * small * small * third;
}

void second_springs(const struct connection *by, const struct second_stick *ending,
                    const struct second_stick *host, bool wet, int range, double springs[6]) {
    for (int c = 0; c < 6; c++)
        springs[c] = INFINITY;
    if (!by || by->type == CONNECTION_PINNED) {
        springs[3] = springs[4] = springs[5] = 0.0;
    } else if (by->type == CONNECTION_SPRINGS) {
        springs[4] = springs[5] = by->rotation.value;
        if (by->slip.given)
            springs[0] = by->slip.value;
    } else if (by->type == CONNECTION_SCREWED_BUTT) {
        double range_factor = range == SECOND_LOW ? 1.0 / 3.0 : range == SECOND_HIGH ? 3.0 : 1.0;
        double one = by->count > 1 ? 300.0 * (by->count / 2) : 100.0;
        springs[4] = one * range_factor * pow(ending->size_z / 0.038, 2.0);
        springs[5] = one * range_factor * pow(ending->size_y / 0.038, 2.0);
    } else if (by->type == CONNECTION_SCREWED_LAP) {
        lap(by, ending, host, wet, range, springs);
    }
}
