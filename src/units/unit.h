/* units/unit.h - the units of the frame format and what each is worth in SI.
 *
 * Exact by definition: 1 in = 0.0254 m, 1 lb = 0.45359237 kg, g = 9.80665 m/s2 (so 1 lbf =
 * 4.4482216152605 N), 1 mile = 1609.344 m.
 */
#ifndef UNITS_UNIT_H
#define UNITS_UNIT_H

#include "units/quantity.h"

#include <stddef.h>

struct unit {
    const char *name;
    enum quantity kind; /* loads count as stress, slip as line load: they share their units */
    double factor;      /* SI value of one unit */
    double offset;      /* added before the factor: temperatures only */
};

/* The unit spelled by `length` bytes, as one of `kind` where it serves several; else of any kind.
 * NULL where unknown. */
const struct unit *unit_find(const char *name, size_t length, enum quantity kind);

/* The kind whose units a quantity shares: LOAD and PRESSURE give STRESS, SLIP gives LINE_LOAD. */
enum quantity unit_kind(enum quantity kind);

/* The unit of a bare number. NULL for a pure number. */
const struct unit *unit_default(enum quantity kind, enum unit_system system);

/* What was probably meant by an unknown unit where `kind` is wanted; NULL where nothing is near. */
const char *unit_suggestion(const char *name, enum quantity kind);

#endif
