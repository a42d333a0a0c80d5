#include "cli/command.h"

#include "cli/judged.h"
#include "cli/output.h"
#include "cli/read_input.h"
#include "cli/waiting.h"
#include "cli/write_output.h"
#include "fix/fix.h"
#include "report/edit_text.h"
#include "report/fix_json.h"
#include "report/fix_text.h"

#include <string.h>

static void tell_progress(void *to, size_t tried) {
    waiting_tell(to, tried, "variants tried");
}

static enum exit_status status_of(const struct fix_answer *answer) {
    if (answer->passes_already || answer->found)
        return EXIT_HOLDS;
    return answer->before == VERDICT_FAILED ? EXIT_TROUBLE : EXIT_DOES_NOT_HOLD;
}

/* The description with its changes, where --output asks for it. */
static enum exit_status write_edited(const struct call *call, const struct text *bytes,
                                     const struct fix_answer *answer, enum exit_status status) {
    struct text edited = text_new(call->arena);
    if (!call->options.value[OPTION_OUTPUT] || status != EXIT_HOLDS)
        return status;
    if (!answer->found)
        text_bytes(&edited, text_string(bytes), bytes->count);
    else if (!edit_text(&edited, text_string(bytes), bytes->count, answer->edit, answer->edited))
        message(call->arena, "the layout of the file could not be kept: the description is written "
                             "anew, without its comments");
    return write_output(call, &edited, status);
}

static void show(const struct call *call, const struct fix_answer *answer,
                 enum exit_status status) {
    const char *path = call->options.value[OPTION_OUTPUT];
    if (path && strcmp(path, "-") == 0 && (answer->found || answer->passes_already))
        return; /* the description itself goes there */
    if (call->options.given[OPTION_JSON]) {
        fix_json(json_new(call->arena, output_sink()), answer);
        return;
    }
    struct text text = text_new(call->arena);
    fix_text(&text, answer, answer->found && status == EXIT_HOLDS ? path : NULL);
    output_text(&text);
}

enum exit_status fix_command(const struct call *call) {
    if (!output_is_free(call))
        return EXIT_WRONG_INPUT;
    const bool *given = call->options.given;
    struct text bytes = text_new(call->arena);
    const struct frame *frame = read_frame_of(call, &bytes);
    if (!frame)
        return EXIT_WRONG_INPUT;
    struct waiting waiting = waiting_from_now(call->arena);
    struct fix_options options = {
        .limits = {.large = given[OPTION_LARGE]}, .progress = tell_progress, .to = &waiting};
    struct fix_answer *answer =
        fix_find(call->arena, text_string(&bytes), bytes.count, frame, &options);
    if (answer->problems.count)
        return output_problems(call->arena, input_name(call_word(call, 0)), &answer->problems,
                               given[OPTION_JSON]);
    enum exit_status status = write_edited(call, &bytes, answer, status_of(answer));
    show(call, answer, status);
    return status;
}
