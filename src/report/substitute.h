/* report/substitute.h - a formula with its symbols replaced by numbers.
 */
#ifndef REPORT_SUBSTITUTE_H
#define REPORT_SUBSTITUTE_H

#include "base/arena.h"

#include <stddef.h>

struct symbol_number {
    const char *symbol;
    const char *number; /* without its unit */
};

/* The longest symbol that fits is taken, of equal ones the last in the list. ' and * right behind a
 * name belong to it (Fb', Fb**), so multiplication is written with spaces around. Negative numbers
 * come in brackets. Names that are no symbol (sqrt, min, max) and numbers stay. */
const char *substituted(struct arena *arena, const char *formula,
                        const struct symbol_number *symbols, size_t count);

#endif
