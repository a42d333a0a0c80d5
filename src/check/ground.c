#include "check/ground.h"

#include "base/text.h"

#include <math.h>

#define STATICS "statics"

/* Moments under this share of all of them are what round-off left. */
static const double NOTHING = 1e-9;

static struct rating rate(double demand, double limit, enum quantity quantity, const char *source) {
    struct rating rating = rating_of(demand, limit, quantity, source, "");
    if (demand == 0.0 && limit >= 0.0)
        rating.ratio = 0.0;
    return rating;
}

/* A ratio of nothing to nothing, or over nothing, is no sum to redo. */
static void note_ratio(struct working *working, const char *formula, const struct rating *rating) {
    if (isfinite(rating->ratio) && rating->limit > 0.0)
        working_step(working, "r", "share of the limit", formula, rating->ratio, QUANTITY_NUMBER,
                     "");
}

static const char *numbered(const struct working *working, const char *letter, size_t number) {
    return arena_print(working->arena, "%s%zu", letter, number);
}

/* One part: its force and where that acts, as far as it is one force; returns its moment's symbol.
 */
static void note_part(struct working *working, const struct tip_part *part, size_t number) {
    const char *moment = numbered(working, "M", number);
    bool overturns = part->moment > 0.0;
    const char *words = arena_print(working->arena, "%s: moment that %s", part->words,
                                    overturns ? "overturns" : "holds");
    bool down = part->down != 0.0;
    double force = down ? part->down : part->level;
    if (force == 0.0) {
        working_given(working, moment, words, fabs(part->moment), QUANTITY_MOMENT);
        return;
    }
    const char *letter = down ? "W" : "H", *arm = down ? "a" : "h";
    working_given(
        working, numbered(working, letter, number),
        arena_print(working->arena, "%s: %s", part->words, down ? "weight" : "level force"),
        fabs(force), QUANTITY_WEIGHT);
    working_given(working, numbered(working, arm, number),
                  down ? (overturns ? "how far its middle lies beyond the edge"
                                    : "how far its middle lies inside the edge")
                       : "height of its middle above the edge",
                  fabs(part->moment / force), QUANTITY_LENGTH);
    working_step(working, moment, words,
                 arena_print(working->arena, "%s%zu * %s%zu", letter, number, arm, number),
                 fabs(part->moment), QUANTITY_MOMENT, "");
}

/* "M1 + M3" of the parts that overturn, or of those that hold. */
static const char *sum_of(const struct working *working, const struct tip_input *input,
                          bool overturning) {
    struct text text = text_new(working->arena);
    for (size_t k = 0; k < input->part_count; k++)
        if (input->parts[k].moment != 0.0 && (input->parts[k].moment > 0.0) == overturning)
            text_print(&text, "%sM%zu", text.count ? " + " : "", k + 1);
    for (size_t k = 0; !overturning && k < input->hold_count; k++)
        text_print(&text, "%sT%zu * t%zu", text.count ? " + " : "", k + 1, k + 1);
    if (!text.count)
        text_add(&text, "0");
    return text_string(&text);
}

static void note_tip(struct working *working, const struct tip_input *input,
                     const struct rating *rating) {
    if (!working)
        return;
    for (size_t k = 0; k < input->part_count; k++)
        if (input->parts[k].moment != 0.0)
            note_part(working, &input->parts[k], k + 1);
    for (size_t k = 0; k < input->hold_count; k++) {
        working_given(working, numbered(working, "T", k + 1), "hold-down of a foot that would rise",
                      input->holds[k].force, QUANTITY_WEIGHT);
        working_given(working, numbered(working, "t", k + 1), "its distance from the edge",
                      input->holds[k].arm, QUANTITY_LENGTH);
    }
    working_step(working, "Mo", "what overturns it", sum_of(working, input, true), rating->demand,
                 QUANTITY_MOMENT, "");
    working_step(working, "Mr", "what holds it", sum_of(working, input, false), rating->limit,
                 QUANTITY_MOMENT, "");
    note_ratio(working, "Mo / Mr", rating);
}

struct rating check_tip(const struct tip_input *input, struct working *working) {
    double overturning = 0.0, holding = 0.0, all = 0.0;
    for (size_t k = 0; k < input->part_count; k++) {
        double moment = input->parts[k].moment;
        all += fabs(moment);
        if (moment > 0.0)
            overturning += moment;
        else
            holding -= moment; /* a NaN stays one */
    }
    for (size_t k = 0; k < input->hold_count; k++)
        holding += input->holds[k].force * input->holds[k].arm;
    if (overturning <= NOTHING * all)
        overturning = 0.0;
    struct rating rating =
        rate(overturning, holding, QUANTITY_MOMENT, STATICS " (moments about the edge)");
    note_tip(working, input, &rating);
    return rating;
}

struct rating check_slide(const struct slide_input *input, struct working *working) {
    double holds = 0.0;
    struct text sum = text_new(working ? working->arena : NULL);
    working_given(working, "Hx", "level force, left-right", fabs(input->level[0]), QUANTITY_WEIGHT);
    working_given(working, "Hy", "level force, front-back", fabs(input->level[1]), QUANTITY_WEIGHT);
    double level = working_step(working, "H", "level force", "sqrt(Hx^2 + Hy^2)",
                                hypot(input->level[0], input->level[1]), QUANTITY_WEIGHT, "");
    for (size_t k = 0; k < input->ground_count; k++) {
        const struct slide_ground *ground = &input->grounds[k];
        holds += ground->friction.value * ground->pressure;
        if (!working)
            continue;
        working_given(working, numbered(working, "N", k + 1),
                      arena_print(working->arena, "what presses on the %s", ground->words),
                      ground->pressure, QUANTITY_WEIGHT);
        working_cited(working, numbered(working, "mu", k + 1), "friction there", ground->friction,
                      QUANTITY_NUMBER);
        text_print(&sum, "%smu%zu * N%zu", k ? " + " : "", k + 1, k + 1);
    }
    if (working)
        working_step(working, "F", "what the ground holds", text_string(&sum), holds,
                     QUANTITY_WEIGHT, "");
    struct rating rating = rate(level, holds, QUANTITY_WEIGHT, STATICS " and friction [trade]");
    note_ratio(working, "H / F", &rating);
    return rating;
}

struct rating check_lift(double pull, double hold_down, struct working *working) {
    struct rating rating = rate(pull, hold_down, QUANTITY_WEIGHT, STATICS);
    working_given(working, "U", "force that keeps this foot on the ground, with every foot held",
                  pull, QUANTITY_WEIGHT);
    working_given(working, "T",
                  hold_down > 0.0 ? "hold-down given for it" : "hold-down given for it: none",
                  hold_down, QUANTITY_WEIGHT);
    note_ratio(working, "U / T", &rating);
    return rating;
}
