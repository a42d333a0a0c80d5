#include "units/decimal.h"

#include <locale.h>
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static size_t digits_length(const char *text) {
    return strspn(text, "0123456789");
}

size_t decimal_length(const char *text) {
    size_t whole = digits_length(text);
    size_t length = whole;
    if (text[length] == '.') {
        size_t part = digits_length(text + length + 1);
        if (whole + part == 0)
            return 0;
        length += 1 + part;
    }
    if (length == 0)
        return 0;
    if (text[length] == 'e' || text[length] == 'E') {
        size_t sign = text[length + 1] == '+' || text[length + 1] == '-';
        size_t exponent = digits_length(text + length + 1 + sign);
        if (exponent > 0)
            length += 1 + sign + exponent;
    }
    return length;
}

/* strtod() rounds correctly but wants the decimal point of whatever locale the process has, so the
 * point is put in for it. */
double decimal_value(struct arena *arena, const char *text, size_t length) {
    const char *point = localeconv()->decimal_point;
    const char *dot = memchr(text, '.', length);
    int before = dot ? (int)(dot - text) : (int)length;
    int after = dot ? (int)length - before - 1 : 0;
    char *number =
        arena_print(arena, "%.*s%s%.*s", before, text, dot ? point : "", after, dot ? dot + 1 : "");
    return strtod(number, NULL);
}

/* The other way: the locale's point back to '.'. */
static void use_dot(char *number) {
    const char *point = localeconv()->decimal_point;
    char *found = strstr(number, point);
    if (!found || strcmp(point, ".") == 0)
        return;
    *found = '.';
    memmove(found + 1, found + strlen(point), strlen(found + strlen(point)) + 1);
}

static void drop_trailing_zeros(char *number) {
    if (!strchr(number, '.'))
        return;
    size_t end = strlen(number);
    while (number[end - 1] == '0')
        end--;
    if (number[end - 1] == '.')
        end--;
    number[end] = '\0';
}

const char *decimal_fixed(struct arena *arena, double value, int decimals) {
    if (!isfinite(value))
        return "?";
    char *number = arena_print(arena, "%.*f", decimals, value);
    use_dot(number);
    drop_trailing_zeros(number);
    return strcmp(number, "-0") == 0 ? "0" : number;
}

const char *decimal_significant(struct arena *arena, double value, int digits) {
    if (!isfinite(value))
        return "?";
    if (!(fabs(value) > 0))
        return "0";
    char *number = arena_print(arena, "%.*e", digits - 1, value);
    use_dot(number);
    char *mark = strchr(number, 'e');
    int exponent = (int)strtol(mark + 1, NULL, 10);
    if (exponent < -5 || exponent > 9) {
        *mark = '\0';
        drop_trailing_zeros(number);
        return arena_print(arena, "%se%d", number, exponent);
    }
    /* Rounded once, to the digits asked for: printing that with more decimals adds only zeros. */
    double rounded = decimal_value(arena, number + (value < 0), strlen(number + (value < 0)));
    int decimals = digits - 1 - exponent;
    return decimal_fixed(arena, value < 0 ? -rounded : rounded, decimals > 0 ? decimals : 0);
}
