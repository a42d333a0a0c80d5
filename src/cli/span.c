#include "quick/span.h"
#include "cli/ask.h"
#include "cli/output.h"
#include "report/span_text.h"

static const struct place NO_PLACE = {0, 0};

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
        .size = ask_table_name(asking, OPTION_SIZE, false, "sizes"),
        .species = ask_table_name(asking, OPTION_SPECIES, true, "species"),
        .grade = ask_table_name(asking, OPTION_GRADE, true, "grades"),
        .flat = ask_name(asking, OPTION_STANDS, false, &stands, 0) == 1,
        .live = ask_quantity(asking, OPTION_LIVE, true, QUANTITY_LOAD, false),
        .dead = ask_quantity(asking, OPTION_DEAD, false, QUANTITY_LOAD, false),
        .spacing = ask_quantity(asking, OPTION_SPACING, true, QUANTITY_LENGTH, true),
        .sag_live_only = ask_name(asking, OPTION_SAG_OF, false, &sag_of, 0) == 1,
        .repetitive = given[OPTION_REPETITIVE],
        .wet = given[OPTION_WET],
    };
    int duration = ask_table_name(asking, OPTION_DURATION, false, "durations");
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
