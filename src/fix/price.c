#include "buy/buy.h"
#include "fix/work.h"
#include "frame/merge.h"
#include "frame/tree.h"

#include <math.h>
#include <string.h>

/* ---- prices of sticks that become another size or grade ---- */

/* What the set says of a stick, "" where nothing. */
static const char *said(const struct work *work, const struct set *set, enum change_kind kind,
                        int stick, const char *key) {
    for (size_t k = 0; k < work->slot_count; k++) {
        const struct choice *slot = &work->slots[k];
        if (!set->level[k] || slot->kind != kind || slot->stick != stick)
            continue;
        const struct node *sticks = node_child(slot->items[set->level[k] - 1].edit, "sticks");
        const struct node *value =
            node_child(node_child(sticks, work->frame->sticks.items[stick].name), key);
        return value ? value->text : "";
    }
    return "";
}

/* A stick of the file that is the same wood; -1. */
static int same_wood(const struct frame *frame, int stick, const char *size, const char *grade) {
    const struct stick *now = &frame->sticks.items[stick];
    int want_size = *size ? table_size_find(size) : now->size;
    int want_grade = *grade ? table_grade_find(grade) : now->grade;
    for (size_t k = 0; k < frame->sticks.count; k++) {
        const struct stick *other = &frame->sticks.items[k];
        if ((int)k != stick && want_size >= 0 && other->size == want_size &&
            other->grade == want_grade && other->species == now->species &&
            other->treated == now->treated && other->finger_jointed == now->finger_jointed)
            return (int)k;
    }
    return -1;
}

static struct node *map_of(struct arena *arena, const char *key, struct node *child) {
    struct node *map = ARENA_NEW(arena, struct node);
    *map = (struct node){.kind = NODE_MAP, .count = 1, .key = key, .text = "", .first = child};
    child->parent = map;
    return map;
}

const struct node *price_edit(struct work *work, const struct set *set) {
    const struct frame *frame = work->frame;
    const struct node *prices = node_child(work->raw, "prices");
    const struct node *edit = NULL;
    for (size_t k = 0; prices && k < frame->sticks.count; k++) {
        const char *size = said(work, set, CHANGE_SIZE, (int)k, "size");
        const char *grade = said(work, set, CHANGE_GRADE, (int)k, "grade");
        const char *name = frame->sticks.items[k].name;
        if ((!*size && !*grade) || !node_child(prices, name))
            continue;
        int other = same_wood(frame, (int)k, size, grade);
        const struct node *price =
            other < 0 ? NULL : node_child(prices, frame->sticks.items[other].name);
        struct node *value = ARENA_NEW(work->arena, struct node);
        *value = price ? *price : (struct node){.kind = NODE_TEXT, .text = MERGE_REMOVES};
        value->key = name;
        value->next = NULL;
        const struct node *one = map_of(work->arena, NULL, map_of(work->arena, "prices", value));
        edit = edit ? merge_edit(work->arena, edit, one) : one;
    }
    return edit;
}

/* ---- what it costs ---- */

static bool prices_smalls(const struct frame *frame) {
    for (size_t k = 0; k < frame->prices.count; k++)
        if (frame->prices.items[k].stick < 0 && frame->prices.items[k].sheet < 0)
            return true;
    return false;
}

static bool is_small(const struct cut_answer *answer, const char *what) {
    for (size_t k = 0; k < answer->small_count; k++)
        if (strcmp(answer->smalls[k].words, what) == 0)
            return true;
    return false;
}

/* The bill of a frame; NAN where something that counts has no price. Screws and the like count
 * where the file prices some. */
static double bill(struct work *work, const struct frame *frame) {
    struct cut_options options = {.kerf = table_constant("cut-kerf").value};
    const struct cut_answer *answer = cut_frame(work->arena, frame, &options);
    if (answer->problems.count)
        return NAN;
    for (size_t k = 0; k < answer->unpriced.count; k++)
        if (prices_smalls(work->frame) || !is_small(answer, answer->unpriced.items[k]))
            return NAN;
    return answer->cost;
}

double set_cost(struct work *work, const struct set *set) {
    struct arena_mark mark = arena_mark(work->arena);
    struct problems problems = problems_new(work->arena);
    const struct frame *frame =
        frame_of_tree(work->arena, set_tree(work, set), work->options->limits, &problems);
    double cost = frame && frame->prices.count ? bill(work, frame) : NAN;
    arena_rewind(work->arena, mark);
    return cost;
}
