#include "library/batten.h"

#include "base/version.h"
#include "judge/judge.h"
#include "report/check_text.h"
#include "report/problem_text.h"
#include "report/result_json.h"

#include <gsl/gsl_errno.h>
#include <math.h>

struct batten {
    struct arena *arena;
    enum batten_outcome outcome;
    struct problems problems;
    struct result result;
    const char *text, *json;
};

static enum batten_outcome outcome_of(enum verdict verdict) {
    /* ORDER VERDICT */
    static const enum batten_outcome OUTCOMES[] = {
        [VERDICT_OK] = BATTEN_HOLDS,
        [VERDICT_CLOSE] = BATTEN_HOLDS,
        [VERDICT_NOT_COVERED] = BATTEN_DOES_NOT_HOLD,
        [VERDICT_FAILS] = BATTEN_DOES_NOT_HOLD,
        [VERDICT_FOLDS] = BATTEN_FOLDS,
        [VERDICT_FAILED] = BATTEN_TROUBLE,
    };
    return OUTCOMES[verdict];
}

static void tell_problems(struct batten *answer) {
    problems_sort(&answer->problems);
    struct text text = text_new(answer->arena);
    problem_text(&text, "description", &answer->problems);
    answer->text = text_string(&text);
    struct json *json = json_new(answer->arena, (struct json_sink){0});
    problem_json(json, &answer->problems);
    answer->json = text_string(&json->text);
}

static void tell_result(struct batten *answer) {
    struct text text = text_new(answer->arena);
    check_text(&text, &answer->result, &(struct check_text_options){.frame_name = "FRAME.yaml"});
    answer->text = text_string(&text);
    struct json *json = json_new(answer->arena, (struct json_sink){0});
    result_json(json, &answer->result);
    answer->json = text_string(&json->text);
}

static void judge(struct batten *answer, const char *description, size_t length) {
    struct arena *arena = answer->arena;
    answer->outcome = BATTEN_WRONG_INPUT;
    answer->problems = problems_new(arena);
    const struct frame *frame =
        frame_read(arena, description, length, (struct frame_limits){0}, &answer->problems);
    if (frame) {
        judge_frame(arena, frame, &(struct judge_options){.every_factor = true}, &answer->result);
        answer->problems =
            answer->result.problems.count ? answer->result.problems : answer->problems;
    }
    if (answer->problems.count) {
        answer->result.checks.count = answer->result.cautions.count = 0;
        tell_problems(answer);
        return;
    }
    answer->outcome = outcome_of(answer->result.verdict);
    tell_result(answer);
}

/* Apart, so that nothing changes between the trap and its use. The answer itself lies in the
 * arena. */
static struct batten *judge_trapped(struct arena *arena, const char *description, size_t length) {
    if (ARENA_TRAP(arena))
        return NULL;
    struct batten *answer = ARENA_NEW(arena, struct batten);
    answer->arena = arena;
    judge(answer, description, length);
    return answer;
}

struct batten *batten_check(const char *description, size_t length) {
    struct arena *arena = arena_new();
    if (!arena)
        return NULL;
    gsl_error_handler_t *handler = gsl_set_error_handler_off();
    struct batten *answer = judge_trapped(arena, description, length);
    gsl_set_error_handler(handler);
    if (!answer)
        arena_free(arena);
    return answer;
}

void batten_free(struct batten *answer) {
    if (answer)
        arena_free(answer->arena);
}

enum batten_outcome batten_outcome_of(const struct batten *answer) {
    return answer->outcome;
}

const char *batten_verdict(const struct batten *answer) {
    return answer->outcome == BATTEN_WRONG_INPUT ? "" : verdict_name(answer->result.verdict);
}

const char *batten_text(const struct batten *answer) {
    return answer->text;
}

const char *batten_json(const struct batten *answer) {
    return answer->json;
}

size_t batten_finding_count(const struct batten *answer) {
    return answer->outcome == BATTEN_HOLDS || answer->outcome == BATTEN_DOES_NOT_HOLD
               ? answer->result.checks.count
               : 0;
}

bool batten_finding_at(const struct batten *answer, size_t index, struct batten_finding *finding) {
    if (index >= batten_finding_count(answer))
        return false;
    const struct check *check = &answer->result.checks.items[index];
    bool covered = check->verdict != VERDICT_NOT_COVERED;
    *finding = (struct batten_finding){.id = check->id,
                                       .kind = check->kind,
                                       .where = check->where,
                                       .combination = check->combination,
                                       .unit = si_unit(check->quantity),
                                       .verdict = verdict_name(check->verdict),
                                       .advice = check->advice,
                                       .source = check->source,
                                       .demand = check->demand,
                                       .limit = covered ? check->limit : NAN,
                                       .ratio = covered ? check->ratio : NAN};
    return true;
}

size_t batten_caution_count(const struct batten *answer) {
    return answer->result.cautions.count;
}

const char *batten_caution_at(const struct batten *answer, size_t index) {
    return index < answer->result.cautions.count ? answer->result.cautions.items[index] : NULL;
}

size_t batten_problem_count(const struct batten *answer) {
    return answer->outcome == BATTEN_WRONG_INPUT ? answer->problems.count : 0;
}

bool batten_problem_at(const struct batten *answer, size_t index, struct batten_problem *problem) {
    if (index >= batten_problem_count(answer))
        return false;
    const struct problem *found = &answer->problems.items[index];
    *problem = (struct batten_problem){.line = found->place.line,
                                       .column = found->place.column,
                                       .key = found->key,
                                       .message = found->message};
    return true;
}

const char *batten_version(void) {
    return BATTEN_VERSION;
}
