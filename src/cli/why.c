#include "cli/command.h"

#include "base/near.h"
#include "base/text.h"
#include "cli/combination.h"
#include "cli/judged.h"
#include "cli/output.h"
#include "report/check_text.h"
#include "report/result_json.h"
#include "report/why_text.h"

#include <string.h>

enum { LISTED = 20 };
static const struct place NO_PLACE = {0, 0};

static const struct check *find_check(const struct result *result, const char *id) {
    for (size_t k = 0; k < result->checks.count; k++)
        if (strcmp(result->checks.items[k].id, id) == 0)
            return &result->checks.items[k];
    return NULL;
}

/* The ids of a kind, or where there is none of it the kinds. */
static const char *list_of_kind(struct arena *arena, const struct result *result,
                                const char *kind) {
    struct text ids = text_new(arena), kinds = text_new(arena);
    const char **seen = ARENA_ARRAY(arena, const char *, result->checks.count);
    size_t listed = 0, seen_count = 0;
    for (size_t k = 0; k < result->checks.count; k++) {
        const struct check *check = &result->checks.items[k];
        if (strcmp(check->kind, kind) == 0 && listed++ < LISTED)
            text_print(&ids, "%s%s", ids.count ? ", " : "", check->id);
        size_t before = 0;
        while (before < seen_count && strcmp(seen[before], check->kind) != 0)
            before++;
        if (before == seen_count) {
            text_print(&kinds, "%s%s", seen_count ? ", " : "", check->kind);
            seen[seen_count++] = check->kind;
        }
    }
    if (!listed)
        return arena_print(arena, "; the kinds of checks are %s", text_string(&kinds));
    if (listed > LISTED)
        text_print(&ids, " and %zu more", listed - LISTED);
    return arena_print(arena, "; there are %s", text_string(&ids));
}

static void unknown_id(struct problems *problems, const struct result *result, const char *id) {
    struct arena *arena = problems->arena;
    const char **ids = ARENA_ARRAY(arena, const char *, result->checks.count);
    for (size_t k = 0; k < result->checks.count; k++)
        ids[k] = result->checks.items[k].id;
    const char *near = near_name(id, ids, result->checks.count);
    const char *kind = arena_copy(arena, id, strcspn(id, "/"));
    problem_add(problems, NO_PLACE, "ID", "no check is called '%s'%s%s", id,
                near ? arena_print(arena, "; did you mean %s?", near) : "",
                near ? "" : list_of_kind(arena, result, kind));
}

/* The check with its working, NULL with a problem added. */
static const struct check *asked_check(const struct result *result,
                                       const struct judge_options *asked,
                                       struct problems *problems) {
    const struct check *check = find_check(result, asked->why_id);
    const char *combination = asked->why_combination;
    bool known = !combination || has_combination(result, combination) ||
                 (check && strcmp(check->combination, combination) == 0); /* service wind of lean */
    /* under a combination that is not there the check itself may be missing too */
    if (!known)
        unknown_combination(problems, result, combination);
    else if (!check)
        unknown_id(problems, result, asked->why_id);
    if (problems->count)
        return NULL;
    if (check->working && (!combination || strcmp(check->combination, combination) == 0))
        return check;
    problem_add(problems, NO_PLACE, "--combination", "%s is not judged under %s", check->id,
                combination ? combination : "any");
    return NULL;
}

static void write_why(const struct call *call, const struct result *result,
                      const struct check *check) {
    if (call->options.given[OPTION_JSON]) {
        why_json(json_new(call->arena, output_sink()), check);
        return;
    }
    struct text text = text_new(call->arena);
    why_text(&text, result, check);
    output_text(&text);
}

/* A frame that folds has no checks: the answer is how it folds. */
static void write_folds(const struct call *call, const struct result *result) {
    if (call->options.given[OPTION_JSON]) {
        result_json(json_new(call->arena, output_sink()), result);
        return;
    }
    struct text text = text_new(call->arena);
    check_text(&text, result, &(struct check_text_options){.frame_name = call_word(call, 0)});
    output_text(&text);
}

enum exit_status why_command(const struct call *call) {
    struct judge_options asked = {.why_id = call_word(call, 1),
                                  .why_combination = call->options.value[OPTION_COMBINATION]};
    struct result result = {0};
    if (!judged(call, &asked, &result))
        return EXIT_WRONG_INPUT;
    if (result.verdict == VERDICT_FOLDS || result.verdict == VERDICT_FAILED) {
        write_folds(call, &result);
        return exit_status_of(result.verdict, false);
    }
    struct problems problems = problems_new(call->arena);
    const struct check *check = asked_check(&result, &asked, &problems);
    if (!check)
        return output_problems(call->arena, NULL, &problems, call->options.given[OPTION_JSON]);
    write_why(call, &result, check);
    return exit_status_of(result.verdict, false);
}
