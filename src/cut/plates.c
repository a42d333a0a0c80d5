#include "cut/plates.h"

#include <stdlib.h>

struct one {
    int64_t width, height;
    bool may_turn;
    int number;
};

static int64_t area(const struct one *one) {
    return one->width / 1000 * (one->height / 1000);
}

/* Largest first; a square that may turn is the same turned. */
static int compare(const void *left, const void *right) {
    const struct one *a = left, *b = right;
    if (area(a) != area(b))
        return area(a) > area(b) ? -1 : 1;
    if (a->width != b->width)
        return a->width > b->width ? -1 : 1;
    if (a->height != b->height)
        return a->height > b->height ? -1 : 1;
    if (a->may_turn != b->may_turn)
        return a->may_turn - b->may_turn;
    return (a->number > b->number) - (a->number < b->number);
}

static bool is_same(const struct one *a, const struct one *b) {
    return a->width == b->width && a->height == b->height && a->may_turn == b->may_turn;
}

static bool lies(int64_t width, int64_t height, const struct sheet_task *task) {
    return width <= task->width && height <= task->height;
}

/* The pieces that a sheet holds, a kerf larger; those that may turn lie on their longer side. */
static size_t pieces_that_fit(const struct sheet_task *task, struct one *ones,
                              struct sheet_plan *plan) {
    size_t count = 0;
    for (size_t k = 0; k < task->count; k++) {
        const struct sheet_piece *piece = &task->pieces[k];
        bool turns = piece->may_turn && piece->width != piece->height;
        plan->places[k].sheet = -1;
        if (!lies(piece->width, piece->height, task) &&
            !(turns && lies(piece->height, piece->width, task))) {
            plan->too_large++;
            continue;
        }
        bool swap = turns && piece->height > piece->width;
        int64_t width = (swap ? piece->height : piece->width) + task->kerf;
        int64_t height = (swap ? piece->width : piece->height) + task->kerf;
        ones[count++] = (struct one){width, height, turns, (int)k};
    }
    return count;
}

struct plates plates_of(struct arena *arena, const struct sheet_task *task,
                        struct sheet_plan *plan) {
    struct plates plates = {.width = task->width + task->kerf, .height = task->height + task->kerf};
    struct one *ones = ARENA_ARRAY(arena, struct one, task->count);
    size_t count = pieces_that_fit(task, ones, plan);
    if (count)
        qsort(ones, count, sizeof *ones, compare);
    int *numbers = ARENA_ARRAY(arena, int, count);
    plates.items = ARENA_ARRAY(arena, struct plate, count);
    for (size_t k = 0; k < count; k++) {
        numbers[k] = ones[k].number;
        if (k == 0 || !is_same(&ones[k], &ones[k - 1]))
            plates.items[plates.count++] =
                (struct plate){ones[k].width, ones[k].height, ones[k].may_turn, 0, &numbers[k]};
        plates.items[plates.count - 1].demand++;
    }
    return plates;
}
