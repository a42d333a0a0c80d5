/* Cut lengths, rectangles of sheets, weights and small parts, worked out by hand. */
#include "pieces/rectangles.h"
#include "pieces/small.h"
#include "pieces/sticks.h"
#include "pieces/weigh.h"

#include "in_arena.h"
#include "near.h"
#include "second_frame.h"

#include <math.h>
#include <string.h>

TestSuite(pieces, .init = set_up, .fini = tear_down);

static const double INCH = 0.0254;

static const struct model *model_of(const char *text) {
    struct frame *frame = frame_of_text(arena, text);
    struct problems problems = problems_new(arena);
    const struct model *model = model_build(arena, frame, &problems);
    cr_assert(model && !problems.count);
    return model;
}

static const struct stick_piece *piece(const struct stick_pieces *pieces, const char *name) {
    for (size_t k = 0; k < pieces->count; k++)
        if (strcmp(pieces->items[k].name, name) == 0)
            return &pieces->items[k];
    cr_assert_fail("no piece is called %s", name);
    return NULL;
}

/* A bench end: legs 2x4 on edge to the front (3.5 along x, 1.5 along y), 60 in apart over all. */
static const char FRAME[] =
    "batten: 1\n"
    "sticks:\n"
    "  leg: {size: 2x4, species: spruce-pine-fir, grade: no-2, faces: front}\n"
    "  rail: {size: 2x4, species: spruce-pine-fir, grade: no-2, stands: on-edge}\n"
    "  slat: {size: 1x4, species: spruce-pine-fir, grade: ungraded}\n"
    "joints:\n"
    "  fl0: [1.75, 0.75, 0]\n"
    "  fr0: [58.25, 0.75, 0]\n"
    "  fl1: [1.75, 0.75, 30]\n"
    "  fr1: [58.25, 0.75, 30]\n"
    "  bl0: [1.75, 23.25, 0]\n"
    "  br0: [58.25, 23.25, 0]\n"
    "  bl1: [1.75, 23.25, 30]\n"
    "  br1: [58.25, 23.25, 30]\n"
    "  ml: [1.75, 0.75, 15]\n"
    "  mr: [58.25, 0.75, 15]\n"
    "members:\n"
    "  leg-fl: {from: fl0, to: fl1, stick: leg}\n"
    "  leg-fr: {from: fr0, to: fr1, stick: leg}\n"
    "  leg-bl: {from: bl0, to: bl1, stick: leg}\n"
    "  leg-br: {from: br0, to: br1, stick: leg}\n"
    "  front: {from: fl1, to: fr1, stick: rail, ends: lap}\n"
    "  back: {from: bl1, to: br1, stick: rail, ends: butt}\n"
    "  left: {from: fl1, to: bl1, stick: rail, ends: [lap, pinned]}\n"
    "  right: {from: fr1, to: br1, stick: rail, ends: notch, length: 23 in}\n"
    "  brace: {from: fl0, to: fr1, stick: rail, ends: lap, acts-as: brace}\n"
    "  middle: {from: ml, to: mr, stick: rail, ends: [bracket, gusset]}\n"
    "connections:\n"
    "  lap: {type: screwed-lap, screw: 10, length: 3 in, count: 2}\n"
    "  butt: {type: screwed-butt, screw: 8, length: 2-1/2 in, count: 2}\n"
    "  notch: {type: notched, screw: 8, length: 2-1/2 in, count: 2, depth: 1/2 in}\n"
    "  bracket: {type: bracket, screw: 8, length: 1-1/4 in, count: 2}\n"
    "  gusset: {type: gusset, screw: 6, length: 1 in, count: 3, sheet: plywood-1/4in, plates: 2}\n"
    "supports: {fl0: foot, fr0: foot, bl0: {in-ground: 24 in}, br0: foot, br1: [y]}\n"
    "shelves:\n"
    "  top: {rails: [front, back], deck: {slats: slat, count: 5}, trays: {weight: 30 lb}}\n"
    "panels:\n"
    "  wall: {corners: [fl0, fr0, fr1, fl1], sheet: plywood-1/2in, held: screwed, screw: 6,"
    " spacing: 12 in, overhang: 1 in}\n"
    "parts: {end: [leg-fl, leg-bl, left], shelf: [front, back]}\n";

static double inches(const struct stick_pieces *pieces, const char *name) {
    return piece(pieces, name)->length / INCH;
}

