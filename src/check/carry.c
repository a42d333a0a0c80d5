#include "check/carry.h"

#include <math.h>

#define EQUATION "NIOSH 94-110 lifting equation"

static struct cited row(const char *name) {
    struct cited cited = {.value = NAN, .source = ""};
    table_value("lifting", name, &cited);
    return cited;
}

static double of(const char *name) {
    return row(name).value;
}

static double reach_multiplier(double reach, struct working *working) {
    working_given(working, "H", "reach: from the ankles to the hands", reach, QUANTITY_LENGTH);
    if (!(reach <= of("reach-most")))
        return working_step(working, "HM", "reach: too far for any weight", NULL, 0.0,
                            QUANTITY_NUMBER, EQUATION);
    double least =
        working_cited(working, "H0", "nearer counts as", row("reach-least"), QUANTITY_LENGTH);
    return working_step(working, "HM", "multiplier for the reach", "H0 / max(H, H0)",
                        least / fmax(reach, least), QUANTITY_NUMBER, EQUATION);
}

static double height_multiplier(double height, struct working *working) {
    working_given(working, "V", "height of the hands", height, QUANTITY_LENGTH);
    if (!(height <= of("height-most")))
        return working_step(working, "VM", "height: too high for any weight", NULL, 0.0,
                            QUANTITY_NUMBER, EQUATION);
    double best =
        working_cited(working, "V0", "the best height", row("height-best"), QUANTITY_LENGTH);
    double span = working_cited(working, "v", "height over which nothing would be left",
                                row("height-span"), QUANTITY_LENGTH);
    return working_step(working, "VM", "multiplier for the height", "1 - max(V - V0, V0 - V) / v",
                        1.0 - fabs(height - best) / span, QUANTITY_NUMBER, EQUATION);
}

static double travel_multiplier(double travel, struct working *working) {
    working_given(working, "D", "how far it is lifted", travel, QUANTITY_LENGTH);
    if (!(travel <= of("travel-most")))
        return working_step(working, "DM", "too far for any weight", NULL, 0.0, QUANTITY_NUMBER,
                            EQUATION);
    if (travel < of("travel-least"))
        return working_step(working, "DM", "multiplier for the way: hardly lifted", NULL, 1.0,
                            QUANTITY_NUMBER, EQUATION);
    double base = working_cited(working, "d0", "share that the way leaves", row("travel-base"),
                                QUANTITY_NUMBER);
    double part = working_cited(working, "d1", "and more of it where the way is short",
                                row("travel-part"), QUANTITY_LENGTH);
    return working_step(working, "DM", "multiplier for the way", "min(1, d0 + d1 / D)",
                        fmin(1.0, base + part / travel), QUANTITY_NUMBER, EQUATION);
}

static double turn_multiplier(double turn, struct working *working) {
    static const double DEGREE = 0.017453292519943295;
    double degrees = turn / DEGREE;
    if (!(turn <= of("turn-most")))
        return 0.0;
    double multiplier = 1.0 - of("turn-slope") * degrees;
    if (degrees > 0.0)
        working_step(working, "AM", "multiplier for turning", NULL, multiplier, QUANTITY_NUMBER,
                     EQUATION);
    return multiplier;
}

static double grip_multiplier(const struct lift *lift, struct working *working) {
    enum grip grip =
        lift->grip == GRIP_FAIR && lift->height >= of("grip-high") ? GRIP_GOOD : lift->grip;
    static const char *const rows[] = {"grip-good", "grip-fair", "grip-poor"};
    static const char *const words[] = {"grip: good at this height", "grip: fair, no handles",
                                        "grip: poor"};
    return working_cited(working, "CM", words[grip], row(rows[grip]), QUANTITY_NUMBER);
}

double lift_limit(const struct lift *lift, struct working *working) {
    struct cited best = table_constant("carry-one-person"); /* pounds count as a weight, N */
    best.value /= table_constant("gravity").value;
    double most =
        working_cited(working, "LC", "what one person lifts at best", best, QUANTITY_MASS);
    double reach = reach_multiplier(lift->reach, working);
    double height = height_multiplier(lift->height, working);
    double travel = travel_multiplier(lift->travel, working);
    double turn = turn_multiplier(lift->turn, working);
    double grip = grip_multiplier(lift, working);
    double seldom =
        working_cited(working, "FM", "how often: seldom", row("frequency.0.2.1h"), QUANTITY_NUMBER);
    bool turned = lift->turn > 0.0;
    return working_step(working, "R", "what one person may lift",
                        turned ? "LC * HM * VM * DM * AM * CM * FM" : "LC * HM * VM * DM * CM * FM",
                        most * reach * height * travel * turn * grip * seldom, QUANTITY_MASS,
                        EQUATION);
}

struct rating check_carry(const struct carried *carried, struct working *working) {
    double best = of("height-best");
    double height = fmin(carried->top, best);
    bool low = height < of("reach-low");
    struct lift lift = {.height = height, .travel = best - height, .grip = GRIP_FAIR};
    double body = working_cited(working, "h", "the body, to the middle of what it holds",
                                row(low ? "reach-deep-low" : "reach-deep"), QUANTITY_LENGTH);
    working_given(working, "t", "how deep the part is", carried->depth, QUANTITY_LENGTH);
    lift.reach = working_step(working, "H1", "reach to the middle of the part", "h + t / 2",
                              body + carried->depth / 2.0, QUANTITY_LENGTH, EQUATION);
    double limit = lift_limit(&lift, working);
    working_given(working, "W", "what the part weighs", carried->weight, QUANTITY_MASS);
    struct rating rating = rating_of(carried->weight, limit, QUANTITY_MASS, EQUATION, "");
    working_step(working, "r", "share of what may be lifted", limit > 0.0 ? "W / R" : NULL,
                 rating.ratio, QUANTITY_NUMBER, "");
    return rating;
}
