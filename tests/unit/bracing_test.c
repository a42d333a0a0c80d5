/* Cells, candidates for diagonals, sheets as bracing: frames whose openings are known, and
 * published numbers. */
#include "bracing/candidates.h"
#include "bracing/panel_rack.h"
#include "loads/loads.h"
#include "model/fastening.h"
#include "near.h"
#include "second_frame.h"
#include "solve/response.h"

#include <stdio.h>
#include <string.h>

#define HEAD                                                                                       \
    "batten: 1\nunits: si\nself-weight: no\nsite: {place: indoors}\n"                              \
    "sticks: {s: {size: [38, 38], species: spruce-pine-fir, grade: no-2}}\n"                       \
    "connections: {default: {type: screwed-lap, screw: 8, length: 50, count: 2}}\n"

#define BOX                                                                                        \
    "joints: {fl0: [0, 0, 0], fr0: [1000, 0, 0], bl0: [0, 600, 0], br0: [1000, 600, 0],\n"         \
    "  fl1: [0, 0, 800], fr1: [1000, 0, 800], bl1: [0, 600, 800], br1: [1000, 600, 800]}\n"        \
    "supports: {fl0: foot, fr0: foot, bl0: foot, br0: foot}\n"                                     \
    "members:\n  pfl: {from: fl0, to: fl1, stick: s}\n  pfr: {from: fr0, to: fr1, stick: s}\n"     \
    "  pbl: {from: bl0, to: bl1, stick: s}\n  pbr: {from: br0, to: br1, stick: s}\n"               \
    "  front: {from: fl1, to: fr1, stick: s}\n  back: {from: bl1, to: br1, stick: s}\n"            \
    "  left: {from: fl1, to: bl1, stick: s}\n  right: {from: fr1, to: br1, stick: s}\n"

/* The box with a ring of sticks on the ground: sheets reach sticks all round. */
#define RING                                                                                       \
    "  front-0: {from: fl0, to: fr0, stick: s}\n  back-0: {from: bl0, to: br0, stick: s}\n"        \
    "  left-0: {from: fl0, to: bl0, stick: s}\n  right-0: {from: fr0, to: br0, stick: s}\n"

#define LEAN_TO                                                                                    \
    "joints: {fl0: [0, 0, 0], fr0: [1000, 0, 0], bl0: [0, 600, 0], br0: [1000, 600, 0],\n"         \
    "  fl1: [0, 0, 300], fr1: [1000, 0, 300], bl1: [0, 600, 300], br1: [1000, 600, 300],\n"        \
    "  fl2: [0, 0, 1000], fr2: [1000, 0, 1000], bl2: [0, 600, 1300], br2: [1000, 600, 1300],\n"    \
    "  m1: [0, 300, 300], m2: [1000, 300, 300], x: [500, 600, 800]}\n"                             \
    "supports: {fl0: foot, fr0: foot, bl0: foot, br0: foot}\n"                                     \
    "members:\n  pfl: {from: fl0, to: fl2, stick: s}\n  pfr: {from: fr0, to: fr2, stick: s}\n"     \
    "  pbl: {from: bl0, to: bl2, stick: s}\n  pbr: {from: br0, to: br2, stick: s}\n"               \
    "  f1: {from: fl1, to: fr1, stick: s}\n  b1: {from: bl1, to: br1, stick: s}\n"                 \
    "  l1: {from: fl1, to: bl1, stick: s}\n  r1: {from: fr1, to: br1, stick: s}\n"                 \
    "  f2: {from: fl2, to: fr2, stick: s}\n  b2: {from: bl2, to: br2, stick: s}\n"                 \
    "  sl: {from: fl2, to: bl2, stick: s}\n  sr: {from: fr2, to: br2, stick: s}\n"                 \
    "  mid: {from: m1, to: m2, stick: s}\n"                                                        \
    "  x1: {from: bl1, to: br2, stick: s}\n  x2: {from: bl2, to: br1, stick: s}\n"

struct known {
    struct arena *arena;
    const struct frame *frame;
    const struct model *model;
    const struct cells *cells;
    struct candidates candidates;
};

static struct known known_of(const char *text) {
    struct known known = {.arena = arena_new()};
    struct problems problems = problems_new(known.arena);
    known.frame = frame_of_text(known.arena, text);
    known.model = model_build(known.arena, known.frame, &problems);
    cr_assert(known.model != NULL, "no model");
    known.cells = cells_find(known.arena, known.model);
    known.candidates = candidates_of(known.arena, known.cells);
    return known;
}

