/* tables_test.c - the tables through their C interface: relations that must hold, and spot values
 * beside the page they stand on. */
#include "tables/tables.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

#define PSI 6894.757293168361
#define POUND 4.4482216152605

static void near(double got, double want, const char *what) {
    cr_assert(fabs(got - want) <= 1e-9 * fabs(want), "%s: %.17g, expected %.17g", what, got, want);
}

static double psi(const char *species, const char *grade, double width, enum property property) {
    struct cited cited;
    int s = table_species_find(species), g = table_grade_find(grade);
    cr_assert(s >= 0 && g >= 0, "unknown %s %s", species, grade);
    cr_assert(table_design_value(s, g, width, property, &cited), "no value: %s %s %g %s", species,
              grade, width, table_property_name(property));
    cr_assert(cited.source[0] != '\0', "no source: %s %s", species, grade);
    return cited.value / PSI;
}

static bool has(const char *species, const char *grade, double width) {
    struct cited cited;
    return table_design_value(table_species_find(species), table_grade_find(grade), width,
                              PROPERTY_FB, &cited);
}

static double size_factor(const char *species, const char *grade, double thickness, double width,
                          enum property property) {
    struct cited cited;
    cr_assert(table_size_factor(table_species_find(species), table_grade_find(grade), thickness,
                                width, property, &cited),
              "no CF: %s %s %g x %g", species, grade, thickness, width);
    return cited.value;
}

Test(tables, names_answer_to_themselves) {
    for (int s = 0; s < table_species_count(); s++)
        cr_assert(table_species_find(table_species_name(s)) == s, "%s", table_species_name(s));
    for (int g = 0; g < table_grade_count(); g++)
        cr_assert(table_grade_find(table_grade_name(g)) == g, "%s", table_grade_name(g));
    for (int k = 0; k < table_size_count(); k++)
        cr_assert(table_size_find(table_size(k)->name) == k, "%s", table_size(k)->name);
    for (int k = 0; k < table_sheet_count(); k++)
        cr_assert(table_sheet_find(table_sheet(k)->name) == k, "%s", table_sheet(k)->name);
    for (int k = 0; k < table_tray_count(); k++)
        cr_assert(table_tray_find(table_tray(k)->name) == k, "%s", table_tray(k)->name);
    for (int k = 0; k < table_ground_count(); k++)
        cr_assert(table_ground_find(table_ground_name(k)) == k, "%s", table_ground_name(k));
    for (int k = 0; k < table_snow_count(); k++)
        cr_assert(table_snow_find(table_snow_name(k)) == k, "%s", table_snow_name(k));
    for (int k = 0; k < table_wind_word_count(); k++)
        cr_assert(table_wind_word_find(table_wind_word_name(k)) == k, "%s",
                  table_wind_word_name(k));
    cr_assert(strcmp(table_grade_name(GRADE_UNGRADED), "ungraded") == 0, "the ungraded grade");
    cr_assert(table_species_find("oak") == -1 && table_grade_find("") == -1, "unknown names");
    cr_assert(table_size_find("2x5") == -1 && table_sheet_find("tin") == -1, "unknown names");
}

