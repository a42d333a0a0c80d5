#include "cli/command.h"

#include "brace/brace.h"
#include "cli/judged.h"
#include "cli/output.h"
#include "cli/read_input.h"
#include "report/brace_json.h"
#include "report/brace_text.h"
#include "report/brace_words.h"

enum exit_status brace_command(const struct call *call) {
    const struct frame *frame = read_frame(call);
    if (!frame)
        return EXIT_WRONG_INPUT;
    struct brace_answer *answer = brace_find(call->arena, frame);
    bool as_json = call->options.given[OPTION_JSON];
    if (answer->problems.count)
        return output_problems(call->arena, input_name(call_word(call, 0)), &answer->problems,
                               as_json);
    if (as_json)
        brace_json(json_new(call->arena, output_sink()), answer);
    else {
        struct text text = text_new(call->arena);
        brace_text(&text, answer);
        output_text(&text);
    }
    return something_to_brace(answer) ? EXIT_DOES_NOT_HOLD : EXIT_HOLDS;
}
