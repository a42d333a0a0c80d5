/* units/quantity.h - people's quantities to SI and back.
 *
 * Reading follows the frame format: a bare number takes the default unit of its kind in the file's
 * system; a string may carry its own unit ("2 ft 3-1/2 in", "9 GPa", "3/4 in"). Reading never uses
 * the locale. Values are SI: m, N, Pa, N/m, kg/m3, m2, m4, N-m, N-m/rad, m/s, rad, K (degrees C are
 * converted as temperatures), 1.
 */
#ifndef UNITS_QUANTITY_H
#define UNITS_QUANTITY_H

#include "base/arena.h"

#include <stdbool.h>

enum unit_system { UNITS_US, UNITS_SI };

/* ORDER QUANTITY: quantity.c holds a table in this order. */
enum quantity {
    QUANTITY_NUMBER,      /* 1: a pure number */
    QUANTITY_LENGTH,      /* in | mm */
    QUANTITY_WEIGHT,      /* lb | N; a force; kg is taken as its weight */
    QUANTITY_MASS,        /* lb | kg; only printed */
    QUANTITY_LOAD,        /* psf | kPa: pressure on an area */
    QUANTITY_PRESSURE,    /* psf | kPa: of snow and wind; keeps these units in workings too */
    QUANTITY_STRESS,      /* psi | MPa */
    QUANTITY_LINE_LOAD,   /* plf | N/m */
    QUANTITY_SLIP,        /* lb/in | N/mm: stiffness of a fastening */
    QUANTITY_DENSITY,     /* pcf | kg/m3 */
    QUANTITY_AREA,        /* in2 | mm2 */
    QUANTITY_MODULUS,     /* in3 | mm3: section modulus; only printed */
    QUANTITY_INERTIA,     /* in4 | mm4 */
    QUANTITY_MOMENT,      /* lb-in | N-m */
    QUANTITY_ROTATION,    /* lb-in/rad | N-m/rad: stiffness against turning */
    QUANTITY_SPEED,       /* mph | m/s */
    QUANTITY_ANGLE,       /* deg | deg */
    QUANTITY_TEMPERATURE, /* F | C */
    QUANTITY_COUNT
};

/* What a quantity is called in a message ("a length"), and an example of one ("24 in"). */
const char *quantity_name(enum quantity kind);
const char *quantity_example(enum quantity kind, enum unit_system system);

/* Read `text`. True with *si set; false with *why set to a message in the arena that says what was
 * found and what was expected ("'5 furlong': unknown unit 'furlong'; a length such as 24 in was
 * expected"), with a suggestion for a near miss. Not finite, overflow, empty: false. */
bool quantity_read(struct arena *arena, const char *text, enum quantity kind,
                   enum unit_system system, double *si, const char **why);

/* A ratio of a length ("span/240", "height/100", "1:12", "1 in 12") or a plain length.
 * `word` is the name allowed before the slash ("span", "height"), NULL for slopes only ("1:12").
 * On success either *divisor > 0 (limit = length / divisor) or *divisor == 0 and *si is a length.
 */
bool quantity_read_ratio(struct arena *arena, const char *text, const char *word,
                         enum unit_system system, double *divisor, double *si, const char **why);

/* A price: "3.20 per 8 ft" (a stick of that length), "0.45 per ft" (by the length), "68 per 4 ft x
 * 8 ft", "9 each", "8.50 per box of 100". */
enum price_basis { PRICE_PER_LENGTH, PRICE_PER_SHEET, PRICE_EACH, PRICE_PER_BOX };
struct price {
    double amount;
    enum price_basis basis;
    double length, width; /* m; per length: `length`; per sheet: both, the longer side first */
    bool by_length;       /* per length without a number: sold in any length */
    int in_box;           /* PRICE_PER_BOX */
};
bool quantity_read_price(struct arena *arena, const char *text, enum unit_system system,
                         struct price *price, const char **why);

/* Write for people, with unit, at a precision that suits the trade: lengths in inches to 0.01 (mm
 * to 0.1), weights to 0.1 lb below 100, stresses whole psi ... never %g of a raw double; -0 as 0;
 * not finite as "?". The same number gives the same text everywhere. */
const char *quantity_print(struct arena *arena, double si, enum quantity kind,
                           enum unit_system system);

/* A length as a carpenter writes it: US feet and inches to the nearest 1/16 ("2 ft 3-1/2 in"),
 * SI whole millimetres. */
const char *quantity_print_length(struct arena *arena, double si, enum unit_system system);

/* A drill bit, the next smaller one: US in 64ths of an inch, SI in halves of a millimetre. */
const char *quantity_print_drill(struct arena *arena, double si, enum unit_system system);

/* The unit for calculations that a person redoes by hand, where every kind must fit together: us
 * in, lb, psi, lb/in, lb-in; si mm, N, MPa, N/mm, N-mm. Pressures of snow and wind alone stay in
 * psf and kPa. Gives the number with 5 significant digits and the unit. */
const char *quantity_print_working(struct arena *arena, double si, enum quantity kind,
                                   enum unit_system system);

#endif
