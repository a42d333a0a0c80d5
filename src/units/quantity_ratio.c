#include "units/decimal.h"
#include "units/quantity.h"
#include "units/quote.h"

#include <ctype.h>
#include <math.h>
#include <string.h>

static const char *after_spaces(const char *at) {
    while (*at == ' ' || *at == '\t')
        at++;
    return at;
}

/* "1:12" or "1 in 12" and nothing else: 1 where so, with the divisor. */
static bool read_slope(struct arena *arena, const char *text, double *divisor) {
    const char *at = after_spaces(text);
    size_t rise_length = decimal_length(at);
    if (rise_length == 0)
        return false;
    double rise = decimal_value(arena, at, rise_length);
    const char *mark = after_spaces(at + rise_length);
    if (*mark == ':')
        at = after_spaces(mark + 1);
    else if (mark[0] == 'i' && mark[1] == 'n' && mark > at + rise_length &&
             isspace((unsigned char)mark[2]))
        at = after_spaces(mark + 2);
    else
        return false;
    size_t run_length = decimal_length(at);
    if (run_length == 0 || *after_spaces(at + run_length))
        return false;
    *divisor = decimal_value(arena, at, run_length) / rise;
    return true;
}

/* "span/240": true where `text` starts with letters and a slash, whatever the letters. */
static bool read_share(struct arena *arena, const char *text, const char *word, double *divisor) {
    const char *at = after_spaces(text);
    size_t length = 0;
    while (isalpha((unsigned char)at[length]))
        length++;
    const char *slash = after_spaces(at + length);
    if (length == 0 || *slash != '/')
        return false;
    const char *number = after_spaces(slash + 1);
    size_t digits = decimal_length(number);
    bool right = strlen(word) == length && memcmp(word, at, length) == 0 && digits > 0 &&
                 !*after_spaces(number + digits);
    *divisor = right ? decimal_value(arena, number, digits) : NAN;
    return true;
}

bool quantity_read_ratio(struct arena *arena, const char *text, const char *word,
                         enum unit_system system, double *divisor, double *si, const char **why) {
    *si = 0;
    *divisor = 0;
    const char *expected = word ? arena_print(arena, "%s/240, 1:240 or a length such as %s", word,
                                              quantity_example(QUANTITY_LENGTH, system))
                                : "a slope such as 1:12 or 1 in 12";
    if (read_slope(arena, text, divisor) || (word && read_share(arena, text, word, divisor))) {
        if (*divisor > 0 && isfinite(*divisor))
            return true;
        *why = arena_print(arena, "%s: %s was expected", quote_text(arena, text), expected);
        return false;
    }
    if (word && quantity_read(arena, text, QUANTITY_LENGTH, system, si, why)) {
        if (*si > 0)
            return true;
        *why = arena_print(arena, "%s: must be more than 0", quote_text(arena, text));
        return false;
    }
    *why = arena_print(arena, "%s: %s was expected", quote_text(arena, text), expected);
    return false;
}
