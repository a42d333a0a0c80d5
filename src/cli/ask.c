#include "cli/ask.h"

#include "base/near.h"

#include <string.h>

static const struct place NO_PLACE = {0, 0};

static const char *value_of(struct asking *asking, enum option option, bool required) {
    const char *value = asking->call->options.value[option];
    if (!value && required)
        problem_add(&asking->problems, NO_PLACE, OPTION_RULES[option].name, "is needed: %s %s",
                    OPTION_RULES[option].name, OPTION_RULES[option].value);
    return value;
}

/* The index of the option's value in a list of names; `otherwise` where it is not given, or wrong.
 */
int ask_name(struct asking *asking, enum option option, bool required, const struct name_list *list,
             int otherwise) {
    const char *value = value_of(asking, option, required);
    if (!value)
        return otherwise;
    for (size_t k = 0; k < list->count; k++)
        if (strcmp(list->names[k], value) == 0)
            return (int)k;
    /* one letter is as near to any other */
    const char *near = value[0] && value[1] ? near_name(value, list->names, list->count) : NULL;
    struct text all = text_new(asking->call->arena);
    for (size_t k = 0; k < list->count; k++)
        text_print(&all, "%s%s", k ? ", " : "", list->names[k]);
    if (near)
        problem_add(&asking->problems, NO_PLACE, OPTION_RULES[option].name,
                    "unknown '%s'; did you mean %s?", value, near);
    else
        problem_add(&asking->problems, NO_PLACE, OPTION_RULES[option].name,
                    "unknown '%s'; there are %s", value, text_string(&all));
    return otherwise;
}

int ask_table_name(struct asking *asking, enum option option, bool required, const char *list) {
    return ask_name(asking, option, required, name_list_find(asking->call->arena, list), -1);
}

/* A quantity that may not be below zero, nor zero where `positive`. */
double ask_quantity(struct asking *asking, enum option option, bool required, enum quantity kind,
                    bool positive) {
    const char *value = value_of(asking, option, required);
    const char *why;
    double si = 0.0;
    if (!value)
        return 0.0;
    if (!quantity_read(asking->call->arena, value, kind, UNITS_US, &si, &why))
        problem_add(&asking->problems, NO_PLACE, OPTION_RULES[option].name, "%s", why);
    else if (si < 0.0 || (positive && !(si > 0.0)))
        problem_add(&asking->problems, NO_PLACE, OPTION_RULES[option].name, "must be %s, found %s",
                    positive ? "more than 0" : "0 or more", value);
    return si;
}
