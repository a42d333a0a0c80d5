/* What a stick is worth: rows, ungraded rules, stiffness, weight. */
#include "lumber/by_eye.h"
#include "lumber/lumber.h"

#include "near.h"
#include "redo.h"

static const double PSI = 6894.757293168361;

static struct lumber stick(const char *size, const char *species, const char *grade) {
    return lumber_from_table((struct lumber_from_table){.species = table_species_find(species),
                                                        .grade = table_grade_find(grade),
                                                        .size = table_size_find(size)});
}

static double psi(const struct lumber *lumber, enum property property) {
    return lumber->values[property].cited.value / PSI;
}

/* NDS Supplement 2018 Table 4A, Spruce-Pine-Fir No.1/No.2 (lumber.md 1). */
Test(lumber, graded_stick_has_its_row) {
    struct lumber lumber = stick("2x6", "spruce-pine-fir", "no-2");
    cr_assert(lumber.basis == LUMBER_GRADED);
    NEAR_REL(psi(&lumber, PROPERTY_FB), 875.0, 1e-9);
    NEAR_REL(psi(&lumber, PROPERTY_FT), 450.0, 1e-9);
    NEAR_REL(psi(&lumber, PROPERTY_FV), 135.0, 1e-9);
    NEAR_REL(psi(&lumber, PROPERTY_FCP), 425.0, 1e-9);
    NEAR_REL(psi(&lumber, PROPERTY_FC), 1150.0, 1e-9);
    NEAR_REL(psi(&lumber, PROPERTY_E), 1400000.0, 1e-9);
    NEAR_REL(psi(&lumber, PROPERTY_EMIN), 510000.0, 1e-9);
    NEAR_REL(lumber.width, 5.5 * 0.0254, 1e-12);
    SAME_TEXT(lumber_basis_words(lumber.basis), "");
}

/* engineering.md 4: the lower of the species' No.3 and Northern Species No.3, value by value. SPF
 * No.3 500/250/135/425/650/1.2e6/0.44e6, Northern 350/150/110/350/500/1.0e6/0.37e6. */
Test(lumber, ungraded_is_the_lower_of_two_rows) {
    struct lumber lumber = stick("1x2", "spruce-pine-fir", "ungraded");
    cr_assert(lumber.basis == LUMBER_UNGRADED);
    const double want[] = {350.0, 150.0, 110.0, 350.0, 500.0, 1000000.0, 370000.0};
    for (int i = 0; i < PROPERTY_COUNT; i++)
        NEAR_REL(psi(&lumber, (enum property)i), want[i], 1e-9);
    NEAR_REL(lumber.gravity.value, 0.42, 1e-12); /* the species' own */
}

/* Northern white cedar No.3 is weaker than Northern Species in bending (325) but not in pressure
 * across the grain (370 against 350), so both rows are in use. */
Test(lumber, ungraded_mixes_rows_where_each_is_lower) {
    struct lumber lumber = stick("2x4", "northern-white-cedar", "ungraded");
    NEAR_REL(psi(&lumber, PROPERTY_FB), 325.0, 1e-9);
    NEAR_REL(psi(&lumber, PROPERTY_FCP), 350.0, 1e-9);
    NEAR_REL(psi(&lumber, PROPERTY_E), 600000.0, 1e-9);
    cr_assert(lumber.values[PROPERTY_FB].species == table_species_find("northern-white-cedar"));
    cr_assert(lumber.values[PROPERTY_FCP].species == table_species_find("northern-species"));
}

/* NDS Supplement Table 1B: board grades carry no values unless stress-rated. */
Test(lumber, plain_boards_count_as_ungraded) {
    struct lumber plain = stick("1x6", "spruce-pine-fir", "no-2");
    struct lumber deck = stick("5/4x6", "spruce-pine-fir", "no-2");
    struct lumber ungraded = stick("1x6", "spruce-pine-fir", "ungraded");
    struct lumber rated = lumber_from_table(
        (struct lumber_from_table){.species = table_species_find("spruce-pine-fir"),
                                   .grade = table_grade_find("no-2"),
                                   .size = table_size_find("1x6"),
                                   .stress_rated = true});
    cr_assert(plain.basis == LUMBER_PLAIN_BOARD && deck.basis == LUMBER_PLAIN_BOARD);
    for (int i = 0; i < PROPERTY_COUNT; i++)
        NEAR_REL(psi(&plain, (enum property)i), psi(&ungraded, (enum property)i), 1e-12);
    cr_assert(rated.basis == LUMBER_GRADED);
    NEAR_REL(psi(&rated, PROPERTY_FB), 875.0, 1e-9);
}

