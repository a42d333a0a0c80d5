/* units/decimal.h - decimal numbers to text and back, the same in every locale. */
#ifndef UNITS_DECIMAL_H
#define UNITS_DECIMAL_H

#include "base/arena.h"

#include <stddef.h>

/* The length of the decimal number at the start of `text` ("12", "1.5", ".5", "1.4e6"), without a
 * sign; 0 where there is none. */
size_t decimal_length(const char *text);

/* The value of those `length` bytes, correctly rounded; HUGE_VAL where it is too large. */
double decimal_value(struct arena *arena, const char *text, size_t length);

/* `value` with that many decimals, trailing zeros dropped, -0 as 0, "?" where not finite. */
const char *decimal_fixed(struct arena *arena, double value, int decimals);

/* `value` with `digits` (2 to 17) significant digits, trailing zeros dropped: plain where it can be
 * read at a glance, else as 1.2346e-7. */
const char *decimal_significant(struct arena *arena, double value, int digits);

#endif
