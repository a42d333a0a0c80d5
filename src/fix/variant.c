#include "fix/work.h"

#include "frame/merge.h"
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
    struct node *whole = merge_edit(work->arena, edit, edit);
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

/* ---- what is wrong with it ---- */

static const double FOLDS = 1e6; /* a score worse than any of checks */

static bool is_of_joints(const struct check *check) {
    return strcmp(check->kind, "screw") == 0 || strcmp(check->kind, "joint-moment") == 0 ||
           strcmp(check->kind, "hang") == 0;
}

/* How far over, no more than ten times; what is not covered counts like one and a half times. */
static double weight_of(const struct check *check) {
    static const double most = 10.0, not_covered = 1.0;
    if (check->verdict == VERDICT_NOT_COVERED)
        return not_covered;
    if (check->verdict <= VERDICT_CLOSE)
        return 0.0;
    return check->ratio <= most ? check->ratio - 0.5 : most;
}

/* How much it fails, for the choice of what to try next: every check that fails or is not covered
 * counts. What fails in the part of the checks that is looked at first is worse than all that only
 * shows in the whole. */
static void score(const struct result *result, struct judged *judged) {
    judged->score = judged->wood = 0.0;
    if (result->verdict == VERDICT_FAILED || !result->checks.count)
        judged->score = judged->wood = FOLDS + (result->folding.known ? result->folding.ways : 0);
    for (size_t k = 0; k < result->checks.count; k++) {
        double weight = weight_of(&result->checks.items[k]);
        judged->score += weight;
        if (!is_of_joints(&result->checks.items[k]))
            judged->wood += weight;
    }
    if (judged->score < FOLDS)
        judged->score =
            result->partial ? 1.0 + judged->score : judged->score / (1.0 + judged->score);
}

static bool places_pieces_anew(const struct work *work, const struct choice *slot) {
    return work->frame->shape.given && (slot->kind == CHANGE_SIZE || slot->kind == CHANGE_TURN ||
                                        slot->kind == CHANGE_LEGS || slot->kind == CHANGE_RAIL);
}

/* May the slot change what such a check sees? A slat is a beam from rail to rail by itself, a sheet
 * one between the sticks under it; all else hangs together. */
static bool bears_on(const struct work *work, const struct choice *slot,
                     const struct check *check) {
    const struct frame *frame = work->frame;
    if (places_pieces_anew(work, slot))
        return true;
    if (strcmp(check->kind, "panel") == 0)
        return slot->kind == CHANGE_LEGS || slot->kind == CHANGE_RAIL || slot->kind == CHANGE_BRACE;
    if (strcmp(check->kind, "slat") != 0)
        return true;
    for (size_t s = 0; s < frame->shelves.count; s++)
        if (strcmp(frame->shelves.items[s].name, check->where) == 0)
            return slot->shelf == (int)s ||
                   (slot->stick == frame->shelves.items[s].slat && slot->kind <= CHANGE_GRADE);
    return true;
}

static uint64_t all_slots(const struct work *work) {
    return work->slot_count == SLOTS_MOST ? UINT64_MAX : ((uint64_t)1 << work->slot_count) - 1;
}

int slots_in(uint64_t mask) {
    int count = 0;
    for (; mask; mask &= mask - 1)
        count++;
    return count;
}

static uint64_t needs_of(const struct work *work, const struct check *check) {
    uint64_t mask = 0;
    for (size_t k = 0; k < work->slot_count; k++)
        if (bears_on(work, &work->slots[k], check))
            mask |= (uint64_t)1 << k;
    return mask;
}

/* The two narrowest needs. */
static void add_need(struct judged *judged, uint64_t mask) {
    if (mask == judged->needs[0] || mask == judged->needs[1])
        return;
    if (slots_in(mask) < slots_in(judged->needs[0])) {
        judged->needs[1] = judged->needs[0];
        judged->needs[0] = mask;
    } else if (slots_in(mask) < slots_in(judged->needs[1])) {
        judged->needs[1] = mask;
    }
}

static struct judged judged_of(const struct work *work, const struct result *result) {
    struct judged judged = {.verdict = result->verdict};
    score(result, &judged);
    judged.passes = result->verdict <= VERDICT_CLOSE;
    judged.needs[0] = judged.needs[1] = all_slots(work);
    for (size_t k = 0; k < result->checks.count && !judged.passes; k++)
        if (result->checks.items[k].verdict > VERDICT_CLOSE) {
            judged.hopes |= hopes_of(work, result->frame, &result->checks.items[k]);
            add_need(&judged, needs_of(work, &result->checks.items[k]));
        }
    if (!judged.passes && !result->checks.count)
        judged.hopes = all_slots(work);
    return judged;
}

/* ---- remembered ---- */

struct memo {
    size_t capacity; /* a power of two, more than twice the tries */
    struct remembered {
        bool used;
        struct set set;
        struct judged judged;
    } * items;
};

void memo_new(struct work *work) {
    work->memo = ARENA_NEW(work->arena, struct memo);
    work->memo->capacity = 64;
    while (work->memo->capacity < 2 * work->budget + 64)
        work->memo->capacity *= 2;
    work->memo->items = ARENA_ARRAY(work->arena, struct remembered, work->memo->capacity);
}

static struct remembered *remembered(const struct work *work, const struct set *set) {
    static const uint64_t prime = 1099511628211u; /* of the FNV hash */
    uint64_t hash = 14695981039346656037u;
    for (size_t k = 0; k < work->slot_count; k++)
        hash = (hash ^ set->level[k]) * prime;
    size_t at = (size_t)hash & (work->memo->capacity - 1);
    while (work->memo->items[at].used && memcmp(&work->memo->items[at].set, set, sizeof *set) != 0)
        at = (at + 1) & (work->memo->capacity - 1);
    return &work->memo->items[at];
}

bool budget_left(const struct work *work) {
    return work->answer->tried < work->budget;
}

struct judged set_try(struct work *work, const struct set *set) {
    struct remembered *known = remembered(work, set);
    if (known->used)
        return known->judged;
    struct arena_mark mark = arena_mark(work->arena);
    struct result result = {0};
    struct judged judged = {.score = INFINITY,
                            .wood = INFINITY,
                            .verdict = VERDICT_FAILED,
                            .hopes = all_slots(work),
                            .needs = {all_slots(work), all_slots(work)}};
    if (set_judge(work, set, true, &result))
        judged = judged_of(work, &result);
    arena_rewind(work->arena, mark);
    *known = (struct remembered){true, *set, judged};
    work->answer->tried++;
    if (judged.score < work->nearest_score) {
        work->nearest_score = judged.score;
        work->nearest = *set;
    }
    if (work->options->progress)
        work->options->progress(work->options->to, work->answer->tried);
    return judged;
}
