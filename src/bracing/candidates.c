#include "bracing/candidates.h"

#include "base/vector.h"
#include "bracing/net.h"
#include "bracing/polygon.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define CROSSES 0.005 /* m of a brace within a panel that make it lie across it */
#define MARGIN 0.001  /* m: a brace along the edge of a panel does not lie across it */

struct list {
    struct candidate *items;
    size_t count, capacity;
};

/* Where no brace may go: a panel that opens or is named in `keep-open`. */
struct closed {
    const struct panel *panel;
    bool opens;
    struct polygon polygon;
};

struct closed_list {
    struct closed *items;
    size_t count, capacity;
};

static bool named_open(const struct frame *frame, const struct panel *panel) {
    for (size_t k = 0; k < frame->keep_open.count; k++)
        if (strcmp(frame->keep_open.items[k], panel->name) == 0)
            return true;
    return false;
}

static struct closed_list closed_panels(struct arena *arena, const struct frame *frame) {
    struct closed_list list = {0};
    for (size_t p = 0; p < frame->panels.count; p++) {
        const struct panel *panel = &frame->panels.items[p];
        bool opens = panel->opens || panel->held == HELD_HINGED || panel->held == HELD_SLIDING;
        struct closed closed = {.panel = panel, .opens = opens};
        const double *at[4];
        for (int k = 0; k < 4; k++)
            at[k] = frame->joints.items[panel->corners[k]].at;
        if ((opens || named_open(frame, panel)) && polygon_make(at, INFINITY, &closed.polygon))
            ARRAY_PUSH(arena, &list, closed);
    }
    return list;
}

static void close_off(struct arena *arena, const struct cells *cells,
                      const struct closed_list *closed, struct candidate *candidate) {
    const struct face *face = &cells->faces[candidate->face];
    const double *from = cells->model->frame->joints.items[candidate->from].at;
    const double *to = cells->model->frame->joints.items[candidate->to].at;
    candidate->closed_by = "";
    candidate->closed_off = face->kept_open;
    if (face->kept_open)
        candidate->closed_by = arena_print(arena, "%s is kept open", face->the);
    for (size_t k = 0; k < closed->count && !candidate->closed_off; k++) {
        const struct closed *one = &closed->items[k];
        /* corners of a panel may be a little out of plane: twice the tolerance */
        if (!(polygon_off(&one->polygon, from) <= 2.0 * CELL_FLAT) ||
            !(polygon_off(&one->polygon, to) <= 2.0 * CELL_FLAT) ||
            !(polygon_cut(&one->polygon, from, to, MARGIN) > CROSSES))
            continue;
        candidate->closed_off = true;
        candidate->closed_by = arena_print(arena, "the panel %s %s", one->panel->name,
                                           one->opens ? "opens" : "is kept open");
    }
}

static void add(struct arena *arena, const struct net *net, struct list *list, int one, int other,
                struct candidate candidate) {
    double rise = net_at(net, other)[2] - net_at(net, one)[2];
    bool level = fabs(rise) <= ALONG_TOLERANCE;
    bool forward = level ? one < other : rise > 0.0;
    candidate.from = forward ? one : other;
    candidate.to = forward ? other : one;
    if (one == other || (net->held[one] && net->held[other]) ||
        net_common_stick(net, one, other) >= 0)
        return;
    ARRAY_PUSH(arena, list, candidate);
}

static void add_cells(struct arena *arena, const struct net *net, const struct cells *cells,
                      struct list *list) {
    for (size_t k = 0; k < cells->count; k++)
        for (int pair = 0; pair < 2; pair++) {
            const struct cell *cell = &cells->items[k];
            add(arena, net, list, cell->joints[pair], cell->joints[pair + 2],
                (struct candidate){.where = cell->where, .face = cell->face, .cell = (int)k});
        }
}

/* Corners of a face: the joints of its cells that reach furthest down or up, and to either side. */
struct corners {
    int joint[2][2]; /* [up][right]; -1: none yet */
    double reach[2][2];
};

struct extent {
    double low[2], high[2]; /* across, upward */
};

