#include "draw/figure.h"

#include "base/vector.h"

#include <math.h>
#include <string.h>

struct point figure_point(const struct figure *figure, const double at[3]) {
    struct spot spot = view_spot(figure->view, at);
    return (struct point){figure->left + spot.x * figure->scale,
                          figure->top - spot.y * figure->scale};
}

struct point figure_direction(const struct figure *figure, const double along[3]) {
    struct spot spot = view_spot(figure->view, along);
    return (struct point){spot.x * figure->scale, -spot.y * figure->scale};
}

struct extent figure_extent(const struct drawing *drawing, const struct view *view) {
    struct extent extent = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (size_t m = 0; m < drawing->model->member_count; m++)
        for (int k = 0; k < 8; k++) {
            struct spot spot = view_spot(view, drawing->woods[m].corners[k]);
            extent.left = fmin(extent.left, spot.x);
            extent.right = fmax(extent.right, spot.x);
            extent.low = fmin(extent.low, spot.y);
            extent.high = fmax(extent.high, spot.y);
        }
    return extent;
}

struct margins figure_margins(const struct drawing *drawing, enum view_kind kind) {
    bool measured = drawing->shows[SHOW_DIMENSIONS] && kind != VIEW_CORNER;
    double aside = drawing->shows[SHOW_NAMES] ? 13.0 : 6.0;
    const struct view *view = &VIEWS[kind];
    bool loaded = drawing->shows[SHOW_LOADS];
    double level = loaded && figure_has_loads(drawing, view->right) ? 10.0 : 0.0;
    double upright = loaded && figure_has_loads(drawing, view->up) ? 10.0 : 0.0;
    double heights = measured ? 9.0 + figure_heights_width(drawing) : 0.0;
    return (struct margins){.left = fmax(aside, heights + level),
                            .top = 4.0 + upright,
                            .right = fmax(aside, 6.0 + level),
                            .bottom = measured ? 15.0 + (kind == VIEW_PLAN ? upright : 0.0) : 6.0};
}

/* Which share of the sides that look this way is not hidden. */
static void measure_shares(struct figure *figure) {
    const struct look *look = figure->look;
    size_t count = figure->drawing->model->member_count;
    double *all = ARENA_ARRAY(figure->arena, double, count);
    figure->shares = ARENA_ARRAY(figure->arena, double, count);
    for (size_t f = 0; f < look->face_count; f++) {
        const struct face_seen *face = &look->faces[f];
        all[face->member] += convex_area(&face->outline);
        for (size_t k = 0; k < face->pieces.count; k++)
            figure->shares[face->member] += convex_area(&face->pieces.items[k]);
    }
    for (size_t m = 0; m < count; m++)
        figure->shares[m] = all[m] > 0.0 ? figure->shares[m] / all[m] : 0.0;
}

bool figure_shows_stick(const struct figure *figure, size_t member) {
    bool corner = figure->kind == VIEW_CORNER;
    struct point along = figure_direction(figure, figure->drawing->model->members[member].axes[0]);
    return figure->shares[member] >= (corner ? 0.12 : 0.25) &&
           hypot(along.x, along.y) >= (corner ? 0.3 : 0.55) * figure->scale;
}

void figure_take(struct figure *figure, struct point at) {
    figure->taken.left = fmin(figure->taken.left, at.x);
    figure->taken.right = fmax(figure->taken.right, at.x);
    figure->taken.top = fmin(figure->taken.top, at.y);
    figure->taken.bottom = fmax(figure->taken.bottom, at.y);
}

static struct figure figure_start(const struct drawing *drawing, enum view_kind kind,
                                  const struct site_of_view *site, struct ink *ink) {
    const double scale = site->scale;
    const struct point at = site->at;
    const struct view *view = &VIEWS[kind];
    struct extent extent = figure_extent(drawing, view);
    struct figure figure = {.arena = drawing->arena,
                            .drawing = drawing,
                            .view = view,
                            .kind = kind,
                            .scale = scale,
                            .left = at.x - extent.left * scale,
                            .top = at.y + extent.high * scale,
                            .ink = ink,
                            .labels = {.arena = drawing->arena, .room = site->room}};
    figure.taken = (struct box){at.x, at.y, at.x + (extent.right - extent.left) * scale,
                                at.y + (extent.high - extent.low) * scale};
    figure.look =
        look_at(drawing->arena, drawing->woods, drawing->model->member_count, view, scale);
    measure_shares(&figure);
    return figure;
}

void figure_draw(const struct drawing *drawing, enum view_kind kind,
                 const struct site_of_view *site, struct ink *ink, struct left_out *left_out) {
    struct figure figure = figure_start(drawing, kind, site, ink);
    figure_woods(&figure);
    figure_feet(&figure);
    figure_sheets(&figure);
    if (drawing->shows[SHOW_BENT])
        figure_bent(&figure);
    if (drawing->shows[SHOW_BRACES])
        figure_braces(&figure);
    if (drawing->shows[SHOW_LOADS])
        figure_loads(&figure);
    if (drawing->shows[SHOW_DIMENSIONS] && kind != VIEW_CORNER)
        figure_measures(&figure);
    if (drawing->shows[SHOW_NAMES])
        figure_names(&figure);
    labels_place(&figure.labels, ink, left_out);
}

void figure_fold(const struct drawing *drawing, const struct site_of_view *site,
                 const struct motion *motion, struct ink *ink) {
    struct drawing bare = *drawing; /* the arrows are to be seen, not how hard the sticks work */
    memset(bare.shows, 0, sizeof bare.shows);
    struct figure figure = figure_start(&bare, VIEW_CORNER, site, ink);
    figure_woods(&figure);
    figure_feet(&figure);
    figure_motion(&figure, motion);
}
