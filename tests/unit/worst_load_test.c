/* What the forces of a joint put on its worst fastener, by hand, for each type of connection. */
#include "fixing/fastener_input.h"

#include "in_arena.h"
#include "near.h"
#include "second_frame.h"

TestSuite(worst_load, .init = set_up, .fini = tear_down);

static const double INCH = 0.0254, RIGHT_ANGLE = 1.57079632679489661923;

/* A level rail r (x to the right, local y to the back, z up) from c on the post p; 1-1/2 x 3-1/2 in
 * both, the post facing front (3-1/2 along x), the rail on edge (3-1/2 up). */
static struct fixing fixed(const char *connection) {
    struct problems problems = problems_new(arena);
    const char *text =
        arena_print(arena,
                    "batten: 1\nself-weight: no\nsite: {place: indoors}\n"
                    "sticks: {s: {size: 2x4, species: spruce-pine-fir, grade: no-2}}\n"
                    "joints: {a: [0, 0, 0], b: [0, 0, 40], c: [0, 0, 20], d: [30, 0, 20]}\n"
                    "members: {p: {from: a, to: b, stick: s}, r: {from: c, to: d, stick: s, ends: "
                    "[j, rigid]}}\nconnections: {j: %s}\nsupports: {a: fixed, d: fixed}\n",
                    connection);
    const struct model *model = model_build(arena, frame_of_text(arena, text), &problems);
    struct fixing fixing;
    cr_assert(model && problems.count == 0, "no model of %s", connection);
    cr_assert(fixing_of(model, 1, 0, &fixing), "nothing holds it");
    cr_assert(!*fixing.missing, "%s", fixing.missing);
    return fixing;
}

static void same_load(const struct fixing_load *got, double shear, double pull) {
    NEAR(got->shear, shear, 1e-9, 1e-9);
    NEAR(got->pull, pull, 1e-9, 1e-9);
}

/* The larger of what is given. */
static double largest_shear(const struct fixing_load *loads, int count) {
    double largest = 0.0;
    for (int k = 0; k < count; k++)
        largest = fmax(largest, loads[k].shear);
    return largest;
}

/* Two screws 2 in apart on the diagonal of a patch as wide as high: at 45 degrees, half the line
 * 1 in. 40 N up and 10 N-m about y (down at the right): 20 N up on each; the moment 10 N-m / 2 in =
 * 196.85 N, across the line. On one diagonal or the other the worst is the same here:
 * (139.19, 139.19 + 20). Along the screws 6 N and a twist of 3 N-m over half of 3-1/2 in: 67.49 N;
 * half of both. */
Test(worst_load, a_lap_of_two) {
    struct fixing lap =
        fixed("{type: screwed-lap, screw: 8, length: 2-1/2 in, count: 2, spacing: 2 in}");
    struct fixing_load loads[FIXING_LOADS];
    const double ends[6] = {0.0, -6.0, 40.0, 3.0, 10.0, 7.0};
    NEAR_REL(lap.line, 2.0 * INCH, 1e-12);
    NEAR_REL(lap.slopes[0], RIGHT_ANGLE / 2.0, 1e-12);
    int count = fixing_loads(&lap, 0, ends, loads);
    cr_assert(count == 2, "one for each diagonal");
    double each = 10.0 / (2.0 * INCH), side = each * sqrt(0.5);
    double pull = (6.0 + 3.0 / (1.75 * INCH)) / 2.0;
    same_load(&loads[0], hypot(side, side + 20.0), pull);
    same_load(&loads[1], hypot(side, side + 20.0), pull);
}