static bool is_joint(const struct known *known, int joint, const char *name) {
    return strcmp(known->frame->joints.items[joint].name, name) == 0;
}

/* The words of the cell with these four corners, in any order round it; NULL: no such cell. */
static const char *where(const struct known *known, const char *a, const char *b, const char *c,
                         const char *d) {
    const char *names[4] = {a, b, c, d};
    for (size_t k = 0; k < known->cells->count; k++)
        for (int start = 0; start < 4; start++)
            for (int step = 1; step < 4; step += 2) {
                bool same = true;
                for (int corner = 0; corner < 4; corner++)
                    same &= is_joint(known, known->cells->items[k].joints[corner],
                                     names[(start + step * corner) % 4]);
                if (same)
                    return known->cells->items[k].where;
            }
    return NULL;
}

static const struct candidate *candidate(const struct known *known, const char *from,
                                         const char *to) {
    for (size_t k = 0; k < known->candidates.count; k++)
        if (is_joint(known, known->candidates.items[k].from, from) &&
            is_joint(known, known->candidates.items[k].to, to))
            return &known->candidates.items[k];
    return NULL;
}

Test(bracing, a_box_on_four_feet) {
    struct known known = known_of(HEAD BOX);
    cr_assert(known.cells->count == 5, "%zu cells", known.cells->count);
    SAME_TEXT(where(&known, "fl0", "fr0", "fr1", "fl1"), "front");
    SAME_TEXT(where(&known, "bl0", "br0", "br1", "bl1"), "back");
    SAME_TEXT(where(&known, "fl0", "bl0", "bl1", "fl1"), "left");
    SAME_TEXT(where(&known, "fr0", "br0", "br1", "fr1"), "right");
    SAME_TEXT(where(&known, "fl1", "fr1", "br1", "bl1"), "top");
    /* both diagonals of each; the long ones are the same */
    cr_assert(known.candidates.count == 10, "%zu candidates", known.candidates.count);
    cr_assert(candidate(&known, "fl0", "fr1") && candidate(&known, "fr0", "fl1"), "front");
    arena_free(known.arena);
}

Test(bracing, tiers_are_counted_from_the_ground) {
    struct arena *arena = arena_new();
    struct known known = known_of(text_of_file(arena, "tests/published/h-box-two-tiers.yaml"));
    cr_assert(known.cells->count == 10, "%zu cells", known.cells->count);
    SAME_TEXT(where(&known, "fl0", "fr0", "fr1", "fl1"), "front, lower bay");
    SAME_TEXT(where(&known, "fl1", "fr1", "fr2", "fl2"), "front, upper bay");
    SAME_TEXT(where(&known, "fl1", "fr1", "br1", "bl1"), "level at 800 mm");
    cr_assert(known.candidates.count == 28, "%zu candidates", known.candidates.count);
    const struct candidate *longest = candidate(&known, "fl0", "fr2");
    cr_assert(longest && longest->cell == -1, "no long one");
    SAME_TEXT(longest->where, "front, long");
    arena_free(known.arena);
    arena_free(arena);
}

Test(bracing, posts_in_one_piece_bound_every_bay) {
    struct arena *arena = arena_new();
    struct known known = known_of(text_of_file(arena, "examples/seedling-stand.yaml"));
    cr_assert(known.cells->count == 15, "%zu cells", known.cells->count);
    SAME_TEXT(where(&known, "fl1", "fr1", "fr2", "fl2"), "front, middle bay");
    SAME_TEXT(where(&known, "fl3", "fr3", "br3", "bl3"), "upper shelf");
    cr_assert(known.candidates.count == 38, "%zu candidates", known.candidates.count);
    arena_free(known.arena);
    arena_free(arena);
}

