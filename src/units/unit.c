#include "units/unit.h"

#include "base/near.h"

#include <ctype.h>
#include <string.h>

#define INCH 0.0254
#define FOOT 0.3048
#define POUND_MASS 0.45359237
#define POUND 4.4482216152605
#define GRAVITY 9.80665
#define PI 3.14159265358979323846

static const struct unit units[] = {
    {"in", QUANTITY_LENGTH, INCH, 0},
    {"ft", QUANTITY_LENGTH, FOOT, 0},
    {"'", QUANTITY_LENGTH, FOOT, 0},
    {"\"", QUANTITY_LENGTH, INCH, 0},
    {"mm", QUANTITY_LENGTH, 1e-3, 0},
    {"cm", QUANTITY_LENGTH, 1e-2, 0},
    {"m", QUANTITY_LENGTH, 1, 0},
    {"lb", QUANTITY_WEIGHT, POUND, 0},
    {"kip", QUANTITY_WEIGHT, 1000 * POUND, 0},
    {"N", QUANTITY_WEIGHT, 1, 0},
    {"kN", QUANTITY_WEIGHT, 1e3, 0},
    {"kg", QUANTITY_WEIGHT, GRAVITY, 0},
    {"lb", QUANTITY_MASS, POUND_MASS, 0},
    {"kg", QUANTITY_MASS, 1, 0},
    {"psf", QUANTITY_STRESS, POUND / (FOOT * FOOT), 0},
    {"psi", QUANTITY_STRESS, POUND / (INCH * INCH), 0},
    {"ksi", QUANTITY_STRESS, 1000 * POUND / (INCH * INCH), 0},
    {"Pa", QUANTITY_STRESS, 1, 0},
    {"kPa", QUANTITY_STRESS, 1e3, 0},
    {"MPa", QUANTITY_STRESS, 1e6, 0},
    {"GPa", QUANTITY_STRESS, 1e9, 0},
    {"plf", QUANTITY_LINE_LOAD, POUND / FOOT, 0},
    {"lb/in", QUANTITY_LINE_LOAD, POUND / INCH, 0},
    {"N/m", QUANTITY_LINE_LOAD, 1, 0},
    {"kN/m", QUANTITY_LINE_LOAD, 1e3, 0},
    {"N/mm", QUANTITY_LINE_LOAD, 1e3, 0},
    {"pcf", QUANTITY_DENSITY, POUND_MASS / (FOOT * FOOT * FOOT), 0},
    {"kg/m3", QUANTITY_DENSITY, 1, 0},
    {"in2", QUANTITY_AREA, INCH *INCH, 0},
    {"mm2", QUANTITY_AREA, 1e-6, 0},
    {"cm2", QUANTITY_AREA, 1e-4, 0},
    {"m2", QUANTITY_AREA, 1, 0},
    {"in4", QUANTITY_INERTIA, INCH *INCH *INCH *INCH, 0},
    {"mm4", QUANTITY_INERTIA, 1e-12, 0},
    {"cm4", QUANTITY_INERTIA, 1e-8, 0},
    {"m4", QUANTITY_INERTIA, 1, 0},
    {"lb-in", QUANTITY_MOMENT, POUND *INCH, 0},
    {"lb-ft", QUANTITY_MOMENT, POUND *FOOT, 0},
    {"kip-in", QUANTITY_MOMENT, 1000 * POUND *INCH, 0},
    {"N-m", QUANTITY_MOMENT, 1, 0},
    {"kN-m", QUANTITY_MOMENT, 1e3, 0},
    {"lb-in/rad", QUANTITY_ROTATION, POUND *INCH, 0},
    {"kip-in/rad", QUANTITY_ROTATION, 1000 * POUND *INCH, 0},
    {"N-m/rad", QUANTITY_ROTATION, 1, 0},
    {"kN-m/rad", QUANTITY_ROTATION, 1e3, 0},
    {"mph", QUANTITY_SPEED, 0.44704, 0},
    {"m/s", QUANTITY_SPEED, 1, 0},
    {"km/h", QUANTITY_SPEED, 1 / 3.6, 0},
    {"deg", QUANTITY_ANGLE, PI / 180, 0},
    {"rad", QUANTITY_ANGLE, 1, 0},
    {"F", QUANTITY_TEMPERATURE, 5.0 / 9.0, 459.67},
    {"C", QUANTITY_TEMPERATURE, 1, 273.15},
    /* Printed only: no key of the format takes them. */
    {"in3", QUANTITY_MODULUS, INCH *INCH *INCH, 0},
    {"mm3", QUANTITY_MODULUS, 1e-9, 0},
};
enum { UNIT_COUNT = sizeof units / sizeof units[0] };