/* Construction, Standard, Utility: 2 to 4 in wide only (lumber.md 1). The stiffness is that of an
 * ungraded stick, so that a frame can still be solved. */
Test(lumber, grade_outside_its_widths_has_no_strength) {
    struct lumber lumber = stick("2x6", "spruce-pine-fir", "standard");
    cr_assert(lumber.basis == LUMBER_NO_VALUES);
    cr_assert(!lumber.values[PROPERTY_FB].has && !lumber.values[PROPERTY_FV].has);
    NEAR_REL(lumber_stiffness(&lumber, false, NULL) / PSI, 1000000.0, 1e-9);
}

/* Table 4A is for 2 to 4 in thick pieces: a 140 x 140 mm post has none, sticks under 2 in wide have
 * none, and both still have a stiffness. */
Test(lumber, sizes_outside_the_tables_have_no_strength) {
    const double sides[][2] = {{0.140, 0.140}, {0.019, 0.019}};
    for (int i = 0; i < 2; i++) {
        struct lumber lumber = lumber_from_table(
            (struct lumber_from_table){.species = table_species_find("spruce-pine-fir"),
                                       .grade = GRADE_UNGRADED,
                                       .size = -1,
                                       .thickness = sides[i][0],
                                       .width = sides[i][1]});
        cr_assert(lumber.basis == LUMBER_NO_VALUES && !lumber.values[PROPERTY_FB].has);
        cr_assert(lumber_stiffness(&lumber, true, NULL) > 0.0);
    }
}

/* NDS Supplement Table 4A wet service: E, Emin x 0.9. */
Test(lumber, wet_stiffness) {
    struct lumber lumber = stick("2x8", "douglas-fir-larch", "no-1");
    NEAR_REL(lumber_stiffness(&lumber, true, NULL) / PSI, 1.53e6, 1e-9);
    NEAR_REL(lumber_least_stiffness(&lumber, true, NULL) / PSI, 558000.0, 1e-9);
    NEAR_REL(lumber_shear_modulus(&lumber, true) / PSI, 1.53e6 / 16.0, 1e-9);
}

/* lumber.md 4.1(b): SPF 457 kg/m3 at 15 %; 1000 x 0.42 x 1.25/(1 + 0.009 x 0.42 x 25) = 479.67 wet.
 */
Test(lumber, density) {
    struct lumber lumber = stick("2x4", "spruce-pine-fir", "no-2");
    double dry, wet, slip;
    cr_assert(lumber_density(&lumber, false, &dry) && lumber_density(&lumber, true, &wet) &&
              lumber_slip_density(&lumber, &slip));
    NEAR_ABS(dry, 457.0, 0.5);
    NEAR_REL(wet, 479.67, 1e-4);
    NEAR_REL(slip, 1000.0 * 0.42 * 1.12 / (1.0 + 0.009 * 0.42 * 12.0), 1e-12);
}

Test(lumber, own_numbers_stand_as_given) {
    struct lumber_from_numbers own = {
        .thickness = 0.05, .width = 0.1, .shear_modulus = NAN, .density = 500.0};
    for (int i = 0; i < PROPERTY_COUNT; i++)
        own.values[i] = NAN;
    own.values[PROPERTY_E] = 9e9;
    own.values[PROPERTY_FB] = 10e6;
    struct lumber lumber = lumber_from_numbers(own);
    double density;
    cr_assert(lumber.basis == LUMBER_OWN && lumber.emin_is_e);
    cr_assert(lumber.values[PROPERTY_FB].has && !lumber.values[PROPERTY_FV].has);
    NEAR_REL(lumber_stiffness(&lumber, true, NULL), 9e9, 1e-12);
    NEAR_REL(lumber_least_stiffness(&lumber, true, NULL), 9e9, 1e-12);
    NEAR_REL(lumber_shear_modulus(&lumber, true), 9e9 / 16.0, 1e-12);
    cr_assert(lumber_density(&lumber, true, &density));
    NEAR_REL(density, 500.0, 1e-12);
    cr_assert(!lumber.has_gravity);
}

