#include "cli/command.h"

#include "cli/asking.h"
#include "cli/judged.h"
#include "cli/output.h"
#include "cli/waiting.h"
#include "report/check_text.h"
#include "report/result_json.h"
#include "report/sketch.h"
#include "report/spread_text.h"
#include "spread/spread.h"
#include "units/decimal.h"

#include <string.h>

/* A whole number from 1 to `most`; `otherwise` where it is not given or wrong. */
static uint32_t ask_number(struct asking *asking, enum option option, double most,
                           uint32_t otherwise) {
    const char *value = asked_text(asking, option, false);
    if (!value)
        return otherwise;
    size_t digits = strspn(value, "0123456789");
    double number =
        value[digits] || !digits ? 0.0 : decimal_value(asking->call->arena, value, strlen(value));
    if (number >= 1.0 && number <= most)
        return (uint32_t)number;
    asking_wrong(asking, option, "takes a whole number from 1 to %s, found '%s'",
                 decimal_fixed(asking->call->arena, most, 0), value);
    return otherwise;
}

static void tell_progress(void *to, size_t builds) {
    waiting_tell(to, builds, "builds judged");
}

static struct spread_options ask_spread(struct asking *asking) {
    const bool *given = asking->call->options.given;
    if (given[OPTION_SEED] && !given[OPTION_SPREAD])
        asking_wrong(asking, OPTION_SEED, "goes with --spread");
    return (struct spread_options){.builds =
                                       ask_number(asking, OPTION_SPREAD, SPREAD_BUILDS_MOST, 1),
                                   .seed = ask_number(asking, OPTION_SEED, UINT32_MAX, 1),
                                   .progress = tell_progress};
}

static void write_text(const struct call *call, const struct result *result) {
    struct text text = text_new(call->arena);
    bool all = call->options.given[OPTION_ALL];
    if (call->options.given[OPTION_SKETCH])
        sketch_text(&text, result->frame);
    check_text(&text, result,
               &(struct check_text_options){.all = all, .frame_name = call_word(call, 0)});
    if (result->spread)
        spread_text(&text, result->spread, result->frame->units, all);
    output_text(&text);
}

enum exit_status check_command(const struct call *call) {
    const bool *given = call->options.given;
    struct result result = {0};
    struct asking asking = asking_of(call);
    struct spread_options spread = ask_spread(&asking);
    if (given[OPTION_SKETCH] && given[OPTION_JSON])
        asking_wrong(&asking, OPTION_SKETCH,
                     "is for people to look at and does not go with --json");
    if (asking.problems.count)
        return output_problems(call->arena, NULL, &asking.problems, given[OPTION_JSON]);
    struct judge_options options = {.every_factor = given[OPTION_JSON]};
    if (!judged(call, &options, &result))
        return EXIT_WRONG_INPUT;
    if (given[OPTION_SPREAD] && result.checks.count) {
        struct waiting waiting = waiting_from_now(call->arena);
        spread.to = &waiting;
        result.spread = spread_find(call->arena, result.frame, &spread);
    }
    if (given[OPTION_JSON])
        result_json(json_new(call->arena, output_sink()), &result);
    else
        write_text(call, &result);
    return exit_status_of(result.verdict, given[OPTION_ALLOW_NOT_COVERED]);
}