/* Every name that the frame format promises. */
Test(tables, promised_names_are_there) {
    static const char *const species[] = {
        "spruce-pine-fir",  "spruce-pine-fir-south", "douglas-fir-larch", "hem-fir",
        "southern-pine",    "western-cedars",        "redwood",           "eastern-white-pine",
        "northern-species", "northern-white-cedar"};
    static const char *const sizes[] = {"1x2",   "1x3",   "1x4", "1x6", "1x8", "1x10", "1x12",
                                        "5/4x4", "5/4x6", "2x2", "2x3", "2x4", "2x6",  "2x8",
                                        "2x10",  "2x12",  "3x3", "4x4", "4x6", "4x8"};
    static const char *const sheets[] = {"twin-wall-4mm",
                                         "twin-wall-6mm",
                                         "twin-wall-8mm",
                                         "twin-wall-10mm",
                                         "polycarbonate-3mm",
                                         "acrylic-3mm",
                                         "corrugated-polycarbonate",
                                         "glass-3mm",
                                         "glass-4mm",
                                         "film-6mil",
                                         "plywood-1/4in",
                                         "plywood-3/8in",
                                         "plywood-1/2in",
                                         "plywood-3/4in",
                                         "osb-7/16in",
                                         "osb-1/2in",
                                         "hardboard-1/4in",
                                         "hardware-cloth",
                                         "wire-shelf"};
    cr_assert(table_species_count() == 10, "%d species", table_species_count());
    for (size_t k = 0; k < sizeof species / sizeof *species; k++)
        cr_assert(table_species_find(species[k]) >= 0, "%s", species[k]);
    cr_assert(table_size_count() == 20, "%d sizes", table_size_count());
    for (size_t k = 0; k < sizeof sizes / sizeof *sizes; k++)
        cr_assert(table_size_find(sizes[k]) == (int)k, "%s stands at %d", sizes[k],
                  table_size_find(sizes[k]));
    for (size_t k = 0; k < sizeof sheets / sizeof *sheets; k++)
        cr_assert(table_sheet_find(sheets[k]) >= 0, "%s", sheets[k]);
}

Test(tables, rows_are_sorted_and_carry_their_source) {
    cr_assert(table_count() > 15, "%zu tables", table_count());
    cr_assert(table_find("no such table") == NULL, "an unknown table");
    for (size_t t = 0; t < table_count(); t++) {
        const struct table *table = table_at(t);
        cr_assert(table_find(table->name) == table && table->count > 0, "%s", table->name);
        for (size_t k = 0; k < table->count; k++) {
            const struct table_row *row = &table->rows[k];
            cr_assert(row->source[0] && row->cite[0] && row->unit[0], "%s: %s", table->name,
                      row->row);
            cr_assert(isfinite(row->si), "%s: %s", table->name, row->row);
            cr_assert(k == 0 || strcmp(table->rows[k - 1].row, row->row) < 0, "%s: %s", table->name,
                      row->row);
        }
    }
}

/* NDS Appendix D: Emin = 1.03 E (1 - 1.645 x 0.25) / 1.66, printed to 10 000 psi. */
Test(tables, emin_follows_e_and_strength_follows_the_grade) {
    static const char *const fall[] = {"select-structural", "no-1", "no-2", "no-3"};
    static const double widths[] = {2, 4, 6, 8, 10, 12};
    for (int s = 0; s < table_species_count(); s++)
        for (size_t w = 0; w < 6; w++)
            for (size_t g = 0; g < 4; g++) {
                const char *name = table_species_name(s);
                double e = psi(name, fall[g], widths[w], PROPERTY_E);
                double emin = psi(name, fall[g], widths[w], PROPERTY_EMIN);
                cr_assert(fabs(emin - 1.03 * e * (1 - 1.645 * 0.25) / 1.66) <= 5001.0,
                          "%s %s: E %g Emin %g", name, fall[g], e, emin);
                if (g == 0)
                    continue;
                for (int p = 0; p < PROPERTY_COUNT; p++) {
                    double better = psi(name, fall[g - 1], widths[w], (enum property)p);
                    double worse = psi(name, fall[g], widths[w], (enum property)p);
                    cr_assert(worse <= better, "%s %s %s", name, fall[g],
                              table_property_name((enum property)p));
                }
            }
}

Test(tables, dressed_is_under_nominal) {
    for (int k = 0; k < table_size_count(); k++) {
        const struct dressed_size *size = table_size(k);
        cr_assert(size->thickness < 0.0254 * size->nominal_thickness, "%s", size->name);
        cr_assert(size->width < 0.0254 * size->nominal_width, "%s", size->name);
        cr_assert(size->thickness <= size->width, "%s", size->name);
        near(table_nominal_inches(size->thickness), size->nominal_thickness, size->name);
        near(table_nominal_inches(size->width), size->nominal_width, size->name);
    }
    const struct dressed_size *two_by_four = table_size(table_size_find("2x4"));
    near(two_by_four->thickness, 0.0381, "PS 20: 2x4 is 1-1/2 in thick");
    near(two_by_four->width, 0.0889, "PS 20: 2x4 is 3-1/2 in wide");
}

