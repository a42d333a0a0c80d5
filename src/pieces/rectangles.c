#include "pieces/rectangles.h"

#include "base/vector.h"
#include "loads/panels.h"
#include "loads/shelves.h"

#include <math.h>

/* A panel in its own plane: corners counter-clockwise seen along -normal, m. */
struct outline {
    const struct model *model;
    const struct panel *panel;
    double u[3], v[3], normal[3];
    double at[4][2];
    double out[4]; /* of edge k (corner k to k + 1): to the outer edge of its stick, and overhang */
    bool edge_without_stick;
};

static const double *corner(const struct outline *outline, int k) {
    return outline->model->frame->joints.items[outline->panel->corners[k % 4]].at;
}

/* Is some of the stick under the line from a to b? */
static bool is_under(const struct model_member *stick, const double a[3], const double b[3]) {
    double edge[3], from[3], to[3], off[3];
    double length = vector_between(a, b, edge);
    vector_unit(edge);
    vector_cross(edge, stick->axes[0], off);
    if (vector_length(off) > 1e-3)
        return false;
    vector_between(a, stick->from, from);
    vector_between(a, stick->to, to);
    double p = vector_dot(from, edge), q = vector_dot(to, edge);
    for (int c = 0; c < 3; c++)
        off[c] = from[c] - p * edge[c];
    return vector_length(off) <= 2.0 * ALONG_TOLERANCE &&
           fmin(fmax(p, q), length) - fmax(fmin(p, q), 0.0) > ALONG_TOLERANCE;
}

static double half_stick(struct outline *outline, int edge, const double outwards[3]) {
    double widest = -1.0;
    for (size_t m = 0; m < outline->model->member_count; m++) {
        const struct model_member *stick = &outline->model->members[m];
        if (is_under(stick, corner(outline, edge), corner(outline, edge + 1)))
            widest = fmax(widest, member_extent(stick, outwards) / 2.0);
    }
    outline->edge_without_stick |= widest < 0.0;
    return fmax(widest, 0.0);
}

static struct outline outline_of(const struct model *model, const struct panel *panel) {
    struct outline outline = {.model = model, .panel = panel};
    double a[3], b[3];
    vector_between(corner(&outline, 0), corner(&outline, 2), a);
    vector_between(corner(&outline, 1), corner(&outline, 3), b);
    vector_cross(a, b, outline.normal);
    vector_unit(outline.normal);
    vector_between(corner(&outline, 0), corner(&outline, 1), outline.u);
    double out = vector_dot(outline.u, outline.normal);
    for (int c = 0; c < 3; c++)
        outline.u[c] -= out * outline.normal[c];
    vector_unit(outline.u);
    vector_cross(outline.normal, outline.u, outline.v);
    for (int k = 0; k < 4; k++) {
        double from[3], along[3], outwards[3];
        vector_between(corner(&outline, 0), corner(&outline, k), from);
        outline.at[k][0] = vector_dot(from, outline.u);
        outline.at[k][1] = vector_dot(from, outline.v);
        vector_between(corner(&outline, k), corner(&outline, k + 1), along);
        vector_cross(along, outline.normal, outwards);
        vector_unit(outwards);
        outline.out[k] = half_stick(&outline, k, outwards) + panel->overhang;
    }
    return outline;
}

/* The corner between edges k - 1 and k, both moved outwards. */
static void moved_corner(const struct outline *outline, int k, double moved[2]) {
    const double *here = outline->at[k], *before = outline->at[(k + 3) % 4];
    const double *after = outline->at[(k + 1) % 4];
    double d1[2] = {here[0] - before[0], here[1] - before[1]};
    double d2[2] = {after[0] - here[0], after[1] - here[1]};
    double l1 = hypot(d1[0], d1[1]), l2 = hypot(d2[0], d2[1]);
    double o1 = outline->out[(k + 3) % 4], o2 = outline->out[k];
    /* outwards is to the right of the way round; n . x = n . here + out for both edges */
    double n1[2] = {d1[1] / l1, -d1[0] / l1}, n2[2] = {d2[1] / l2, -d2[0] / l2};
    double cross = n1[0] * n2[1] - n1[1] * n2[0];
    moved[0] = here[0];
    moved[1] = here[1];
    if (fabs(cross) < 1e-6) {
        moved[0] += n1[0] * fmax(o1, o2);
        moved[1] += n1[1] * fmax(o1, o2);
        return;
    }
    moved[0] += (o1 * n2[1] - o2 * n1[1]) / cross;
    moved[1] += (o2 * n1[0] - o1 * n2[0]) / cross;
}

