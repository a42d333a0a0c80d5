#include "pieces/weigh.h"

#include "loads/shelves.h"
#include "model/sections.h"

static bool has(const int *list, size_t count, int number) {
    for (size_t k = 0; k < count; k++)
        if (list[k] == number)
            return true;
    return false;
}

/* `part` NULL: everything. */
static bool has_member(const struct part *part, int member) {
    return !part || has(part->members, part->member_count, member);
}

static bool has_panel(const struct part *part, int panel) {
    return !part || has(part->panels, part->panel_count, panel);
}

static bool has_shelf(const struct part *part, const struct shelf *shelf) {
    for (size_t r = 0; r < shelf->rail_count; r++)
        if (!has_member(part, shelf->rails[r]))
            return false;
    return true;
}

static double stick_mass(const struct stick *stick, double length, bool wet) {
    struct lumber lumber = sections_lumber(stick);
    double area = stick->has_section ? stick->section.A : stick->thickness * stick->width;
    return area * length * sections_density(&lumber, wet);
}

static double pieces_mass(const struct model *model, const struct part *part,
                          const struct stick_pieces *pieces, bool wet) {
    const struct frame *frame = model->frame;
    double mass = 0.0;
    for (size_t k = 0; k < pieces->count; k++) {
        const struct stick_piece *piece = &pieces->items[k];
        bool counts = piece->member >= 0  ? has_member(part, piece->member)
                      : piece->shelf >= 0 ? has_shelf(part, &frame->shelves.items[piece->shelf])
                                          : has_panel(part, piece->panel) &&
                                                !frame->panels.items[piece->panel].weight.given;
        if (counts)
            mass += stick_mass(&frame->sticks.items[piece->stick], piece->length, wet);
    }
    return mass;
}

static double sheets_mass(const struct model *model, const struct part *part,
                          const struct sheet_parts *sheets) {
    const struct frame *frame = model->frame;
    double weight = 0.0;
    for (size_t k = 0; k < sheets->count; k++) {
        const struct sheet_part *sheet = &sheets->items[k];
        const struct panel *panel = sheet->panel >= 0 ? &frame->panels.items[sheet->panel] : NULL;
        bool counts = panel ? has_panel(part, sheet->panel)
                            : has_shelf(part, &frame->shelves.items[sheet->shelf]);
        if (counts)
            weight += panel && panel->weight.given
                          ? panel->weight.value
                          : table_sheet(sheet->sheet)->weight * sheet->rectangle.area;
    }
    return weight / table_constant("gravity").value;
}

/* Decks given by their weight, and the trays. */
static double shelves_mass(struct arena *arena, const struct model *model, const struct part *part,
                           bool trays) {
    double weight = 0.0;
    for (size_t s = 0; s < model->frame->shelves.count; s++) {
        const struct shelf *shelf = &model->frame->shelves.items[s];
        if (!has_shelf(part, shelf))
            continue;
        struct shelf_loading loading = shelves_measure(arena, model, shelf);
        weight += trays ? loading.trays : shelf->deck == DECK_WEIGHT ? loading.deck : 0.0;
    }
    return weight / table_constant("gravity").value;
}

struct weight weigh_part(struct arena *arena, const struct model *model, const struct part *part) {
    struct stick_pieces pieces = stick_pieces(arena, model);
    struct sheet_parts sheets = sheet_parts(arena, model);
    double other = sheets_mass(model, part, &sheets) + shelves_mass(arena, model, part, false);
    return (struct weight){.dry = pieces_mass(model, part, &pieces, false) + other,
                           .after_rain = pieces_mass(model, part, &pieces, true) + other,
                           .trays = shelves_mass(arena, model, part, true)};
}

struct weight weigh_frame(struct arena *arena, const struct model *model) {
    return weigh_part(arena, model, NULL);
}
