#include "fix/work.h"

#include "frame/merge.h"
#include "frame/node_make.h"
#include "judge/judge.h"

#include <math.h>
#include <string.h>

/* ---- the description with a set in it ---- */

/* ORDER MADE: sections that a shape fills. */
static const char *const MADE[] = {"joints", "members", "supports", "shelves", "panels"};

static const struct node *edits_of(struct work *work, const struct set *set) {
    const struct node *edit = NULL;
    for (size_t k = 0; k < work->slot_count; k++) {
        if (!set->level[k])
            continue;
        const struct node *one = work->slots[k].items[set->level[k] - 1].edit;
        edit = edit ? merge_edit(work->arena, edit, one) : one;
    }
    return edit;
}

/* Entries that a shape makes stand in no file: what an edit changes of them must hold the whole
 * entry. Returns the edit with those completed. */
static const struct node *completed(struct work *work, const struct node *edit) {
    if (!work->frame->shape.given)
        return edit;
    /* no merge with itself, which would lose what the edit takes away */
    struct node *whole = node_copy(work->arena, edit, edit->key);
    for (size_t s = 0; s < sizeof MADE / sizeof *MADE; s++) {
        const struct node *own = node_child(work->raw, MADE[s]);
        const struct node *made = node_child(work->frame->tree, MADE[s]);
        const struct node *section = node_child(whole, MADE[s]);
        if (!section)
            continue;
        for (struct node *entry = section->first; entry; entry = entry->next) {
            const struct node *full = node_child(made, entry->key);
            if (!full || node_child(own, entry->key))
                continue;
            struct node *next = entry->next;
            *entry = *merge_edit(work->arena, full, entry);
            entry->next = next;
        }
    }
    return whole;
}

const struct node *set_edit(struct work *work, const struct set *set) {
    const struct node *edit = edits_of(work, set);
    const struct node *prices = edit ? price_edit(work, set) : NULL;
    if (prices)
        edit = merge_edit(work->arena, edit, prices);
    return edit ? completed(work, edit) : NULL;
}

struct node *set_tree(struct work *work, const struct set *set) {
    const struct node *edit = set_edit(work, set);
    return merge_edit(work->arena, work->raw, edit ? edit : work->raw);
}

bool set_judge(struct work *work, const struct set *set, bool first_failure,
               struct result *result) {
    const struct judge_options options = {.first_failure = first_failure};
    struct problems problems = problems_new(work->arena);
    const struct frame *frame =
        frame_of_tree(work->arena, set_tree(work, set), work->options->limits, &problems);
    if (!frame)
        return false;
    judge_frame(work->arena, frame, &options, result);
    return result->problems.count == 0;
}