/* Which diagonal matters where the force and the moment meet: 40 N to the right and 10 N-m. */
Test(worst_load, both_diagonals_are_tried) {
    struct fixing lap =
        fixed("{type: screwed-lap, screw: 8, length: 2-1/2 in, count: 3, spacing: 1 in}");
    struct fixing_load loads[FIXING_LOADS];
    lap.slopes[0] = 0.3; /* a flatter patch */
    lap.slopes[1] = -0.3;
    cr_assert(fixing_loads(&lap, 0, (const double[6]){40.0, 0, 25.0, 0, -10.0, 0}, loads) == 2);
    /* sum r^2 = 2 in2; the outer ones: 10 / (2 in) = 196.85 N across the line, and a third of the
     * force. Turning is from x to z, against y. */
    double turn = 10.0 / (2.0 * INCH), c = cos(0.3), s = sin(0.3);
    double one[2] = {fmax(hypot(40.0 / 3 - turn * s, 25.0 / 3 + turn * c),
                          hypot(40.0 / 3 + turn * s, 25.0 / 3 - turn * c)),
                     fmax(hypot(40.0 / 3 + turn * s, 25.0 / 3 + turn * c),
                          hypot(40.0 / 3 - turn * s, 25.0 / 3 - turn * c))};
    same_load(&loads[0], one[0], 0.0);
    same_load(&loads[1], one[1], 0.0);
}

/* Under 1/4 in the grain does not count; over it every fastener is given, with its angles: up is
 * along the post and across the rail. */
Test(worst_load, thick_ones_look_at_the_grain) {
    struct fixing bolted = fixed("{type: screwed-lap, bolt: 3/8 in, count: 2}");
    struct fixing_load loads[FIXING_LOADS];
    int count = fixing_loads(&bolted, 0, (const double[6]){0, 0, 100.0, 0, 0, 0}, loads);
    cr_assert(count == 4 && bolted.by_angle, "two bolts, two diagonals");
    for (int k = 0; k < count; k++) {
        same_load(&loads[k], 50.0, 0.0);
        NEAR_ABS(loads[k].angle_ending, RIGHT_ANGLE, 1e-12);
        NEAR_ABS(loads[k].angle_host, 0.0, 1e-7);
    }
    fixing_loads(&bolted, 0, (const double[6]){30.0, 0, 40.0, 0, 0, 0}, loads);
    NEAR_ABS(loads[0].angle_ending, atan2(4.0, 3.0), 1e-12);
    NEAR_ABS(loads[0].angle_host, RIGHT_ANGLE - atan2(4.0, 3.0), 1e-9);
    struct screw_input input = fixing_input(&bolted, 0, &loads[0], DURATION_TEN_YEARS);
    /* both are as thick, so the heads are in the rail */
    NEAR_ABS(input.side.angle, atan2(4.0, 3.0), 1e-12);
    NEAR_ABS(input.main.angle, RIGHT_ANGLE - atan2(4.0, 3.0), 1e-9);
    cr_assert(!fixed("{type: screwed-lap, screw: 12, length: 2-1/2 in, count: 2}").by_angle);
    cr_assert(fixed("{type: screwed-lap, lag: 6.35 mm, length: 2-1/2 in, count: 2}").by_angle);
}

/* 30 N and 40 N across: 50 N shared by two; the twist of 2 N-m over the line that fits in the end,
 * 3.5 - 5 x 0.164 = 2.68 in: 2 / 2.68 in on each. Pulled off: -x at the from-end. */
Test(worst_load, a_butt) {
    struct fixing butt = fixed("{type: screwed-butt, screw: 8, length: 3 in, count: 2}");
    struct fixing_load loads[FIXING_LOADS];
    cr_assert(fixing_loads(&butt, 0, (const double[6]){-18.0, 30.0, 40.0, 2.0, 0, 0}, loads) == 1);
    same_load(&loads[0], 25.0 + 2.0 / (2.68 * INCH), 9.0);
    fixing_loads(&butt, 0, (const double[6]){18.0, 0, 0, 0, 0, 0}, loads);
    same_load(&loads[0], 0.0, 0.0); /* pushed on */
    struct screw_input input = fixing_input(&butt, 0, &loads[0], DURATION_TEN_YEARS);
    cr_assert(input.main.end_grain && !input.side.end_grain, "into the end of the rail");
    NEAR_REL(input.side.thickness, 3.5 * INCH, 1e-9); /* through the post */
}

