#include "margin/margin.h"

#include "judge/judge.h"
#include "margin/raised.h"

#include <math.h>
#include <string.h>

/* Beyond these nothing is asked: heavier than trays of stone, deeper than any snow, faster than any
 * storm. */
static const double MOST[MARGIN_COUNT] = {1000.0, 100e3, 200.0};

struct question {
    struct arena *arena;
    const struct frame *frame;
    enum margin_load load;
    bool trusted; /* every judgement so far was */
};

/* The check nearest to its limit, or past it farthest; one for which so much load is not published
 * counts as past it. NULL where there is none. */
static const struct check *worst_check(const struct result *result) {
    const struct check *worst = NULL;
    for (size_t k = 0; k < result->checks.count; k++) {
        const struct check *check = &result->checks.items[k];
        if (check->verdict == VERDICT_NOT_COVERED && !check->beyond)
            continue;
        if (isnan(check->ratio))
            return check;
        if (!worst || check->ratio > worst->ratio)
            worst = check;
    }
    return worst;
}

/* Worst ratio less one; far over where the frame folds. */
static double excess(double value, void *params) {
    enum { FAR_OVER = 1000 };
    struct question *question = params;
    struct arena_mark mark = arena_mark(question->arena);
    struct frame frame = margin_raised(question->frame, question->load, value);
    const struct judge_options plain = {0};
    struct result result = {0};
    judge_frame(question->arena, &frame, &plain, &result);
    const struct check *worst = worst_check(&result);
    double over = worst ? worst->ratio - 1.0 : -1.0;
    if (result.verdict == VERDICT_FOLDS || (worst && worst->beyond))
        over = FAR_OVER;
    if (result.verdict == VERDICT_FAILED || isnan(over)) {
        question->trusted = false;
        over = FAR_OVER;
    }
    arena_rewind(question->arena, mark);
    return fmin(over, FAR_OVER);
}

/* Which check stands at its limit there. */
static void name_first(struct question *question, double value, struct margin *margin) {
    const struct judge_options plain = {0};
    struct result result = {0};
    struct frame frame = margin_raised(question->frame, question->load, value);
    judge_frame(question->arena, &frame, &plain, &result);
    const struct check *worst = worst_check(&result);
    if (result.verdict == VERDICT_FOLDS) {
        margin->first = "sway/frame";
        margin->first_words = "it sways over under its own load";
    } else if (worst) {
        margin->first = worst->id;
        margin->first_words = check_words(question->arena, worst);
    }
}

static struct margin find(struct question *question, double described) {
    struct margin margin = {
        .value = NAN, .as_described = described, .first = "", .first_words = ""};
    double low = 0.0,
           high = isnan(described) || described == 0.0 ? MARGIN_START[question->load] : described;
    if (excess(0.0, question) > 0.0) {
        margin.reach = REACH_NONE;
        margin.value = 0.0;
        name_first(question, 0.0, &margin);
        return margin;
    }
    while (!(excess(high, question) > 0.0) && high < MOST[question->load]) {
        low = high;
        high *= 2.0;
    }
    margin.reach = REACH_BEYOND;
    if (question->trusted && high < MOST[question->load]) {
        margin.reach = REACH_FOUND;
        margin.value = margin_root(question->arena, excess, question, low, high);
        name_first(question, margin.value * (1.0 + 1e-9), &margin);
    }
    if (!question->trusted || (margin.reach == REACH_FOUND && isnan(margin.value)))
        margin.reach = REACH_UNKNOWN;
    return margin;
}

static bool has_trays(const struct frame *frame) {
    for (size_t k = 0; k < frame->shelves.count; k++)
        if (frame->shelves.items[k].trays != TRAYS_NONE)
            return true;
    for (size_t k = 0; k < frame->loads.count; k++)
        if (frame->loads.items[k].load_case == CASE_TRAY)
            return true;
    return false;
}

/* What the description gives of a load; NAN: none. */
static double described(const struct frame *frame, enum margin_load load) {
    const struct site *site = &frame->site;
    switch (load) {
    case MARGIN_TRAY:
        return has_trays(frame) ? 1.0 : NAN;
    case MARGIN_SNOW:
        if (site->snow_depth.given)
            return site->snow_depth.value * table_snow_density(site->snow_kind).value *
                   table_constant("gravity").value;
        return site->ground_snow.given ? site->ground_snow.value : NAN;
    default:
        if (site->wind.given)
            return site->wind.value;
        if (site->gust.given)
            return site->gust.value;
        return site->wind_word >= 0 ? table_wind_word_gust(site->wind_word).value : NAN;
    }
}

static void judge_as_described(struct arena *arena, const struct frame *frame,
                               struct margin_answer *answer) {
    const struct judge_options plain = {0};
    struct result result = {0};
    judge_frame(arena, frame, &plain, &result);
    answer->verdict = result.verdict;
    answer->problems = result.problems;
    answer->trouble = result.trouble;
    for (size_t k = 0; k < result.checks.count; k++)
        answer->not_covered += result.checks.items[k].verdict == VERDICT_NOT_COVERED;
    for (size_t k = 0; k < result.cautions.count; k++)
        ARRAY_PUSH(arena, &answer->cautions, result.cautions.items[k]);
}

struct margin_answer *margin_find(struct arena *arena, const struct frame *frame) {
    struct margin_answer *answer = ARENA_NEW(arena, struct margin_answer);
    answer->frame = frame;
    judge_as_described(arena, frame, answer);
    for (int load = 0; load < MARGIN_COUNT; load++) {
        double value = described(frame, load);
        answer->loads[load] =
            (struct margin){.value = NAN, .as_described = value, .first = "", .first_words = ""};
        if (isnan(value) || answer->problems.count || answer->verdict == VERDICT_FOLDS ||
            answer->verdict == VERDICT_FAILED)
            continue;
        struct question question = {arena, frame, (enum margin_load)load, true};
        answer->loads[load] = find(&question, value);
    }
    return answer;
}