/* Sloped rails; a stick across the level; a crossed bay whose diagonals share a joint. */
Test(bracing, a_lean_to) {
    struct known known = known_of(HEAD LEAN_TO);
    cr_assert(known.cells->count == 11, "%zu cells", known.cells->count);
    SAME_TEXT(where(&known, "fl1", "bl1", "bl2", "fl2"), "left, upper bay");
    SAME_TEXT(where(&known, "fl2", "fr2", "br2", "bl2"), "roof");
    SAME_TEXT(where(&known, "bl1", "br1", "br2", "bl2"), "back, upper bay");
    SAME_TEXT(where(&known, "fl1", "fr1", "m2", "m1"), "level at 300 mm, first bay from the front");
    cr_assert(!where(&known, "fl1", "fr1", "br1", "bl1"), "a stick divides the level");
    cr_assert(!candidate(&known, "bl1", "br2"), "there is a stick already");
    cr_assert(candidate(&known, "fl0", "bl2") && candidate(&known, "bl0", "fl2"),
              "no long ones on the left");
    arena_free(known.arena);
}

/* A stick that acts as brace, or from corner to corner, or that crosses without a joint, divides
 * nothing; what a diagonal bounds inside the frame is no opening. */
Test(bracing, diagonals_divide_nothing) {
    struct known plain = known_of(HEAD BOX "  deck: {from: fl1, to: br1, stick: s}\n");
    cr_assert(plain.cells->count == 5, "%zu cells", plain.cells->count);
    arena_free(plain.arena);
    struct known brace =
        known_of(HEAD BOX "  knee: {from: fl0, to: br1, stick: s, acts-as: brace}\n");
    cr_assert(brace.cells->count == 5, "%zu cells", brace.cells->count);
    arena_free(brace.arena);
    struct arena *arena = arena_new();
    struct known two =
        known_of(arena_print(arena, "%s  long: {from: bl0, to: br2, stick: s}\n", HEAD LEAN_TO));
    SAME_TEXT(where(&two, "bl0", "br0", "br1", "bl1"), "back, lower bay");
    arena_free(two.arena);
    arena_free(arena);
}

/* No bay has more than 5 mm out of plane. */
Test(bracing, bent_openings_are_none) {
    struct known known = known_of(
        HEAD "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [1000, 30, 800], d: [0, 0, 800]}\n"
             "supports: {a: pinned, b: pinned}\nmembers:\n  ad: {from: a, to: d, stick: s}\n"
             "  bc: {from: b, to: c, stick: s}\n  dc: {from: d, to: c, stick: s}\n");
    cr_assert(known.cells->count == 0, "%zu cells", known.cells->count);
    arena_free(known.arena);
}

Test(bracing, where_no_brace_may_go) {
    struct known known =
        known_of(HEAD LEAN_TO "panels:\n  door: {corners: [fl0, fr0, fr2, fl2], sheet: "
                              "twin-wall-6mm, held: hinged, hinge: [fl0, fl2], opens: yes}\n"
                              "keep-open: [right, roof]\n");
    SAME_TEXT(candidate(&known, "fl0", "fr1")->closed_by, "the panel door opens");
    SAME_TEXT(candidate(&known, "fl0", "fr2")->closed_by, "the panel door opens");
    SAME_TEXT(candidate(&known, "fr0", "br1")->closed_by, "the right side is kept open");
    SAME_TEXT(candidate(&known, "fl2", "br2")->closed_by, "the roof is kept open");
    cr_assert(!candidate(&known, "fl0", "bl1")->closed_off, "the left side is free");
    cr_assert(candidate(&known, "fl0", "fr1")->closed_off, "the front is not");
    arena_free(known.arena);
}

/* Sums of squares of screws round a sheet, `step` apart, corners included. */
static void round_sheet(double b, double h, double step, double *x2, double *y2) {
    int across = (int)lround(b / step), up = (int)lround(h / step);
    *x2 = *y2 = 0.0;
    for (int i = 0; i <= across; i++)
        for (int j = 0; j <= up; j++)
            if (i == 0 || j == 0 || i == across || j == up) {
                *x2 += pow(i * step - b / 2.0, 2.0);
                *y2 += pow(j * step - h / 2.0, 2.0);
            }
}

