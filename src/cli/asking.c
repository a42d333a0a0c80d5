#include "cli/asking.h"

#include "base/near.h"
#include "base/text.h"

#include <string.h>

static const struct place NO_PLACE = {0, 0};

struct asking asking_of(const struct call *call) {
    return (struct asking){call, problems_new(call->arena)};
}

void asking_wrong(struct asking *asking, enum option option, const char *format, ...) {
    struct text text = text_new(asking->call->arena);
    va_list arguments;
    va_start(arguments, format);
    text_print_list(&text, format, arguments);
    va_end(arguments);
    problem_add(&asking->problems, NO_PLACE, OPTION_RULES[option].name, "%s", text_string(&text));
}

const char *asked_text(struct asking *asking, enum option option, bool required) {
    const char *value = asking->call->options.value[option];
    if (!value && required)
        asking_wrong(asking, option, "is needed: %s %s", OPTION_RULES[option].name,
                     OPTION_RULES[option].value);
    return value;
}

int asked_name(struct asking *asking, enum option option, bool required,
               const struct name_list *list, int otherwise) {
    const char *value = asked_text(asking, option, required);
    if (!value)
        return otherwise;
    for (size_t k = 0; k < list->count; k++)
        if (strcmp(list->names[k], value) == 0)
            return (int)k;
    const char *near = near_name(value, list->names, list->count);
    if (near && strlen(value) > 1) { /* one letter is near to every other */
        asking_wrong(asking, option, "unknown '%s'; did you mean %s?", value, near);
        return otherwise;
    }
    struct text all = text_new(asking->call->arena);
    for (size_t k = 0; k < list->count; k++)
        text_print(&all, "%s%s", k ? ", " : "", list->names[k]);
    asking_wrong(asking, option, "unknown '%s'; there are %s", value, text_string(&all));
    return otherwise;
}

int asked_table_name(struct asking *asking, enum option option, bool required, const char *list) {
    return asked_name(asking, option, required, name_list_find(asking->call->arena, list), -1);
}

double asked_quantity(struct asking *asking, enum option option, bool required, enum quantity kind,
                      bool positive) {
    const char *value = asked_text(asking, option, required);
    const char *why;
    double si = 0.0;
    if (!value)
        return 0.0;
    if (!quantity_read(asking->call->arena, value, kind, UNITS_US, &si, &why))
        asking_wrong(asking, option, "%s", why);
    else if (si < 0.0 || (positive && !(si > 0.0)))
        asking_wrong(asking, option, "must be %s, found %s", positive ? "more than 0" : "0 or more",
                     value);
    return si;
}

bool asked_wet(struct asking *asking) {
    const bool *given = asking->call->options.given;
    if (given[OPTION_WET] && given[OPTION_DRY])
        asking_wrong(asking, OPTION_WET, "dry or wet, not both");
    return given[OPTION_WET];
}

enum duration asked_duration(struct asking *asking) {
    int duration = asked_table_name(asking, OPTION_DURATION, false, "durations");
    return duration < 0 ? DURATION_TEN_YEARS : (enum duration)duration;
}