Test(pieces, lengths_as_they_are_cut) {
    const struct model *model = model_of(FRAME);
    struct stick_pieces pieces = stick_pieces(arena, model);
    /* from the ground to the top of the rails, 30 + 3.5 / 2 */
    NEAR_ABS(inches(&pieces, "leg-fl"), 31.75, 1e-9);
    /* 24 in more in the ground; a strap to the wall (br1) stops no wood */
    NEAR_ABS(inches(&pieces, "leg-bl"), 55.75, 1e-9);
    NEAR_ABS(inches(&pieces, "leg-br"), 31.75, 1e-9);
    /* lapped: to the outer faces, 56.5 + 3.5; butted: between the legs, 56.5 - 3.5 */
    NEAR_ABS(inches(&pieces, "front"), 60.0, 1e-9);
    NEAR_ABS(inches(&pieces, "back"), 53.0, 1e-9);
    /* lapped in front (1.5 / 2 along y), joint to joint where it is pinned */
    NEAR_ABS(inches(&pieces, "left"), 22.5 + 0.75, 1e-9);
    NEAR_ABS(inches(&pieces, "right"), 23.0, 1e-9); /* as the file says */
    /* an angle and a plate hold it between the legs */
    NEAR_ABS(inches(&pieces, "middle"), 53.0, 1e-9);
    /* slats over the outer faces of rails 1-1/2 in thick: 22.5 + 1.5 */
    NEAR_ABS(inches(&pieces, "top/slat-5"), 24.0, 1e-9);
    cr_assert(pieces.count == 10 + 5);
}

/* The brace rises 30 in over 56.5: 63.970 in, 27.968 degrees. Lapped on the right to the leg's
 * outer face, 1.75 / cos = 1.98137 in further; at the foot nothing is added, for there is the
 * ground. Its 3-1/2 in face is cut off square by that angle. */
Test(pieces, slopes_are_measured_along_the_stick) {
    struct stick_pieces pieces = stick_pieces(arena, model_of(FRAME));
    const struct stick_piece *brace = piece(&pieces, "brace");
    double angle = atan(30.0 / 56.5), along = hypot(30.0, 56.5);
    NEAR_ABS(brace->length / INCH, along + 1.75 / cos(angle), 1e-9);
    NEAR_ABS(brace->length / INCH, 65.9511, 1e-3);
    NEAR_ABS(end_cut_angle(&brace->ends[1], 2), angle, 1e-9);
    NEAR_ABS(end_cut_angle(&brace->ends[1], 1), 0.0, 1e-9);
    /* half of 3.5 tan(27.968) at either end, long point to long point */
    NEAR_ABS(brace->needs / INCH, brace->length / INCH + 3.5 * tan(angle), 1e-9);
}

/* The wall between legs: their outer edges are 60 in apart, with an inch of overhang on both sides
 * 62; up from the ground line 30 in, half a 3-1/2 in rail and two overhangs: 33.75. */
Test(pieces, sheets_reach_the_outer_edges) {
    struct sheet_parts parts = sheet_parts(arena, model_of(FRAME));
    cr_assert(parts.count == 1);
    NEAR_ABS(parts.items[0].rectangle.across / INCH, 62.0, 1e-9);
    NEAR_ABS(parts.items[0].rectangle.along / INCH, 33.75, 1e-9);
    cr_assert(parts.items[0].rectangle.is_whole);
    cr_assert(parts.items[0].rectangle.edge_without_stick); /* at the ground */
    cr_assert(!sheet_is_fluted(parts.items[0].sheet));
    cr_assert(sheet_is_fluted(table_sheet_find("twin-wall-6mm")));
    cr_assert(sheet_is_fluted(table_sheet_find("corrugated-polycarbonate")));
}

/* A side that slopes at the top, 24 in deep, 40 and 50 in high: cut from 24 x 50 upright; sticks of
 * no thickness worth mention. Its ribs run up and down. */