/* Worked by hand: 600 x 900, 20 screws, one every 150 mm; N, m. */
Test(bracing, racking_of_a_sheet) {
    double x2, y2;
    round_sheet(0.6, 0.9, 0.15, &x2, &y2);
    NEAR_REL(x2, 1.350, 1e-9);
    NEAR_REL(y2, 2.475, 1e-9);
    struct racking_sheet clear = {0.6, 0.9, 786e6 * 0.76e-3, 460e3, 0.15};
    struct racking racking = racking_of_sums(&clear, x2, y2);
    NEAR_REL(racking.fastening, 496e3, 1e-3);
    NEAR_REL(racking.sheet, 398e3, 1e-3);
    NEAR_REL(racking.stiffness, 221e3, 1e-3);
    NEAR_REL(racking.corner_share, 0.2584, 3e-4);
    struct racking_sheet plywood = {0.6, 0.9, 600e6 * 9e-3, 1100e3, 0.15};
    NEAR_REL(racking_of_sums(&plywood, x2, y2).fastening, 1186e3, 1e-3);
    NEAR_REL(racking_of_sums(&plywood, x2, y2).stiffness, 892e3, 1e-3);
    /* the even spacing counts a little less than single screws do */
    NEAR_REL(racking_of(&clear).stiffness, racking.stiffness, 0.02);
    NEAR_REL(racking_play(1.0, 1.0, 1e-3), 4e-3, 1e-12);
}

/* A sheet that may slide and turn, any screws: minimum of energy for a given lean of the frame. */
static double least_energy(const double (*at)[2], int count, double lean) {
    double a[3][4] = {{0}};
    for (int k = 0; k < count; k++) {
        double x = at[k][0], y = at[k][1];
        /* slip sideways: lean y - u - turn y; upwards: turn x - v */
        double rows[2][4] = {{1.0, 0.0, y, lean * y}, {0.0, 1.0, -x, 0.0}};
        for (int r = 0; r < 2; r++)
            for (int i = 0; i < 3; i++)
                for (int j = 0; j < 4; j++)
                    a[i][j] += rows[r][i] * rows[r][j];
    }
    for (int p = 0; p < 3; p++)
        for (int r = p + 1; r < 3; r++) {
            double share = a[r][p] / a[p][p];
            for (int c = p; c < 4; c++)
                a[r][c] -= share * a[p][c];
        }
    double x[3];
    for (int p = 2; p >= 0; p--) {
        x[p] = a[p][3];
        for (int c = p + 1; c < 3; c++)
            x[p] -= a[p][c] * x[c];
        x[p] /= a[p][p];
    }
    double energy = 0.0;
    for (int k = 0; k < count; k++) {
        double sideways = lean * at[k][1] - x[0] - x[2] * at[k][1];
        double upwards = x[2] * at[k][0] - x[1];
        energy += (sideways * sideways + upwards * upwards) / 2.0;
    }
    return energy;
}

Test(bracing, fastenings_of_least_energy) {
    uint64_t state = 7;
    for (int trial = 0; trial < 200; trial++) {
        enum { SCREWS = 24 };
        double at[SCREWS][2], middle[2] = {0}, sums[2] = {0};
        double b = 0.3 + random_next(&state), h = 0.3 + random_next(&state);
        for (int k = 0; k < SCREWS; k++) {
            double along = random_next(&state) - 0.5;
            at[k][0] = k % 2 ? along * b : (k % 4 ? 0.5 : -0.5) * b;
            at[k][1] = k % 2 ? (k % 4 > 1 ? 0.5 : -0.5) * h : along * h;
            for (int c = 0; c < 2; c++)
                middle[c] += at[k][c] / SCREWS;
        }
        for (int k = 0; k < SCREWS; k++)
            for (int c = 0; c < 2; c++)
                sums[c] += (at[k][c] - middle[c]) * (at[k][c] - middle[c]);
        struct racking_sheet sheet = {b, h, INFINITY, 1.0, 0.1};
        double K = racking_of_sums(&sheet, sums[0], sums[1]).stiffness;
        double lean = 0.01;
        NEAR_REL(K * (lean * h) * (lean * h) / 2.0,
                 least_energy((const double(*)[2])at, SCREWS, lean), 1e-10);
    }
}

/* The formulas for an even spacing are the limit of many screws. */
Test(bracing, even_spacing) {
    enum { A_SIDE = 4000 };
    double b = 0.7, h = 1.3, x2 = 0.0, y2 = 0.0;
    for (int k = 0; k < A_SIDE; k++) {
        double along = (k + 0.5) / A_SIDE - 0.5;
        x2 += 2.0 * (along * b * along * b * b + b / 2.0 * b / 2.0 * h) / A_SIDE;
        y2 += 2.0 * (along * h * along * h * h + h / 2.0 * h / 2.0 * b) / A_SIDE;
    }
    struct racking_sheet sheet = {b, h, 1e6, 1e6, 0.1};
    NEAR_REL(racking_of(&sheet).sum_x2, x2 / 0.1, 1e-6);
    NEAR_REL(racking_of(&sheet).sum_y2, y2 / 0.1, 1e-6);
}