Test(tables, actual_sizes_find_their_nominal_inches) {
    near(table_nominal_inches(0.0382), 2, "38.2 mm");
    near(table_nominal_inches(0.03889), 2, "1/32 in over 1-1/2 in");
    near(table_nominal_inches(0.0389), 3, "more than 1/32 in over 1-1/2 in");
    near(table_nominal_inches(0.005), 1, "5 mm");
    near(table_nominal_inches(0.400), 14, "400 mm");
    near(table_nominal_inches(NAN), 14, "not a number");
}

/* NDS Supplement 2018 Tables 4A and 4B, psi. */
Test(tables, design_values_of_the_supplement) {
    near(psi("spruce-pine-fir", "no-2", 4, PROPERTY_FB), 875, "4A SPF No.1/No.2 Fb");
    near(psi("spruce-pine-fir", "no-1", 4, PROPERTY_FB), 875, "4A SPF No.1/No.2 Fb");
    near(psi("spruce-pine-fir", "no-2", 4, PROPERTY_E), 1.4e6, "4A SPF No.1/No.2 E");
    near(psi("spruce-pine-fir", "no-2", 4, PROPERTY_FV), 135, "4A SPF Fv");
    near(psi("spruce-pine-fir", "select-structural", 4, PROPERTY_FB), 1250, "4A SPF SS Fb");
    near(psi("douglas-fir-larch", "no-1", 4, PROPERTY_FC), 1500, "4A DFL No.1 Fc");
    near(psi("douglas-fir-larch", "no-1", 4, PROPERTY_EMIN), 620000, "4A DFL No.1 Emin");
    near(psi("hem-fir", "no-2", 10, PROPERTY_FT), 525, "4A Hem-Fir No.2 Ft");
    near(psi("hem-fir", "no-2", 10, PROPERTY_FCP), 405, "4A Hem-Fir Fcp");
    near(psi("northern-species", "no-3", 4, PROPERTY_FB), 350, "4A Northern Species No.3 Fb");
    near(psi("redwood", "no-2", 4, PROPERTY_FB), 725, "4A Redwood open grain No.2 Fb");
    near(psi("southern-pine", "no-2", 4, PROPERTY_FB), 1100, "4B No.2 2 to 4 in");
    near(psi("southern-pine", "no-2", 5, PROPERTY_FB), 1000, "4B No.2 5 and 6 in");
    near(psi("southern-pine", "no-2", 8, PROPERTY_FB), 925, "4B No.2 8 in");
    near(psi("southern-pine", "no-2", 10, PROPERTY_FB), 800, "4B No.2 10 in");
    near(psi("southern-pine", "no-2", 12, PROPERTY_FB), 750, "4B No.2 12 in");
    near(psi("southern-pine", "no-2", 16, PROPERTY_FB), 750, "4B No.2 wider than 12 in");
}

Test(tables, grades_keep_to_their_widths) {
    near(psi("hem-fir", "stud", 6, PROPERTY_FB), 675, "stud to 6 in");
    near(psi("hem-fir", "stud", 8, PROPERTY_FB), 500, "stud in 8 in takes No.3");
    near(size_factor("hem-fir", "stud", 2, 8, PROPERTY_FB), 1.2, "and its size factor");
    near(psi("southern-pine", "stud", 8, PROPERTY_FB), 525, "stud in 8 in takes No.3");
    cr_assert(has("hem-fir", "construction", 4) && !has("hem-fir", "construction", 6),
              "construction is 2 to 4 in wide");
    cr_assert(has("hem-fir", "utility", 2) && !has("hem-fir", "utility", 4.5),
              "utility is 2 to 4 in wide");
    cr_assert(has("southern-pine", "standard", 4) && !has("southern-pine", "standard", 3),
              "southern pine standard is 4 in wide");
    cr_assert(!has("hem-fir", "no-2", 1) && !has("hem-fir", "no-2", NAN), "2 in and wider");
    cr_assert(!has("hem-fir", "ungraded", 4), "ungraded has no values");
    struct cited cited;
    cr_assert(!table_design_value(-1, 0, 4, PROPERTY_FB, &cited), "no species");
    cr_assert(!table_design_value(0, -1, 4, PROPERTY_FB, &cited), "no grade");
    cr_assert(!table_size_factor(0, 0, 6, 6, PROPERTY_FB, &cited), "timbers have their own table");
    cr_assert(!table_size_factor(0, 0, 2, NAN, PROPERTY_FB, &cited), "no width");
}