Test(pieces, other_shapes_are_cut_from_a_rectangle) {
    struct sheet_parts parts = sheet_parts(
        arena,
        model_of("batten: 1\n"
                 "sticks: {bar: {size: [0.001 in, 0.001 in], material: {E: 1e6 psi}}}\n"
                 "joints: {a: [0, 0, 0], b: [0, 24, 0], c: [0, 24, 50], d: [0, 0, 40]}\n"
                 "members:\n"
                 "  ab: {from: a, to: b, stick: bar, ends: rigid}\n"
                 "  bc: {from: b, to: c, stick: bar, ends: rigid}\n"
                 "  cd: {from: c, to: d, stick: bar, ends: rigid}\n"
                 "  da: {from: d, to: a, stick: bar, ends: rigid}\n"
                 "supports: {a: fixed, b: pinned}\n"
                 "panels: {side: {corners: [a, b, c, d], sheet: twin-wall-6mm, held: taped}}\n"));
    const struct rectangle *rectangle = &parts.items[0].rectangle;
    NEAR_ABS(rectangle->across / INCH, 24.0, 0.01);
    NEAR_ABS(rectangle->along / INCH, 50.0, 0.01);
    NEAR_ABS(rectangle->area / (INCH * INCH), 24.0 * 45.0, 0.2);
    cr_assert(!rectangle->is_whole && !rectangle->edge_without_stick);
}

/* End: legs of 31.75 and 55.75 in and a rail of 23.25, all 1.5 x 3.5 in: 581.4375 in3 = 0.00952806
 * m3. Spruce-pine-fir G 0.42 at 15 %: 1000 x 0.42 x 1.15 / (1 + 0.009 x 0.42 x 15) = 457.08 kg/m3;
 * at 25 %: 525 / 1.0945 = 479.67. The shelf: rails of 60 and 53 in (593.25 in3) and five slats 24
 * in long, 3/4 x 3-1/2 in (315 in3): 908.25 in3; 30 lb of trays. */
Test(pieces, parts_are_weighed) {
    const struct model *model = model_of(FRAME);
    struct weight end = weigh_part(arena, model, &model->frame->parts.items[0]);
    double cubic = INCH * INCH * INCH;
    NEAR_REL(end.dry, 581.4375 * cubic * 483.0 / 1.0567, 1e-9);
    NEAR_REL(end.after_rain, 581.4375 * cubic * 525.0 / 1.0945, 1e-9);
    NEAR_ABS(end.dry, 4.3551, 1e-4);
    cr_assert(end.trays == 0.0);
    struct weight shelf = weigh_part(arena, model, &model->frame->parts.items[1]);
    NEAR_REL(shelf.dry, 908.25 * cubic * 483.0 / 1.0567, 1e-9);
    NEAR_REL(shelf.trays, 30 * 0.45359237, 1e-9);
    struct weight all = weigh_frame(arena, model);
    /* the wall: 62 x 33.75 in of 1.5 psf are 21.797 lb */
    double wood = all.dry - 62.0 * 33.75 / 144.0 * 1.5 * 0.45359237;
    struct stick_pieces pieces = stick_pieces(arena, model);
    double volume = 0.0;
    for (size_t k = 0; k < pieces.count; k++)
        volume += pieces.items[k].length * INCH * INCH *
                  (pieces.items[k].shelf < 0 ? 1.5 * 3.5 : 0.75 * 3.5);
    NEAR_REL(wood, volume * 483.0 / 1.0567, 1e-9);
}

static int count_of(const struct small_parts *parts, const char *key) {
    for (size_t k = 0; k < parts->count; k++)
        if (strcmp(parts->items[k].key, key) == 0)
            return parts->items[k].count;
    return 0;
}

/* Laps: front 2 ends, left 1, brace 2 (a host ends the same leg): 5 x 2 No.10. Butts: back 2 ends;
 * notches: right 2 ends: 4 x 2 No.8 x 2-1/2. One bracket with 2 screws in each leg. A gusset: 2
 * plates, 3 screws in each stick of each. Wall: 60 in along the edges at 12 in: 5 + 3 + 5 + 3, and
 * 4 between the ends of the rail in the middle (56.5 in in 5 spaces). */
Test(pieces, small_parts_are_counted) {
    struct small_parts parts = small_parts(arena, model_of(FRAME));
    cr_assert(count_of(&parts, "screw-10x3in") == 10);
    cr_assert(count_of(&parts, "screw-8x2-1/2in") == 8);
    cr_assert(count_of(&parts, "screw-8x1-1/4in") == 4);
    cr_assert(count_of(&parts, "bracket") == 1);
    cr_assert(count_of(&parts, "gusset") == 2);
    cr_assert(count_of(&parts, "screw-6x1in") == 12);
    cr_assert(count_of(&parts, "screw-6") == 20, "%d", count_of(&parts, "screw-6"));
    cr_assert(count_of(&parts, "washer") == 0); /* wood needs none */
    cr_assert(parts.notes.count == 1);
}