/* Solid sheets worked by hand, N/m; twin-wall only as an order of magnitude. */
Test(bracing, buckling_of_sheets) {
    double E = 2.38e9, nu = 0.38;
    NEAR_REL(buckling_flow_solid(E, nu, 3e-3, 0.6, 0.6), 1600.0, 5e-3);
    NEAR_REL(buckling_flow_solid(E, nu, 3e-3, 0.45, 0.45) * 0.45, 1280.0, 5e-3);
    NEAR_REL(buckling_flow_solid(E, nu, 2e-3, 0.6, 0.6) * 0.6, 285.0, 5e-3);
    NEAR(buckling_flow_ribbed(E, nu, 0.76e-3, 6e-3, 0.05, 0.6, 0.6), 160.0, 0.03, 0.0);
    NEAR(buckling_flow_ribbed(E, nu, 0.76e-3, 6e-3, 0.15, 0.6, 0.6), 360.0, 0.03, 0.0);
}

/* SDPWS Table 4.3A: G_a = 1.4 v / (1.4 v/(G t) + 0.75 e), e the slip of a nail at 1.4 v, from our
 * G t and unit shears; kips/in. */
static void shear_wall(const char *sheet, double published) {
    char row[64];
    struct cited stiffness, unit;
    snprintf(row, sizeof row, "%s.shear-stiffness", sheet);
    cr_assert(table_value("sheet-shear", row, &stiffness), "%s", row);
    snprintf(row, sizeof row, "%s.unit-shear.6", sheet);
    cr_assert(table_value("sheet-shear", row, &unit), "%s", row);
    double plf = 4.4482216152605 / 0.3048, pounds_an_inch = 4.4482216152605 / 0.0254;
    double v = 1.4 * unit.value / plf, slip = 1.2 * pow(v * 0.5 / 616.0, 3.018);
    double stiff = v / (v / (stiffness.value / pounds_an_inch) + 0.75 * slip) / 1000.0;
    cr_assert(fabs(stiff - published) < 0.5, "%s: %g, published %g", sheet, stiff, published);
}

Test(bracing, published_shear_walls) {
    shear_wall("osb-1/2in", 13.0);     /* 15/32, 8d at 6 in */
    shear_wall("plywood-1/2in", 10.0); /* the same */
    shear_wall("osb-7/16in", 15.0);    /* 7/16, 8d at 6 in */
}

/* One joint pushed 100 N along x: how far it moves. */
static double pushed(struct arena *arena, const char *text, const char *joint,
                     const struct bar *bars, size_t bar_count) {
    struct problems problems = problems_new(arena);
    const struct frame *frame = frame_of_text(arena, text);
    const struct model *model = model_build(arena, frame, &problems);
    const struct loads *loads = loads_build(arena, model);
    const struct system *system = system_build(arena, model, STIFFNESS_MIDDLE, bars, bar_count);
    const struct response *response = response_solve(arena, system, loads, false);
    double most = 0.0;
    for (size_t c = 0; c < response->column_count; c++)
        for (size_t j = 0; j < frame->joints.count; j++)
            if (strcmp(frame->joints.items[j].name, joint) == 0)
                most = fmax(most, response->slots[c][3 * model->move_slot[j]]);
    return most;
}

#define BAY                                                                                        \
    "batten: 1\nunits: si\nself-weight: no\nsite: {place: indoors}\n"                              \
    "sticks: {s: {section: {A: 1000000, Iy: 0, Iz: 0, J: 0}, material: {E: 1000 GPa, density: "    \
    "0}},\n  d: {size: [18, 45], material: {E: 9 GPa, density: 0}}}\n"                             \
    "connections: {default: pinned, slips: {type: springs, slip: 3122 N/mm, rotation: 0}}\n"