/* Torsion of a square: 0.1408 a^4 by the series solution; the formula gives 0.1408. A thin strip
 * comes to b t^3/3. */
Test(lumber, torsion_constant) {
    NEAR_REL(rectangle_torsion(1.0, 1.0), 0.1408, 1e-3);
    NEAR_REL(rectangle_torsion(0.001, 1.0), 1e-9 / 3.0, 1e-3);
    NEAR_REL(rectangle_torsion(2.0, 3.0), rectangle_torsion(3.0, 2.0), 1e-15);
}

Test(lumber, finger_joints) {
    struct lumber lumber = stick("1x3", "spruce-pine-fir", "ungraded");
    cr_assert(!lumber_unfit_finger_joints(&lumber, true, true));
    lumber.finger_jointed = true;
    cr_assert(lumber_unfit_finger_joints(&lumber, true, false));
    cr_assert(lumber_unfit_finger_joints(&lumber, false, true));
    cr_assert(!lumber_unfit_finger_joints(&lumber, false, false));
}

/* lumber.md 5.1: knots at the grade's limit leave 0.668/0.567/0.474/0.268 of a 2x4 (SS, 1, 2, 3)
 * and 0.665/0.565/0.473/0.261 of a 2x6, edge of the wide face. */
Test(lumber, knot_ratios_stand_for_the_grades) {
    static const double knots[2][4] = {{0.75, 1.0, 1.25, 1.75}, {1.125, 1.5, 1.875, 2.75}};
    static const double ratio[2][4] = {{0.668, 0.567, 0.474, 0.268}, {0.665, 0.565, 0.473, 0.261}};
    static const double face[2] = {3.5, 5.5};
    for (int i = 0; i < 2; i++)
        for (int j = 0; j < 4; j++) /* thick enough that the narrow face does not govern */
            NEAR_ABS(knot_ratio(knots[i][j] * 0.0254, face[i] * 0.0254, face[i] * 0.0254),
                     ratio[i][j], 5e-4);
    cr_assert(knot_ratio(0.1, 0.0381, 0.0889) == 0.0);
    /* in a 2x2 5/8 in is already No.2's limit, and 1 in leaves about 0.15: (1 - 1/1.625)^2 */
    NEAR_ABS(knot_ratio(0.625 * 0.0254, 0.0381, 0.0381), 0.4746, 5e-4);
    NEAR_ABS(knot_ratio(0.0254, 0.0381, 0.0381), 0.1479, 5e-4);
    NEAR_REL(knot_ratio(0.0, 0.0381, 0.0889), 1.0, 1e-12);
}

/* ASTM D245: 1 in 12 leaves 0.69 in bending, 0.82 under push; between two rows the steeper holds.
 */
Test(lumber, grain_ratios) {
    static const double rows[][3] = {{20, 1.00, 1.00}, {15, 0.76, 1.00}, {12, 0.69, 0.82},
                                     {10, 0.61, 0.74}, {8, 0.53, 0.66},  {6, 0.40, 0.56}};
    double ratio;
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++)
        for (int pushed = 0; pushed < 2; pushed++) {
            cr_assert(grain_ratio(1.0 / rows[k][0], pushed, &ratio));
            NEAR_REL(ratio, rows[k][1 + pushed], 1e-12);
        }
    cr_assert(grain_ratio(1.0 / 12.0, false, &ratio));
    NEAR_REL(ratio, 0.69, 1e-12);
    cr_assert(grain_ratio(1.0 / 11.0, true, &ratio));
    NEAR_REL(ratio, 0.74, 1e-12);
    cr_assert(!grain_ratio(1.0 / 5.0, false, &ratio) && !grain_ratio(NAN, false, &ratio));
}

