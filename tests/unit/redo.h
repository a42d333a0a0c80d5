/* redo.h - redoing a working with a pocket calculator: every formula over the numbers noted before
 * it, in inches, pounds and psi, must give the value noted. */
#ifndef TESTS_UNIT_REDO_H
#define TESTS_UNIT_REDO_H

#include "near.h"
#include "working/working.h"

#include <ctype.h>
#include <stdlib.h>

struct redo {
    const struct working *working;
    size_t before; /* only steps before this one are known */
    const char *at;
};

static inline double redo_us(double si, enum quantity kind) {
    const double in = 0.0254, lb = 4.4482216152605;
    switch (kind) {
    case QUANTITY_LENGTH:
        return si / in;
    case QUANTITY_WEIGHT:
        return si / lb;
    case QUANTITY_MASS:
        return si / 0.45359237;
    case QUANTITY_LOAD:
    case QUANTITY_STRESS:
        return si / (lb / (in * in));
    case QUANTITY_PRESSURE: /* these stay in psf, mph, deg */
        return si / (lb / (144.0 * in * in));
    case QUANTITY_SPEED:
        return si / 0.44704;
    case QUANTITY_ANGLE:
        return si * 180.0 / 3.14159265358979323846;
    case QUANTITY_LINE_LOAD:
    case QUANTITY_SLIP:
        return si / (lb / in);
    case QUANTITY_AREA:
        return si / (in * in);
    case QUANTITY_MODULUS:
        return si / (in * in * in);
    case QUANTITY_INERTIA:
        return si / (in * in * in * in);
    case QUANTITY_MOMENT:
        return si / (lb * in);
    default:
        return si;
    }
}

static inline double redo_sum(struct redo *redo);

static inline bool redo_take(struct redo *redo, char c) {
    while (*redo->at == ' ')
        redo->at++;
    if (*redo->at != c)
        return false;
    redo->at++;
    return true;
}

static inline double redo_symbol(struct redo *redo) {
    const char *start = redo->at;
    while (isalnum((unsigned char)*redo->at) || *redo->at == '\'' || *redo->at == '_')
        redo->at++;
    size_t length = (size_t)(redo->at - start);
    if (redo_take(redo, '(')) {
        double a = redo_sum(redo), b = redo_take(redo, ',') ? redo_sum(redo) : 0.0;
        cr_assert(redo_take(redo, ')'), "unclosed call");
        double turn = a * 3.14159265358979323846 / 180.0; /* angles are in degrees */
        return strncmp(start, "sqrt", length) == 0  ? sqrt(a)
               : strncmp(start, "sin", length) == 0 ? sin(turn)
               : strncmp(start, "cos", length) == 0 ? cos(turn)
               : strncmp(start, "min", length) == 0 ? fmin(a, b)
                                                    : fmax(a, b);
    }
    for (size_t i = redo->before; i-- > 0;) {
        const struct step *step = &redo->working->items[i];
        if (strlen(step->symbol) == length && strncmp(step->symbol, start, length) == 0)
            return redo_us(step->value, step->kind);
    }
    cr_assert(false, "unknown symbol %.*s", (int)length, start);
    return NAN;
}

static inline double redo_atom(struct redo *redo) {
    if (redo_take(redo, '(')) {
        double value = redo_sum(redo);
        cr_assert(redo_take(redo, ')'), "unclosed bracket");
        return value;
    }
    if (isdigit((unsigned char)*redo->at)) {
        char *end;
        double value = strtod(redo->at, &end);
        redo->at = end;
        return value;
    }
    return redo_symbol(redo);
}

static inline double redo_power(struct redo *redo) {
    double base = redo_atom(redo);
    return redo_take(redo, '^') ? pow(base, redo_atom(redo)) : base;
}

static inline double redo_product(struct redo *redo) {
    double value = redo_power(redo);
    for (;;) {
        if (redo_take(redo, '*'))
            value *= redo_power(redo);
        else if (redo_take(redo, '/'))
            value /= redo_power(redo);
        else
            return value;
    }
}

static inline double redo_sum(struct redo *redo) {
    double value = redo_product(redo);
    for (;;) {
        if (redo_take(redo, '+'))
            value += redo_product(redo);
        else if (redo_take(redo, '-'))
            value -= redo_product(redo);
        else
            return value;
    }
}

/* Every formula of the working redone; returns how many there were. */
static inline size_t redo_all(const struct working *working) {
    size_t count = 0;
    for (size_t i = 0; i < working->count; i++) {
        const struct step *step = &working->items[i];
        if (!step->formula)
            continue;
        struct redo redo = {working, i, step->formula};
        double value = redo_sum(&redo), want = redo_us(step->value, step->kind);
        cr_assert(*redo.at == '\0', "%s: rest of the formula: %s", step->symbol, redo.at);
        cr_assert(is_near(value, want, 1e-9, 1e-9), "%s = %s: redone %.12g, noted %.12g",
                  step->symbol, step->formula, value, want);
        count++;
    }
    return count;
}

/* The last value noted under a symbol, in the given US unit kind; NAN where there is none. */
static inline double noted(const struct working *working, const char *symbol) {
    for (size_t i = working->count; i-- > 0;)
        if (strcmp(working->items[i].symbol, symbol) == 0)
            return redo_us(working->items[i].value, working->items[i].kind);
    return NAN;
}

#endif
