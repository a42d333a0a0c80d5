#include "report/substitute.h"

#include "base/text.h"

#include <ctype.h>
#include <stdbool.h>
#include <string.h>

/* Letters, digits and all bytes beyond ASCII make names. */
static bool is_name(char c) {
    return isalnum((unsigned char)c) || c == '_' || (unsigned char)c >= 0x80;
}

static bool goes_on(char c) {
    return is_name(c) || c == '\'' || c == '*';
}

/* The length of a number in the formula itself, "0.6" or "1e6". */
static size_t number_length(const char *formula) {
    size_t length = strspn(formula, "0123456789.");
    if (length && (formula[length] == 'e' || formula[length] == 'E')) {
        size_t sign = formula[length + 1] == '-' || formula[length + 1] == '+';
        size_t digits = strspn(formula + length + 1 + sign, "0123456789");
        if (digits)
            length += 1 + sign + digits;
    }
    return length;
}

static const struct symbol_number *longest_at(const char *formula,
                                              const struct symbol_number *symbols, size_t count) {
    const struct symbol_number *best = NULL;
    size_t best_length = 1;
    for (size_t k = 0; k < count; k++) {
        size_t length = strlen(symbols[k].symbol);
        if (length >= best_length && strncmp(formula, symbols[k].symbol, length) == 0 &&
            !goes_on(formula[length])) {
            best = &symbols[k];
            best_length = length;
        }
    }
    return best;
}

const char *substituted(struct arena *arena, const char *formula,
                        const struct symbol_number *symbols, size_t count) {
    struct text text = text_new(arena);
    while (*formula) {
        size_t length = 1;
        const struct symbol_number *symbol = longest_at(formula, symbols, count);
        if (symbol) {
            bool negative = symbol->number[0] == '-';
            text_print(&text, negative ? "(%s)" : "%s", symbol->number);
            formula += strlen(symbol->symbol);
            continue;
        }
        if (isdigit((unsigned char)*formula))
            length = number_length(formula);
        else if (is_name(*formula))
            while (goes_on(formula[length]))
                length++;
        text_bytes(&text, formula, length);
        formula += length;
    }
    return text_string(&text);
}
