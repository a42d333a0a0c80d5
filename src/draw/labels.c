#include "draw/labels.h"

#include <math.h>

enum { DIRECTIONS = 16 };
#define GAP 0.45       /* mm kept free round words */
#define BESIDE 2.2     /* mm: words nearer than this need no leader */
#define DEAREST 26.0   /* mm: a place that costs more tells nothing any more */
#define COST_CROSS 2.5 /* mm: what a leader over a line counts as farther */

static const double DISTANCES[] = {1.0, 1.7, 2.6, 3.8, 5.2, 7, 9, 11.5, 14.5, 18, 22};
enum { DISTANCE_COUNT = sizeof DISTANCES / sizeof *DISTANCES };

void labels_keep_off_line(struct labels *labels, struct point from, struct point to) {
    labels->lines.items = arena_grow(labels->arena, labels->lines.items, labels->lines.count,
                                     &labels->lines.capacity, sizeof *labels->lines.items);
    labels->lines.items[labels->lines.count][0] = from;
    labels->lines.items[labels->lines.count++][1] = to;
}

void labels_keep_off_shape(struct labels *labels, const struct convex *shape) {
    struct box box = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (size_t k = 0; k < shape->count; k++) {
        box.left = fmin(box.left, shape->corners[k].x);
        box.right = fmax(box.right, shape->corners[k].x);
        box.top = fmin(box.top, shape->corners[k].y);
        box.bottom = fmax(box.bottom, shape->corners[k].y);
    }
    ARRAY_PUSH(labels->arena, &labels->shapes, (struct label_shape){*shape, box});
}

void labels_keep_off_box(struct labels *labels, struct box box) {
    ARRAY_PUSH(labels->arena, &labels->boxes, box);
}

void labels_ask(struct labels *labels, enum words_style style, const char *words,
                const struct label_anchor *anchors, size_t count) {
    struct label label = {.words = words, .style = style};
    for (size_t k = 0; k < count && k < ANCHORS; k++)
        label.anchors[label.anchor_count++] = anchors[k];
    ARRAY_PUSH(labels->arena, &labels->asked, label);
}

