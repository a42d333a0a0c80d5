/* The worst fastener, a glue line, and the springs of each type of connection, by hand
 * (joints.md 3 and 8; engineering page, section 1). */
#include "check/glue.h"
#include "check/screw.h"
#include "model/fastening.h"

#include "in_arena.h"
#include "near.h"
#include "redo.h"
#include "second_frame.h"

TestSuite(joint_checks, .init = set_up, .fini = tear_down);

static const double INCH = 0.0254, POUND = 4.4482216152605;

/* ---- the worst fastener ---- */

/* No.8 x 2 in through 3/4 in into `main` in, G 0.42 both. */
struct screwed {
    struct dowel dowel;
    struct screw_input input;
};

static struct screwed screwed(double main, bool end_grain, bool wet) {
    struct screwed screwed;
    cr_assert(dowel_find(DOWEL_SCREW, NAIL_COMMON, "8", &screwed.dowel), "No.8");
    dowel_set_length(&screwed.dowel, 2.0 * INCH);
    struct cited gravity = {0.42, "", MARK_TRADE};
    screwed.input = (struct screw_input){
        .side = {.thickness = 0.75 * INCH, .gravity = gravity},
        .main = {.thickness = main * INCH, .gravity = gravity, .end_grain = end_grain},
        .service = {.wet = wet, .duration = DURATION_TEN_YEARS},
        .little = POUND};
    return screwed;
}

static struct rating rated(struct screwed *screwed, double shear, double pull) {
    struct working working = {.arena = arena};
    screwed->input.dowel = &screwed->dowel;
    screwed->input.shear = shear * POUND;
    screwed->input.pull = pull * POUND;
    struct rating rating = check_screw(&screwed->input, &working);
    redo_all(&working);
    return rating;
}

/* Values without a withdrawal of their own: W'p = 63 lb and Z' = 48 lb pulled and pushed at 30
 * degrees: 63 x 48 / (63 x 0.75 + 48 x 0.25) = 51.0 lb. */
Test(joint_checks, sideways_and_out_at_once) {
    struct screwed lap = screwed(1.5, false, false);
    struct dowel_values values = {.axial = 63.0 * POUND,
                                  .lateral = 48.0 * POUND,
                                  .lateral_missing = "",
                                  .withdrawal_missing = "",
                                  .pull_missing = ""};
    lap.input.dowel = &lap.dowel;
    lap.input.shear = 30.0 * cos(3.14159265358979 / 6.0) * POUND;
    lap.input.pull = 30.0 * 0.5 * POUND;
    struct rating rating = screw_rating(&lap.input, &values);
    NEAR_REL(rating.demand / POUND, 30.0, 1e-9);
    NEAR_REL(rating.limit / POUND, 3024.0 / 59.25, 1e-9);
    NEAR_ABS(rating.limit / POUND, 51.0, 0.05);
    NEAR_REL(rating.ratio, 30.0 / (3024.0 / 59.25), 1e-9);
}

/* The same screw as joints.md 8.6, 8.7: 68.8 lb sideways (Fe not rounded), 82.45 x 1.25 = 103.1 lb
 * out of the wood, 690 pi 0.312 0.42^2 0.75 = 89.5 lb through the side member: 89.5 counts. */
Test(joint_checks, a_screw_alone_each_way) {
    struct screwed lap = screwed(1.5, false, false);
    NEAR_ABS(rated(&lap, 10.0, 0.0).limit / POUND, 68.77, 0.01);
    NEAR_ABS(rated(&lap, 0.0, 10.0).limit / POUND, 89.48, 0.01);
    /* at 45 degrees: 68.77 x 89.48 x 2 / (68.77 + 89.48) = 77.77 lb */
    struct rating both = rated(&lap, 10.0, 10.0);
    NEAR_ABS(both.limit / POUND, 77.77, 0.01);
    NEAR_ABS(both.demand / POUND, 14.142, 0.001);
}

