/* The whole check. Any file that is accepted ends in a verdict with errors under the bounds, or
 * says that it could not be trusted; no check passes on a NaN, an infinite or an ill-conditioned
 * solution, and what is printed is the same twice. */
#include "fuzz.h"

#include "frame/frame.h"
#include "judge/judge.h"
#include "report/check_text.h"
#include "report/result_json.h"
#include "solve/trust.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

/* Large frames only take long; how they are solved does not differ. */
enum { MEMBERS = 40, BYTES = 16 * 1024 };

static void hold_check(const struct check *check) {
    HOLDS(check->verdict <= VERDICT_FAILS);
    HOLDS(check->id && check->id[0] && check->kind[0] && check->combination && check->source);
    if (check->verdict == VERDICT_OK)
        HOLDS(check->ratio <= 0.9 && isfinite(check->demand) && check->ratio >= 0.0);
    if (check->verdict == VERDICT_CLOSE)
        HOLDS(check->ratio <= 1.0 + 1e-12 && isfinite(check->demand));
    if (check->verdict == VERDICT_FAILS)
        HOLDS(!(check->ratio <= 0.9)); /* `lean` over on low stiffness alone is close */
}

static void hold_result(const struct result *result) {
    /* under no combination nothing is judged to hold */
    enum verdict worst = result->combinations.count ? VERDICT_OK : VERDICT_NOT_COVERED;
    for (size_t k = 0; k < result->checks.count; k++)
        if (result->checks.items[k].verdict > worst)
            worst = result->checks.items[k].verdict;
    if (result->verdict >= VERDICT_FOLDS)
        return;
    if (result->checks.count)
        HOLDS(result->verdict == worst);
    else
        HOLDS(result->verdict == VERDICT_NOT_COVERED);
    for (size_t k = 0; k < result->checks.count; k++)
        hold_check(&result->checks.items[k]);
    if (result->checks.count) {
        HOLDS(result->backward_error <= TRUST_BACKWARD);
        HOLDS(result->equilibrium_error <= TRUST_EQUILIBRIUM);
    }
    HOLDS(result->cautions.count > 0);
}

static struct text printed(struct arena *arena, const struct frame *frame) {
    struct result result;
    judge_frame(arena, frame, &(struct judge_options){.all_working = true}, &result);
    struct text text = text_new(arena);
    if (result.problems.count)
        return text;
    hold_result(&result);
    check_text(&text, &result, &(struct check_text_options){.all = true, .frame_name = "f.yaml"});
    struct json *json = json_new(arena, (struct json_sink){0});
    result_json(json, &result);
    text_add(&text, text_string(&json->text));
    return text;
}

static void try_check(struct arena *arena, const uint8_t *bytes, size_t length) {
    if (ARENA_TRAP(arena))
        return;
    struct problems problems = problems_new(arena);
    const struct frame *frame =
        frame_read(arena, (const char *)bytes, length, (struct frame_limits){0}, &problems);
    if (!frame || frame->members.count > MEMBERS)
        return;
    struct text once = printed(arena, frame), again = printed(arena, frame);
    HOLDS(strcmp(text_string(&once), text_string(&again)) == 0);
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length) {
    gsl_set_error_handler_off();
    if (length > BYTES)
        return 0;
    struct arena *arena = arena_new();
    if (arena)
        try_check(arena, bytes, length);
    arena_free(arena);
    return 0;
}