/* Both legs: two screws each, 20 mm from the corner. 0.4 N-m opens it: 0.4 / 20 mm = 20 N pull. */
Test(worst_load, a_bracket) {
    struct fixing bracket = fixed("{type: bracket, screw: 8, length: 1 in, count: 2}");
    struct fixing_load loads[FIXING_LOADS];
    const double ends[6] = {-12.0, 0.0, 16.0, 0.0, 0.4, 0.0};
    cr_assert(bracket.group_count == 2);
    cr_assert(fixing_loads(&bracket, 0, ends, loads) == 2);
    same_load(&loads[0], 6.0, (16.0 + 20.0) / 2.0);
    same_load(&loads[1], 10.0, 10.0);
    cr_assert(fixing_loads(&bracket, 1, ends, loads) == 1);
    same_load(&loads[0], 8.0, (12.0 + 20.0) / 2.0);
}

/* 3-4-12: 13 N over two screws, as shear and as pull. */
Test(worst_load, a_hinge) {
    struct fixing hinge = fixed("{type: hinge, screw: 6, length: 3/4 in, count: 2}");
    struct fixing_load loads[FIXING_LOADS];
    cr_assert(fixing_loads(&hinge, 1, (const double[6]){3.0, 4.0, -12.0, 0, 0, 0}, loads) == 2);
    same_load(&loads[0], 6.5, 0.0);
    same_load(&loads[1], 0.0, 6.5);
}

/* A single plate, three screws 1-1/2 in apart in each stick (sum r^2 = 4.5 in2, line 3 in). The
 * middle of the group in the rail lies 1.75 + 0.75 + 1.5 = 4 in from the joint. 30 N up: 10 N each,
 * and 30 x 4 in / 4.5 in2 x 1.5 in = 40 N on the outermost, along z as well: 50 N. With 4.5 N-in
 * more of moment: 1.5 N. Two plates: half. */
Test(worst_load, a_gusset) {
    struct fixing_load loads[FIXING_LOADS];
    struct fixing one =
        fixed("{type: gusset, sheet: plywood-1/2in, screw: 8, length: 1-1/2 in, count: 3}");
    const double ends[6] = {0.0, 0.0, 30.0, 0.0, 4.5 * INCH, 0.0};
    cr_assert(one.group_count == 2);
    cr_assert(fixing_loads(&one, 0, ends, loads) == 2);
    NEAR_REL(largest_shear(loads, 2), 51.5, 1e-9);
    /* in the post the line runs along the force: 10 N along it, 41.5 N across */
    cr_assert(fixing_loads(&one, 1, ends, loads) == 2);
    NEAR_REL(largest_shear(loads, 2), hypot(10.0, 41.5), 1e-9);
    struct fixing two = fixed(
        "{type: gusset, sheet: plywood-1/2in, plates: 2, screw: 8, length: 1-1/2 in, count: 3}");
    cr_assert(fixing_loads(&two, 0, ends, loads) == 2);
    NEAR_REL(largest_shear(loads, 2), 51.5 / 2.0, 1e-9);
    struct screw_input input = fixing_input(&one, 0, &loads[0], DURATION_TEN_YEARS);
    NEAR_REL(input.side.thickness, 0.5 * INCH, 0.05); /* the plywood, actual or nominal */
    NEAR_REL(input.main.thickness, 1.5 * INCH, 1e-9);
}

