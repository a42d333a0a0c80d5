#include "cli/asking.h"

#include "cli/output.h"
#include "quick/span.h"
#include "report/span_text.h"

static void sag_limit(struct asking *asking, struct span_question *question) {
    const char *value = asking->call->options.value[OPTION_SAG];
    const char *why;
    if (!quantity_read_ratio(asking->call->arena, value ? value : "span/240", "span", UNITS_US,
                             &question->sag_divisor, &question->sag_limit, &why))
        asking_wrong(asking, OPTION_SAG, "%s", why);
    else if (!(question->sag_divisor > 0.0) && !(question->sag_limit > 0.0))
        asking_wrong(asking, OPTION_SAG, "must be more than 0, found %s", value);
}

static struct span_question ask(struct asking *asking) {
    static const char *const STANDS[] = {"on-edge", "flat"}, *const SAG_OF[] = {"total", "live"};
    const struct name_list stands = {"", "", STANDS, 2}, sag_of = {"", "", SAG_OF, 2};
    const bool *given = asking->call->options.given;
    struct span_question question = {
        .size = asked_table_name(asking, OPTION_SIZE, false, "sizes"),
        .species = asked_table_name(asking, OPTION_SPECIES, true, "species"),
        .grade = asked_table_name(asking, OPTION_GRADE, true, "grades"),
        .flat = asked_name(asking, OPTION_STANDS, false, &stands, 0) == 1,
        .live = asked_quantity(asking, OPTION_LIVE, true, QUANTITY_LOAD, false),
        .dead = asked_quantity(asking, OPTION_DEAD, false, QUANTITY_LOAD, false),
        .spacing = asked_quantity(asking, OPTION_SPACING, true, QUANTITY_LENGTH, true),
        .sag_live_only = asked_name(asking, OPTION_SAG_OF, false, &sag_of, 0) == 1,
        .repetitive = given[OPTION_REPETITIVE],
        .duration = asked_duration(asking),
    };
    sag_limit(asking, &question);
    question.wet = asked_wet(asking);
    if (!asking->problems.count && !(question.live + question.dead > 0.0))
        asking_wrong(asking, OPTION_LIVE, "without any load there is no span");
    return question;
}

enum exit_status span_command(const struct call *call) {
    bool as_json = call->options.given[OPTION_JSON];
    struct asking asking = asking_of(call);
    struct span_question question = ask(&asking);
    struct span_answer answer = {0};
    if (!asking.problems.count) {
        answer = span_answer(call->arena, &question, !as_json && question.size >= 0);
        if (!answer.count)
            asking_wrong(&asking, OPTION_GRADE, "no published values for %s %s at %s",
                         table_species_name(question.species), table_grade_name(question.grade),
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
