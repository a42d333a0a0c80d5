/* Quantities of every kind, unit and form; what is refused; how they are printed. */
#include "units/quantity.h"

#include <criterion/criterion.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#define LB 4.4482216152605
#define IN 0.0254
#define FT 0.3048

static struct arena *arena;

static void open_arena(void) {
    arena = arena_new();
    if (ARENA_TRAP(arena))
        cr_assert_fail("out of memory");
}

static void close_arena(void) {
    arena_free(arena);
}

TestSuite(quantity, .init = open_arena, .fini = close_arena);

static void reads(const char *text, enum quantity kind, enum unit_system system, double expected) {
    double si = NAN;
    const char *why = "";
    bool good = quantity_read(arena, text, kind, system, &si, &why);
    cr_assert(good, "%s was refused: %s", text, why);
    cr_assert(isfinite(si) && fabs(si - expected) <= 1e-12 * fmax(1e-12, fabs(expected)),
              "%s gave %.17g, expected %.17g", text, si, expected);
}

/* Refused, with a message that holds `words`. */
static void refuses(const char *text, enum quantity kind, const char *words) {
    double si = 0;
    const char *why = NULL;
    bool good = quantity_read(arena, text, kind, UNITS_US, &si, &why);
    cr_assert(!good, "%s was taken as %.17g", text, si);
    cr_assert(why && strstr(why, words), "%s: the message is [%s], expected [%s] in it", text, why,
              words);
    cr_assert(!strchr(why, '\n'), "%s: the message has more than one line", text);
}

static void length(const char *text, double inches) {
    reads(text, QUANTITY_LENGTH, UNITS_US, inches * IN);
}

Test(quantity, lengths_in_every_form) {
    length("24", 24);
    length("24 in", 24);
    length("24in", 24);
    length("2 ft", 24);
    length("2 ft 3-1/2 in", 27.5);
    length("2 ft 3 1/2 in", 27.5);
    length("-2 ft 3 in", -27);
    length("+2 ft 3 in", 27);
    length("5' 3\"", 63);
    length("5'3\"", 63);
    length("5'-3\"", 63);
    length("2ft3in", 27);
    length("3/4 in", 0.75);
    length("3/4", 0.75);
    length("1-1/2", 1.5);
    length("1 1/2", 1.5);
    length("1 1/2 in", 1.5);
    length("  6.5  in  ", 6.5);
    length(".5 ft", 6);
    length("5. in", 5);
    length("1e1 in", 10);
    length("1 m 2 cm 3 mm", 1023 / 25.4);
    length("010", 10);
    length("-0", 0);
}

