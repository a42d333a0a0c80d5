#include "fix/screw_lengths.h"

#include "frame/fastener_size.h"
#include "frame/tree.h"
#include "pieces/sticks.h"
#include "units/decimal.h"
#include "units/unit.h"

#include <math.h>
#include <string.h>

struct choice *choice_new(struct work *work, enum change_kind kind, int stick, int shelf) {
    if (work->slot_count == SLOTS_MOST) {
        work->slots_left_out = true;
        return NULL;
    }
    struct choice *slot = &work->slots[work->slot_count++];
    *slot = (struct choice){.kind = kind, .stick = stick, .shelf = shelf, .panel = -1};
    return slot;
}

struct option *choice_add(struct work *work, struct choice *slot, const char *what,
                          const char *yaml, double effort, int trays) {
    if (!slot || slot->count == UINT8_MAX)
        return NULL;
    const struct node *edit = tree_of_text(work->arena, yaml, strlen(yaml));
    if (!edit)
        return NULL;
    ARRAY_PUSH(work->arena, slot,
               (struct option){.what = what, .edit = edit, .effort = effort, .trays = trays});
    return &slot->items[slot->count - 1];
}

static bool is_used(const struct frame *frame, const char *name) {
    for (size_t k = 0; k < frame->joints.count; k++)
        if (strcmp(frame->joints.items[k].name, name) == 0)
            return true;
    for (size_t k = 0; k < frame->members.count; k++)
        if (strcmp(frame->members.items[k].name, name) == 0)
            return true;
    for (size_t k = 0; k < frame->connections.count; k++)
        if (strcmp(frame->connections.items[k].name, name) == 0)
            return true;
    return false;
}

const char *name_unused(struct work *work, const char *word) {
    const char *name = word;
    for (int k = 1; is_used(work->frame, name); k++)
        name = arena_print(work->arena, "%s-%d", word, k);
    return name;
}

int post_stick(const struct work *work) {
    size_t best = 0;
    int stick = -1;
    size_t *uses = ARENA_ARRAY(work->arena, size_t, work->frame->sticks.count);
    for (int steep = 1; steep >= 0 && stick < 0; steep--)
        for (size_t m = 0; m < work->model->member_count; m++) {
            const struct member *member = &work->frame->members.items[m];
            if (member->acts_as != ACTS_AS_MEMBER ||
                (steep && !member_steep(&work->model->members[m])))
                continue;
            if (++uses[member->stick] > best) {
                best = uses[member->stick];
                stick = member->stick;
            }
        }
    return stick;
}

const char *bare_length(const struct work *work, double metres) {
    enum { DECIMALS = 5 };
    const struct unit *unit = unit_default(QUANTITY_LENGTH, work->frame->units);
    return decimal_fixed(work->arena, metres / unit->factor, DECIMALS);
}

const char *bare_place(const struct work *work, const double at[3]) {
    if (work->frame->plane)
        return arena_print(work->arena, "[%s, %s]", bare_length(work, at[0]),
                           bare_length(work, at[2]));
    return arena_print(work->arena, "[%s, %s, %s]", bare_length(work, at[0]),
                       bare_length(work, at[1]), bare_length(work, at[2]));
}

/* A lap of the file itself: what `default` says, else the first. */
static const char *own_lap(const struct frame *frame) {
    const char *first = NULL;
    for (size_t k = 0; k < frame->connections.count; k++) {
        const struct connection *connection = &frame->connections.items[k];
        if (connection->type != CONNECTION_SCREWED_LAP)
            continue;
        if ((int)k == frame->default_connection)
            return connection->name;
        if (!first)
            first = connection->name;
    }
    return first;
}

/* No.8 screws that go through the thinnest stick and as deep into the next as a lap needs. */
static const char *lap_length(const struct work *work) {
    double thinnest = INFINITY;
    for (size_t m = 0; m < work->model->member_count; m++) {
        const struct stick *stick = &work->frame->sticks.items[work->frame->members.items[m].stick];
        if (stick->has_size)
            thinnest = fmin(thinnest, stick->thickness);
    }
    double needed = thinnest + table_constant("screw-penetration-least").value * screw_diameter(8);
    int at = 0;
    while (at < SCREW_LENGTHS - 1 && screw_length(work, at) < needed)
        at++;
    return screw_length_words(work, at);
}

const char *yaml_quoted(const struct work *work, const char *words) {
    struct text text = text_new(work->arena);
    text_add(&text, "\"");
    for (; *words; words++) {
        if (*words == '"' || *words == '\\')
            text_add(&text, "\\");
        text_bytes(&text, words, 1);
    }
    text_add(&text, "\"");
    return text_string(&text);
}

const char *lap_entry(struct work *work) {
    if (!work->lap)
        work->lap = own_lap(work->frame);
    if (work->lap && is_used(work->frame, work->lap))
        return "";
    if (!work->lap)
        work->lap = name_unused(work, "added-lap");
    return arena_print(work->arena,
                       "connections: {%s: {type: screwed-lap, screw: 8, length: %s, count: 2}}\n",
                       work->lap, lap_length(work));
}

static void measure_sticks(struct work *work) {
    struct stick_pieces pieces = stick_pieces(work->arena, work->model);
    work->pieces = ARENA_ARRAY(work->arena, size_t, work->frame->sticks.count);
    work->lengths = ARENA_ARRAY(work->arena, double, work->frame->sticks.count);
    for (size_t k = 0; k < pieces.count; k++) {
        work->pieces[pieces.items[k].stick]++;
        work->lengths[pieces.items[k].stick] += pieces.items[k].length;
    }
}

static void drop_empty_slots(struct work *work) {
    size_t kept = 0;
    for (size_t k = 0; k < work->slot_count; k++)
        if (work->slots[k].count)
            work->slots[kept++] = work->slots[k];
    work->slot_count = kept;
}

/* By effort; the order of equal ones stays. */
static void sort_slot(struct choice *slot) {
    for (size_t k = 1; k < slot->count; k++) {
        struct option option = slot->items[k];
        size_t at = k;
        for (; at > 0 && slot->items[at - 1].effort > option.effort; at--)
            slot->items[at] = slot->items[at - 1];
        slot->items[at] = option;
    }
}

/* Joints last: an edit of a connection stands over the entry that an added stick brings along. */
void catalogue_build(struct work *work) {
    measure_sticks(work);
    catalogue_sticks(work);
    catalogue_shelves(work);
    catalogue_rails(work);
    catalogue_legs(work);
    catalogue_braces(work);
    catalogue_panels(work);
    catalogue_feet(work);
    catalogue_ballast(work);
    catalogue_joints(work);
    drop_empty_slots(work);
    for (size_t k = 0; k < work->slot_count; k++) {
        sort_slot(&work->slots[k]);
        work->answer->options += work->slots[k].count;
    }
}
