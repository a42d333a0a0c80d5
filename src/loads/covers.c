#include "loads/covers.h"

#include "base/vector.h"

#include <math.h>
#include <stdio.h>

double ground_level(const struct model *model) {
    const struct frame *frame = model->frame;
    double ground = INFINITY;
    for (size_t k = 0; k < frame->supports.count; k++)
        ground = fmin(ground, frame->joints.items[frame->supports.items[k].joint].at[2]);
    return ground;
}

/* Has the sheet the shear values of wood panels? */
static bool is_wood(int sheet) {
    char row[128];
    struct cited value;
    snprintf(row, sizeof row, "%s.shear-stiffness", table_sheet(sheet)->name);
    return table_value("sheet-shear", row, &value);
}

static void take_corners(struct cover *cover, const struct frame *frame, double ground) {
    cover->top = -INFINITY;
    cover->low = INFINITY;
    for (int k = 0; k < 4; k++) {
        const double *at = frame->joints.items[cover->panel->corners[k]].at;
        for (int c = 0; c < 3; c++) {
            cover->corners[k][c] = at[c];
            cover->middle[c] += at[c] / 4.0;
        }
        cover->top = fmax(cover->top, at[2] - ground);
        cover->low = fmin(cover->low, at[2] - ground);
    }
}

/* The normal, turned outward. */
static void turn_outward(struct cover *cover, const struct model *model) {
    double a[3], b[3], out[3];
    vector_between(cover->corners[0], cover->corners[2], a);
    vector_between(cover->corners[1], cover->corners[3], b);
    vector_cross(a, b, cover->normal);
    vector_unit(cover->normal);
    vector_between(model->middle, cover->middle, out);
    out[2] = 0.0;
    double outward = cover->kind == COVER_ROOF ? cover->normal[2] : vector_dot(cover->normal, out);
    cover->sided = cover->kind == COVER_ROOF || fabs(outward) > 0.01;
    for (int c = 0; c < 3 && outward < 0.0; c++)
        cover->normal[c] = -cover->normal[c];
}

/* Level way along the fall of the panel; across all of it where it is level. */
static double level_run(const struct cover *cover) {
    double fall[2] = {cover->normal[0], cover->normal[1]}, most = 0.0;
    double steep = hypot(fall[0], fall[1]);
    for (int i = 0; i < 4; i++)
        for (int k = 0; k < i; k++) {
            double x = cover->corners[i][0] - cover->corners[k][0];
            double y = cover->corners[i][1] - cover->corners[k][1];
            double way =
                steep > 1e-6 ? fabs(x * fall[0] + y * fall[1]) / steep : fmax(fabs(x), fabs(y));
            most = fmax(most, way);
        }
    return most;
}

static void measure(struct arena *arena, const struct model *model, double ground,
                    struct cover *cover) {
    double a[3], b[3], normal[3];
    take_corners(cover, model->frame, ground);
    vector_between(cover->corners[0], cover->corners[2], a);
    vector_between(cover->corners[1], cover->corners[3], b);
    vector_cross(a, b, normal);
    cover->slope = atan2(hypot(normal[0], normal[1]), fabs(normal[2]));
    cover->kind = cover->slope <= table_constant("cover-upright").value * (1.0 + 1e-9) ? COVER_ROOF
                                                                                       : COVER_WALL;
    turn_outward(cover, model);
    cover->area = panel_area(model, cover->panel);
    cover->level_area = cover->area * cos(cover->slope);
    cover->level_run = level_run(cover);
    cover->wood = is_wood(cover->panel->sheet);
    cover->bearer_count = panel_bearers(arena, model, cover->panel, &cover->bearers);
}

bool cover_in_the_way(const struct cover *cover, const double from[3], const double direction[3]) {
    double to[3], hit[3];
    double toward = vector_dot(direction, cover->normal);
    vector_between(from, cover->middle, to);
    double distance = vector_dot(to, cover->normal) / toward;
    if (fabs(toward) < 1e-6 || !(distance > ALONG_TOLERANCE))
        return false;
    for (int c = 0; c < 3; c++)
        hit[c] = from[c] + distance * direction[c];
    double before = 0.0;
    for (int k = 0; k < 4; k++) {
        double edge[3], out[3], turn[3];
        vector_between(cover->corners[k], cover->corners[(k + 1) % 4], edge);
        vector_between(cover->corners[k], hit, out);
        vector_cross(edge, out, turn);
        double side = vector_dot(turn, cover->normal);
        if (fabs(side) > 1e-9 && before * side < 0.0)
            return false;
        if (fabs(side) > 1e-9)
            before = side;
    }
    return true;
}

bool covers_leave_open(const struct cover *covers, size_t count, const double point[3]) {
    static const double up[3] = {0.0, 0.0, 1.0};
    for (size_t k = 0; k < count; k++)
        if (covers[k].kind == COVER_ROOF && cover_in_the_way(&covers[k], point, up))
            return false;
    return true;
}

struct cover *covers_of(struct arena *arena, const struct model *model) {
    const struct frame *frame = model->frame;
    size_t count = frame->panels.count;
    struct cover *covers = ARENA_ARRAY(arena, struct cover, count);
    double ground = ground_level(model);
    for (size_t k = 0; k < count; k++) {
        covers[k].panel = &frame->panels.items[k];
        measure(arena, model, ground, &covers[k]);
    }
    bool *inside = ARENA_ARRAY(arena, bool, count);
    for (size_t k = 0; k < count; k++)
        inside[k] =
            covers[k].kind == COVER_ROOF && !covers_leave_open(covers, count, covers[k].middle);
    for (size_t k = 0; k < count; k++)
        if (inside[k])
            covers[k].kind = COVER_INSIDE;
    return covers;
}