bool boxes_overlap(struct box a, struct box b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

static struct convex box_shape(const struct box *box, struct point corners[4]) {
    corners[0] = (struct point){box->left, box->top};
    corners[1] = (struct point){box->right, box->top};
    corners[2] = (struct point){box->right, box->bottom};
    corners[3] = (struct point){box->left, box->bottom};
    return (struct convex){corners, 4};
}

static bool line_on_box(const struct point line[2], const struct box *box) {
    struct point corners[4];
    struct convex shape = box_shape(box, corners);
    double begin, end;
    if (fmax(line[0].x, line[1].x) < box->left || fmin(line[0].x, line[1].x) > box->right ||
        fmax(line[0].y, line[1].y) < box->top || fmin(line[0].y, line[1].y) > box->bottom)
        return false;
    return convex_stretch(&shape, line[0], line[1], true, &begin, &end);
}

/* A line between the two tells them apart: one of the edges of either, for convex shapes. */
static bool shape_on_box(const struct convex *shape, const struct box *box) {
    for (size_t k = 0; k < shape->count; k++) {
        struct point edge[2] = {shape->corners[k], shape->corners[(k + 1) % shape->count]};
        if (line_on_box(edge, box))
            return true;
    }
    struct point middle = {(box->left + box->right) / 2.0, (box->top + box->bottom) / 2.0};
    struct point aside = {middle.x + 1e-3, middle.y};
    double begin, end;
    return convex_stretch(shape, middle, aside, false, &begin, &end);
}

static bool is_free(const struct labels *labels, const struct box *box) {
    const struct box *room = &labels->room;
    if (!(box->left >= room->left && box->right <= room->right && box->top >= room->top &&
          box->bottom <= room->bottom))
        return false;
    for (size_t k = 0; k < labels->boxes.count; k++)
        if (boxes_overlap(*box, labels->boxes.items[k]))
            return false;
    for (size_t k = 0; k < labels->lines.count; k++)
        if (line_on_box(labels->lines.items[k], box))
            return false;
    for (size_t k = 0; k < labels->shapes.count; k++)
        if (boxes_overlap(*box, labels->shapes.items[k].box) &&
            shape_on_box(&labels->shapes.items[k].shape, box))
            return false;
    return true;
}

static bool lines_cross(const struct point a[2], const struct point b[2]) {
    double ax = a[1].x - a[0].x, ay = a[1].y - a[0].y, bx = b[1].x - b[0].x, by = b[1].y - b[0].y;
    double turn = ax * by - ay * bx, gx = b[0].x - a[0].x, gy = b[0].y - a[0].y;
    if (fabs(turn) < 1e-12)
        return false;
    double on_a = (gx * by - gy * bx) / turn, on_b = (gx * ay - gy * ax) / turn;
    return on_a > 0.0 && on_a < 1.0 && on_b > 0.0 && on_b < 1.0;
}

static struct point nearest_of(const struct box *box, struct point at) {
    return (struct point){fmin(fmax(at.x, box->left), box->right),
                          fmin(fmax(at.y, box->top), box->bottom)};
}

/* What a place costs, mm; INFINITY where its leader would run through words. */
static double cost_of(const struct labels *labels, const struct box *box, struct point anchor) {
    struct point leader[2] = {anchor, nearest_of(box, anchor)};
    double cost = hypot(leader[1].x - anchor.x, leader[1].y - anchor.y);
    if (cost <= BESIDE)
        return cost;
    for (size_t k = 0; k < labels->boxes.count; k++)
        if (line_on_box(leader, &labels->boxes.items[k]))
            return INFINITY;
    for (size_t k = 0; k < labels->lines.count; k++)
        if (lines_cross(leader, labels->lines.items[k]))
            cost += COST_CROSS;
    return cost;
}

static struct box box_at(struct point middle, double width, double height) {
    return (struct box){middle.x - width / 2.0, middle.y - height / 2.0, middle.x + width / 2.0,
                        middle.y + height / 2.0};
}

struct choice {
    bool found;
    double cost;
    struct box box;
    struct point anchor;
};

static void try_ring(const struct labels *labels, const struct label *label, size_t anchor,
                     double distance, struct choice *best) {
    double width = ink_words_width(label->style, label->words) + 2.0 * GAP;
    double height = ink_words_height(label->style) + 2.0 * GAP;
    struct point at = label->anchors[anchor].at;
    for (int k = 0; k < DIRECTIONS; k++) {
        /* to the right first, then by turns up and down */
        double turn = (k % 2 ? 1.0 : -1.0) * ((k + 1) / 2) * (6.283185307179586 / DIRECTIONS);
        struct point middle = {at.x + cos(turn) * (distance + width / 2.0),
                               at.y + sin(turn) * (distance + height / 2.0)};
        struct box box = box_at(middle, width, height);
        if (!is_free(labels, &box))
            continue;
        double cost = cost_of(labels, &box, at) + label->anchors[anchor].cost;
        if (cost < best->cost - 1e-9)
            *best = (struct choice){true, cost, box, at};
    }
}

static bool place(struct labels *labels, struct label *label, struct ink *ink) {
    struct choice best = {.cost = DEAREST, .found = false};
    for (int d = 0; d < DISTANCE_COUNT && DISTANCES[d] < best.cost; d++)
        for (size_t a = 0; a < label->anchor_count; a++)
            try_ring(labels, label, a, DISTANCES[d], &best);
    if (!best.found)
        return false;
    struct box *box = &best.box;
    label->placed = true;
    label->box = *box;
    labels_keep_off_box(labels, *box);
    double height = ink_words_height(label->style);
    ink_words(ink, label->style, ANCHOR_START,
              (struct point){box->left + GAP, box->bottom - GAP - 0.18 * height}, label->words);
    struct point to = nearest_of(box, best.anchor);
    if (hypot(to.x - best.anchor.x, to.y - best.anchor.y) > BESIDE) {
        ink_line(ink, PEN_LEADER, best.anchor, to);
        labels_keep_off_line(labels, best.anchor, to);
    }
    return true;
}

void labels_place(struct labels *labels, struct ink *ink, struct left_out *left_out) {
    for (size_t k = 0; k < labels->asked.count; k++)
        if (!place(labels, &labels->asked.items[k], ink))
            ARRAY_PUSH(labels->arena, left_out, labels->asked.items[k].words);
}
