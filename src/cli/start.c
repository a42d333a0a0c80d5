#include "cli/command.h"

#include "base/near.h"
#include "cli/output.h"
#include "cli/write_output.h"
#include "report/names.h"
#include "start/starters.h"

#include <string.h>

/* False, and told, where --units is neither us nor si. */
static bool read_units(const struct call *call, struct problems *problems,
                       enum unit_system *units) {
    const char *word = call->options.value[OPTION_UNITS];
    *units = word && strcmp(word, "si") == 0 ? UNITS_SI : UNITS_US;
    if (!word || *units == UNITS_SI || strcmp(word, "us") == 0)
        return true;
    problem_add(problems, (struct place){0, 0}, "--units", "'%s' is neither us nor si", word);
    return false;
}

static void unknown_kind(const struct call *call, const char *kind, struct problems *problems) {
    const struct name_list *kinds = name_list_find(call->arena, "shapes");
    const char *near = near_name(kind, kinds->names, kinds->count);
    problem_add(problems, (struct place){0, 0}, "KIND", "there is no starter for '%s'; %s", kind,
                near ? arena_print(call->arena, "did you mean %s?", near)
                     : "there are stand, lean-to, gable, bench and cold-frame");
}

enum exit_status start_command(const struct call *call) {
    struct problems problems = problems_new(call->arena);
    const char *kind = call_word(call, 0);
    enum unit_system units;
    const struct starter *starter = NULL;
    if (read_units(call, &problems, &units)) {
        starter = starter_find(kind, units);
        if (!starter)
            unknown_kind(call, kind, &problems);
    }
    if (!starter)
        return output_problems(call->arena, NULL, &problems, false);
    if (!output_is_free(call))
        return EXIT_WRONG_INPUT;
    struct text text = text_new(call->arena);
    text_add(&text, starter->text);
    return write_output(call, &text, EXIT_HOLDS);
}
