#include "frame/along.h"

#include <math.h>
#include <stdlib.h>

/* Joints sorted into cubes of one size; a cube is found by binary search on its key. */
struct cell_joint {
    long cell[3];
    int joint;
};

struct grid {
    double size; /* m, side of a cube */
    struct cell_joint *items;
    size_t count;
};

static int compare_cells(const long a[3], const long b[3]) {
    for (int k = 0; k < 3; k++)
        if (a[k] != b[k])
            return a[k] < b[k] ? -1 : 1;
    return 0;
}

static int compare_items(const void *left, const void *right) {
    const struct cell_joint *a = left, *b = right;
    int order = compare_cells(a->cell, b->cell);
    return order ? order : (a->joint > b->joint) - (a->joint < b->joint);
}

static long cell_of(double at, double size) {
    return lround(floor(at / size));
}

/* The side of the cubes: half the mean member length, so that a stick crosses few of them. */
static double grid_size(const struct frame *frame) {
    double sum = 0.0;
    for (size_t m = 0; m < frame->members.count; m++) {
        const double *a = frame->joints.items[frame->members.items[m].from].at;
        const double *b = frame->joints.items[frame->members.items[m].to].at;
        sum += fabs(b[0] - a[0]) + fabs(b[1] - a[1]) + fabs(b[2] - a[2]);
    }
    double mean = frame->members.count ? sum / (double)frame->members.count : 1.0;
    double largest = 0.0;
    for (size_t j = 0; j < frame->joints.count; j++)
        for (int k = 0; k < 3; k++)
            largest = fmax(largest, fabs(frame->joints.items[j].at[k]));
    /* never so small that a coordinate overflows the cube numbers */
    return fmax(fmax(mean / 2.0, 10.0 * ALONG_TOLERANCE), largest / 1e6);
}

static struct grid grid_build(struct arena *arena, const struct frame *frame) {
    struct grid grid = {.size = grid_size(frame), .count = frame->joints.count};
    grid.items = ARENA_ARRAY(arena, struct cell_joint, grid.count);
    for (size_t j = 0; j < grid.count; j++) {
        for (int k = 0; k < 3; k++)
            grid.items[j].cell[k] = cell_of(frame->joints.items[j].at[k], grid.size);
        grid.items[j].joint = (int)j;
    }
    qsort(grid.items, grid.count, sizeof *grid.items, compare_items);
    return grid;
}

static size_t grid_first(const struct grid *grid, const long cell[3]) {
    size_t low = 0, high = grid->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (compare_cells(grid->items[middle].cell, cell) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

/* Distance of `joint` along the axis where it lies on the stick between its ends, else NAN. */
static double place_on(const struct frame *frame, const struct member *member, int joint) {
    const double *a = frame->joints.items[member->from].at;
    const double *b = frame->joints.items[member->to].at;
    const double *p = frame->joints.items[joint].at;
    double ab[3], ap[3], length2 = 0.0, along = 0.0, off2 = 0.0;
    for (int k = 0; k < 3; k++) {
        ab[k] = b[k] - a[k];
        ap[k] = p[k] - a[k];
        length2 += ab[k] * ab[k];
        along += ab[k] * ap[k];
    }
    double share = along / length2;
    for (int k = 0; k < 3; k++) {
        double off = ap[k] - share * ab[k];
        off2 += off * off;
    }
    double length = sqrt(length2);
    double at = share * length;
    bool on = off2 <= ALONG_TOLERANCE * ALONG_TOLERANCE && at > 0.0 && at < length;
    return on ? at : NAN;
}

struct found {
    struct along_joint *items;
    size_t count, capacity;
};

static int compare_along(const void *left, const void *right) {
    const struct along_joint *a = left, *b = right;
    if (a->at != b->at)
        return a->at < b->at ? -1 : 1;
    return (a->joint > b->joint) - (a->joint < b->joint);
}

/* All joints of one row of cubes along z that fall between the two cube numbers. */
static void collect_column(struct arena *arena, const struct frame *frame, const struct grid *grid,
                           const struct member *member, const long low[3], long high_z,
                           struct found *found) {
    for (size_t k = grid_first(grid, low); k < grid->count; k++) {
        const struct cell_joint *item = &grid->items[k];
        if (item->cell[0] != low[0] || item->cell[1] != low[1] || item->cell[2] > high_z)
            return;
        if (item->joint == member->from || item->joint == member->to)
            continue;
        double at = place_on(frame, member, item->joint);
        if (isfinite(at))
            ARRAY_PUSH(arena, found, (struct along_joint){item->joint, at});
    }
}

/* Slab by slab along x, the rows of cubes that the axis crosses in y. */
static void collect(struct arena *arena, const struct frame *frame, const struct grid *grid,
                    const struct member *member, struct found *found) {
    const double *a = frame->joints.items[member->from].at;
    const double *b = frame->joints.items[member->to].at;
    long low[3], high[3];
    for (int k = 0; k < 3; k++) {
        low[k] = cell_of(fmin(a[k], b[k]) - ALONG_TOLERANCE, grid->size);
        high[k] = cell_of(fmax(a[k], b[k]) + ALONG_TOLERANCE, grid->size);
    }
    for (long x = low[0]; x <= high[0]; x++) {
        /* y where the axis crosses this slab of x, widened by the tolerance */
        double share[2] = {0.0, 1.0};
        double dx = b[0] - a[0];
        if (fabs(dx) > ALONG_TOLERANCE) {
            double s0 = ((double)x * grid->size - ALONG_TOLERANCE - a[0]) / dx;
            double s1 = ((double)(x + 1) * grid->size + ALONG_TOLERANCE - a[0]) / dx;
            share[0] = fmax(0.0, fmin(s0, s1));
            share[1] = fmin(1.0, fmax(s0, s1));
        }
        double y0 = a[1] + share[0] * (b[1] - a[1]), y1 = a[1] + share[1] * (b[1] - a[1]);
        long first_y = cell_of(fmin(y0, y1) - ALONG_TOLERANCE, grid->size);
        long last_y = cell_of(fmax(y0, y1) + ALONG_TOLERANCE, grid->size);
        for (long y = first_y; y <= last_y; y++)
            collect_column(arena, frame, grid, member, (long[3]){x, y, low[2]}, high[2], found);
    }
}

struct along along_members(struct arena *arena, const struct frame *frame) {
    struct grid grid = grid_build(arena, frame);
    struct found all = {0};
    struct along along = {.first = ARENA_ARRAY(arena, size_t, frame->members.count + 1)};
    for (size_t m = 0; m < frame->members.count; m++) {
        const struct member *member = &frame->members.items[m];
        const double *a = frame->joints.items[member->from].at;
        const double *b = frame->joints.items[member->to].at;
        double length = sqrt((b[0] - a[0]) * (b[0] - a[0]) + (b[1] - a[1]) * (b[1] - a[1]) +
                             (b[2] - a[2]) * (b[2] - a[2]));
        along.first[m] = all.count;
        ARRAY_PUSH(arena, &all, (struct along_joint){member->from, 0.0});
        size_t between = all.count;
        collect(arena, frame, &grid, member, &all);
        qsort(all.items + between, all.count - between, sizeof *all.items, compare_along);
        ARRAY_PUSH(arena, &all, (struct along_joint){member->to, length});
    }
    along.first[frame->members.count] = all.count;
    along.joints = all.items;
    return along;
}
