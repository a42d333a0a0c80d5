#include "tables/data.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST_ROW = 96 };

const char *mark_name(enum mark mark) {
    switch (mark) {
    case MARK_READ:
        return "read";
    case MARK_MEMORY:
        return "memory";
    case MARK_TRADE:
        return "trade";
    }
    return "?";
}

size_t table_count(void) {
    return table_data_count;
}

const struct table *table_at(size_t index) {
    return &table_data[index];
}

/* strcmp, mostly decided by the first letter: ids are looked up thousands of times a run. */
static int order_of(const char *a, const char *b) {
    int first = (unsigned char)*a - (unsigned char)*b;
    return first != 0 ? first : strcmp(a, b);
}

const struct table *table_find(const char *name) {
    size_t low = 0, high = table_data_count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        int order = order_of(name, table_data[middle].name);
        if (order == 0)
            return &table_data[middle];
        if (order < 0)
            high = middle;
        else
            low = middle + 1;
    }
    return NULL;
}

static const struct table *table_needed(const char *table) {
    const struct table *found = table_find(table);
    if (!found)
        abort();
    return found;
}

const struct table_row *table_row_in(const struct table *held, const char *row) {
    size_t low = 0, high = held->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        int order = order_of(row, held->rows[middle].row);
        if (order == 0)
            return &held->rows[middle];
        if (order < 0)
            high = middle;
        else
            low = middle + 1;
    }
    return NULL;
}

const struct table_row *table_row_find(const char *table, const char *row) {
    return table_row_in(table_needed(table), row);
}

/* Adds a part, cut where it does not fit; returns the length that it would have. */
static size_t add_part(char row[LONGEST_ROW], size_t length, const char *part) {
    for (; *part; part++, length++)
        if (length < LONGEST_ROW)
            row[length] = *part;
    return length;
}

static size_t add_number(char row[LONGEST_ROW], size_t length, int number) {
    char digits[16];
    snprintf(digits, sizeof digits, "%d", number);
    return add_part(row, length, digits);
}

/* vsnprintf() takes longer than everything else about a row. */
const struct table_row *table_row_named(const char *table, const char *format, ...) {
    char row[LONGEST_ROW];
    size_t length = 0;
    va_list arguments;
    va_start(arguments, format);
    for (const char *at = format; *at; at++) {
        char literal[2] = {*at, '\0'};
        if (*at != '%')
            length = add_part(row, length, literal);
        else if (*++at == 'd')
            length = add_number(row, length, va_arg(arguments, int));
        else
            length = add_part(row, length, va_arg(arguments, const char *));
    }
    va_end(arguments);
    if (length >= LONGEST_ROW)
        return NULL;
    row[length] = '\0';
    return table_row_find(table, row);
}

int table_row_count(const char *table) {
    return (int)table_needed(table)->count;
}

const struct table_row *table_row_at(const char *table, int index) {
    return &table_needed(table)->rows[index];
}

int table_row_index(const char *table, const char *row) {
    const struct table_row *found = table_row_find(table, row);
    return found ? (int)(found - table_needed(table)->rows) : -1;
}

struct cited table_row_cited(const struct table_row *row) {
    return (struct cited){.value = row->si, .source = row->cite, .mark = row->mark};
}

bool table_row_give(const struct table_row *row, struct cited *out) {
    if (!row)
        return false;
    *out = table_row_cited(row);
    return true;
}

bool table_value(const char *table, const char *row, struct cited *out) {
    return table_row_give(table_row_find(table, row), out);
}

struct cited table_constant(const char *row) {
    const struct table_row *found = table_row_in(table_of_constants, row);
    if (!found)
        abort();
    return table_row_cited(found);
}

int table_name_index(const void *things, size_t count, size_t size, const char *name) {
    const char *thing = things;
    for (size_t k = 0; k < count; k++)
        if (strcmp(*(const char *const *)(const void *)(thing + k * size), name) == 0)
            return (int)k;
    return -1;
}