static struct lumber measured(const char *grade, double knots, double slope) {
    return lumber_from_table((struct lumber_from_table){.species = table_species_find("hem-fir"),
                                                        .grade = table_grade_find(grade),
                                                        .size = table_size_find("2x4"),
                                                        .measured = true,
                                                        .knots = knots * 0.0254,
                                                        .slope_of_grain = slope});
}

/* Hem-Fir No.2 850, ungraded 350. 1/2 in knot: narrow face of a 2x4 leaves 1 - 0.4583/1.875 =
 * 0.756, grain 1 in 12 0.69: capped at No.2. Grain 1 in 6: 0.40: 850 x 0.40/0.45 = 755.6. */
Test(lumber, own_grading_raises_an_ungraded_stick) {
    struct lumber best = measured("ungraded", 0.5, 1.0 / 12.0);
    cr_assert(best.basis == LUMBER_BY_EYE);
    NEAR_REL(psi(&best, PROPERTY_FB), 850.0, 1e-9);
    NEAR_REL(psi(&best, PROPERTY_FV), 110.0, 1e-9);
    NEAR_REL(psi(&best, PROPERTY_E), 1.0e6, 1e-9);
    struct lumber steep = measured("ungraded", 0.5, 1.0 / 6.0);
    NEAR_REL(psi(&steep, PROPERTY_FB), 850.0 * 0.40 / 0.45, 1e-9);
    struct arena *arena = arena_new();
    struct working working = {.arena = arena};
    NEAR_REL(lumber_reference(&steep, PROPERTY_FB, &working) / PSI, 755.56, 1e-5);
    /* wide face 1 - 0.4583/3.875, squared 0.7774; narrow 0.7556; grain 0.40 */
    NEAR_ABS(noted(&working, "qw"), 0.7774, 5e-5);
    NEAR_ABS(noted(&working, "qn"), 0.7556, 5e-5);
    NEAR_ABS(noted(&working, "qg"), 0.40, 1e-12);
    NEAR_ABS(noted(&working, "q"), 0.40, 1e-12);
    cr_assert(redo_all(&working) == 4);
    /* a large knot: wide (1 - 1.5/3.625)^2 = 0.3436, narrow 1 - 1.4583/1.5 = 0.0278; under push the
     * grain of 1 in 10 leaves 0.74 */
    struct lumber knotty = measured("ungraded", 1.5, 0.1);
    cr_assert(knotty.basis == LUMBER_UNGRADED && knotty.worse_than_taken);
    struct lumber pushed = measured("ungraded", 0.75, 0.1);
    struct working under_push = {.arena = arena};
    NEAR_REL(lumber_reference(&pushed, PROPERTY_FC, &under_push) / PSI, 1300.0, 1e-9);
    NEAR_ABS(noted(&under_push, "qg"), 0.74, 1e-12);
    NEAR_ABS(noted(&under_push, "q"), 0.6222, 5e-5); /* narrow: 1 - 0.7083/1.875 */
    cr_assert(redo_all(&under_push) == 4);
    arena_free(arena);
    /* too steep, too knotty, a graded stick: as they were */
    cr_assert(measured("ungraded", 0.5, 1.0 / 4.0).basis == LUMBER_UNGRADED);
    cr_assert(measured("ungraded", 3.0, 0.0).basis == LUMBER_UNGRADED);
    cr_assert(measured("ungraded", 3.0, 0.0).worse_than_taken);
    /* and nothing passes what is weaker than ungraded */
    cr_assert(!knotty.values[PROPERTY_FB].has && !knotty.values[PROPERTY_FT].has &&
              !knotty.values[PROPERTY_FC].has && pushed.values[PROPERTY_FB].has);
    cr_assert(measured("ungraded", 0.5, 1.0 / 4.0).worse_than_taken && !best.worse_than_taken);
    struct lumber graded = measured("no-3", 0.25, 0.0);
    cr_assert(graded.basis == LUMBER_GRADED);
    NEAR_REL(psi(&graded, PROPERTY_FB), 500.0, 1e-9);
}
