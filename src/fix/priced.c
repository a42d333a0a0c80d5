#include "fix/price.h"

#include <math.h>

/* May a stick that is made this other one cost less, however it is cut? The other is sold in the
 * same lengths, each at no less. */
static bool may_be_cheaper(const struct work *work, int stick, int other) {
    const struct frame *frame = work->frame;
    size_t ours = 0, matched = 0, theirs = 0;
    for (size_t a = 0; a < frame->prices.count; a++) {
        const struct price_entry *now = &frame->prices.items[a];
        theirs += now->stick == other;
        if (now->stick != stick)
            continue;
        ours++;
        for (size_t b = 0; b < frame->prices.count; b++) {
            const struct price_entry *then = &frame->prices.items[b];
            matched += then->stick == other && then->price.basis == now->price.basis &&
                       then->price.by_length == now->price.by_length &&
                       then->price.length == now->price.length &&
                       then->price.amount >= now->price.amount;
        }
    }
    return matched != ours || theirs != ours;
}

/* Its money, or NAN. What makes no piece more and no other is free; so are anchors and ballast,
 * which `cut` does not count. */
static double money_alone(struct work *work, size_t slot, size_t level) {
    enum change_kind kind = work->slots[slot].kind;
    struct set set = {{0}};
    set.level[slot] = (unsigned char)level;
    if (kind == CHANGE_HOLD_DOWN || kind == CHANGE_BALLAST)
        return 0.0;
    double money = set_bill(work, &set).all - work->described_bill;
    if (isfinite(money) && (kind == CHANGE_SIZE || kind == CHANGE_GRADE)) {
        int stick = work->slots[slot].stick;
        int other = same_wood(work->frame, stick, set_says(work, &set, CHANGE_SIZE, stick, "size"),
                              set_says(work, &set, CHANGE_GRADE, stick, "grade"));
        work->bill_may_shrink |= other >= 0 && may_be_cheaper(work, stick, other);
    }
    return money;
}

static size_t pieces_of(const struct work *work) {
    size_t pieces = 0;
    for (size_t k = 0; k < work->frame->sticks.count; k++)
        pieces += work->pieces[k];
    return pieces;
}

/* What of the slot has a price, and nothing that gives trays up. */
static struct choice priced_part(struct work *work, size_t index) {
    struct choice slot = work->slots[index];
    slot.items = NULL;
    slot.count = slot.capacity = 0;
    for (size_t k = 1; k <= work->slots[index].count; k++) {
        struct option option = work->slots[index].items[k - 1];
        if (option.trays)
            continue;
        option.money = money_alone(work, index, k);
        if (isfinite(option.money))
            ARRAY_PUSH(work->arena, &slot, option);
        else
            work->left_out++;
    }
    return slot;
}

bool price_catalogue(struct work *work) {
    enum { PIECES_MOST = 120 };
    work->prices_smalls = prices_smalls(work->frame);
    work->described_bill = set_bill(work, &(struct set){{0}}).all;
    if (!isfinite(work->described_bill) || pieces_of(work) > PIECES_MOST)
        return false;
    const struct cut_options options = usual_cut();
    work->described = cut_frame(work->arena, work->frame, &options);
    struct choice *priced = ARENA_ARRAY(work->arena, struct choice, work->slot_count);
    for (size_t s = 0; s < work->slot_count; s++)
        priced[s] = priced_part(work, s);
    size_t count = 0;
    for (size_t s = 0; s < work->slot_count; s++)
        if (priced[s].count)
            work->slots[count++] = priced[s];
    work->slot_count = count;
    return true;
}
