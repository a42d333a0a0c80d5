#include "cli/command.h"

#include "cli/judged.h"
#include "cli/write_output.h"
#include "report/expand_text.h"

enum exit_status expand_command(const struct call *call) {
    if (!output_is_free(call))
        return EXIT_WRONG_INPUT;
    struct text bytes = text_new(call->arena);
    const struct frame *frame = read_frame_of(call, &bytes);
    if (!frame)
        return EXIT_WRONG_INPUT;
    struct text text = text_new(call->arena);
    expand_text(&text, frame, text_string(&bytes), bytes.count);
    return write_output(call, &text, EXIT_HOLDS);
}
