/* What must hold for every screw, nail, lag and bolt, on seeded random ones. */
#include "dowel_joint.h"

#include <gsl/gsl_rng.h>

enum { JOINTS = 400 };

static gsl_rng *rng;

static void begin(void) {
    set_up();
    rng = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(rng, 20180101);
}

static void end(void) {
    gsl_rng_free(rng);
    tear_down();
}

TestSuite(fastener_property, .init = begin, .fini = end);

static double between(double least, double most) {
    return least + (most - least) * gsl_rng_uniform(rng);
}

static struct joint random_joint(void) {
    enum dowel_kind kind = (enum dowel_kind)gsl_rng_uniform_int(rng, DOWEL_KIND_COUNT);
    size_t sizes = 0;
    while (table_fastener_name(kind, NAIL_COMMON, sizes))
        sizes++;
    const char *size = table_fastener_name(kind, NAIL_COMMON, gsl_rng_uniform_int(rng, sizes));
    struct joint random =
        joint(dowel(kind, size, between(1.0, 6.0)), between(0.4, 1.6), between(0.31, 0.73));
    random.main.gravity.value = between(0.31, 0.73);
    random.side.angle = between(0.0, 90.0) * DEGREE;
    random.main.angle = between(0.0, 90.0) * DEGREE;
    if (gsl_rng_uniform(rng) < 0.5)
        random.main.thickness = between(0.5, 4.0) * INCH;
    random.service.duration = (enum duration)gsl_rng_uniform_int(rng, DURATION_COUNT);
    return random;
}

/* Not less: where there was a value there still is one. */
static bool holds_as_much(double now, double before) {
    return isnan(before) || now >= before * (1.0 - 1e-12);
}

Test(fastener_property, a_longer_one_never_holds_less) {
    for (int k = 0; k < JOINTS; k++) {
        struct joint in = random_joint();
        struct dowel_values shorter = values(&in);
        dowel_set_length(&in.dowel, in.dowel.length + between(0.01, 2.0) * INCH);
        struct dowel_values longer = values(&in);
        cr_assert(holds_as_much(longer.lateral, shorter.lateral) &&
                      holds_as_much(longer.lateral_reference, shorter.lateral_reference),
                  "%d: %.9g then %.9g", k, shorter.lateral, longer.lateral);
        cr_assert(holds_as_much(longer.withdrawal, shorter.withdrawal), "%d: %.9g then %.9g", k,
                  shorter.withdrawal, longer.withdrawal);
        /* a lag whose head has no value has none for both either, once it holds at all */
        cr_assert(isnan(longer.pull_through) || holds_as_much(longer.axial, shorter.axial), "%d",
                  k);
    }
}

Test(fastener_property, wet_and_end_grain_and_slant_never_hold_more) {
    for (int k = 0; k < JOINTS; k++) {
        struct joint in = random_joint(), worse = in;
        switch (k % 3) {
        case 0:
            worse.service.wet = true;
            break;
        case 1:
            worse.main.end_grain = true;
            break;
        default:
            worse.service.toe_nailed = true;
        }
        struct dowel_values good = values(&in), bad = values(&worse);
        cr_assert(holds_as_much(good.lateral, bad.lateral), "%d", k);
        cr_assert(holds_as_much(good.withdrawal, bad.withdrawal) || bad.withdrawal == 0.0, "%d", k);
        cr_assert(holds_as_much(good.pull_through, bad.pull_through), "%d", k);
        cr_assert(isnan(good.lateral) == isnan(bad.lateral), "%d", k);
    }
}

Test(fastener_property, heavier_wood_holds_more) {
    for (int k = 0; k < JOINTS; k++) {
        struct joint in = random_joint(), heavier = in;
        heavier.side.gravity.value = between(in.side.gravity.value, 0.73);
        heavier.main.gravity.value = between(in.main.gravity.value, 0.73);
        struct dowel_values light = values(&in), heavy = values(&heavier);
        cr_assert(holds_as_much(heavy.lateral, light.lateral), "%d", k);
        cr_assert(holds_as_much(heavy.withdrawal, light.withdrawal), "%d", k);
        cr_assert(holds_as_much(heavy.pull_through, light.pull_through), "%d", k);
    }
}

/* Hankinson lies between its ends; the nails' form under the larger, and over the smaller by the
 * root of two at most. */
Test(fastener_property, at_once_lies_between) {
    for (int k = 0; k < JOINTS; k++) {
        double axial = between(10.0, 500.0), lateral = between(10.0, 500.0),
               angle = between(0.0, 90.0) * DEGREE;
        double least = fmin(axial, lateral), most = fmax(axial, lateral);
        double screw = dowel_combined(DOWEL_SCREW, axial, lateral, angle);
        double nail = dowel_combined(DOWEL_NAIL, axial, lateral, angle);
        cr_assert(screw >= least * (1.0 - 1e-12) && screw <= most * (1.0 + 1e-12), "%d", k);
        cr_assert(nail >= least / sqrt(2.0) * (1.0 - 1e-12) && nail <= screw * (1.0 + 1e-12), "%d",
                  k);
    }
}

/* The bearing of both members lies between along and across the grain, and is those at the ends
 * (Hankinson's formula); under 1/4 in it does not know the grain. */
Test(fastener_property, grain_from_along_to_across) {
    for (int k = 0; k < JOINTS; k++) {
        struct joint in = random_joint();
        struct working working = {.arena = arena};
        struct dowel_values found;
        if (k % 4 == 0)
            in.side.angle = 0.0;
        if (k % 4 == 1)
            in.side.angle = 90.0 * DEGREE;
        dowel_values(&in.dowel, &in.side, &in.main, &in.service, &working, &found);
        double D = in.dowel.D.value / INCH, G = in.side.gravity.value;
        double along = 11200.0 * G, across = 6100.0 * pow(G, 1.45) / sqrt(D);
        double got = noted(&working, "Fes");
        if (D < 0.25)
            NEAR_REL(got, 16600.0 * pow(G, 1.84), 1e-12);
        else if (k % 4 == 0)
            NEAR_REL(got, along, 1e-12);
        else if (k % 4 == 1)
            NEAR_REL(got, across, 1e-12);
        else
            cr_assert(got >= fmin(along, across) * (1.0 - 1e-12) &&
                          got <= fmax(along, across) * (1.0 + 1e-12),
                      "%d", k);
    }
}

/* Two members of one bolt change places: Im and Is, IIIm and IIIs do, II and IV stay. */
Test(fastener_property, members_change_places) {
    for (int k = 0; k < JOINTS; k++) {
        struct joint in = random_joint();
        in.dowel = dowel(DOWEL_BOLT, "3/8", 6.0);
        in.main.thickness = 6.0 * INCH - in.side.thickness;
        struct joint turned = in;
        turned.side = in.main;
        turned.main = in.side;
        struct dowel_values one = values(&in), other = values(&turned);
        NEAR_REL(one.modes[YIELD_IM], other.modes[YIELD_IS], 1e-9);
        NEAR_REL(one.modes[YIELD_IS], other.modes[YIELD_IM], 1e-9);
        NEAR_REL(one.modes[YIELD_II], other.modes[YIELD_II], 1e-9);
        NEAR_REL(one.modes[YIELD_IIIM], other.modes[YIELD_IIIS], 1e-9);
        NEAR_REL(one.modes[YIELD_IIIS], other.modes[YIELD_IIIM], 1e-9);
        NEAR_REL(one.modes[YIELD_IV], other.modes[YIELD_IV], 1e-9);
    }
}
