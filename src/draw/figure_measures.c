#include "draw/figure.h"

#include "base/vector.h"

#include <math.h>
#include <stdlib.h>

/* Dimensions: at the side a pole with a mark at each height, as one is held against the posts;
 * below (in the plan at the side too) the gaps from post to post and the whole. */

enum { HEIGHTS_MOST = 10, GAPS_MOST = 12 };
#define SAME 8e-4       /* m: heights nearer than this are one */
#define POLE_OFF 4.5    /* mm from the wood */
#define LINE_EVERY 5.0  /* mm from one line of dimensions to the next */
#define TICK 1.0        /* mm */
#define HEIGHT_ROOM 3.4 /* mm from one height to the next */

struct marks { /* places along a direction of the frame, m, ascending */
    double *items;
    size_t count, capacity;
};

static int compare_numbers(const void *left, const void *right) {
    const double *a = left, *b = right;
    return (*a > *b) - (*a < *b);
}

static void sort_marks(struct marks *marks) {
    size_t kept = 0;
    if (!marks->count)
        return;
    qsort(marks->items, marks->count, sizeof *marks->items, compare_numbers);
    for (size_t k = 0; k < marks->count; k++)
        if (!kept || marks->items[k] - marks->items[kept - 1] > SAME)
            marks->items[kept++] = marks->items[k];
    marks->count = kept;
}

/* The least and the largest coordinate of a piece of wood. */
static void reach_of(const struct wood *wood, int axis, double *low, double *high) {
    *low = INFINITY;
    *high = -INFINITY;
    for (int k = 0; k < 8; k++) {
        *low = fmin(*low, wood->corners[k][axis]);
        *high = fmax(*high, wood->corners[k][axis]);
    }
}

static bool runs_along(const struct model_member *stick, int axis) {
    return fabs(stick->axes[0][axis]) > 0.999;
}

static void joint_marks(const struct drawing *drawing, int axis, struct marks *marks) {
    for (size_t j = 0; j < drawing->frame->joints.count; j++)
        ARRAY_PUSH(drawing->arena, marks, drawing->frame->joints.items[j].at[axis]);
}

static bool has_posts(const struct drawing *drawing) {
    for (size_t m = 0; m < drawing->model->member_count; m++)
        if (runs_along(&drawing->model->members[m], 2))
            return true;
    return false;
}

bool figure_measures_wood(const struct drawing *drawing) {
    return has_posts(drawing);
}

/* The lowest place that is held, else the lowest wood. */
static double ground_of(const struct drawing *drawing) {
    double ground = INFINITY, low, high;
    for (size_t s = 0; s < drawing->frame->supports.count; s++)
        ground = fmin(ground,
                      drawing->frame->joints.items[drawing->frame->supports.items[s].joint].at[2]);
    for (size_t m = 0; m < drawing->model->member_count && !isfinite(ground); m++) {
        reach_of(&drawing->woods[m], 2, &low, &high);
        ground = fmin(ground, low);
    }
    return ground;
}

/* The ground, the tops of level sticks and of posts; without posts the joints. */
static struct marks heights_of(const struct drawing *drawing) {
    struct marks marks = {0};
    double ground = ground_of(drawing), low, high;
    size_t kept = 0;
    bool posts = has_posts(drawing);
    for (size_t m = 0; m < drawing->model->member_count; m++) {
        double rise = fabs(drawing->model->members[m].axes[0][2]);
        reach_of(&drawing->woods[m], 2, &low, &high);
        if (posts && (rise < 1e-6 || rise > 0.999))
            ARRAY_PUSH(drawing->arena, &marks, high);
    }
    if (!posts)
        joint_marks(drawing, 2, &marks);
    ARRAY_PUSH(drawing->arena, &marks, ground);
    sort_marks(&marks);
    for (size_t k = 0; k < marks.count; k++)
        if (marks.items[k] >= ground)
            marks.items[kept++] = marks.items[k];
    marks.count = kept;
    return marks;
}

/* The outer faces of the outer posts and the middles of the others; without posts the joints. */
static struct marks posts_of(const struct drawing *drawing, int axis) {
    struct marks marks = {0};
    double least = INFINITY, most = -INFINITY, low, high;
    for (size_t m = 0; m < drawing->model->member_count; m++) {
        if (!runs_along(&drawing->model->members[m], 2))
            continue;
        reach_of(&drawing->woods[m], axis, &low, &high);
        least = fmin(least, low);
        most = fmax(most, high);
        ARRAY_PUSH(drawing->arena, &marks, (low + high) / 2.0);
    }
    if (!marks.count) {
        joint_marks(drawing, axis, &marks);
        sort_marks(&marks);
        return marks;
    }
    sort_marks(&marks);
    marks.items[0] = least;
    if (marks.count == 1)
        ARRAY_PUSH(drawing->arena, &marks, most);
    marks.items[marks.count - 1] = most;
    return marks;
}

static const char *length_words(const struct drawing *drawing, double length) {
    return quantity_print_length(drawing->arena, length, drawing->frame->units);
}

static void thin_line(struct figure *figure, struct point from, struct point to) {
    ink_line(figure->ink, PEN_MEASURE, from, to);
    labels_keep_off_line(&figure->labels, from, to);
}

static void words_box(struct figure *figure, double left, double base, double width) {
    double height = ink_words_height(WORDS_PLAIN);
    labels_keep_off_box(&figure->labels, (struct box){left, base - 0.85 * height, left + width,
                                                      base + 0.25 * height});
}

/* ---- heights ---- */