/* G t = 600 MPa x 6 mm, 0.8 wide, 1.2 high, stiff sticks. */
Test(bracing, two_bars_stand_for_a_sheet) {
    struct arena *arena = arena_new();
    struct racking_sheet sheet = {0.8, 1.2, 600e6 * 6e-3, INFINITY, 0.1};
    struct racking racking = racking_of(&sheet);
    NEAR_REL(100.0 / racking.stiffness, 4.166667e-5, 1e-6);
    double lean = hypot(0.8, 1.2) / 0.8;
    double k = racking.stiffness * lean * lean / 2.0;
    struct bar bars[2] = {{{0, 3}, k}, {{1, 2}, k}};
    double moved = pushed(arena,
                          BAY "joints: {a: [0, 0], b: [800, 0], c: [0, 1200], d: [800, 1200]}\n"
                              "supports: {a: pinned, b: pinned}\n"
                              "members:\n  ac: {from: a, to: c, stick: s}\n"
                              "  bd: {from: b, to: d, stick: s}\n  cd: {from: c, to: d, stick: s}\n"
                              "loads:\n  - {case: push, joint: c, force: [100, 0, 0]}\n",
                          "c", bars, 2);
    NEAR_REL(moved, 4.16668e-5, 1e-5);
    arena_free(arena);
}

/* Worked by hand: 18 x 45 brace, 1.2 m at 45 degrees, two No.8 screws at each end in 420 kg/m3. */
Test(bracing, a_screwed_brace) {
    double slip = fastening_slip(420.0, 0.1640 * 0.0254, false);
    NEAR_REL(slip, 1561e3, 2e-3);
    NEAR_REL(2.0 * fastening_slip(420.0, 0.190 * 0.0254, false) * 0.03 * 0.03, 3.25e3, 2e-3);
    struct arena *arena = arena_new();
    double moved =
        pushed(arena,
               BAY "joints: {a: [0, 0], b: [848.528137, 0], c: [0, 848.528137], d: [848.528137, "
                   "848.528137]}\nsupports: {a: pinned, b: pinned}\n"
                   "members:\n  ac: {from: a, to: c, stick: s}\n  bd: {from: b, to: d, stick: s}\n"
                   "  cd: {from: c, to: d, stick: s}\n"
                   "  ad: {from: a, to: d, stick: d, ends: slips, acts-as: brace}\n"
                   "loads:\n  - {case: push, joint: d, force: [100, 0, 0]}\n",
               "d", NULL, 0);
    NEAR_REL(100.0 / moved, 621e3, 3e-3);
    arena_free(arena);
}

#define PANEL(keys) HEAD BOX RING "panels:\n  p: {corners: [fl0, fr0, fr1, fl1], " keys "}\n"

static void never(const char *text, const char *reason) {
    struct known known = known_of(text);
    struct bracing_sheet *sheets = bracing_sheets(known.arena, known.model);
    struct bar *bars;
    cr_assert(!sheets[0].braces, "braces: %s", reason);
    SAME_TEXT(sheets[0].reason, reason);
    cr_assert(bracing_bars(known.arena, known.model, sheets, STIFFNESS_LOW, true, &bars, NULL) == 0,
              "bars of a sheet that does not brace");
    arena_free(known.arena);
}

Test(bracing, panels_that_do_not_count) {
    never(PANEL("sheet: film-6mil, held: stapled"), "film-6mil is no sheet that braces");
    never(PANEL("sheet: twin-wall-6mm, held: taped"), "it is held by tape");
    never(PANEL("sheet: plywood-1/4in, held: clipped"), "it is held by clips");
    never(PANEL("sheet: plywood-1/4in, held: sliding"), "it slides");
    never(PANEL("sheet: plywood-1/4in, held: hinged, hinge: [fl0, fl1]"), "it is hinged");
    never(PANEL("sheet: plywood-1/4in, held: hinged, hinge: [fl0, fl1], opens: yes"), "it opens");
    never(PANEL("sheet: twin-wall-6mm, held: screwed, screw: 8, spacing: 150"),
          "a clear sheet braces only with tight screws and washers (braces: yes)");
    never(PANEL("sheet: plywood-1/4in, held: screwed, screw: 8"),
          "the spacing of its screws is not said");
    never(PANEL("sheet: plywood-1/4in, held: screwed, screw: 8, spacing: 900"),
          "its screws are farther apart than its shorter edges are long");
    /* no stick on the ground */
    never(HEAD BOX "panels:\n  p: {corners: [fl0, fr0, fr1, fl1], sheet: plywood-1/4in, held: "
                   "screwed, screw: 8, spacing: 150}\n",
          "no stick lies under its edge from fl0 to fr0");
}

