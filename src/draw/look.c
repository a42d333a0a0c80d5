/* The sides and edges of the sticks on the paper, and which of them lie near a place; what hides
 * what is in hidden.c. */
#include "draw/look.h"

#include "base/vector.h"

#include <math.h>

enum { SIDES = 6, EDGES = 12, MOST_SQUARES = 400 };
#define EDGEWISE 1e-6 /* cosine under which a side is seen as a line */

/* Corners of wood (bits: y, z, end) round each side; each edge with the two sides that meet in it.
 */
static const int SIDE_CORNERS[SIDES][4] = {{0, 2, 6, 4}, {1, 3, 7, 5}, {0, 1, 5, 4},
                                           {2, 3, 7, 6}, {0, 1, 3, 2}, {4, 5, 7, 6}};
static const struct {
    int ends[2], sides[2];
} EDGE_ENDS[EDGES] = {{{0, 4}, {0, 2}}, {{1, 5}, {1, 2}}, {{2, 6}, {0, 3}}, {{3, 7}, {1, 3}},
                      {{0, 1}, {2, 4}}, {{1, 3}, {1, 4}}, {{3, 2}, {3, 4}}, {{2, 0}, {0, 4}},
                      {{4, 5}, {2, 5}}, {{5, 7}, {1, 5}}, {{7, 6}, {3, 5}}, {{6, 4}, {0, 5}}};

struct facing {
    bool shown[SIDES];
    double normals[SIDES][3]; /* right, up, toward; outward */
};

static void to_view(const struct view *view, const double in[3], double out[3]) {
    struct spot spot = view_spot(view, in);
    out[0] = spot.x;
    out[1] = spot.y;
    out[2] = spot.depth;
}

static struct facing facing_of(const struct wood *wood, const struct view *view) {
    struct facing facing = {0};
    double middle[3] = {0};
    for (int k = 0; k < 8; k++)
        for (int c = 0; c < 3; c++)
            middle[c] += wood->corners[k][c] / 8.0;
    for (int s = 0; s < SIDES; s++) {
        const int *round = SIDE_CORNERS[s];
        double one[3], other[3], outward[3], normal[3];
        vector_between(wood->corners[round[0]], wood->corners[round[1]], one);
        vector_between(wood->corners[round[0]], wood->corners[round[3]], other);
        vector_between(middle, wood->corners[round[0]], outward);
        vector_cross(one, other, normal);
        vector_unit(normal);
        double sign = vector_dot(normal, outward) < 0.0 ? -1.0 : 1.0;
        for (int c = 0; c < 3; c++)
            normal[c] *= sign;
        to_view(view, normal, facing.normals[s]);
        facing.shown[s] = facing.normals[s][2] > EDGEWISE;
    }
    return facing;
}

static struct point on_paper(const struct view *view, const double at[3], double scale,
                             double *depth) {
    struct spot spot = view_spot(view, at);
    *depth = spot.depth;
    return (struct point){spot.x * scale, spot.y * scale};
}

static struct face_seen face_of(struct look *look, const struct wood *wood, int side,
                                const double normal[3], const struct view *view, double scale) {
    struct face_seen face = {.member = wood->member,
                             .outline = {ARENA_ARRAY(look->arena, struct point, 4), 4}};
    double depth = 0.0;
    for (int k = 0; k < 4; k++)
        face.outline.corners[k] =
            on_paper(view, wood->corners[SIDE_CORNERS[side][k]], scale, &depth);
    face.depth[0] = -normal[0] / (normal[2] * scale);
    face.depth[1] = -normal[1] / (normal[2] * scale);
    face.depth[2] = depth - face.depth[0] * face.outline.corners[3].x -
                    face.depth[1] * face.outline.corners[3].y;
    return face;
}

static void add_wood(struct look *look, const struct wood *wood, const struct view *view,
                     double scale) {
    struct facing facing = facing_of(wood, view);
    for (int s = 0; s < SIDES; s++)
        if (facing.shown[s]) {
            struct face_seen face = face_of(look, wood, s, facing.normals[s], view, scale);
            if (convex_area(&face.outline) > CONVEX_NOTHING)
                look->faces[look->face_count++] = face;
        }
    for (int e = 0; e < EDGES; e++) {
        bool one = facing.shown[EDGE_ENDS[e].sides[0]], other = facing.shown[EDGE_ENDS[e].sides[1]];
        if (!one && !other)
            continue;
        struct line_seen *edge = &look->edges[look->edge_count++];
        *edge = (struct line_seen){.member = wood->member, .outer = one != other};
        for (int k = 0; k < 2; k++)
            edge->ends[k] =
                on_paper(view, wood->corners[EDGE_ENDS[e].ends[k]], scale, &edge->depths[k]);
    }
}

