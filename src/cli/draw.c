#include "cli/command.h"

#include "base/near.h"
#include "brace/brace.h"
#include "cli/combination.h"
#include "cli/judged.h"
#include "cli/output.h"
#include "cli/write_output.h"
#include "draw/draw.h"

#include <string.h>

static const struct place NO_PLACE = {0, 0};

/* What is asked for. */
struct asked {
    bool views[VIEW_COUNT];
    bool shows[SHOW_COUNT];
};

/* One word of a list into the flags that it stands for; a problem where it stands for none. */
static void take_word(struct arena *arena, const char *option, const char *word,
                      const char *const *names, size_t count, bool *flags,
                      struct problems *problems) {
    struct text list = text_new(arena);
    for (size_t k = 0; k < count; k++) {
        if (strcmp(names[k], word) == 0) {
            flags[k] = true;
            return;
        }
        text_print(&list, "%s%s", k ? ", " : "", names[k]);
    }
    const char *near = near_name(word, names, count);
    problem_add(problems, NO_PLACE, option,
                near ? "'%s' is not known; did you mean %s?" : "'%s' is not known; there are %s",
                word, near ? near : text_string(&list));
}

/* "front", "names,loads": words with commas between; `all` is all of them. */
static void take_list(struct arena *arena, const char *option, const char *value,
                      const char *const *names, size_t count, bool *flags,
                      struct problems *problems) {
    for (;;) {
        size_t length = strcspn(value, ",");
        const char *word = arena_copy(arena, value, length);
        if (strcmp(word, "all") == 0)
            for (size_t k = 0; k < count; k++)
                flags[k] = true;
        else
            take_word(arena, option, word, names, count, flags, problems);
        value += length;
        if (!*value++)
            return;
    }
}

static struct asked asked_of(const struct call *call, struct problems *problems) {
    struct asked asked = {.shows = {[SHOW_NAMES] = true,
                                    [SHOW_DIMENSIONS] = true,
                                    [SHOW_LOADS] = true,
                                    [SHOW_WORK] = true}};
    const char *names[VIEW_COUNT];
    for (int v = 0; v < VIEW_COUNT; v++)
        names[v] = VIEWS[v].name;
    const char *view = call->options.value[OPTION_VIEW], *show = call->options.value[OPTION_SHOW];
    take_list(call->arena, "--view", view ? view : "all", names, VIEW_COUNT, asked.views, problems);
    asked.shows[SHOW_BENT] = call->options.given[OPTION_COMBINATION];
    if (!show)
        return asked;
    memset(asked.shows, 0, sizeof asked.shows);
    if (strcmp(show, "nothing") != 0)
        take_list(call->arena, "--show", show, SHOW_NAMES_TYPED, SHOW_COUNT, asked.shows, problems);
    return asked;
}

static void draw(const struct call *call, const struct asked *asked, const struct result *result,
                 struct text *text) {
    struct problems problems = problems_new(call->arena);
    const struct model *model = model_build(call->arena, result->frame, &problems);
    const struct loads *loads = loads_build(call->arena, model);
    bool braces =
        asked->shows[SHOW_BRACES] || (asked->shows[SHOW_FOLDS] && !result->folding.motion_count);
    struct drawing drawing = drawing_of(call->arena, model, loads, result,
                                        braces ? brace_find(call->arena, result->frame) : NULL);
    memcpy(drawing.shows, asked->shows, sizeof drawing.shows);
    draw_sheet(text, &drawing, asked->views);
}

enum exit_status draw_command(const struct call *call) {
    struct problems problems = problems_new(call->arena);
    struct asked asked = asked_of(call, &problems);
    if (problems.count)
        return output_problems(call->arena, NULL, &problems, false);
    if (!output_is_free(call))
        return EXIT_WRONG_INPUT;
    const char *combination = call->options.value[OPTION_COMBINATION];
    struct judge_options options = {.bent_under = combination ? combination : ""};
    struct result result = {0};
    if (!judged(call, &options, &result) || !combination_is_known(call, &result))
        return EXIT_WRONG_INPUT;
    struct text text = text_new(call->arena);
    draw(call, &asked, &result, &text);
    return write_output(call, &text, EXIT_HOLDS);
}
