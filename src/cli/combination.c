#include "cli/combination.h"

#include "base/near.h"
#include "base/text.h"
#include "cli/output.h"

#include <string.h>

void unknown_combination(struct problems *problems, const struct result *result, const char *name) {
    struct arena *arena = problems->arena;
    const char **names = ARENA_ARRAY(arena, const char *, result->combinations.count);
    struct text list = text_new(arena);
    for (size_t k = 0; k < result->combinations.count; k++) {
        names[k] = result->combinations.items[k].name;
        text_print(&list, "%s%s", k ? ", " : "", names[k]);
    }
    const char *near = near_name(name, names, result->combinations.count);
    problem_add(problems, (struct place){0, 0}, "--combination",
                near ? "no combination of loads is called '%s'; did you mean %s?"
                     : "no combination of loads is called '%s'; there are %s",
                name, near ? near : text_string(&list));
}

bool has_combination(const struct result *result, const char *name) {
    for (size_t k = 0; k < result->combinations.count; k++)
        if (strcmp(result->combinations.items[k].name, name) == 0)
            return true;
    return false;
}

bool combination_is_known(const struct call *call, const struct result *result) {
    const char *name = call->options.value[OPTION_COMBINATION];
    if (!name || has_combination(result, name))
        return true;
    struct problems problems = problems_new(call->arena);
    unknown_combination(&problems, result, name);
    output_problems(call->arena, NULL, &problems, false);
    return false;
}
