#include "spread/inputs.h"

#include <string.h>

const char *const SPREAD_KIND_NAMES[SPREAD_KIND_COUNT] = {"stiffness", "strength", "joints",
                                                          "trays"};

static void add(struct arena *arena, struct spread_inputs *inputs, enum spread_kind kind,
                size_t index, const char *of) {
    ARRAY_PUSH(arena, inputs, (struct spread_input){kind, (int)index, of});
}

static bool has_range(const struct member_end *end) {
    for (int k = 0; k < 6; k++)
        if (end->springs[STIFFNESS_LOW].k[k] != end->springs[STIFFNESS_HIGH].k[k])
            return true;
    return false;
}

static bool joints_have_range(const struct model *model, size_t connection) {
    for (size_t m = 0; m < model->member_count; m++)
        for (int e = 0; e < 2; e++)
            if (model->members[m].ends[e].connection == (int)connection &&
                has_range(&model->members[m].ends[e]))
                return true;
    return false;
}

static bool trays_have_range(const struct shelf *shelf) {
    return shelf->trays == TRAYS_KIND &&
           strcmp(table_tray(shelf->tray)->name, "tray-1020-wet") == 0;
}

struct spread_inputs spread_inputs(struct arena *arena, const struct model *model) {
    const struct frame *frame = model->frame;
    struct spread_inputs inputs = {0};
    for (size_t m = 0; m < model->member_count; m++) {
        if (model->members[m].lumber.basis == LUMBER_OWN)
            continue;
        add(arena, &inputs, SPREAD_STIFFNESS, m, frame->members.items[m].name);
        add(arena, &inputs, SPREAD_STRENGTH, m, frame->members.items[m].name);
    }
    for (size_t c = 0; c < frame->connections.count; c++)
        if (joints_have_range(model, c))
            add(arena, &inputs, SPREAD_JOINTS, c, frame->connections.items[c].name);
    for (size_t s = 0; s < frame->shelves.count; s++)
        if (trays_have_range(&frame->shelves.items[s]))
            add(arena, &inputs, SPREAD_TRAYS, s, frame->shelves.items[s].name);
    return inputs;
}
