/* units/quote.h - the user's own text inside a message of one line. */
#ifndef UNITS_QUOTE_H
#define UNITS_QUOTE_H

#include "base/arena.h"

/* `text` between single quotes; control characters become '?', and what is long is cut at a whole
 * character and ends in "...". The result is in the arena. */
const char *quote_text(struct arena *arena, const char *text);

/* The same without the quotes. */
const char *plain_text(struct arena *arena, const char *text);

#endif