Test(joint_checks, end_grain_holds_sideways_and_no_pull) {
    struct screwed butt = screwed(36.0, true, true);
    struct rating sideways = rated(&butt, 20.0, 0.0);
    /* 68.77 x 0.7 x 0.67 */
    NEAR_ABS(sideways.limit / POUND, 32.25, 0.01);
    struct rating pulled = rated(&butt, 20.0, 5.0);
    cr_assert(!pulled.covered && isnan(pulled.ratio), "a pull in end grain has no value");
    SAME_TEXT(pulled.missing, "a pull on screws in end grain");
    NEAR_ABS(pulled.demand / POUND, hypot(20.0, 5.0), 1e-9);
    /* under a pound is no pull; a pound and a bit is one */
    cr_assert(rated(&butt, 20.0, 0.999).covered, "a little pull");
    NEAR_ABS(rated(&butt, 20.0, 0.999).demand / POUND, 20.0, 1e-9);
    cr_assert(!rated(&butt, 20.0, 1.001).covered, "more than a little");
}

/* NDS 12.2.1.3: a lag does hold in end grain, 0.75 of its value. 3/8 x 4 in, thread 2.5 in less the
 * point 7/32: 1800 x 0.42^1.5 x 0.375^0.75 = 234.8 lb/in, x 2.28125 x 0.75 = 401.7 lb. Steel under
 * the head lets nothing through. */
Test(joint_checks, a_lag_pulled_out_of_end_grain) {
    struct screwed butt = screwed(36.0, true, false);
    cr_assert(dowel_find(DOWEL_LAG, NAIL_COMMON, "3/8", &butt.dowel), "3/8 in");
    dowel_set_length(&butt.dowel, 4.0 * INCH);
    butt.input.side = (struct dowel_layer){.thickness = 0.06 * INCH, .steel = true};
    struct rating pulled = rated(&butt, 0.0, 100.0);
    cr_assert(pulled.covered, "pulled");
    NEAR_ABS(pulled.limit / POUND, 401.7, 0.05);
}

/* A little pull counts where pulling has a value. */
Test(joint_checks, a_little_pull_counts_where_it_can_be_held) {
    struct screwed lap = screwed(1.5, false, false);
    NEAR_ABS(rated(&lap, 20.0, 0.9).demand / POUND, hypot(20.0, 0.9), 1e-9);
}

/* 3/4 in behind 3/4 in: 0.75 in deep, 6 D is 0.984 in. */
Test(joint_checks, not_deep_enough_has_no_value) {
    struct screwed lap = screwed(0.75, false, false);
    struct rating rating = rated(&lap, 1.0, 0.0);
    cr_assert(!rating.covered && isnan(rating.ratio), "under six diameters");
    NEAR_ABS(rating.demand / POUND, 1.0, 1e-9);
    /* nothing on it makes no value either (it came out as a limit that is no number) */
    cr_assert(!rated(&lap, 0.0, 0.0).covered, "no load");
}

Test(joint_checks, a_load_that_is_no_number_passes_nothing) {
    struct screwed lap = screwed(1.5, false, false);
    lap.input.dowel = &lap.dowel;
    lap.input.shear = NAN;
    cr_assert(!(check_screw(&lap.input, NULL).ratio <= 1.0), "shear");
    lap.input.shear = 1.0;
    lap.input.pull = NAN;
    cr_assert(!(check_screw(&lap.input, NULL).ratio <= 1.0), "pull");
}

/* A 3/8 in bolt through SPF: washers 15/16 in wide with 7/16 in holes leave 0.540 in2, at 425 psi
 * 229.5 lb (Fc_perp of SPF, no factors dry). Sideways 1-1/2 on 3/4 in as without. */
