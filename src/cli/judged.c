#include "cli/judged.h"

#include "cli/asking.h"
#include "cli/output.h"
#include "cli/read_input.h"

/* --solver; false where it names none, which is told. */
static bool asked_solver(const struct call *call, enum solver_kind *solver) {
    static const char *const names[SOLVER_COUNT] = {[SOLVER_OWN] = "own", [SOLVER_GSL] = "gsl"};
    static const struct name_list solvers = {"solver", "--solver", names, SOLVER_COUNT};
    struct asking asking = asking_of(call);
    *solver = (enum solver_kind)asked_name(&asking, OPTION_SOLVER, false, &solvers, SOLVER_OWN);
    if (asking.problems.count == 0)
        return true;
    output_problems(call->arena, NULL, &asking.problems, call->options.given[OPTION_JSON]);
    return false;
}

const struct frame *read_frame_of(const struct call *call, struct text *bytes) {
    struct arena *arena = call->arena;
    const char *path = call_word(call, 0);
    struct problems problems = problems_new(arena);
    struct frame_limits limits = {.large = call->options.given[OPTION_LARGE]};
    const char *why;
    if (!asked_solver(call, &limits.solver))
        return NULL;
    const struct frame *frame = NULL;
    if (!read_input(path, bytes, &why))
        problem_add(&problems, (struct place){0, 0}, "", "%s", why);
    else
        frame = frame_read(arena, text_string(bytes), bytes->count, limits, &problems);
    if (!frame)
        output_problems(arena, input_name(path), &problems, call->options.given[OPTION_JSON]);
    return frame;
}

const struct frame *read_frame(const struct call *call) {
    struct text bytes = text_new(call->arena);
    return read_frame_of(call, &bytes);
}

bool judged(const struct call *call, const struct judge_options *options, struct result *result) {
    const struct frame *frame = read_frame(call);
    return frame && judged_frame(call, frame, options, result);
}

bool judged_frame(const struct call *call, const struct frame *frame,
                  const struct judge_options *options, struct result *result) {
    struct arena *arena = call->arena;
    judge_frame(arena, frame, options, result);
    if (result->problems.count) {
        output_problems(arena, input_name(call_word(call, 0)), &result->problems,
                        call->options.given[OPTION_JSON]);
        return false;
    }
    bool tips = result->folding.motion_count && result->folding.motions[0].tips;
    if (result->verdict == VERDICT_FOLDS)
        message(arena,
                tips ? "the frame tips over as described" : "the frame folds up as described");
    if (result->verdict == VERDICT_FAILED)
        message(arena, result->trouble ? result->trouble : "the computation cannot be trusted");
    return true;
}
