#include "report/result_json.h"

#include "base/version.h"
#include "report/spread_json.h"

#include <math.h>

const char *si_unit(enum quantity quantity) {
    /* ORDER QUANTITY */
    static const char *const UNITS[QUANTITY_COUNT] = {
        [QUANTITY_NUMBER] = "1",      [QUANTITY_LENGTH] = "m",         [QUANTITY_WEIGHT] = "N",
        [QUANTITY_MASS] = "kg",       [QUANTITY_LOAD] = "Pa",          [QUANTITY_STRESS] = "Pa",
        [QUANTITY_LINE_LOAD] = "N/m", [QUANTITY_SLIP] = "N/m",         [QUANTITY_DENSITY] = "kg/m3",
        [QUANTITY_AREA] = "m2",       [QUANTITY_MODULUS] = "m3",       [QUANTITY_INERTIA] = "m4",
        [QUANTITY_MOMENT] = "N-m",    [QUANTITY_ROTATION] = "N-m/rad", [QUANTITY_SPEED] = "m/s",
        [QUANTITY_PRESSURE] = "Pa",   [QUANTITY_ANGLE] = "rad",        [QUANTITY_TEMPERATURE] = "K",
    };
    return UNITS[quantity];
}

static void check_json(struct json *json, const struct check *check) {
    bool covered = check->verdict != VERDICT_NOT_COVERED;
    json_object(json, JSON_ONE_LINE);
    json_key_string(json, "id", check->id);
    json_key_string(json, "kind", check->kind);
    json_key_string(json, "where", check->where);
    json_key_string(json, "combination", check->combination);
    json_key_number(json, "demand", check->demand);
    json_key_number(json, "limit", covered ? check->limit : NAN);
    json_key_string(json, "unit", si_unit(check->quantity));
    json_key_number(json, "ratio", covered ? check->ratio : NAN);
    json_key_string(json, "verdict", verdict_name(check->verdict));
    json_key_string(json, "source", check->source);
    json_close(json);
}

static void checks_json(struct json *json, const struct result *result) {
    bool judged = result->verdict != VERDICT_FOLDS && result->verdict != VERDICT_FAILED;
    json_key(json, "checks");
    json_list(json, JSON_LINES);
    for (size_t k = 0; judged && k < result->checks.count; k++)
        check_json(json, &result->checks.items[k]);
    json_close(json);
}

void motion_json(struct json *json, const struct frame *frame, const struct motion *motion) {
    json_object(json, JSON_LINES);
    json_key_string(json, "sentence", motion->sentence);
    json_key(json, "moves");
    json_object(json, JSON_ONE_LINE);
    for (size_t k = 0; k < motion->move_count; k++) {
        json_key(json, frame->joints.items[motion->moves[k].joint].name);
        json_numbers(json, motion->moves[k].by, 3);
    }
    json_close(json);
    if (motion->tightens) {
        json_key(json, "tightens");
        json_bool(json, true);
    }
    json_close(json);
}

static void folding_json(struct json *json, const struct result *result) {
    const struct folding *folding = &result->folding;
    bool known = folding->known;
    json_key(json, "folding");
    json_object(json, folding->motion_count ? JSON_LINES : JSON_ONE_LINE);
    json_key_number(json, "ways", known ? (double)folding->ways : NAN);
    json_key_number(json, "ways_with_panels", known ? (double)folding->ways_with_panels : NAN);
    json_key_number(json, "self_stress",
                    known && folding->self_stress_known ? (double)folding->self_stress : NAN);
    if (folding->motion_count) {
        json_key(json, "motions");
        json_list(json, JSON_LINES);
        for (size_t k = 0; k < folding->motion_count; k++)
            motion_json(json, result->frame, &folding->motions[k]);
        json_close(json);
    }
    json_close(json);
}

void result_json(struct json *json, const struct result *result) {
    json_object(json, JSON_LINES);
    json_key_string(json, "batten", BATTEN_VERSION);
    json_key_string(json, "title", result->frame->title);
    json_key_string(json, "verdict", verdict_name(result->verdict));
    json_key_string(json, "basis", result->basis);
    checks_json(json, result);
    cases_json(json, result);
    combinations_json(json, result);
    folding_json(json, result);
    json_key(json, "accuracy");
    json_object(json, JSON_ONE_LINE);
    json_key_number(json, "backward_error", result->backward_error);
    json_key_number(json, "equilibrium_error", result->equilibrium_error);
    json_close(json);
    json_key(json, "cautions");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < result->cautions.count; k++)
        json_string(json, result->cautions.items[k]);
    json_close(json);
    if (result->spread)
        spread_json(json, result->spread);
    json_close(json);
    json_end(json);
}
