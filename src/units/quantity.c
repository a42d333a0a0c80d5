#include "units/quantity.h"

#include "units/decimal.h"
#include "units/quote.h"
#include "units/unit.h"

#include <ctype.h>
#include <math.h>
#include <string.h>

/* ORDER QUANTITY */
static const struct {
    const char *name;
    const char *examples[2]; /* US, SI */
} kinds[QUANTITY_COUNT] = {
    [QUANTITY_NUMBER] = {"a plain number", {"1.5", "1.5"}},
    [QUANTITY_LENGTH] = {"a length", {"24 in", "600 mm"}},
    [QUANTITY_WEIGHT] = {"a weight or force", {"14 lb", "60 N"}},
    [QUANTITY_MASS] = {"a mass", {"14 lb", "6 kg"}},
    [QUANTITY_LOAD] = {"a load on an area", {"20 psf", "1 kPa"}},
    [QUANTITY_PRESSURE] = {"a pressure", {"20 psf", "1 kPa"}},
    [QUANTITY_STRESS] = {"a stress", {"1.4e6 psi", "9 GPa"}},
    [QUANTITY_LINE_LOAD] = {"a load along a line", {"12 plf", "180 N/m"}},
    [QUANTITY_SLIP] = {"a stiffness against slip", {"9000 lb/in", "1600 N/mm"}},
    [QUANTITY_DENSITY] = {"a density", {"25 pcf", "420 kg/m3"}},
    [QUANTITY_AREA] = {"an area of a section", {"1.2 in2", "800 mm2"}},
    [QUANTITY_MODULUS] = {"a section modulus", {"0.5 in3", "9000 mm3"}},
    [QUANTITY_INERTIA] = {"a second moment of area", {"0.4 in4", "170000 mm4"}},
    [QUANTITY_MOMENT] = {"a turning moment", {"300 lb-in", "30 N-m"}},
    [QUANTITY_ROTATION] = {"a stiffness against turning", {"3000 lb-in/rad", "300 N-m/rad"}},
    [QUANTITY_SPEED] = {"a speed", {"70 mph", "30 m/s"}},
    [QUANTITY_ANGLE] = {"an angle", {"35 deg", "35 deg"}},
    [QUANTITY_TEMPERATURE] = {"a temperature", {"100 F", "40 C"}},
};

const char *quantity_name(enum quantity kind) {
    return kinds[kind].name;
}

const char *quantity_example(enum quantity kind, enum unit_system system) {
    return kinds[kind].examples[system == UNITS_SI];
}

/* One text being read from left to right. */
struct reading {
    struct arena *arena;
    const char *text, *at;
    enum quantity kind;
    enum unit_system system;
    const char **why;
};

/* Always false, so that a caller can return it. `found` says what is wrong. */
static bool refuse(struct reading *reading, const char *found) {
    *reading->why =
        arena_print(reading->arena, "%s: %s; %s such as %s was expected",
                    quote_text(reading->arena, reading->text), found, quantity_name(reading->kind),
                    quantity_example(reading->kind, reading->system));
    return false;
}

static void skip_spaces(struct reading *reading) {
    while (*reading->at == ' ' || *reading->at == '\t')
        reading->at++;
}

/* "3/4" at `at`: its length, 0 where there is no fraction. */
static size_t fraction_length(const char *at) {
    size_t over = strspn(at, "0123456789");
    if (over == 0 || at[over] != '/')
        return 0;
    size_t under = strspn(at + over + 1, "0123456789");
    return under ? over + 1 + under : 0;
}

static bool read_fraction(struct reading *reading, size_t length, bool after_whole, double *value) {
    const char *slash = strchr(reading->at, '/');
    size_t over = (size_t)(slash - reading->at);
    double top = decimal_value(reading->arena, reading->at, over);
    double bottom = decimal_value(reading->arena, slash + 1, length - over - 1);
    if (!(bottom > 0))
        return refuse(reading, "a fraction cannot be over 0");
    if (after_whole && !(top < bottom))
        return refuse(reading, "the fraction after a whole number must be under 1");
    *value = top / bottom;
    reading->at += length;
    return true;
}

/* A fraction that follows a whole number: "-1/2" straight after it, or " 1/2". */
static size_t gap_before_fraction(const char *at) {
    if (*at == '-')
        return fraction_length(at + 1) ? 1 : 0;
    size_t gap = strspn(at, " \t");
    return gap && fraction_length(at + gap) ? gap : 0;
}

/* "12", "1.5", "3/4", "1-1/2", "1 1/2". */
static bool read_number(struct reading *reading, double *value) {
    size_t fraction = fraction_length(reading->at);
    if (fraction)
        return read_fraction(reading, fraction, false, value);
    size_t length = decimal_length(reading->at);
    if (length == 0)
        return refuse(reading, *reading->at == '-' || *reading->at == '+'
                                   ? "one sign in front is enough"
                                   : "no number where one was expected");
    *value = decimal_value(reading->arena, reading->at, length);
    if (!isfinite(*value))
        return refuse(reading, "a number too large to work with");
    bool whole = strspn(reading->at, "0123456789") == length;
    reading->at += length;
    if (*reading->at == ',')
        return refuse(reading, "numbers take no commas");
    size_t gap = whole ? gap_before_fraction(reading->at) : 0;
    if (gap == 0)
        return true;
    reading->at += gap;
    double part = 0;
    if (!read_fraction(reading, fraction_length(reading->at), true, &part))
        return false;
    *value += part;
    return true;
}

