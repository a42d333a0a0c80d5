#include "cli/command.h"

#include "cli/judged.h"
#include "cli/output.h"
#include "report/check_text.h"
#include "report/result_json.h"
#include "report/sketch.h"

enum exit_status check_command(const struct call *call) {
    struct result result = {0};
    if (call->options.given[OPTION_SKETCH] && call->options.given[OPTION_JSON]) {
        struct problems problems = problems_new(call->arena);
        problem_add(&problems, (struct place){0, 0}, "--sketch",
                    "is for people to look at and does not go with --json");
        return output_problems(call->arena, NULL, &problems, true);
    }
    struct judge_options options = {.every_factor = call->options.given[OPTION_JSON]};
    if (!judged(call, &options, &result))
        return EXIT_WRONG_INPUT;
    if (call->options.given[OPTION_JSON])
        result_json(json_new(call->arena, output_sink()), &result);
    else {
        struct text text = text_new(call->arena);
        if (call->options.given[OPTION_SKETCH])
            sketch_text(&text, result.frame);
        check_text(&text, &result,
                   &(struct check_text_options){.all = call->options.given[OPTION_ALL],
                                                .frame_name = call_word(call, 0)});
        output_text(&text);
    }
    return exit_status_of(result.verdict, call->options.given[OPTION_ALLOW_NOT_COVERED]);
}