Test(quantity, every_unit) {
    static const struct {
        char text[20];
        enum quantity kind;
        double si;
    } rows[] = {
        {"1 in", QUANTITY_LENGTH, IN},
        {"1 ft", QUANTITY_LENGTH, FT},
        {"1'", QUANTITY_LENGTH, FT},
        {"1\"", QUANTITY_LENGTH, IN},
        {"19 mm", QUANTITY_LENGTH, 0.019},
        {"3 cm", QUANTITY_LENGTH, 0.03},
        {"0.6 m", QUANTITY_LENGTH, 0.6},
        {"14 lb", QUANTITY_WEIGHT, 14 * LB},
        {"1 kip", QUANTITY_WEIGHT, 1000 * LB},
        {"50 N", QUANTITY_WEIGHT, 50},
        {"2 kN", QUANTITY_WEIGHT, 2000},
        {"6 kg", QUANTITY_WEIGHT, 6 * 9.80665},
        {"6 kg", QUANTITY_MASS, 6},
        {"1 lb", QUANTITY_MASS, 0.45359237},
        {"20 psf", QUANTITY_LOAD, 20 * LB / (FT * FT)},
        {"1 kPa", QUANTITY_LOAD, 1000},
        {"7 Pa", QUANTITY_LOAD, 7},
        {"1.4e6 psi", QUANTITY_STRESS, 1.4e6 * LB / (IN * IN)},
        {"2 ksi", QUANTITY_STRESS, 2000 * LB / (IN * IN)},
        {"5 MPa", QUANTITY_STRESS, 5e6},
        {"9 GPa", QUANTITY_STRESS, 9e9},
        {"12 plf", QUANTITY_LINE_LOAD, 12 * LB / FT},
        {"1 lb/in", QUANTITY_LINE_LOAD, LB / IN},
        {"3 N/m", QUANTITY_LINE_LOAD, 3},
        {"3 kN/m", QUANTITY_LINE_LOAD, 3000},
        {"3 N/mm", QUANTITY_LINE_LOAD, 3000},
        {"9000 lb/in", QUANTITY_SLIP, 9000 * LB / IN},
        {"12 plf", QUANTITY_SLIP, 12 * LB / FT},
        {"25 pcf", QUANTITY_DENSITY, 25 * 0.45359237 / (FT * FT * FT)},
        {"420 kg/m3", QUANTITY_DENSITY, 420},
        {"1.2 in2", QUANTITY_AREA, 1.2 * IN * IN},
        {"800 mm2", QUANTITY_AREA, 800e-6},
        {"8 cm2", QUANTITY_AREA, 8e-4},
        {"1 m2", QUANTITY_AREA, 1},
        {"0.4 in4", QUANTITY_INERTIA, 0.4 * IN * IN * IN * IN},
        {"5 mm4", QUANTITY_INERTIA, 5e-12},
        {"5 cm4", QUANTITY_INERTIA, 5e-8},
        {"5 m4", QUANTITY_INERTIA, 5},
        {"3 lb-in", QUANTITY_MOMENT, 3 * LB * IN},
        {"3 lb-ft", QUANTITY_MOMENT, 3 * LB * FT},
        {"3 kip-in", QUANTITY_MOMENT, 3000 * LB * IN},
        {"3 N-m", QUANTITY_MOMENT, 3},
        {"3 kN-m", QUANTITY_MOMENT, 3000},
        {"3000 lb-in/rad", QUANTITY_ROTATION, 3000 * LB * IN},
        {"3 kip-in/rad", QUANTITY_ROTATION, 3000 * LB * IN},
        {"300 N-m/rad", QUANTITY_ROTATION, 300},
        {"3 kN-m/rad", QUANTITY_ROTATION, 3000},
        {"70 mph", QUANTITY_SPEED, 70 * 0.44704},
        {"30 m/s", QUANTITY_SPEED, 30},
        {"36 km/h", QUANTITY_SPEED, 10},
        {"180 deg", QUANTITY_ANGLE, 3.14159265358979323846},
        {"2 rad", QUANTITY_ANGLE, 2},
        {"212 F", QUANTITY_TEMPERATURE, 373.15},
        {"-40 F", QUANTITY_TEMPERATURE, 233.15},
        {"20 C", QUANTITY_TEMPERATURE, 293.15},
        {"1.5", QUANTITY_NUMBER, 1.5},
        {"-1/2", QUANTITY_NUMBER, -0.5},
    };
    for (size_t k = 0; k < sizeof rows / sizeof rows[0]; k++)
        reads(rows[k].text, rows[k].kind, UNITS_SI, rows[k].si);
}

