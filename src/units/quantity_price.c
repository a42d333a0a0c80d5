#include "units/decimal.h"
#include "units/quantity.h"
#include "units/quote.h"

#include <ctype.h>
#include <math.h>
#include <string.h>

static bool refuse(struct arena *arena, const char *text, const char *found, const char **why) {
    *why = arena_print(arena,
                       "%s: %s; a price such as 3.20 per 8 ft, 68 per 4 ft x 8 ft or 9 each was "
                       "expected",
                       quote_text(arena, text), found);
    return false;
}

static const char *after_spaces(const char *at) {
    while (*at == ' ' || *at == '\t')
        at++;
    return at;
}

/* Where "word" stands at `at`, followed by a space or the end: what comes after it, else NULL. */
static const char *after_word(const char *at, const char *word) {
    size_t length = strlen(word);
    if (strncmp(at, word, length) != 0 || (at[length] && !isspace((unsigned char)at[length])))
        return NULL;
    return after_spaces(at + length);
}

static bool has_unit(const char *side) {
    for (; *side; side++)
        if (isalpha((unsigned char)*side) || *side == '\'' || *side == '"')
            return true;
    return false;
}

/* One side; "per ft" means per one foot. */
static bool read_side(struct arena *arena, const char *side, enum unit_system system,
                      double *length, const char **why) {
    const char *number = isalpha((unsigned char)*side) ? arena_print(arena, "1 %s", side) : side;
    if (!quantity_read(arena, number, QUANTITY_LENGTH, system, length, why))
        return false;
    if (*length > 0)
        return true;
    *why = arena_print(arena, "%s: must be more than 0", quote_text(arena, side));
    return false;
}

static bool read_sheet(struct arena *arena, const char *text, const char *sides, const char *cross,
                       enum unit_system system, struct price *price, const char **why) {
    const char *first = arena_copy(arena, sides, (size_t)(cross - sides));
    const char *second = after_spaces(cross + 1);
    /* "4 x 8 ft" would be read as 4 in by 8 ft, which nobody means. */
    if (has_unit(first) != has_unit(second))
        return refuse(arena, text, "give both sides of the sheet a unit", why);
    double a = 0, b = 0;
    if (!read_side(arena, first, system, &a, why) || !read_side(arena, second, system, &b, why))
        return false;
    price->basis = PRICE_PER_SHEET;
    price->length = a > b ? a : b;
    price->width = a > b ? b : a;
    return true;
}

static bool read_box(struct arena *arena, const char *text, const char *number, struct price *price,
                     const char **why) {
    enum { BOX_MOST = 1000000 };
    size_t digits = strspn(number, "0123456789");
    double count = digits && digits < 9 ? decimal_value(arena, number, digits) : 0.0;
    if (*after_spaces(number + digits) || !(count >= 1.0 && count <= BOX_MOST))
        return refuse(arena, text, "a box holds a number of pieces, such as per box of 100", why);
    price->basis = PRICE_PER_BOX;
    price->in_box = (int)count;
    return true;
}

bool quantity_read_price(struct arena *arena, const char *text, enum unit_system system,
                         struct price *price, const char **why) {
    *price = (struct price){0};
    const char *at = after_spaces(text);
    if (*at == '$')
        return refuse(arena, text, "prices are plain numbers without a currency sign", why);
    if (*at == '-')
        return refuse(arena, text, "a price cannot be under 0", why);
    size_t length = decimal_length(at);
    if (length == 0)
        return refuse(arena, text, "no number at the start", why);
    price->amount = decimal_value(arena, at, length);
    if (!isfinite(price->amount))
        return refuse(arena, text, "a number too large to work with", why);
    const char *rest = after_spaces(at + length);
    if (*rest == ',')
        return refuse(arena, text, "numbers take no commas", why);
    const char *each = after_word(rest, "each");
    const char *sides = after_word(rest, "per");
    if (each && !*each) {
        price->basis = PRICE_EACH;
        return true;
    }
    if (!sides || !*sides)
        return refuse(arena, text, "it does not say per what", why);
    const char *box = after_word(sides, "box"), *of = box ? after_word(box, "of") : NULL;
    if (box)
        return read_box(arena, text, of ? of : "", price, why);
    const char *cross = strchr(sides, 'x');
    if (cross)
        return read_sheet(arena, text, sides, cross, system, price, why);
    price->basis = PRICE_PER_LENGTH;
    price->by_length = isalpha((unsigned char)*sides);
    return read_side(arena, sides, system, &price->length, why);
}
