#include "frame/point_tree.h"

#include "frame/geometry.h"

#include <limits.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>

enum { LEAF = 8 };

struct box {
    double low[3], high[3];
    int start, end;  /* of `order` */
    int left, right; /* boxes; -1 in a leaf */
    int alive;       /* points not taken out */
    int lowest;      /* point number */
};

struct point_tree {
    const double *const *points;
    int *order; /* point numbers; ~number once taken out */
    struct box *boxes;
    int box_count;
    uint32_t seed; /* for choosing pivots; always the same */
};

struct piece {
    const double *a, *b;
    double reach;
    int below; /* only points of lower number */
};

static double coordinate(const struct point_tree *tree, int position, int axis) {
    return tree->points[tree->order[position]][axis];
}

static void swap(int *a, int *b) {
    int kept = *a;
    *a = *b;
    *b = kept;
}

/* Reorder start..end so that what is before `middle` is not larger, what is after not smaller. */
static void part_at(struct point_tree *tree, int start, int end, int middle, int axis) {
    while (end - start > 1) {
        tree->seed = tree->seed * 1664525u + 1013904223u;
        int chosen = start + (int)(tree->seed % (uint32_t)(end - start));
        double pivot = coordinate(tree, chosen, axis);
        int low = start, high = end - 1;
        while (low <= high) {
            while (coordinate(tree, low, axis) < pivot)
                low++;
            while (coordinate(tree, high, axis) > pivot)
                high--;
            if (low <= high)
                swap(&tree->order[low++], &tree->order[high--]);
        }
        if (middle <= high)
            end = high + 1;
        else if (middle >= low)
            start = low;
        else
            return;
    }
}

static void measure(const struct point_tree *tree, struct box *box) {
    box->lowest = tree->order[box->start];
    for (int k = box->start; k < box->end; k++)
        if (tree->order[k] < box->lowest)
            box->lowest = tree->order[k];
    for (int axis = 0; axis < 3; axis++) {
        box->low[axis] = box->high[axis] = coordinate(tree, box->start, axis);
        for (int k = box->start; k < box->end; k++) {
            box->low[axis] = fmin(box->low[axis], coordinate(tree, k, axis));
            box->high[axis] = fmax(box->high[axis], coordinate(tree, k, axis));
        }
    }
}

static int longest_axis(const struct box *box) {
    int longest = 0;
    for (int axis = 1; axis < 3; axis++)
        if (box->high[axis] - box->low[axis] > box->high[longest] - box->low[longest])
            longest = axis;
    return longest;
}

static int build(struct point_tree *tree, int start, int end) {
    int number = tree->box_count++;
    struct box *box = &tree->boxes[number];
    *box = (struct box){.start = start, .end = end, .left = -1, .right = -1, .alive = end - start};
    measure(tree, box);
    if (end - start > LEAF) {
        int middle = start + (end - start) / 2;
        part_at(tree, start, end, middle, longest_axis(box));
        box->left = build(tree, start, middle);
        box->right = build(tree, middle, end);
    }
    return number;
}

struct point_tree *point_tree_new(struct arena *arena, const double *const *points,
                                  const int *chosen, size_t count) {
    struct point_tree *tree = ARENA_NEW(arena, struct point_tree);
    tree->points = points;
    tree->order = ARENA_ARRAY(arena, int, count);
    for (size_t k = 0; k < count; k++)
        tree->order[k] = chosen[k];
    /* Halves of more than LEAF points hold at least LEAF / 2, so there are fewer boxes than this.
     */
    tree->boxes = ARENA_ARRAY(arena, struct box, count / (LEAF / 2) * 2 + 2);
    if (count > 0)
        build(tree, 0, (int)count);
    return tree;
}

/* True where the piece comes within reach of the box (or nearly: near its corners a little more
 * counts). */
static bool passes(const struct box *box, const struct piece *piece) {
    double enter = 0, leave = 1;
    for (int axis = 0; axis < 3; axis++) {
        double low = box->low[axis] - piece->reach, high = box->high[axis] + piece->reach;
        double start = piece->a[axis], run = piece->b[axis] - start;
        if (fabs(run) > 0) {
            double first = (low - start) / run, second = (high - start) / run;
            enter = fmax(enter, fmin(first, second));
            leave = fmin(leave, fmax(first, second));
        } else if (start < low || start > high) {
            return false;
        }
    }
    return enter <= leave;
}

static bool near_piece(const struct point_tree *tree, int point, const struct piece *piece) {
    return point >= 0 && point < piece->below &&
           distance_to_piece(tree->points[point], piece->a, piece->b) <= piece->reach;
}

static int find_in(const struct point_tree *tree, int number, const struct piece *piece) {
    const struct box *box = &tree->boxes[number];
    if (box->lowest >= piece->below || !passes(box, piece))
        return -1;
    if (box->left >= 0) {
        int found = find_in(tree, box->left, piece);
        return found >= 0 ? found : find_in(tree, box->right, piece);
    }
    for (int k = box->start; k < box->end; k++)
        if (near_piece(tree, tree->order[k], piece))
            return tree->order[k];
    return -1;
}

static void each_in(const struct point_tree *tree, int number, const struct piece *piece,
                    void (*visit)(void *with, int point), void *with) {
    const struct box *box = &tree->boxes[number];
    if (!passes(box, piece))
        return;
    if (box->left >= 0) {
        each_in(tree, box->left, piece, visit, with);
        each_in(tree, box->right, piece, visit, with);
        return;
    }
    for (int k = box->start; k < box->end; k++)
        if (near_piece(tree, tree->order[k], piece))
            visit(with, tree->order[k]);
}

/* How many were taken out. */
static int take_in(struct point_tree *tree, int number, const struct piece *piece, char *taken) {
    struct box *box = &tree->boxes[number];
    int count = 0;
    if (box->alive == 0 || !passes(box, piece))
        return 0;
    if (box->left >= 0) {
        count = take_in(tree, box->left, piece, taken) + take_in(tree, box->right, piece, taken);
    } else {
        for (int k = box->start; k < box->end; k++) {
            if (!near_piece(tree, tree->order[k], piece))
                continue;
            taken[tree->order[k]] = 1;
            tree->order[k] = ~tree->order[k];
            count++;
        }
    }
    box->alive -= count;
    return count;
}

int point_tree_find(const struct point_tree *tree, const double a[3], const double b[3],
                    double reach, int below) {
    struct piece piece = {a, b, reach, below};
    return tree->box_count ? find_in(tree, 0, &piece) : -1;
}

void point_tree_each(const struct point_tree *tree, const double a[3], const double b[3],
                     double reach, void (*visit)(void *with, int point), void *with) {
    struct piece piece = {a, b, reach, INT_MAX};
    if (tree->box_count)
        each_in(tree, 0, &piece, visit, with);
}

void point_tree_take(struct point_tree *tree, const double a[3], const double b[3], double reach,
                     char *taken) {
    struct piece piece = {a, b, reach, INT_MAX};
    if (tree->box_count)
        take_in(tree, 0, &piece, taken);
}
