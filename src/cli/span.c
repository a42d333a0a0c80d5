#include "cli/command.h"

#include "base/near.h"
#include "cli/output.h"
#include "quick/span.h"
#include "report/names.h"
#include "report/span_text.h"

#include <string.h>

static const struct place NO_PLACE = {0, 0};

/* The options of one call, and what is wrong with them. */
struct asking {
    const struct call *call;
    struct problems problems;
};

static const char *value_of(struct asking *asking, enum option option, bool required) {
    const char *value = asking->call->options.value[option];
    if (!value && required)
        problem_add(&asking->problems, NO_PLACE, OPTION_RULES[option].name, "is needed: %s %s",
                    OPTION_RULES[option].name, OPTION_RULES[option].value);
    return value;
}

/* The index of the option's value in a list of names; `otherwise` where it is not given, or wrong.
 */
static int one_of(struct asking *asking, enum option option, bool required,
                  const struct name_list *list, int otherwise) {
    const char *value = value_of(asking, option, required);
    if (!value)
        return otherwise;
    for (size_t k = 0; k < list->count; k++)
        if (strcmp(list->names[k], value) == 0)
            return (int)k;
    const char *near = near_name(value, list->names, list->count);
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

static int one_of_table(struct asking *asking, enum option option, bool required,
                        const char *list) {
    return one_of(asking, option, required, name_list_find(asking->call->arena, list), -1);
}

/* A quantity that may not be below zero, nor zero where `positive`. */
static double quantity_of(struct asking *asking, enum option option, bool required,
                          enum quantity kind, bool positive) {
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

static void sag_limit(struct asking *asking, struct span_question *question) {
    const char *value = asking->call->options.value[OPTION_SAG];
    const char *why;
    if (!quantity_read_ratio(asking->call->arena, value ? value : "span/240", "span", UNITS_US,
                             &question->sag_divisor, &question->sag_limit, &why))
        problem_add(&asking->problems, NO_PLACE, OPTION_RULES[OPTION_SAG].name, "%s", why);
    else if (!(question->sag_divisor > 0.0) && !(question->sag_limit > 0.0))
        problem_add(&asking->problems, NO_PLACE, OPTION_RULES[OPTION_SAG].name,
                    "must be more than 0, found %s", value);
}

static struct span_question ask(struct asking *asking) {
    static const char *const STANDS[] = {"on-edge", "flat"}, *const SAG_OF[] = {"total", "live"};
    const struct name_list stands = {"", "", STANDS, 2}, sag_of = {"", "", SAG_OF, 2};
    const bool *given = asking->call->options.given;
    struct span_question question = {
        .size = one_of_table(asking, OPTION_SIZE, false, "sizes"),
        .species = one_of_table(asking, OPTION_SPECIES, true, "species"),
        .grade = one_of_table(asking, OPTION_GRADE, true, "grades"),
        .flat = one_of(asking, OPTION_STANDS, false, &stands, 0) == 1,
        .live = quantity_of(asking, OPTION_LIVE, true, QUANTITY_LOAD, false),
        .dead = quantity_of(asking, OPTION_DEAD, false, QUANTITY_LOAD, false),
        .spacing = quantity_of(asking, OPTION_SPACING, true, QUANTITY_LENGTH, true),
        .sag_live_only = one_of(asking, OPTION_SAG_OF, false, &sag_of, 0) == 1,
        .repetitive = given[OPTION_REPETITIVE],
        .wet = given[OPTION_WET],
    };
    int duration = one_of_table(asking, OPTION_DURATION, false, "durations");
    question.duration = duration < 0 ? DURATION_TEN_YEARS : (enum duration)duration;
    sag_limit(asking, &question);
    if (given[OPTION_WET] && given[OPTION_DRY])
        problem_add(&asking->problems, NO_PLACE, "--wet", "dry or wet, not both");
    if (!asking->problems.count && !(question.live + question.dead > 0.0))
        problem_add(&asking->problems, NO_PLACE, "--live", "without any load there is no span");
    return question;
}

enum exit_status span_command(const struct call *call) {
    bool as_json = call->options.given[OPTION_JSON];
    struct asking asking = {call, problems_new(call->arena)};
    struct span_question question = ask(&asking);
    struct span_answer answer = {0};
    if (!asking.problems.count) {
        answer = span_answer(call->arena, &question, !as_json && question.size >= 0);
        if (!answer.count)
            problem_add(&asking.problems, NO_PLACE, "--grade",
                        "no published values for %s %s at %s", table_species_name(question.species),
                        table_grade_name(question.grade),
                        question.size >= 0 ? table_size(question.size)->name : "any size");
    }
    if (asking.problems.count)
        return output_problems(call->arena, NULL, &asking.problems, as_json);
    if (as_json) {
        span_json(json_new(call->arena, output_sink()), &answer);
        return EXIT_HOLDS;
    }
    struct text text = text_new(call->arena);
    span_text(&text, &question, &answer);
    output_text(&text);
    return EXIT_HOLDS;
}