/* Three screws in the block: all the shear, and what pulls off. */
Test(worst_load, a_cleat) {
    struct fixing cleat = fixed("{type: cleat, screw: 8, length: 2-1/2 in, count: 3}");
    struct fixing_load loads[FIXING_LOADS];
    cr_assert(fixing_loads(&cleat, 0, (const double[6]){-6.0, 30.0, 40.0, 0, 0, 0}, loads) == 1);
    same_load(&loads[0], 50.0 / 3.0, 2.0);
    struct screw_input input = fixing_input(&cleat, 0, &loads[0], DURATION_TEN_YEARS);
    NEAR_REL(input.side.thickness, 0.75 * INCH, 1e-9); /* the block */
    NEAR_REL(input.main.thickness, 3.5 * INCH, 1e-9);  /* the post, the way the rail runs */
}

/* What presses down sits in the notch; lifting, the screws carry it. The screws go into what the
 * notch leaves: 1-1/2 less 1/2 in, thinner than the rail, so the heads are there. */
Test(worst_load, a_notch) {
    struct fixing notch =
        fixed("{type: notched, depth: 1/2 in, screw: 8, length: 2-1/2 in, count: 2}");
    struct fixing_load loads[FIXING_LOADS];
    cr_assert(fixing_loads(&notch, 0, (const double[6]){6.0, 0, 40.0, 0, 0, 0}, loads) == 1);
    same_load(&loads[0], 3.0, 0.0);
    fixing_loads(&notch, 0, (const double[6]){6.0, 4.0, -8.0, 0, 0, 0}, loads);
    same_load(&loads[0], 5.0, 2.0);
    struct screw_input input = fixing_input(&notch, 0, &loads[0], DURATION_TEN_YEARS);
    NEAR_REL(input.side.thickness, 1.0 * INCH, 1e-9);
    NEAR_REL(input.main.thickness, 1.5 * INCH, 1e-9);
}

/* The patch of glue is as wide as the post along the rail, as high as the rail across it. */
Test(worst_load, a_glued_lap) {
    struct fixing glued = fixed("{type: glued-lap}");
    struct glue_input glue = fixing_glue(&glued, (const double[6]){5.0, 6.0, 7.0, 0.0, 8.0, 0.0});
    cr_assert(glued.group_count == 0);
    NEAR_REL(glue.along, 3.5 * INCH, 1e-9);
    NEAR_REL(glue.across, 3.5 * INCH, 1e-9);
    NEAR_REL(glue.force[0], 5.0, 1e-12);
    NEAR_REL(glue.force[1], 7.0, 1e-12);
    NEAR_REL(fabs(glue.moment), 8.0, 1e-12);
    NEAR_REL(glue.pull, 6.0, 1e-12);
}

/* A force that is no number stays one, whatever the type. */
Test(worst_load, a_force_that_is_no_number) {
    static const char *const types[] = {
        "{type: screwed-lap, screw: 8, length: 2-1/2 in, count: 2}",
        "{type: screwed-butt, screw: 8, length: 3 in, count: 2}",
        "{type: bracket, screw: 8, length: 1 in, count: 2}",
        "{type: hinge, screw: 6, length: 3/4 in, count: 2}",
        "{type: gusset, sheet: plywood-1/2in, screw: 8, length: 1-1/2 in, count: 3}",
        "{type: cleat, screw: 8, length: 2-1/2 in, count: 3}",
        "{type: notched, depth: 1/2 in, screw: 8, length: 2-1/2 in, count: 2}"};
    for (size_t t = 0; t < sizeof types / sizeof *types; t++)
        for (int k = 0; k < 3; k++) {
            struct fixing fixing = fixed(types[t]);
            struct fixing_load loads[FIXING_LOADS];
            double ends[6] = {-1.0, 1.0, -1.0, 0, 0, 0};
            ends[k] = NAN;
            bool lost = true;
            for (int g = 0; g < fixing.group_count; g++) {
                int count = fixing_loads(&fixing, g, ends, loads);
                for (int n = 0; n < count; n++)
                    lost &= !isnan(loads[n].shear) && !isnan(loads[n].pull);
            }
            cr_assert(!lost, "%s, force %d", types[t], k);
        }
}