/* NDS Supplement 2018 Table 4A, size factor; NELMA grade rules section 8 Table A. */
Test(tables, size_factors_of_the_supplement) {
    near(size_factor("hem-fir", "no-2", 2, 4, PROPERTY_FB), 1.5, "2x4 Fb");
    near(size_factor("hem-fir", "no-2", 2, 4, PROPERTY_FC), 1.15, "2x4 Fc");
    near(size_factor("hem-fir", "no-2", 2, 6, PROPERTY_FB), 1.3, "2x6 Fb");
    near(size_factor("hem-fir", "no-2", 2, 7, PROPERTY_FB), 1.2, "7 in takes the 8 in row");
    near(size_factor("hem-fir", "no-2", 4, 8, PROPERTY_FB), 1.3, "4x8 Fb");
    near(size_factor("hem-fir", "no-2", 4, 8, PROPERTY_FT), 1.2, "4x8 Ft");
    near(size_factor("hem-fir", "no-2", 2, 13, PROPERTY_FB), 0.9, "over 12 in");
    near(size_factor("hem-fir", "no-2", 1.25, 6, PROPERTY_FB), 1.3, "5/4x6");
    near(size_factor("hem-fir", "no-2", 2, 6, PROPERTY_E), 1.0, "E takes none");
    near(size_factor("hem-fir", "stud", 2, 4, PROPERTY_FB), 1.1, "stud 2x4");
    near(size_factor("hem-fir", "utility", 2, 3, PROPERTY_FB), 0.4, "utility 2x3");
    near(size_factor("hem-fir", "utility", 2, 2, PROPERTY_FC), 0.6, "utility 2x2 Fc");
    near(size_factor("hem-fir", "standard", 2, 4, PROPERTY_FB), 1.0, "standard 2x4");
    near(size_factor("southern-pine", "no-2", 2, 10, PROPERTY_FB), 1.0, "4B 2x10");
    near(size_factor("southern-pine", "no-2", 4, 8, PROPERTY_FB), 1.1, "4B 4x8");
    near(size_factor("southern-pine", "no-2", 4, 6, PROPERTY_FB), 1.0, "4B 4x6");
    near(size_factor("southern-pine", "no-2", 2, 14, PROPERTY_FT), 0.9, "4B over 12 in");
}

/* Missouri S&T CE 5260 problem 4.30: Hem-Fir No.2 2x10, snow, repetitive: Fb' 1237, Fc' 1495 psi.
 */
Test(tables, factors_make_the_published_strength) {
    double snow = table_duration_factor(DURATION_TWO_MONTHS).value;
    double fb = psi("hem-fir", "no-2", 10, PROPERTY_FB) * snow *
                size_factor("hem-fir", "no-2", 2, 10, PROPERTY_FB) *
                table_constant("repetitive-factor").value;
    cr_assert(fabs(fb - 1237) < 0.5, "Fb' %.17g", fb);
    double fc = psi("hem-fir", "no-2", 10, PROPERTY_FC) * snow *
                size_factor("hem-fir", "no-2", 2, 10, PROPERTY_FC);
    cr_assert(fabs(fc - 1495) < 0.5, "Fc' %.17g", fc);
}

