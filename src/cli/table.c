#include "cli/command.h"

#include "base/near.h"
#include "cli/output.h"
#include "report/table_text.h"

static enum exit_status unknown_table(const struct call *call, const char *name) {
    const char **names = ARENA_ARRAY(call->arena, const char *, table_count());
    for (size_t k = 0; k < table_count(); k++)
        names[k] = table_at(k)->name;
    const char *near = near_name(name, names, table_count());
    struct problems problems = problems_new(call->arena);
    problem_add(&problems, (struct place){0, 0}, "NAME", "no table is called '%s'; %s", name,
                near ? arena_print(call->arena, "did you mean %s?", near)
                     : "batten table lists them");
    return output_problems(call->arena, NULL, &problems, call->options.given[OPTION_JSON]);
}

enum exit_status table_command(const struct call *call) {
    const char *name = call_word(call, 0);
    const struct table *table = name ? table_find(name) : NULL;
    if (name && !table)
        return unknown_table(call, name);
    if (call->options.given[OPTION_JSON]) {
        struct json *json = json_new(call->arena, output_sink());
        if (table)
            table_json(json, table);
        else
            table_list_json(json, call->arena);
        return EXIT_HOLDS;
    }
    struct text text = text_new(call->arena);
    if (table)
        table_text(&text, table);
    else
        table_list_text(&text);
    output_text(&text);
    return EXIT_HOLDS;
}