/* How many bytes the unit at `at` has: a foot or inch mark, or all up to a space or a mark; in
 * "2ft3in" only the letters. */
static size_t unit_length(const struct reading *reading) {
    const char *at = reading->at;
    if (*at == '\'' || *at == '"')
        return 1;
    size_t length = strcspn(at, " \t'\"");
    size_t letters = 0;
    while (isalpha((unsigned char)at[letters]))
        letters++;
    if (letters && isdigit((unsigned char)at[letters]) && !unit_find(at, length, reading->kind) &&
        unit_find(at, letters, reading->kind))
        return letters;
    return length;
}

static bool refuse_unit(struct reading *reading, const char *name) {
    const struct unit *known = unit_find(name, strlen(name), reading->kind);
    if (known && reading->kind == QUANTITY_NUMBER)
        return refuse(
            reading, arena_print(reading->arena, "no unit belongs here, but '%s' was given", name));
    if (known)
        return refuse(reading,
                      arena_print(reading->arena, "'%s' is the unit of %s", name,
                                  known->kind == QUANTITY_STRESS ? "a load on an area or a stress"
                                                                 : quantity_name(known->kind)));
    const char *meant = unit_suggestion(name, reading->kind);
    const char *hint = meant ? arena_print(reading->arena, " (did you mean '%s'?)", meant) : "";
    if (!isalpha((unsigned char)name[0]) && !meant)
        return refuse(reading, arena_print(reading->arena, "%s after the number makes no sense",
                                           quote_text(reading->arena, name)));
    return refuse(reading, arena_print(reading->arena, "unknown unit %s%s",
                                       quote_text(reading->arena, name), hint));
}

/* NULL with the reason set where there is no unit of the right kind at the place reached. */
static const struct unit *read_unit(struct reading *reading) {
    size_t length = unit_length(reading);
    const struct unit *unit = unit_find(reading->at, length, reading->kind);
    if (!unit || unit->kind != unit_kind(reading->kind)) {
        refuse_unit(reading, arena_copy(reading->arena, reading->at, length));
        return NULL;
    }
    reading->at += length;
    return unit;
}

/* The first or a later "number unit"; `above` is the unit of the part before, NULL at the first. */
static bool read_part(struct reading *reading, const struct unit **above, double *sum) {
    double value = 0;
    if (!read_number(reading, &value))
        return false;
    skip_spaces(reading);
    const struct unit *unit = NULL;
    if (*reading->at) {
        unit = read_unit(reading);
        if (!unit)
            return false;
    } else if (*above) {
        return refuse(reading, "the last number has no unit");
    } else {
        unit = unit_default(reading->kind, reading->system);
    }
    if (*above && !(unit->factor < (*above)->factor))
        return refuse(reading, "each part must be in a smaller unit than the one before it");
    if (*above && unit->kind == QUANTITY_TEMPERATURE)
        return refuse(reading, "one number was expected");
    *sum += unit ? value * unit->factor : value;
    *above = unit;
    skip_spaces(reading);
    /* 5'-3" is how feet and inches are written on drawings. */
    if (unit && unit->name[0] == '\'' && *reading->at == '-' &&
        isdigit((unsigned char)reading->at[1]))
        reading->at++;
    return true;
}

/* True for texts that stand for something not finite in one language or another. */
static bool names_no_number(const char *text) {
    static const char *const names[] = {"nan", ".nan", "inf", ".inf", "infinity"};
    char lower[16];
    size_t length = strlen(text);
    if (length >= sizeof lower)
        return false;
    for (size_t k = 0; k <= length; k++)
        lower[k] = (char)tolower((unsigned char)text[k]);
    for (size_t k = 0; k < sizeof names / sizeof names[0]; k++)
        if (strcmp(lower, names[k]) == 0)
            return true;
    return false;
}

bool quantity_read(struct arena *arena, const char *text, enum quantity kind,
                   enum unit_system system, double *si, const char **why) {
    struct reading reading = {arena, text, text, kind, system, why};
    skip_spaces(&reading);
    if (!*reading.at) {
        *why = arena_print(arena, "nothing is given; %s such as %s was expected",
                           quantity_name(kind), quantity_example(kind, system));
        return false;
    }
    bool negative = *reading.at == '-';
    if (*reading.at == '-' || *reading.at == '+')
        reading.at++;
    if (names_no_number(reading.at))
        return refuse(&reading, "not a finite number");
    skip_spaces(&reading);
    double sum = 0;
    const struct unit *unit = NULL;
    do {
        if (!read_part(&reading, &unit, &sum))
            return false;
    } while (*reading.at);
    double value = negative ? -sum : sum;
    if (kind == QUANTITY_TEMPERATURE && unit)
        value += unit->offset * unit->factor;
    if (!isfinite(value))
        return refuse(&reading, "a number too large to work with");
    *si = value;
    return true;
}