/* Purdue CE 479: DFL No.1 2x8, snow, wet: Fb' 1173, Fv' 201 psi. */
Test(tables, wet_factors_make_the_published_strength) {
    struct cited factor, exempt;
    double snow = table_duration_factor(DURATION_TWO_MONTHS).value;
    cr_assert(table_wet_factor(PROPERTY_FB, &factor, &exempt), "CM of Fb");
    near(exempt.value, 1150 * PSI, "Fb x CF up to 1150 psi keeps 1.0");
    double fb = psi("douglas-fir-larch", "no-1", 8, PROPERTY_FB) * snow * factor.value *
                size_factor("douglas-fir-larch", "no-1", 2, 8, PROPERTY_FB);
    cr_assert(fabs(fb - 1173) < 0.5, "Fb' %.17g", fb);
    cr_assert(table_wet_factor(PROPERTY_FV, &factor, &exempt), "CM of Fv");
    cr_assert(exempt.value == 0.0, "Fv has no such threshold");
    double fv = psi("douglas-fir-larch", "no-1", 8, PROPERTY_FV) * snow * factor.value;
    cr_assert(fabs(fv - 201) < 0.5, "Fv' %.17g", fv);
}

Test(tables, flat_use_and_duration) {
    struct cited cited;
    cr_assert(table_flat_use_factor(2, 4, &cited) && cited.value == 1.1, "2x4: %g", cited.value);
    cr_assert(table_flat_use_factor(1, 2, &cited) && cited.value == 1.0, "1x2: %g", cited.value);
    cr_assert(table_flat_use_factor(2, 12, &cited) && cited.value == 1.2, "2x12: %g", cited.value);
    cr_assert(table_flat_use_factor(4, 8, &cited) && cited.value == 1.05, "4x8: %g", cited.value);
    cr_assert(!table_flat_use_factor(4, 3, &cited), "4 in thick, 3 in wide");
    cr_assert(!table_flat_use_factor(NAN, 4, &cited), "no thickness");
    for (int d = 1; d < DURATION_COUNT; d++)
        cr_assert(table_duration_factor((enum duration)d).value >
                      table_duration_factor((enum duration)(d - 1)).value,
                  "%s", duration_name((enum duration)d));
    near(table_duration_factor(DURATION_TEN_MINUTES).value, 1.6, "NDS Table 2.3.2");
}

Test(tables, values_are_si) {
    struct cited cited;
    near(table_constant("push-least").value, 20 * POUND, "20 lb");
    near(table_constant("turn-reference-size").value, 0.038, "38 mm");
    near(table_constant("upright-angle").value, 3.14159265358979323846 / 4, "45 deg");
    near(table_constant("creep-dry").value, 1.5, "NDS 3.5.2");
    cr_assert(table_constant("column-c").mark == MARK_READ, "NDS 3.7.1.5 was read");
    cr_assert(table_constant("service-wind").mark == MARK_MEMORY, "0.42 was not read");
    near(table_tray(table_tray_find("tray-1020-wet"))->weight, 20 * POUND, "20 lb");
    near(table_tray(table_tray_find("tray-1020-wet"))->width, 11.125 * 0.0254, "11-1/8 in");
    near(table_sheet(table_sheet_find("twin-wall-6mm"))->weight, 1.30 * 9.80665, "1.30 kg/m2");
    near(table_sheet(table_sheet_find("plywood-1/2in"))->weight, 1.5 * 47.880258980335840,
         "1.5 psf");
    near(table_wind_word_gust(table_wind_word_find("gale")).value, 1.4 * 46 * 0.44704,
         "1.4 x 46 mph");
    near(table_snow_density(table_snow_find("settled")).value, 250, "250 kg/m3");
    near(table_ground_friction(table_ground_find("grass")).value, 0.20, "grass");
    cr_assert(table_specific_gravity(table_species_find("spruce-pine-fir"), &cited), "G");
    near(cited.value, 0.42, "NDS 2018 Table 12.3.3A");
    cr_assert(table_value("soils", "seed-mix.soaked", &cited), "a soil");
    near(cited.value, 65 * 16.018463373960142, "65 pcf");
    cr_assert(!table_value("soils", "clay.dry", &cited), "no such soil");
}

Test(tables, an_unknown_constant_is_a_mistake, .signal = 6) {
    table_constant("no-such-number");
}
