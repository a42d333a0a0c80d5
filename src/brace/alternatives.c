#include "brace/work.h"
#include "frame/fastener_size.h"

#include <math.h>
#include <string.h>

#define INCH 0.0254

struct alternatives {
    struct alternative *items;
    size_t count, capacity;
};

static void record(struct work *work, struct alternatives *list, const char *words,
                   const struct model *model, const struct bar *bars, size_t bar_count) {
    struct alternative made = {.words = words, .lean = {NAN, NAN}};
    made.ways = (int)fold_ways(work->arena, model, bars, bar_count).count;
    struct pushed pushed = push_frame(work, model, STIFFNESS_MIDDLE, bars, bar_count);
    for (size_t k = 0; k < pushed.count; k++) {
        made.lean[pushed.axes[k]] = pushed.lean[k].movement;
        made.over[pushed.axes[k]] = !(pushed.lean[k].ratio <= 1.0);
    }
    ARRAY_PUSH(work->arena, list, made);
}

/* The frame with a sheet of plywood over every cell of the faces named. */
static bool with_plywood(struct work *work, const struct cells *cells, const char *const *faces,
                         size_t face_count, struct model *model, struct bar **bars,
                         size_t *bar_count) {
    struct frame *frame = ARENA_NEW(work->arena, struct frame);
    *frame = *work->frame;
    size_t capacity = frame->panels.count + cells->count;
    struct panel *panels = ARENA_ARRAY(work->arena, struct panel, capacity);
    if (frame->panels.count)
        memcpy(panels, frame->panels.items, frame->panels.count * sizeof *panels);
    frame->panels.items = panels;
    frame->panels.capacity = capacity;
    size_t before = frame->panels.count;
    for (size_t c = 0; c < cells->count; c++) {
        const struct face *face = &cells->faces[cells->items[c].face];
        bool wanted = false;
        for (size_t f = 0; f < face_count; f++)
            wanted |= strcmp(face->words, faces[f]) == 0;
        if (!wanted || face->kept_open || cells->items[c].on_ground)
            continue;
        struct panel sheet = {.name = "plywood",
                              .sheet = table_sheet_find("plywood-1/4in"),
                              .held = HELD_SCREWED,
                              .screw_diameter = screw_diameter(6),
                              .spacing = {true, 6.0 * INCH},
                              .hinge = {-1, -1},
                              .framed = -1};
        memcpy(sheet.corners, cells->items[c].joints, sizeof sheet.corners);
        panels[frame->panels.count++] = sheet;
    }
    if (frame->panels.count == before)
        return false;
    *model = *work->model;
    model->frame = frame;
    struct bracing_sheet *sheets = bracing_sheets(work->arena, model);
    *bar_count = bracing_bars(work->arena, model, sheets, STIFFNESS_MIDDLE, false, bars, NULL);
    return true;
}

static void try_plywood(struct work *work, const struct cells *cells, struct alternatives *list) {
    static const char *const back[] = {"back"};
    static const char *const three[] = {"back", "left", "right"};
    static const struct {
        const char *words;
        const char *const *faces;
        size_t count;
    } tries[] = {
        {"1/4 in plywood over the back between its rails, No.6 screws every 6 in", back, 1},
        {"the same over the back and both sides", three, 3}};
    for (size_t k = 0; k < sizeof tries / sizeof *tries; k++) {
        struct model model;
        struct bar *bars;
        size_t count;
        if (with_plywood(work, cells, tries[k].faces, tries[k].count, &model, &bars, &count))
            record(work, list, tries[k].words, work->model, bars, count);
    }
}

/* Every fastening turned as stiff as a plywood gusset or a corner block makes it. */
static void try_gussets(struct work *work, struct alternatives *list) {
    struct model model = *work->model;
    model.members = ARENA_ARRAY(work->arena, struct model_member, model.member_count);
    memcpy(model.members, work->model->members, model.member_count * sizeof *model.members);
    double turn = table_constant("gusset-turn").value;
    for (size_t m = 0; m < model.member_count; m++)
        for (int end = 0; end < 2; end++) {
            struct member_end *at = &model.members[m].ends[end];
            double *springs = at->springs[STIFFNESS_MIDDLE].k;
            bool tie = work->frame->members.items[m].acts_as == ACTS_AS_TIE;
            for (int k = 4; !at->host && !tie && !at->released && k < 6; k++)
                springs[k] = fmax(springs[k], turn);
        }
    struct bar *bars;
    size_t count = work_bars(work, STIFFNESS_MIDDLE, false, &bars);
    record(work, list,
           "plywood gussets or corner blocks at every joint (they stop no way to fold, "
           "they only stiffen)",
           &model, bars, count);
}

/* The highest joints at the back held level both ways, as by screws into a wall. */
static void try_wall(struct work *work, struct alternatives *list) {
    const struct frame *frame = work->frame;
    struct model model = *work->model;
    double highest = -INFINITY, rearmost = -INFINITY;
    for (size_t j = 0; j < frame->joints.count; j++)
        rearmost = fmax(rearmost, frame->joints.items[j].at[1]);
    double level = table_constant("push-level").value;
    for (size_t j = 0; j < frame->joints.count; j++)
        if (frame->joints.items[j].at[1] >= rearmost - level)
            highest = fmax(highest, frame->joints.items[j].at[2]);
    model.slots = ARENA_ARRAY(work->arena, struct slot, model.slot_count);
    memcpy(model.slots, work->model->slots, model.slot_count * sizeof *model.slots);
    for (size_t j = 0; j < frame->joints.count; j++) {
        const double *at = frame->joints.items[j].at;
        if (at[1] >= rearmost - level && at[2] >= highest - level)
            model.slots[model.move_slot[j]].held[0] = model.slots[model.move_slot[j]].held[1] =
                true;
    }
    struct bar *bars;
    size_t count = work_bars(work, STIFFNESS_MIDDLE, false, &bars);
    record(work, list, "the top of the back screwed to a wall", &model, bars, count);
}

void try_alternatives(struct work *work, const struct cells *cells) {
    struct alternatives list = {0};
    try_plywood(work, cells, &list);
    try_gussets(work, &list);
    if (!work->frame->plane)
        try_wall(work, &list);
    work->answer->alternatives = list.items;
    work->answer->alternative_count = list.count;
}
