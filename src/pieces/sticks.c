#include "pieces/sticks.h"

#include "loads/shelves.h"
#include "pieces/rectangles.h"

#include <math.h>

/* Half of what the corners of a slanting cut stand out before and behind its middle. */
static double to_long_point(const struct end_cut *cut, const struct model_member *stick) {
    return (fabs(cut->slope_y) * stick->size_y + fabs(cut->slope_z) * stick->size_z) / 2.0;
}

static struct stick_piece member_piece(const struct model *model, const struct meetings *meetings,
                                       int number) {
    const struct member *member = &model->frame->members.items[number];
    const struct model_member *stick = &model->members[number];
    struct stick_piece piece = {.name = member->name,
                                .stick = member->stick,
                                .member = number,
                                .shelf = -1,
                                .panel = -1,
                                .length = stick->length};
    double points = 0.0;
    for (int end = 0; end < 2; end++) {
        piece.ends[end] = end_cut(model, meetings, number, end);
        piece.length += piece.ends[end].beyond;
        points += to_long_point(&piece.ends[end], stick);
    }
    if (member->length.given) {
        piece.length = member->length.value;
        piece.given = true;
    }
    piece.needs = piece.given ? piece.length : piece.length + points;
    return piece;
}

static void add(struct arena *arena, struct stick_pieces *pieces, struct stick_piece piece,
                double length) {
    piece.member = -1;
    piece.length = piece.needs = length;
    ARRAY_PUSH(arena, pieces, piece);
}

static void add_slats(struct arena *arena, const struct model *model, size_t number,
                      struct stick_pieces *pieces) {
    const struct shelf *shelf = &model->frame->shelves.items[number];
    if (shelf->deck != DECK_SLATS)
        return;
    double length = shelves_measure(arena, model, shelf).width;
    for (int k = 0; k < shelf->slat_count; k++)
        add(arena, pieces,
            (struct stick_piece){.name = arena_print(arena, "%s/slat-%d", shelf->name, k + 1),
                                 .stick = shelf->slat,
                                 .shelf = (int)number,
                                 .panel = -1},
            length);
}

/* Two pieces along the whole of the sheet and two across between them. */
static void add_panel_frame(struct arena *arena, const struct model *model, size_t number,
                            struct stick_pieces *pieces) {
    const struct panel *panel = &model->frame->panels.items[number];
    if (panel->framed < 0)
        return;
    struct rectangle rectangle = panel_rectangle(model, panel);
    double width = model->frame->sticks.items[panel->framed].width;
    for (int k = 0; k < 4; k++)
        add(arena, pieces,
            (struct stick_piece){.name = arena_print(arena, "%s/frame-%d", panel->name, k + 1),
                                 .stick = panel->framed,
                                 .shelf = -1,
                                 .panel = (int)number},
            k < 2 ? rectangle.along : fmax(rectangle.across - 2.0 * width, 0.0));
}

struct stick_pieces stick_pieces(struct arena *arena, const struct model *model) {
    struct stick_pieces pieces = {0};
    struct meetings meetings = meetings_of(arena, model->frame, &model->along);
    for (size_t m = 0; m < model->member_count; m++)
        ARRAY_PUSH(arena, &pieces, member_piece(model, &meetings, (int)m));
    for (size_t s = 0; s < model->frame->shelves.count; s++)
        add_slats(arena, model, s, &pieces);
    for (size_t p = 0; p < model->frame->panels.count; p++)
        add_panel_frame(arena, model, p, &pieces);
    return pieces;
}