/* Extents along the direction of an edge and across it. */
static void box(const struct outline *outline, const double (*corners)[2], int edge,
                double size[2]) {
    const double *a = outline->at[edge], *b = outline->at[(edge + 1) % 4];
    double length = hypot(b[0] - a[0], b[1] - a[1]);
    double direction[2] = {(b[0] - a[0]) / length, (b[1] - a[1]) / length};
    double low[2] = {INFINITY, INFINITY}, high[2] = {-INFINITY, -INFINITY};
    for (int k = 0; k < 4; k++) {
        double along = corners[k][0] * direction[0] + corners[k][1] * direction[1];
        double across = corners[k][1] * direction[0] - corners[k][0] * direction[1];
        low[0] = fmin(low[0], along);
        high[0] = fmax(high[0], along);
        low[1] = fmin(low[1], across);
        high[1] = fmax(high[1], across);
    }
    size[0] = high[0] - low[0];
    size[1] = high[1] - low[1];
}

static double area_of(const double (*corners)[2]) {
    double twice = 0.0;
    for (int k = 0; k < 4; k++) {
        const double *a = corners[k], *b = corners[(k + 1) % 4];
        twice += a[0] * b[1] - a[1] * b[0];
    }
    return fabs(twice) / 2.0;
}

/* Is the run of the panel nearer to the direction of this edge than across it? */
static bool runs_along(const struct outline *outline, int edge) {
    double run[3], along[3];
    panel_run(outline->model, outline->panel, run);
    vector_between(corner(outline, edge), corner(outline, edge + 1), along);
    vector_unit(run);
    vector_unit(along);
    return fabs(vector_dot(run, along)) > SINE_45;
}

struct rectangle panel_rectangle(const struct model *model, const struct panel *panel) {
    struct outline outline = outline_of(model, panel);
    double corners[4][2], size[2] = {INFINITY, INFINITY};
    int best = 0;
    for (int k = 0; k < 4; k++)
        moved_corner(&outline, k, corners[k]);
    for (int edge = 0; edge < 4; edge++) {
        double now[2];
        box(&outline, (const double(*)[2])corners, edge, now);
        if (edge > 0 && !(now[0] * now[1] < size[0] * size[1] * (1.0 - 1e-9)))
            continue;
        best = edge;
        size[0] = now[0];
        size[1] = now[1];
    }
    bool along = runs_along(&outline, best);
    double area = area_of((const double(*)[2])corners);
    return (struct rectangle){.along = size[along ? 0 : 1],
                              .across = size[along ? 1 : 0],
                              .area = area,
                              .is_whole = area > size[0] * size[1] * (1.0 - 1e-6),
                              .edge_without_stick = outline.edge_without_stick};
}

bool sheet_is_fluted(int sheet) {
    struct cited ribs;
    return table_value("sheet-ribs", table_sheet(sheet)->name, &ribs) && ribs.value > 0.0;
}

struct sheet_parts sheet_parts(struct arena *arena, const struct model *model) {
    const struct frame *frame = model->frame;
    struct sheet_parts parts = {0};
    for (size_t p = 0; p < frame->panels.count; p++) {
        const struct panel *panel = &frame->panels.items[p];
        struct sheet_part part = {.name = panel->name,
                                  .sheet = panel->sheet,
                                  .panel = (int)p,
                                  .shelf = -1,
                                  .rectangle = panel_rectangle(model, panel)};
        ARRAY_PUSH(arena, &parts, part);
    }
    for (size_t s = 0; s < frame->shelves.count; s++) {
        const struct shelf *shelf = &frame->shelves.items[s];
        if (shelf->deck != DECK_SHEET)
            continue;
        struct shelf_loading size = shelves_measure(arena, model, shelf);
        double along = size.end - size.start;
        struct sheet_part part = {.name = arena_print(arena, "%s/deck", shelf->name),
                                  .sheet = shelf->sheet,
                                  .panel = -1,
                                  .shelf = (int)s,
                                  .rectangle = {.along = along,
                                                .across = size.width,
                                                .area = along * size.width,
                                                .is_whole = true}};
        ARRAY_PUSH(arena, &parts, part);
    }
    return parts;
}