/* Spellings people use that are not units of the format. */
static const struct {
    const char *spelling, *meant;
} other_spellings[] = {
    {"inch", "in"},
    {"inches", "in"},
    {"foot", "ft"},
    {"feet", "ft"},
    {"meter", "m"},
    {"meters", "m"},
    {"metre", "m"},
    {"metres", "m"},
    {"lbs", "lb"},
    {"lbf", "lb"},
    {"pound", "lb"},
    {"pounds", "lb"},
    {"kgs", "kg"},
    {"newton", "N"},
    {"newtons", "N"},
    {"lb/ft2", "psf"},
    {"lb/sqft", "psf"},
    {"lb/in2", "psi"},
    {"N/mm2", "MPa"},
    {"kN/m2", "kPa"},
    {"lb/ft", "plf"},
    {"lbs/ft", "plf"},
    {"lb/ft3", "pcf"},
    {"kph", "km/h"},
    {"kmh", "km/h"},
    {"degree", "deg"},
    {"degrees", "deg"},
    {"\xC2\xB0", "deg"},
    {"\xC2\xB0"
     "F",
     "F"},
    {"\xC2\xB0"
     "C",
     "C"},
    {"in-lb", "lb-in"},
    {"ft-lb", "lb-ft"},
    {"Nm", "N-m"},
    {"kNm", "kN-m"},
};

enum quantity unit_kind(enum quantity kind) {
    if (kind == QUANTITY_LOAD || kind == QUANTITY_PRESSURE)
        return QUANTITY_STRESS;
    return kind == QUANTITY_SLIP ? QUANTITY_LINE_LOAD : kind;
}

const struct unit *unit_find(const char *name, size_t length, enum quantity kind) {
    const struct unit *other = NULL;
    for (size_t k = 0; k < UNIT_COUNT; k++) {
        if (strlen(units[k].name) != length || memcmp(units[k].name, name, length) != 0)
            continue;
        if (units[k].kind == unit_kind(kind))
            return &units[k];
        if (!other)
            other = &units[k];
    }
    return other;
}

/* ORDER QUANTITY: the unit of a bare number, US and SI. */
static const char *const default_names[QUANTITY_COUNT][2] = {
    [QUANTITY_NUMBER] = {NULL, NULL},      [QUANTITY_LENGTH] = {"in", "mm"},
    [QUANTITY_WEIGHT] = {"lb", "N"},       [QUANTITY_MASS] = {"lb", "kg"},
    [QUANTITY_LOAD] = {"psf", "kPa"},      [QUANTITY_STRESS] = {"psi", "MPa"},
    [QUANTITY_LINE_LOAD] = {"plf", "N/m"}, [QUANTITY_SLIP] = {"lb/in", "N/mm"},
    [QUANTITY_DENSITY] = {"pcf", "kg/m3"}, [QUANTITY_AREA] = {"in2", "mm2"},
    [QUANTITY_MODULUS] = {"in3", "mm3"},   [QUANTITY_INERTIA] = {"in4", "mm4"},
    [QUANTITY_MOMENT] = {"lb-in", "N-m"},  [QUANTITY_ROTATION] = {"lb-in/rad", "N-m/rad"},
    [QUANTITY_SPEED] = {"mph", "m/s"},     [QUANTITY_ANGLE] = {"deg", "deg"},
    [QUANTITY_TEMPERATURE] = {"F", "C"},   [QUANTITY_PRESSURE] = {"psf", "kPa"},
};

const struct unit *unit_default(enum quantity kind, enum unit_system system) {
    const char *name = default_names[kind][system == UNITS_SI];
    return name ? unit_find(name, strlen(name), kind) : NULL;
}

const char *unit_suggestion(const char *name, enum quantity kind) {
    for (size_t k = 0; k < sizeof other_spellings / sizeof other_spellings[0]; k++) {
        const char *meant = other_spellings[k].meant;
        if (strcmp(other_spellings[k].spelling, name) == 0 &&
            unit_find(meant, strlen(meant), kind)->kind == unit_kind(kind))
            return meant;
    }
    const char *names[UNIT_COUNT];
    size_t count = 0;
    for (size_t k = 0; k < UNIT_COUNT; k++)
        if (units[k].kind == unit_kind(kind))
            names[count++] = units[k].name;
    const char *near = near_name(name, names, count);
    /* One letter of two is nearly everything: short names must agree but for capitals. */
    if (near && strlen(name) <= 2) {
        for (size_t k = 0; name[k] || near[k]; k++)
            if (tolower((unsigned char)name[k]) != tolower((unsigned char)near[k]))
                return NULL;
    }
    return near;
}