Test(quantity, bare_numbers_take_the_default_unit) {
    reads("2", QUANTITY_WEIGHT, UNITS_US, 2 * LB);
    reads("2", QUANTITY_LOAD, UNITS_US, 2 * LB / (FT * FT));
    reads("2", QUANTITY_STRESS, UNITS_US, 2 * LB / (IN * IN));
    reads("2", QUANTITY_LINE_LOAD, UNITS_US, 2 * LB / FT);
    reads("2", QUANTITY_SLIP, UNITS_US, 2 * LB / IN);
    reads("2", QUANTITY_DENSITY, UNITS_US, 2 * 0.45359237 / (FT * FT * FT));
    reads("2", QUANTITY_INERTIA, UNITS_US, 2 * IN * IN * IN * IN);
    reads("2", QUANTITY_ROTATION, UNITS_US, 2 * LB * IN);
    reads("2", QUANTITY_SPEED, UNITS_US, 2 * 0.44704);
    reads("180", QUANTITY_ANGLE, UNITS_US, 3.14159265358979323846);
    reads("32", QUANTITY_TEMPERATURE, UNITS_US, 273.15);
    reads("2", QUANTITY_LENGTH, UNITS_SI, 0.002);
    reads("2", QUANTITY_WEIGHT, UNITS_SI, 2);
    reads("2", QUANTITY_LOAD, UNITS_SI, 2000);
    reads("2", QUANTITY_STRESS, UNITS_SI, 2e6);
    reads("2", QUANTITY_SLIP, UNITS_SI, 2000);
    reads("2", QUANTITY_MOMENT, UNITS_SI, 2);
    reads("2", QUANTITY_AREA, UNITS_SI, 2e-6);
    reads("2", QUANTITY_INERTIA, UNITS_SI, 2e-12);
    reads("2", QUANTITY_TEMPERATURE, UNITS_SI, 275.15);
}

Test(quantity, wrong_lengths_say_why) {
    refuses("", QUANTITY_LENGTH, "nothing is given; a length such as 24 in was expected");
    refuses("   ", QUANTITY_LENGTH, "nothing is given");
    refuses("5 furlong", QUANTITY_LENGTH, "unknown unit 'furlong'; a length such as 24 in");
    refuses("5 IN", QUANTITY_LENGTH, "did you mean 'in'?");
    refuses("5 inches", QUANTITY_LENGTH, "did you mean 'in'?");
    refuses("5 lb", QUANTITY_LENGTH, "'lb' is the unit of a weight");
    refuses("2 ft 3", QUANTITY_LENGTH, "the last number has no unit");
    refuses("3 in 2 ft", QUANTITY_LENGTH, "smaller unit");
    refuses("3 in 2 in", QUANTITY_LENGTH, "smaller unit");
    refuses("2 ft -3 in", QUANTITY_LENGTH, "one sign in front");
    refuses("--3", QUANTITY_LENGTH, "one sign in front");
    refuses("1,200", QUANTITY_LENGTH, "no commas");
    refuses("1/0 in", QUANTITY_LENGTH, "over 0");
    refuses("1-3/2 in", QUANTITY_LENGTH, "under 1");
    refuses("24-30 in", QUANTITY_LENGTH, "makes no sense");
    refuses("1.2.3", QUANTITY_LENGTH, "makes no sense");
    refuses("1 in 12", QUANTITY_LENGTH, "no unit");
    refuses("1:12", QUANTITY_LENGTH, "makes no sense");
    refuses("0x10", QUANTITY_LENGTH, "unknown unit");
    refuses("three", QUANTITY_LENGTH, "no number");
    refuses("3 in", QUANTITY_NUMBER, "no unit belongs here");
    refuses("3 lb-in", QUANTITY_ROTATION, "'lb-in' is the unit of a turning moment");
    refuses("5 C 3 F", QUANTITY_TEMPERATURE, "was expected");
}

Test(quantity, what_is_not_finite_is_refused) {
    static const char *const texts[] = {"nan",  "NaN",   ".nan",  "inf",    "-inf",    ".inf",
                                        ".Inf", "-.inf", "1e999", "-1e999", "Infinity"};
    for (size_t k = 0; k < sizeof texts / sizeof texts[0]; k++)
        refuses(texts[k], QUANTITY_LENGTH, "was expected");
    refuses("1e308 kip", QUANTITY_WEIGHT, "too large");
    refuses("1e308 GPa", QUANTITY_STRESS, "too large");
}

Test(quantity, the_locale_changes_nothing) {
    if (!setlocale(LC_ALL, "de_DE.UTF-8") && !setlocale(LC_ALL, "fr_FR.UTF-8"))
        setlocale(LC_ALL, "C.UTF-8"); /* none is installed: the reading is tested all the same */
    length("1.5", 1.5);
    cr_assert_str_eq(quantity_print(arena, 1.25 * IN, QUANTITY_LENGTH, UNITS_US), "1.25 in");
    cr_assert_str_eq(quantity_print_working(arena, 1.25 * IN, QUANTITY_LENGTH, UNITS_US),
                     "1.25 in");
    setlocale(LC_ALL, "C");
}

