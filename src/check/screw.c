#include "check/screw.h"

#include <math.h>

#define SCREW_SOURCE "NDS 2018 12.3, 12.4"

/* Why a pull has no value; "" where it has one. */
static const char *pull_missing(const struct screw_input *input,
                                const struct dowel_values *values) {
    if (input->main.end_grain && !(values->axial > 0.0))
        return "a pull on screws in end grain";
    return *values->withdrawal_missing ? values->withdrawal_missing : values->pull_missing;
}

/* A little pull is none where pulling has no value. */
static double counted_pull(const struct screw_input *input, const struct dowel_values *values) {
    return input->pull <= input->little && *pull_missing(input, values) ? 0.0 : input->pull;
}

static struct rating missing(const char *what, double load) {
    struct rating rating = rating_missing(what, SCREW_SOURCE);
    rating.demand = load;
    rating.quantity = QUANTITY_WEIGHT;
    return rating;
}

/* Sideways as any; pulled, its washers press on the wood. No rule adds the two. */
static struct rating bolt_rating(const struct screw_input *input, const struct dowel_values *values,
                                 struct working *working) {
    struct screw_input sideways = *input;
    sideways.washer_count = 0;
    sideways.pull = 0.0;
    struct rating worst = screw_rating(&sideways, values);
    for (int k = 0; k < input->washer_count && input->pull != 0.0; k++) {
        struct bearing_input washer = input->washers[k];
        washer.force = input->pull;
        working_heading(working, "Pulled: a washer presses on the wood");
        struct rating pressed = check_bearing(&washer, working);
        if (pressed.covered)
            pressed.governs = "a washer presses into the wood";
        worst = rating_worse(worst, pressed);
    }
    return worst;
}

struct rating screw_rating(const struct screw_input *input, const struct dowel_values *values) {
    if (input->washer_count)
        return bolt_rating(input, values, NULL);
    double pull = counted_pull(input, values), load = hypot(input->shear, pull);
    if (*values->lateral_missing)
        return missing(values->lateral_missing, load);
    if (pull > 0.0 && *pull_missing(input, values))
        return missing(pull_missing(input, values), load);
    double limit = pull > 0.0 ? dowel_combined(input->dowel->kind, values->axial, values->lateral,
                                               atan2(pull, input->shear))
                              : values->lateral;
    const char *governs = pull > input->shear ? "pulled out" : pull > 0.0 ? "sideways and out" : "";
    return rating_of(load, limit, QUANTITY_WEIGHT, SCREW_SOURCE, governs);
}

struct rating check_screw(const struct screw_input *input, struct working *working) {
    struct dowel_values values;
    dowel_values(input->dowel, &input->side, &input->main, &input->service, working, &values);
    struct rating rating = screw_rating(input, &values);
    if (!working)
        return rating;
    if (input->washer_count)
        bolt_rating(input, &values, working);
    double pull = input->washer_count ? 0.0 : counted_pull(input, &values);
    working_heading(working, "The worst fastener");
    working_given(working, "V", "force sideways on the worst fastener", input->shear,
                  QUANTITY_WEIGHT);
    working_given(working, "P",
                  input->washer_count ? "pull on it, which its washers take" : "pull on it",
                  input->washer_count ? input->pull : pull, QUANTITY_WEIGHT);
    struct screw_input alone = *input;
    alone.washer_count = 0;
    alone.pull = pull;
    struct rating share = screw_rating(&alone, &values);
    if (!share.covered)
        return rating;
    working_step(working, "F", pull > 0.0 ? "both together" : "counted on the fastener itself",
                 pull > 0.0 ? "sqrt(V^2 + P^2)" : "V", share.demand, QUANTITY_WEIGHT, "");
    working_given(working, "Fa",
                  pull > 0.0 ? "what it may carry at this slant" : "what it may carry sideways",
                  share.limit, QUANTITY_WEIGHT);
    working_step(working, "r", "share of the limit", "F / Fa", share.ratio, QUANTITY_NUMBER, "");
    return rating;
}