Test(joint_checks, a_bolt_is_held_by_its_washers) {
    struct lumber wood = lumber_from_table(
        (struct lumber_from_table){.species = table_species_find("spruce-pine-fir"),
                                   .grade = table_grade_find("no-2"),
                                   .size = table_size_find("2x4")});
    struct screwed lap = screwed(1.5, false, false);
    cr_assert(dowel_find(DOWEL_BOLT, NAIL_COMMON, "3/8", &lap.dowel), "3/8 in");
    dowel_set_length(&lap.dowel, 2.25 * INCH);
    double wide = 0.9375 * INCH;
    double area = 3.14159265358979 / 4.0 * (0.9375 * 0.9375 - 0.4375 * 0.4375) * INCH * INCH;
    NEAR_ABS(area / INCH / INCH, 0.540, 0.0005);
    struct bearing_input washer = {.lumber = &wood, .along = wide, .across = area / wide};
    struct rating sideways = rated(&lap, 50.0, 0.0);
    lap.input.washers[0] = lap.input.washers[1] = washer;
    lap.input.washer_count = 2;
    NEAR_REL(rated(&lap, 50.0, 0.0).ratio, sideways.ratio, 1e-12);
    struct rating pulled = rated(&lap, 1.0, 114.75);
    cr_assert(pulled.covered, "pulled");
    NEAR_ABS(pulled.ratio, 0.5, 0.0005);
    SAME_TEXT(pulled.governs, "a washer presses into the wood");
    lap.input.dowel = &lap.dowel;
    lap.input.pull = NAN;
    cr_assert(!(check_screw(&lap.input, NULL).ratio <= 1.0), "a pull that is no number");
    /* wood of which nobody knows what it takes across the grain */
    wood.values[PROPERTY_FCP].has = false;
    struct rating unknown = rated(&lap, 1.0, 114.75);
    cr_assert(!unknown.covered, "a washer on unknown wood");
    SAME_TEXT(unknown.missing, "strength against pressure across the grain Fcp");
    SAME_TEXT(unknown.governs, "");
}

/* A bolt has no withdrawal; without washers a pull along it has no value. */
Test(joint_checks, a_bolt_holds_sideways_alone) {
    struct screwed lap = screwed(1.5, false, false);
    cr_assert(dowel_find(DOWEL_BOLT, NAIL_COMMON, "3/8", &lap.dowel), "3/8 in");
    dowel_set_length(&lap.dowel, 2.25 * INCH);
    cr_assert(rated(&lap, 50.0, 0.0).covered, "sideways");
    cr_assert(!rated(&lap, 50.0, 5.0).covered, "pulled");
}

/* ---- glue ---- */

/* 38 x 38 mm under 144 N along, 72.2 N across and 2 N-m. Spread: 144 / 1444 = 0.0997 N/mm2 and
 * 0.05. J = 38^4 / 6 = 347 523 mm4, at the corner 19 x 19 mm: 2000 x 19 / 347 523 = 0.10935
 * N/mm2 each way. Both: sqrt(0.20907^2 + 0.15935^2) = 0.26287 N/mm2 of 0.3. */
Test(joint_checks, a_glue_line_by_hand) {
    struct working working = {.arena = arena};
    struct glue_input glue = {
        .along = 0.038, .across = 0.038, .force = {-144.0, 72.2}, .moment = -2.0};
    struct rating rating = check_glue(&glue, &working);
    cr_assert(redo_all(&working) >= 4, "working");
    NEAR_REL(rating.demand, 0.26287e6, 1e-4);
    NEAR_REL(rating.limit, 0.3e6, 1e-12);
    NEAR_REL(rating.ratio, 0.87624, 1e-4);
}

/* The moment alone: 0.3 x 347 523 / (19 sqrt(2)) = 3 880 N-mm; at that moment the ratio is 1. */
Test(joint_checks, the_moment_of_a_glue_line) {
    struct glue_input glue = {.along = 0.038, .across = 0.038};
    NEAR_REL(glue_moment(&glue), 3.880, 1e-3);
    glue.moment = glue_moment(&glue);
    NEAR_REL(check_glue(&glue, NULL).ratio, 1.0, 1e-12);
    /* a rectangle: 20 x 60 mm, J = 20 60 (400 + 3600) / 12 = 400 000 mm4, corner 31.623 mm */
    struct glue_input flat = {.along = 0.060, .across = 0.020};
    NEAR_REL(glue_moment(&flat), 0.3 * 400000.0 / 31.6228e3, 1e-5);
    flat.moment = glue_moment(&flat);
    NEAR_REL(check_glue(&flat, NULL).ratio, 1.0, 1e-12);
}

Test(joint_checks, glue_that_has_no_value) {
    cr_assert(glue_moment(&(struct glue_input){.along = 0.0}) == 0.0, "no patch holds nothing");
    struct glue_input wet = {.along = 0.038, .across = 0.038, .wet = true};
    cr_assert(!check_glue(&wet, NULL).covered, "wet");
    struct glue_input pulled = {.along = 0.038, .across = 0.038, .pull = 4.5};
    cr_assert(!check_glue(&pulled, NULL).covered, "over a pound of pull");
    pulled.pull = 4.4;
    cr_assert(check_glue(&pulled, NULL).covered, "under a pound of pull");
    pulled.pull = NAN;
    cr_assert(!check_glue(&pulled, NULL).covered, "a pull that is no number");
    struct glue_input broken = {.along = 0.038, .across = 0.038, .moment = NAN};
    cr_assert(!(check_glue(&broken, NULL).ratio <= 1.0), "a moment that is no number");
}

