#include "fix/price.h"

#include "frame/merge.h"

#include <math.h>
#include <string.h>

/* ---- prices of sticks that become another size or grade ---- */

const char *set_says(const struct work *work, const struct set *set, enum change_kind kind,
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

int same_wood(const struct frame *frame, int stick, const char *size, const char *grade) {
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
        const char *size = set_says(work, set, CHANGE_SIZE, (int)k, "size");
        const char *grade = set_says(work, set, CHANGE_GRADE, (int)k, "grade");
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

struct cut_options usual_cut(void) {
    return (struct cut_options){.kerf = table_constant("cut-kerf").value};
}

bool prices_smalls(const struct frame *frame) {
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

static const struct cut_piece *piece_named(const struct cut_answer *answer, const char *name) {
    for (size_t s = 0; s < answer->stick_count; s++)
        for (size_t k = 0; k < answer->sticks[s].piece_count; k++)
            if (strcmp(answer->sticks[s].pieces[k].name, name) == 0)
                return &answer->sticks[s].pieces[k];
    return NULL;
}

/* Is a piece shorter than described? A rail is that behind a wider post. Where no change alone
 * makes one shorter, none do together: ends that stop at their hosts would be shorter with any
 * wider one, those that run past longer. */
static bool shortens(const struct cut_answer *described, const struct cut_answer *answer) {
    static const double same = 1e-9; /* m */
    for (size_t s = 0; described && s < described->stick_count; s++)
        for (size_t k = 0; k < described->sticks[s].piece_count; k++) {
            const struct cut_piece *then = piece_named(answer, described->sticks[s].pieces[k].name);
            if (!then || then->needs < described->sticks[s].pieces[k].needs - same)
                return true;
        }
    return false;
}

/* NAN where something that counts has no price. Screws and the like count where the file prices
 * some. */
static struct bill bill_of(struct work *work, const struct frame *frame) {
    static const struct bill none = {NAN, NAN};
    const struct cut_options options = usual_cut();
    const struct cut_answer *answer = cut_frame(work->arena, frame, &options);
    if (answer->problems.count)
        return none;
    for (size_t k = 0; k < answer->unpriced.count; k++)
        if (work->prices_smalls || !is_small(answer, answer->unpriced.items[k]))
            return none;
    work->bill_may_shrink |= shortens(work->described, answer);
    struct bill bill = {answer->cost, 0.0};
    for (size_t k = 0; k < answer->stick_count; k++) {
        bill.sticks += answer->sticks[k].cost;
        work->bill_may_shrink |= !answer->sticks[k].proved;
    }
    for (size_t k = 0; k < answer->sheet_count; k++) {
        bill.sticks += answer->sheets[k].cost;
        work->bill_may_shrink |= !answer->sheets[k].proved;
    }
    return bill;
}

struct bill set_bill(struct work *work, const struct set *set) {
    struct arena_mark mark = arena_mark(work->arena);
    struct problems problems = problems_new(work->arena);
    const struct frame *frame =
        frame_of_tree(work->arena, set_tree(work, set), work->options->limits, &problems);
    struct bill bill =
        frame && frame->prices.count ? bill_of(work, frame) : (struct bill){NAN, NAN};
    arena_rewind(work->arena, mark);
    return bill;
}