/* ---- squares of the paper ---- */

struct patch patch_of(const struct point *points, size_t count) {
    struct patch patch = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (size_t k = 0; k < count; k++) {
        patch.left = fmin(patch.left, points[k].x);
        patch.right = fmax(patch.right, points[k].x);
        patch.low = fmin(patch.low, points[k].y);
        patch.high = fmax(patch.high, points[k].y);
    }
    return patch;
}

static struct patch bounds_of(const struct convex *shape) {
    return patch_of(shape->corners, shape->count);
}

struct squares look_squares(const struct look *look, struct patch patch) {
    struct squares out = {1, 0, 1, 0};
    double c0 = (patch.left - look->left) / look->square,
           r0 = (patch.low - look->bottom) / look->square;
    double c1 = (patch.right - look->left) / look->square,
           r1 = (patch.high - look->bottom) / look->square;
    if (!(c1 >= 0.0) || !(r1 >= 0.0) || !(c0 < (double)look->columns) || !(r0 < (double)look->rows))
        return out;
    out.column = (size_t)fmax(c0, 0.0);
    out.row = (size_t)fmax(r0, 0.0);
    out.last_column = (size_t)fmin(c1, (double)look->columns - 1.0);
    out.last_row = (size_t)fmin(r1, (double)look->rows - 1.0);
    return out;
}

static void lay_squares(struct look *look) {
    struct patch all = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (size_t f = 0; f < look->face_count; f++) {
        struct patch one = bounds_of(&look->faces[f].outline);
        all = (struct patch){fmin(all.left, one.left), fmin(all.low, one.low),
                             fmax(all.right, one.right), fmax(all.high, one.high)};
    }
    if (!look->face_count)
        all = (struct patch){0.0, 0.0, 1.0, 1.0};
    double wide = fmax(all.right - all.left, 1.0), high = fmax(all.high - all.low, 1.0);
    double wanted = fmax(1.0, (double)look->face_count);
    look->square = fmax(sqrt(wide * high / wanted), fmax(wide, high) / MOST_SQUARES);
    look->left = all.left;
    look->bottom = all.low;
    look->columns = (size_t)(wide / look->square) + 1;
    look->rows = (size_t)(high / look->square) + 1;
}

/* Count, or with `touching` put down, the faces of every square. */
static void share_out(struct look *look, size_t *next, bool count) {
    for (size_t f = 0; f < look->face_count; f++) {
        struct squares on = look_squares(look, bounds_of(&look->faces[f].outline));
        for (size_t r = on.row; r <= on.last_row && on.row <= on.last_row; r++)
            for (size_t c = on.column; c <= on.last_column; c++) {
                size_t square = r * look->columns + c;
                if (count)
                    look->first[square + 1]++;
                else
                    look->touching[next[square]++] = (int)f;
            }
    }
}

static void fill_squares(struct look *look) {
    size_t squares = look->columns * look->rows;
    look->first = ARENA_ARRAY(look->arena, size_t, squares + 1);
    size_t *next = ARENA_ARRAY(look->arena, size_t, squares + 1);
    share_out(look, next, true);
    for (size_t k = 0; k < squares; k++)
        look->first[k + 1] += look->first[k];
    for (size_t k = 0; k < squares; k++)
        next[k] = look->first[k];
    look->touching = ARENA_ARRAY(look->arena, int, look->first[squares]);
    share_out(look, next, false);
    look->asked = ARENA_ARRAY(look->arena, size_t, look->face_count);
}

struct look *look_at(struct arena *arena, const struct wood *woods, size_t count,
                     const struct view *view, double scale) {
    struct look *look = ARENA_NEW(arena, struct look);
    look->arena = arena;
    look->faces = ARENA_ARRAY(arena, struct face_seen, SIDES * count);
    look->edges = ARENA_ARRAY(arena, struct line_seen, EDGES * count);
    for (size_t k = 0; k < count; k++)
        add_wood(look, &woods[k], view, scale);
    lay_squares(look);
    fill_squares(look);
    look_hide(look);
    return look;
}
