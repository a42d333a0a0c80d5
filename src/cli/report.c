#include "cli/command.h"

#include "brace/brace.h"
#include "buy/buy.h"
#include "cli/combination.h"
#include "cli/judged.h"
#include "cli/write_output.h"
#include "margin/curves.h"
#include "margin/margin.h"
#include "page/page.h"

/* The working of every check makes a page that nobody can load for a frame of thousands of sticks;
 * `batten why` has it there. */
enum { STICKS_WITH_WORKING = 300 };

static const char *bent_under(const struct call *call) {
    const char *combination = call->options.value[OPTION_COMBINATION];
    return combination ? combination : "";
}

static void write_page(const struct call *call, const struct result *result, struct text *text) {
    struct problems problems = problems_new(call->arena);
    const struct model *model = model_build(call->arena, result->frame, &problems);
    struct drawing drawing = drawing_of(call->arena, model, loads_build(call->arena, model), result,
                                        brace_find(call->arena, result->frame));
    struct margin_answer *margins =
        result->verdict < VERDICT_FOLDS ? margin_find(call->arena, result->frame) : NULL;
    if (margins)
        margin_curves(call->arena, margins);
    const struct cut_options usual = {.kerf = table_constant("cut-kerf").value};
    page_html(text, &(struct page){.drawing = &drawing,
                                   .margins = margins,
                                   .cut = cut_frame(call->arena, result->frame, &usual)});
}

enum exit_status report_command(const struct call *call) {
    struct result result = {0};
    if (!output_is_free(call))
        return EXIT_WRONG_INPUT;
    const struct frame *frame = read_frame(call);
    if (!frame)
        return EXIT_WRONG_INPUT;
    struct judge_options options = {.bent_under = bent_under(call),
                                    .all_working = frame->members.count <= STICKS_WITH_WORKING};
    if (!judged_frame(call, frame, &options, &result) || !combination_is_known(call, &result))
        return EXIT_WRONG_INPUT;
    struct text text = text_new(call->arena);
    write_page(call, &result, &text);
    enum exit_status status =
        exit_status_of(result.verdict, call->options.given[OPTION_ALLOW_NOT_COVERED]);
    return write_output(call, &text, status);
}