/* Too many for the pole: those that are far enough from the last one, and the highest. */
static void thin_out(const struct figure *figure, struct marks *heights) {
    size_t kept = 1;
    double room = heights->count > HEIGHTS_MOST ? 1.6 * HEIGHT_ROOM : 0.5 * HEIGHT_ROOM;
    double last = heights->count ? heights->items[heights->count - 1] : 0.0;
    for (size_t k = 1; k + 1 < heights->count; k++)
        if ((heights->items[k] - heights->items[kept - 1]) * figure->scale >= room &&
            (last - heights->items[k]) * figure->scale >= room)
            heights->items[kept++] = heights->items[k];
    if (heights->count > 1) {
        heights->items[kept++] = last;
        heights->count = kept;
    }
}

double figure_heights_width(const struct drawing *drawing) {
    struct marks heights = heights_of(drawing);
    double widest = 0.0;
    for (size_t k = 1; k < heights.count; k++)
        widest = fmax(widest,
                      ink_words_width(WORDS_PLAIN,
                                      length_words(drawing, heights.items[k] - heights.items[0])));
    return widest;
}

static double height_on_sheet(const struct figure *figure, double height) {
    return figure_point(figure, (double[3]){0.0, 0.0, height}).y;
}

/* Each at its height or as little above as leaves room for the words below it. */
static void pole(struct figure *figure, const struct marks *heights) {
    double x = figure->taken.left - POLE_OFF, last = INFINITY;
    double size = ink_words_height(WORDS_PLAIN);
    thin_line(figure, (struct point){x, height_on_sheet(figure, heights->items[0])},
              (struct point){x, height_on_sheet(figure, heights->items[heights->count - 1])});
    for (size_t k = 0; k < heights->count; k++) {
        double y = height_on_sheet(figure, heights->items[k]), at = fmin(y, last - HEIGHT_ROOM);
        const char *words = length_words(figure->drawing, heights->items[k] - heights->items[0]);
        double width = ink_words_width(WORDS_PLAIN, words);
        thin_line(figure, (struct point){x - TICK, y}, (struct point){x + TICK, y});
        if (at < y - 0.1)
            thin_line(figure, (struct point){x - TICK, y}, (struct point){x - 2.6, at});
        last = at;
        if (!k)
            continue; /* the ground is where it is measured from */
        struct point end = {x - 3.0, at + 0.35 * size};
        ink_words(figure->ink, WORDS_PLAIN, ANCHOR_END, end, words);
        words_box(figure, end.x - width, end.y, width);
    }
}

/* ---- gaps and wholes ---- */

struct run_of { /* a line of dimensions: along the sheet, or up */
    bool upright;
    double at; /* mm: where the line lies across it */
};

static struct point on_run(const struct run_of *run, double along, double across) {
    return run->upright ? (struct point){run->at + across, along}
                        : (struct point){along, run->at + across};
}

static double along_sheet(const struct figure *figure, int axis, double place) {
    double at[3] = {0.0, 0.0, 0.0};
    at[axis] = place;
    struct point point = figure_point(figure, at);
    return figure->kind == VIEW_PLAN && axis == 1 ? point.y : point.x;
}

static void one_gap(struct figure *figure, const struct run_of *run, double from, double to,
                    const char *words) {
    double width = ink_words_width(WORDS_PLAIN, words), size = ink_words_height(WORDS_PLAIN);
    thin_line(figure, on_run(run, from, 0.0), on_run(run, to, 0.0));
    thin_line(figure, on_run(run, from, -TICK), on_run(run, from, TICK));
    thin_line(figure, on_run(run, to, -TICK), on_run(run, to, TICK));
    struct point middle = on_run(run, (from + to) / 2.0, run->upright ? -1.4 : size + 0.7);
    if (run->upright)
        middle.y += 0.35 * size;
    ink_words(figure->ink, WORDS_PLAIN, run->upright ? ANCHOR_END : ANCHOR_MIDDLE, middle, words);
    words_box(figure, middle.x - (run->upright ? width : width / 2.0), middle.y, width);
}

static bool gaps_have_room(const struct figure *figure, const struct marks *marks, bool upright) {
    for (size_t k = 0; k + 1 < marks->count; k++) {
        double gap = marks->items[k + 1] - marks->items[k];
        double room = upright
                          ? HEIGHT_ROOM
                          : ink_words_width(WORDS_PLAIN, length_words(figure->drawing, gap)) + 1.5;
        if (gap * figure->scale < room)
            return false;
    }
    return marks->count > 2 && marks->count <= GAPS_MOST;
}

static void gaps(struct figure *figure, int axis, struct run_of run) {
    struct marks marks = posts_of(figure->drawing, axis);
    double step = run.upright ? -LINE_EVERY - figure_heights_width(figure->drawing) : LINE_EVERY;
    if (marks.count < 2)
        return;
    if (gaps_have_room(figure, &marks, run.upright)) {
        for (size_t k = 0; k + 1 < marks.count; k++)
            one_gap(figure, &run, along_sheet(figure, axis, marks.items[k]),
                    along_sheet(figure, axis, marks.items[k + 1]),
                    length_words(figure->drawing, marks.items[k + 1] - marks.items[k]));
        run.at += step;
    }
    one_gap(figure, &run, along_sheet(figure, axis, marks.items[0]),
            along_sheet(figure, axis, marks.items[marks.count - 1]),
            length_words(figure->drawing, marks.items[marks.count - 1] - marks.items[0]));
}

void figure_measures(struct figure *figure) {
    struct run_of below = {false, figure->taken.bottom + POLE_OFF};
    if (figure->kind == VIEW_PLAN) {
        gaps(figure, 0, below);
        gaps(figure, 1, (struct run_of){true, figure->taken.left - POLE_OFF});
        return;
    }
    gaps(figure, figure->kind == VIEW_SIDE ? 1 : 0, below);
    struct marks heights = heights_of(figure->drawing);
    thin_out(figure, &heights);
    if (heights.count > 1)
        pole(figure, &heights);
}
