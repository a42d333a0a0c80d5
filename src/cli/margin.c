#include "cli/command.h"

#include "cli/judged.h"
#include "cli/output.h"
#include "cli/read_input.h"
#include "margin/margin.h"
#include "report/margin_json.h"
#include "report/margin_text.h"

enum exit_status margin_command(const struct call *call) {
    const struct frame *frame = read_frame(call);
    if (!frame)
        return EXIT_WRONG_INPUT;
    struct margin_answer *answer = margin_find(call->arena, frame);
    bool as_json = call->options.given[OPTION_JSON];
    if (answer->problems.count)
        return output_problems(call->arena, input_name(call_word(call, 0)), &answer->problems,
                               as_json);
    if (as_json)
        margin_json(json_new(call->arena, output_sink()), answer);
    else {
        struct text text = text_new(call->arena);
        margin_text(&text, answer);
        output_text(&text);
    }
    return exit_status_of(answer->verdict, call->options.given[OPTION_ALLOW_NOT_COVERED]);
}