/* ---- springs ---- */

/* A level stick into an upright, 45 x 70 mm both, 420 kg/m3. The post faces front (70 along x); the
 * rail stands on edge: 45 mm along y, 70 along z. The slip of a No.8 (4.1656 mm) is
 * 420^1.5 x 4.1656 / 23 = 1558.9 N/mm. */
#define SLIP 1558.9e3

static struct end_springs springs_of(const char *connection, bool wet, enum stiffness stiffness) {
    struct problems problems = problems_new(arena);
    const char *text = arena_print(
        arena,
        "batten: 1\nunits: si\nself-weight: no\nsite: {place: indoors, wet-service: %s}\n"
        "sticks: {s: {size: [45, 70], material: {E: 9 GPa, density: 420}}}\n"
        "joints: {a: [0, 0, 0], b: [0, 0, 1000], c: [0, 0, 500], d: [800, 0, 500]}\n"
        "members: {p: {from: a, to: b, stick: s}, r: {from: c, to: d, stick: s, ends: [j, "
        "rigid]}}\nconnections: {j: %s}\nsupports: {a: fixed, d: fixed}\n",
        wet ? "yes" : "no", connection);
    const struct model *model = model_build(arena, frame_of_text(arena, text), &problems);
    cr_assert(model && problems.count == 0, "no model of %s", connection);
    return model->members[1].ends[0].springs[stiffness];
}

/* Six wanted stiffnesses: along x, y, z, about x, y, z. */
static void same_springs(const char *connection, bool wet, enum stiffness stiffness,
                         const double want[6]) {
    struct end_springs got = springs_of(connection, wet, stiffness);
    for (int k = 0; k < 6; k++)
        if (isinf(want[k]))
            cr_assert(isinf(got.k[k]), "%s, %d: %g, want rigid", connection, k, got.k[k]);
        else
            cr_assert(is_near(got.k[k], want[k], 1e-4, 0.0), "%s, %d: got %.9g, want %.9g",
                      connection, k, got.k[k], want[k]);
}

static const double LAPS[STIFFNESS_COUNT] = {0.5, 1.0, 2.0};
static const double TURNS[STIFFNESS_COUNT] = {1.0 / 3.0, 1.0, 3.0};

/* Steel 200 000 N/mm2, 25 x 2 mm: I = 16.667 mm4; 200 000 x 16.667 / (2 x 20) = 83 333 N-mm. */
Test(joint_checks, a_thin_bracket_is_a_soft_hinge) {
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        const double turn = 83.333 * TURNS[s];
        const double want[6] = {INFINITY, INFINITY, INFINITY, INFINITY, turn, turn};
        same_springs("{type: bracket, screw: 8, length: 1 in, count: 2}", false, (enum stiffness)s,
                     want);
        same_springs("{type: bracket, screw: 8, length: 1 in, count: 2, steel: 2 mm, wide: 25 mm}",
                     false, (enum stiffness)s, want);
    }
    /* 3 x 40 mm: 90 mm4, 450 N-m/rad */
    same_springs("{type: bracket, screw: 8, length: 1 in, steel: 3 mm, wide: 40 mm, count: 2}",
                 false, STIFFNESS_MIDDLE,
                 (const double[6]){INFINITY, INFINITY, INFINITY, INFINITY, 450.0, 450.0});
}

/* Three No.8 in each stick, 1-1/2 in apart: sum r^2 = 2 x 38.1^2 = 2903.2 mm2, each group 4 525.8
 * N-m/rad, two in series half of it; slip 3 x 1558.9 / 2. Two plates: twice. */