Test(quantity, ratios) {
    double divisor = 0, si = 0;
    const char *why = "";
    cr_assert(quantity_read_ratio(arena, "span/240", "span", UNITS_US, &divisor, &si, &why));
    cr_assert(fabs(divisor - 240) < 1e-9 && fabs(si) < 1e-12);
    cr_assert(quantity_read_ratio(arena, "height / 100", "height", UNITS_US, &divisor, &si, &why));
    cr_assert(fabs(divisor - 100) < 1e-9);
    cr_assert(quantity_read_ratio(arena, "1:12", NULL, UNITS_US, &divisor, &si, &why));
    cr_assert(fabs(divisor - 12) < 1e-9);
    cr_assert(quantity_read_ratio(arena, "1 in 12", NULL, UNITS_US, &divisor, &si, &why));
    cr_assert(fabs(divisor - 12) < 1e-9);
    cr_assert(quantity_read_ratio(arena, "2:24", NULL, UNITS_US, &divisor, &si, &why));
    cr_assert(fabs(divisor - 12) < 1e-9);
    cr_assert(quantity_read_ratio(arena, "5 mm", "span", UNITS_US, &divisor, &si, &why));
    cr_assert(fabs(divisor) < 1e-12 && fabs(si - 0.005) < 1e-12);
    static const char *const wrong[] = {"height/240", "span/0", "span/-1", "L/240", "1:0",
                                        "0:1",        "0 in",   "-1 in",   "",      "1 in 12 in"};
    for (size_t k = 0; k < sizeof wrong / sizeof wrong[0]; k++)
        cr_assert(!quantity_read_ratio(arena, wrong[k], "span", UNITS_US, &divisor, &si, &why),
                  "%s was taken", wrong[k]);
    cr_assert(!quantity_read_ratio(arena, "5 mm", NULL, UNITS_US, &divisor, &si, &why));
}

Test(quantity, prices) {
    struct price price;
    const char *why = "";
    cr_assert(quantity_read_price(arena, "3.20 per 8 ft", UNITS_US, &price, &why));
    cr_assert(price.basis == PRICE_PER_LENGTH && fabs(price.amount - 3.2) < 1e-12 &&
              fabs(price.length - 2.4384) < 1e-12);
    cr_assert(quantity_read_price(arena, "68 per 4 ft x 8 ft", UNITS_US, &price, &why));
    cr_assert(price.basis == PRICE_PER_SHEET && fabs(price.length - 8 * FT) < 1e-12 &&
              fabs(price.width - 4 * FT) < 1e-12);
    cr_assert(quantity_read_price(arena, "9 each", UNITS_US, &price, &why));
    cr_assert(price.basis == PRICE_EACH && fabs(price.amount - 9) < 1e-12);
    cr_assert(quantity_read_price(arena, "1.10 per ft", UNITS_US, &price, &why));
    cr_assert(fabs(price.length - FT) < 1e-12 && price.by_length);
    cr_assert(quantity_read_price(arena, "3.20 per 1 ft", UNITS_US, &price, &why));
    cr_assert(!price.by_length); /* a stick of one foot */
    cr_assert(quantity_read_price(arena, "8.50 per box of 100", UNITS_US, &price, &why));
    cr_assert(price.basis == PRICE_PER_BOX && price.in_box == 100);
    static const char *const wrong[] = {"3.20",
                                        "3.20 per",
                                        "$3 each",
                                        "-3 each",
                                        "3 per 0 ft",
                                        "68 per 4 x 8 ft",
                                        "3 per box",
                                        "3 per box of 0",
                                        "3 per box of 1.5",
                                        "3 per box of 10 x",
                                        "3 eachs",
                                        "per 8 ft",
                                        "1,000 each",
                                        "3 per 8 ft 9",
                                        "1e999 each",
                                        "3 per 8 lb"};
    for (size_t k = 0; k < sizeof wrong / sizeof wrong[0]; k++)
        cr_assert(!quantity_read_price(arena, wrong[k], UNITS_US, &price, &why), "%s was taken",
                  wrong[k]);
}