Test(bracing, panels_that_count) {
    struct known known =
        known_of(PANEL("sheet: plywood-1/4in, held: screwed, screw: 6, spacing: 6 in"));
    struct bracing_sheet sheet = bracing_sheets(known.arena, known.model)[0];
    cr_assert(sheet.braces && !sheet.clear && sheet.upright, "it does not: %s", sheet.reason);
    NEAR_REL(sheet.width, 1.0, 1e-12);
    NEAR_REL(sheet.height, 0.8, 1e-12);
    struct bar bars[2];
    bracing_sheet_bars(known.model, &sheet, STIFFNESS_MIDDLE, bars);
    NEAR_REL(2.0 * bars[0].stiffness * 1.0 / 1.64, sheet.racking[STIFFNESS_MIDDLE].stiffness,
             1e-12);
    cr_assert(sheet.racking[STIFFNESS_LOW].stiffness < sheet.racking[STIFFNESS_MIDDLE].stiffness &&
                  sheet.racking[STIFFNESS_MIDDLE].stiffness <
                      sheet.racking[STIFFNESS_HIGH].stiffness,
              "low, middle, high");
    /* APA Table 29: 180 plf, G 0.42: x 0.92; six inches; 1.6 for wind, so x 1.25/1.6 here */
    double pull = 50.0 * hypot(1.0, 0.8);
    struct panel_rack rack =
        panel_rack_rating(known.model, &sheet, STIFFNESS_MIDDLE, (double[2]){pull, -pull}, NAN,
                          DURATION_SEVEN_DAYS, NULL);
    cr_assert(rack.covered && rack.screw_left_out, "not covered: %s", rack.missing);
    NEAR_REL(rack.demand, 100.0, 1e-12);
    NEAR_REL(rack.limit, 180.0 * 14.593903 * 0.92 * 1.25 / 1.6, 1e-6);
    /* and by a screw that carries little */
    rack = panel_rack_rating(known.model, &sheet, STIFFNESS_MIDDLE, (double[2]){pull, -pull}, 10.0,
                             DURATION_SEVEN_DAYS, NULL);
    NEAR_REL(rack.limit, 10.0 / sheet.racking[STIFFNESS_MIDDLE].corner_share, 1e-12);
    SAME_TEXT(rack.governs, "corner screw");
    arena_free(known.arena);
}

Test(bracing, a_clear_sheet_that_counts) {
    struct known known =
        known_of(PANEL("sheet: twin-wall-6mm, held: screwed, screw: 8, spacing: 150, braces: yes"));
    struct bracing_sheet sheet = bracing_sheets(known.arena, known.model)[0];
    struct bar *bars;
    cr_assert(sheet.braces && sheet.clear, "it does not: %s", sheet.reason);
    cr_assert(bracing_bars(known.arena, known.model, &sheet, STIFFNESS_LOW, false, &bars, NULL) ==
                  0,
              "a verdict leans on it");
    cr_assert(bracing_bars(known.arena, known.model, &sheet, STIFFNESS_LOW, true, &bars, NULL) == 2,
              "no bars");
    NEAR_REL(sheet.play, 2e-3 * 1.8, 1e-12);
    struct panel_rack rack =
        panel_rack_rating(known.model, &sheet, STIFFNESS_MIDDLE, (double[2]){10.0, -10.0}, NAN,
                          DURATION_TEN_YEARS, NULL);
    SAME_TEXT(rack.governs, "buckling of the sheet");
    NEAR_REL(rack.limit, buckling_flow_ribbed(2.3787e9, 0.38, 0.76e-3, 6e-3, 0.05, 1.0, 0.8) / 2.0,
             1e-4);
    arena_free(known.arena);
}

Test(bracing, hardboard_has_no_published_shear) {
    struct known known =
        known_of(PANEL("sheet: hardboard-1/4in, held: screwed, screw: 6, spacing: 150"));
    struct bracing_sheet sheet = bracing_sheets(known.arena, known.model)[0];
    cr_assert(sheet.braces, "it does not: %s", sheet.reason);
    struct panel_rack rack =
        panel_rack_rating(known.model, &sheet, STIFFNESS_MIDDLE, (double[2]){10.0, -10.0}, 50.0,
                          DURATION_TEN_YEARS, NULL);
    cr_assert(!rack.covered && isnan(rack.limit), "covered");
    SAME_TEXT(rack.missing, "shear value of this sheet");
    arena_free(known.arena);
}
