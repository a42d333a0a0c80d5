#include "draw/look.h"

#include <math.h>
#include <stdlib.h>

#define APART 2e-4 /* m: depths that differ by less count as one plane */

static double depth_at(const struct face_seen *face, struct point at) {
    return face->depth[0] * at.x + face->depth[1] * at.y + face->depth[2];
}

static bool patches_meet(struct patch a, struct patch b) {
    return a.left <= b.right && b.left <= a.right && a.low <= b.high && b.low <= a.high;
}

/* The faces that may touch a patch of paper, each once. */
struct found {
    int *items;
    size_t count, capacity;
};
static void faces_near(struct look *look, struct patch patch, struct found *found) {
    struct squares on = look_squares(look, patch);
    look->questions++;
    found->count = 0;
    if (on.column > on.last_column || on.row > on.last_row)
        return;
    for (size_t r = on.row; r <= on.last_row; r++)
        for (size_t c = on.column; c <= on.last_column; c++) {
            size_t square = r * look->columns + c;
            for (size_t k = look->first[square]; k < look->first[square + 1]; k++) {
                int f = look->touching[k];
                const struct convex *outline = &look->faces[f].outline;
                if (look->asked[f] == look->questions)
                    continue;
                look->asked[f] = look->questions;
                if (patches_meet(patch, patch_of(outline->corners, outline->count)))
                    ARRAY_PUSH(look->arena, found, f);
            }
        }
}

/* The part of `front` that lies in front of `face`. */
static struct convex part_in_front(struct arena *arena, const struct face_seen *front,
                                   const struct face_seen *face) {
    double apart = front->member < face->member ? -APART : APART;
    return convex_clip(arena, &front->outline, face->depth[0] - front->depth[0],
                       face->depth[1] - front->depth[1], front->depth[2] - face->depth[2] - apart);
}

static void hide_face(struct look *look, struct face_seen *face, struct found *near) {
    faces_near(look, patch_of(face->outline.corners, face->outline.count), near);
    ARRAY_PUSH(look->arena, &face->pieces, face->outline);
    for (size_t k = 0; k < near->count && face->pieces.count; k++) {
        const struct face_seen *front = &look->faces[near->items[k]];
        if (front->member == face->member)
            continue;
        struct convex hole = part_in_front(look->arena, front, face);
        if (hole.count >= 3 && convex_area(&hole) > CONVEX_NOTHING)
            face->pieces = convex_without(look->arena, &face->pieces, &hole);
    }
}

void look_hide(struct look *look) {
    struct found near = {0};
    for (size_t f = 0; f < look->face_count; f++)
        hide_face(look, &look->faces[f], &near);
}

/* Where the face is more than `apart` in front of the line, within begin to end. */
static bool stretch_behind(const struct face_seen *face, const struct line_seen *line, double apart,
                           struct stretch *stretch) {
    double start = depth_at(face, line->ends[0]) - line->depths[0] - apart;
    double slope = depth_at(face, line->ends[1]) - line->depths[1] - apart - start;
    if (fabs(slope) < 1e-12)
        return start > 0.0;
    double share = -start / slope;
    if (slope > 0.0)
        stretch->begin = fmax(stretch->begin, share);
    else
        stretch->end = fmin(stretch->end, share);
    return stretch->end > stretch->begin;
}

static void add_hidden(struct look *look, const struct face_seen *face,
                       const struct line_seen *line, bool tie, struct stretches *hidden) {
    struct stretch stretch;
    if (convex_stretch(&face->outline, line->ends[0], line->ends[1], !tie, &stretch.begin,
                       &stretch.end) &&
        stretch_behind(face, line, tie ? -APART : APART, &stretch))
        ARRAY_PUSH(look->arena, hidden, stretch);
}

static int compare_stretches(const void *left, const void *right) {
    const struct stretch *a = left, *b = right;
    return (a->begin > b->begin) - (a->begin < b->begin);
}

/* What the hidden parts leave over. */
static struct stretches rest_of(struct arena *arena, struct stretches *hidden) {
    struct stretches seen = {0};
    double from = 0.0;
    if (hidden->count)
        qsort(hidden->items, hidden->count, sizeof *hidden->items, compare_stretches);
    for (size_t k = 0; k < hidden->count; k++) {
        if (hidden->items[k].begin > from + 1e-9)
            ARRAY_PUSH(arena, &seen, (struct stretch){from, hidden->items[k].begin});
        from = fmax(from, hidden->items[k].end);
    }
    if (from < 1.0 - 1e-9)
        ARRAY_PUSH(arena, &seen, (struct stretch){from, 1.0});
    return seen;
}

struct stretches look_line(struct look *look, const struct line_seen *line) {
    struct found near = {0};
    struct stretches hidden = {0};
    faces_near(look, patch_of(line->ends, 2), &near);
    for (size_t k = 0; k < near.count; k++) {
        const struct face_seen *face = &look->faces[near.items[k]];
        if (face->member == line->member)
            continue;
        add_hidden(look, face, line, false, &hidden);
        if (line->member >= 0 && face->member < line->member)
            add_hidden(look, face, line, true, &hidden);
    }
    return rest_of(look->arena, &hidden);
}