static void prints(double si, enum quantity kind, enum unit_system system, const char *expected) {
    const char *text = quantity_print(arena, si, kind, system);
    cr_assert_str_eq(text, expected, "%.17g gave %s, expected %s", si, text, expected);
}

Test(quantity, printing_for_people) {
    prints(0.6985, QUANTITY_LENGTH, UNITS_US, "27.5 in");
    prints(0.0053, QUANTITY_LENGTH, UNITS_SI, "5.3 mm");
    prints(-0.0, QUANTITY_LENGTH, UNITS_SI, "0 mm");
    prints(-1e-9, QUANTITY_LENGTH, UNITS_SI, "0 mm");
    prints(99.94 * LB, QUANTITY_WEIGHT, UNITS_US, "99.9 lb");
    prints(99.96 * LB, QUANTITY_WEIGHT, UNITS_US, "100 lb");
    prints(123.4 * LB, QUANTITY_WEIGHT, UNITS_US, "123 lb");
    prints(6894757.293168, QUANTITY_STRESS, UNITS_US, "1000 psi");
    prints(0.5, QUANTITY_NUMBER, UNITS_US, "0.5");
    prints(273.15, QUANTITY_TEMPERATURE, UNITS_US, "32 F");
    prints(NAN, QUANTITY_LENGTH, UNITS_US, "? in");
    prints(INFINITY, QUANTITY_NUMBER, UNITS_US, "?");
}

static void rule(double inches, const char *expected) {
    const char *text = quantity_print_length(arena, inches * IN, UNITS_US);
    cr_assert_str_eq(text, expected, "%.17g in gave %s, expected %s", inches, text, expected);
}

Test(quantity, printing_for_the_rule) {
    rule(0, "0 in");
    rule(-0.01, "0 in");
    rule(3.5, "3-1/2 in");
    rule(0.0625, "1/16 in");
    rule(12, "1 ft");
    rule(27.5, "2 ft 3-1/2 in");
    rule(-27, "-2 ft 3 in");
    rule(11.99, "1 ft");
    rule(NAN, "?");
    cr_assert_str_eq(quantity_print_length(arena, 0.6985, UNITS_SI), "699 mm");
}

Test(quantity, what_is_printed_for_the_rule_reads_back) {
    for (int sixteenths = -1000; sixteenths <= 1000; sixteenths++) {
        double si = sixteenths / 16.0 * IN, back = NAN;
        const char *why = "";
        const char *text = quantity_print_length(arena, si, UNITS_US);
        cr_assert(quantity_read(arena, text, QUANTITY_LENGTH, UNITS_US, &back, &why) &&
                      fabs(back - si) < 1e-12,
                  "%s", text);
    }
}

Test(quantity, printing_for_a_calculation) {
    cr_assert_str_eq(
        quantity_print_working(arena, 1.4e6 * LB / (IN * IN), QUANTITY_STRESS, UNITS_US),
        "1400000 psi");
    cr_assert_str_eq(quantity_print_working(arena, LB / (FT * FT), QUANTITY_LOAD, UNITS_US),
                     "0.0069444 psi");
    cr_assert_str_eq(quantity_print_working(arena, 12 * LB / FT, QUANTITY_LINE_LOAD, UNITS_US),
                     "1 lb/in");
    cr_assert_str_eq(quantity_print_working(arena, 1, QUANTITY_MOMENT, UNITS_SI), "1000 N-mm");
    cr_assert_str_eq(quantity_print_working(arena, 123456789, QUANTITY_NUMBER, UNITS_SI),
                     "123460000");
    cr_assert_str_eq(quantity_print_working(arena, -1.23456e-9, QUANTITY_NUMBER, UNITS_SI),
                     "-1.2346e-9");
    cr_assert_str_eq(quantity_print_working(arena, 0, QUANTITY_NUMBER, UNITS_SI), "0");
}
