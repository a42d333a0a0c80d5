#include "buy/work.h"
#include "pieces/small.h"

#include <math.h>
#include <string.h>

/* Is it a price of this part? Of two that are, the one that names the length wins. */
static bool is_for(const struct price_entry *entry, const struct small_part *part) {
    if (part->fastener == FASTENER_NONE || entry->fastener == FASTENER_NONE)
        return entry->stick < 0 && entry->sheet < 0 && strcmp(entry->name, part->key) == 0;
    return entry->fastener == part->fastener && strcmp(entry->fastener_size, part->size) == 0 &&
           (!entry->screw_length.given ||
            (part->length.given && fabs(entry->screw_length.value - part->length.value) < 1e-6));
}

static const struct price_entry *price_of(const struct frame *frame,
                                          const struct small_part *part) {
    const struct price_entry *found = NULL;
    for (size_t k = 0; k < frame->prices.count; k++) {
        const struct price_entry *entry = &frame->prices.items[k];
        if (is_for(entry, part) && (!found || entry->screw_length.given))
            found = entry;
    }
    return found;
}

static struct cut_small small_of(const struct frame *frame, const struct small_part *part) {
    struct cut_small small = {
        .key = part->key, .words = part->words, .count = part->count, .cost = NAN};
    const struct price_entry *entry = price_of(frame, part);
    if (!entry)
        return small;
    small.boxes = part->count;
    if (entry->price.basis == PRICE_PER_BOX) {
        small.in_box = entry->price.in_box;
        small.boxes = (part->count + small.in_box - 1) / small.in_box;
    }
    small.cost = entry->price.amount * small.boxes;
    return small;
}

void buy_smalls(struct buying *buying) {
    struct small_parts parts = small_parts(buying->arena, buying->model);
    struct cut_small *smalls = ARENA_ARRAY(buying->arena, struct cut_small, parts.count);
    for (size_t k = 0; k < parts.count; k++) {
        smalls[k] = small_of(buying->frame, &parts.items[k]);
        bool boxed = smalls[k].in_box > 0;
        const char *each =
            boxed ? arena_print(buying->arena, "box of %d", smalls[k].in_box) : "piece";
        int count = boxed ? smalls[k].boxes : smalls[k].count;
        buy_line(buying, (struct cut_cost_line){.what = smalls[k].words,
                                                .each = each,
                                                .count = (size_t)count,
                                                .price = smalls[k].cost / count,
                                                .cost = smalls[k].cost});
    }
    buying->answer->smalls = smalls;
    buying->answer->small_count = parts.count;
    for (size_t k = 0; k < parts.notes.count; k++)
        buy_note(buying, parts.notes.items[k]);
}