static void measure(const struct net *net, const struct cells *cells, struct extent *extents) {
    for (size_t f = 0; f < cells->face_count; f++)
        extents[f] = (struct extent){{INFINITY, INFINITY}, {-INFINITY, -INFINITY}};
    for (size_t k = 0; k < cells->count; k++) {
        const struct face *face = &cells->faces[cells->items[k].face];
        struct extent *extent = &extents[cells->items[k].face];
        for (int c = 0; c < 4; c++) {
            const double *at = net_at(net, cells->items[k].joints[c]);
            double place[2] = {vector_dot(at, face->across), vector_dot(at, face->upward)};
            for (int d = 0; d < 2; d++) {
                extent->low[d] = fmin(extent->low[d], place[d]);
                extent->high[d] = fmax(extent->high[d], place[d]);
            }
        }
    }
}

static void stretch(const struct net *net, const struct face *face, const struct extent *extent,
                    int joint, struct corners *corners) {
    const double *at = net_at(net, joint);
    double share[2] = {
        (vector_dot(at, face->across) - extent->low[0]) / (extent->high[0] - extent->low[0]),
        (vector_dot(at, face->upward) - extent->low[1]) / (extent->high[1] - extent->low[1])};
    for (int up = 0; up < 2; up++)
        for (int right = 0; right < 2; right++) {
            double reach = (right ? share[0] : -share[0]) + (up ? share[1] : -share[1]);
            int *best = &corners->joint[up][right];
            double more = reach - corners->reach[up][right];
            if (*best < 0 || more > 1e-9 || (more > -1e-9 && joint < *best)) {
                *best = joint;
                corners->reach[up][right] = reach;
            }
        }
}

static void add_long(struct arena *arena, const struct net *net, const struct cells *cells,
                     struct list *list) {
    struct extent *extents = ARENA_ARRAY(arena, struct extent, cells->face_count);
    struct corners *corners = ARENA_ARRAY(arena, struct corners, cells->face_count);
    measure(net, cells, extents);
    for (size_t f = 0; f < cells->face_count; f++)
        corners[f] = (struct corners){.joint = {{-1, -1}, {-1, -1}}};
    for (size_t k = 0; k < cells->count; k++) {
        int f = cells->items[k].face;
        for (int c = 0; c < 4; c++)
            stretch(net, &cells->faces[f], &extents[f], cells->items[k].joints[c], &corners[f]);
    }
    for (size_t f = 0; f < cells->face_count; f++) {
        if (cells->faces[f].kind == FACE_LEVEL)
            continue;
        for (int right = 1; right >= 0; right--)
            add(arena, net, list, corners[f].joint[0][1 - right], corners[f].joint[1][right],
                (struct candidate){.where = arena_print(arena, "%s, long", cells->faces[f].words),
                                   .face = (int)f,
                                   .cell = -1});
    }
}

struct pair {
    int low, high;
    size_t place;
};

static int compare_pairs(const void *left, const void *right) {
    const struct pair *a = left, *b = right;
    if (a->low != b->low)
        return a->low < b->low ? -1 : 1;
    if (a->high != b->high)
        return a->high < b->high ? -1 : 1;
    return (a->place > b->place) - (a->place < b->place);
}

/* Keep the first of each pair of joints. */
static void drop_repeats(struct arena *arena, struct list *list) {
    struct pair *pairs = ARENA_ARRAY(arena, struct pair, list->count);
    bool *again = ARENA_ARRAY(arena, bool, list->count);
    for (size_t k = 0; k < list->count; k++) {
        int from = list->items[k].from, to = list->items[k].to;
        pairs[k] = (struct pair){from < to ? from : to, from < to ? to : from, k};
    }
    if (list->count > 0)
        qsort(pairs, list->count, sizeof *pairs, compare_pairs);
    for (size_t k = 1; k < list->count; k++)
        again[pairs[k].place] =
            pairs[k].low == pairs[k - 1].low && pairs[k].high == pairs[k - 1].high;
    size_t kept = 0;
    for (size_t k = 0; k < list->count; k++)
        if (!again[k])
            list->items[kept++] = list->items[k];
    list->count = kept;
}

struct candidates candidates_of(struct arena *arena, const struct cells *cells) {
    struct net net = net_of(arena, cells->model);
    struct list list = {0};
    add_cells(arena, &net, cells, &list);
    add_long(arena, &net, cells, &list);
    drop_repeats(arena, &list);
    struct closed_list closed = closed_panels(arena, cells->model->frame);
    for (size_t k = 0; k < list.count; k++)
        close_off(arena, cells, &closed, &list.items[k]);
    return (struct candidates){list.items, list.count};
}