Test(joint_checks, a_gusset_is_two_groups_in_series) {
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        const double slip = 1.5 * SLIP * LAPS[s], turn = 1558.9 * 2.9032 / 2.0 * LAPS[s];
        same_springs("{type: gusset, sheet: plywood-1/2in, screw: 8, length: 1-1/2 in, count: 3}",
                     false, (enum stiffness)s,
                     (const double[6]){slip, INFINITY, slip, INFINITY, turn, 0.0});
        same_springs(
            "{type: gusset, sheet: plywood-1/2in, plates: 2, screw: 8, length: 1-1/2 in, "
            "count: 3}",
            false, (enum stiffness)s,
            (const double[6]){2.0 * slip, INFINITY, 2.0 * slip, INFINITY, 2.0 * turn, 0.0});
    }
    /* two screws 100 mm apart: 2 x 50^2 mm2; wet: slip x 2/3 */
    same_springs("{type: gusset, sheet: plywood-1/2in, screw: 8, length: 1-1/2 in, count: 2, "
                 "spacing: 100 mm}",
                 true, STIFFNESS_MIDDLE,
                 (const double[6]){SLIP * 2.0 / 3.0, INFINITY, SLIP * 2.0 / 3.0, INFINITY,
                                   1558.9 * 5.0 / 2.0 * 2.0 / 3.0, 0.0});
    /* a single screw each: it turns as a lap with one does, 100 (45.. the smaller size in the
     * plane, 70 mm / 38)^2 */
    same_springs("{type: gusset, sheet: plywood-1/2in, screw: 8, length: 1-1/2 in, count: 1}",
                 false, STIFFNESS_HIGH,
                 (const double[6]){SLIP, INFINITY, SLIP, INFINITY,
                                   3.0 * 100.0 * (70.0 / 38.0) * (70.0 / 38.0), 0.0});
}

/* The block slips down the post; the stick on it turns freely. */
Test(joint_checks, a_cleat_carries_and_does_not_turn) {
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        same_springs(
            "{type: cleat, screw: 8, length: 2 in, count: 3}", false, (enum stiffness)s,
            (const double[6]){INFINITY, INFINITY, 3.0 * SLIP * LAPS[s], INFINITY, 0.0, 0.0});
}

/* As a butt with one screw: 100 N-m/rad x (size / 38 mm)^2. */
Test(joint_checks, a_notch_rocks) {
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        same_springs("{type: notched, depth: 10 mm, screw: 8, length: 2 in, count: 2}", false,
                     (enum stiffness)s,
                     (const double[6]){INFINITY, INFINITY, INFINITY, INFINITY,
                                       100.0 * (70.0 / 38.0) * (70.0 / 38.0) * TURNS[s],
                                       100.0 * (45.0 / 38.0) * (45.0 / 38.0) * TURNS[s]});
}

/* 4.5 kN-m/rad for 38 mm; low 2, high 10; here 70 mm in the plane: (70 / 38)^2. */
Test(joint_checks, a_glued_lap_turns_little) {
    static const double each[STIFFNESS_COUNT] = {2000.0, 4500.0, 10000.0};
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        same_springs("{type: glued-lap}", false, (enum stiffness)s,
                     (const double[6]){INFINITY, INFINITY, INFINITY, INFINITY,
                                       each[s] * (70.0 / 38.0) * (70.0 / 38.0), 0.0});
}

Test(joint_checks, a_hinge_turns_every_way) {
    same_springs("{type: hinge, screw: 6, length: 3/4 in, count: 3}", false, STIFFNESS_HIGH,
                 (const double[6]){INFINITY, INFINITY, INFINITY, 0.0, 0.0, 0.0});
}

/* joints.md 3.1: densities 370, 420 and 450 kg/m3 (page rounds d to 0.1 mm or so), and 3.1's read
 * value: d 6.35 mm, 460, 500 and 520 kg/m3. */
Test(joint_checks, slip_of_one_screw) {
    static const struct {
        double density, diameter, want, within;
    } rows[] = {{460, 6.35e-3, 2723.8, 0.1},      {500, 6.35e-3, 3086.7, 0.1},
                {520, 6.35e-3, 3273.8, 0.1},      {370, 0.164 * 0.0254, 1290, 2.0},
                {420, 0.190 * 0.0254, 1808, 2.0}, {450, 0.242 * 0.0254, 2553, 3.0}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        NEAR_ABS(fastening_slip(rows[k].density, rows[k].diameter, false) / 1000.0, rows[k].want,
                 rows[k].within);
        NEAR_REL(fastening_slip(rows[k].density, rows[k].diameter, true),
                 fastening_slip(rows[k].density, rows[k].diameter, false) * 2.0 / 3.0, 1e-12);
    }
}
