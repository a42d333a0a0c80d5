#include "fix/work.h"
#include "judge/judge.h"

#include <string.h>

/* Of a score: each stage that was not come to; what fails in one stage stays under that. */
static const double STAGE = 20.0;
static const double UNSEEN = 2.0; /* the same where sticks alone are looked at */
static const double FOLDS = 1e6;  /* a score worse than any of checks */

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
 * counts; what fails early hides what would fail later. */
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
    if (judged->score >= FOLDS)
        return;
    if (result->stopped_at && result->stopped_at < JUDGE_STAGES)
        judged->wood += UNSEEN * (JUDGE_STAGES - result->stopped_at);
    judged->score = STAGE * judged->score / (judged->score + STAGE);
    if (result->stopped_at)
        judged->score += STAGE * (JUDGE_STAGES + 1 - result->stopped_at);
}

static bool places_pieces_anew(const struct work *work, const struct choice *slot) {
    return work->frame->shape.given && (slot->kind == CHANGE_SIZE || slot->kind == CHANGE_TURN ||
                                        slot->kind == CHANGE_LEGS || slot->kind == CHANGE_RAIL);
}

static bool is_of_panel(const struct frame *frame, const struct choice *slot,
                        const struct check *check) {
    return slot->panel >= 0 && strcmp(frame->panels.items[slot->panel].name, check->where) == 0;
}

/* May the slot change what such a check sees? A slat is a beam from rail to rail by itself, a sheet
 * one between the sticks under it; all else hangs together. */
static bool bears_on(const struct work *work, const struct choice *slot,
                     const struct check *check) {
    const struct frame *frame = work->frame;
    if (places_pieces_anew(work, slot))
        return true;
    if (strcmp(check->kind, "panel") == 0)
        return slot->kind == CHANGE_LEGS || slot->kind == CHANGE_RAIL ||
               slot->kind == CHANGE_BRACE || is_of_panel(frame, slot, check);
    if (strcmp(check->kind, "slat") != 0)
        return true;
    for (size_t s = 0; s < frame->shelves.count; s++)
        if (strcmp(frame->shelves.items[s].name, check->where) == 0)
            return slot->shelf == (int)s ||
                   (slot->stick == frame->shelves.items[s].slat && slot->kind <= CHANGE_GRADE);
    return true;
}

uint64_t all_slots(const struct work *work) {
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

struct judged judged_of(const struct work *work, const struct result *result) {
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
