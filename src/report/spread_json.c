#include "report/spread_json.h"

static void name_input(struct json *json, const struct spread_input *input) {
    json_key_string(json, "input", SPREAD_KIND_NAMES[input->kind]);
    json_key_string(json, "of", input->of);
}

static void check_json(struct json *json, const struct spread_answer *answer,
                       const struct spread_check *check) {
    json_object(json, JSON_ONE_LINE);
    json_key_string(json, "id", check->id);
    json_key_number(json, "failed", (double)check->failed);
    json_key_number(json, "not_covered", (double)check->not_covered);
    json_key_bool(json, "changes", check->changes);
    json_key(json, "matters");
    json_list(json, JSON_ONE_LINE);
    for (size_t k = 0; k < check->matter_count; k++) {
        json_object(json, JSON_ONE_LINE);
        name_input(json, &answer->inputs[check->matters[k].input]);
        json_key_number(json, "rank_correlation", check->matters[k].rank_correlation);
        json_close(json);
    }
    json_close(json);
    json_close(json);
}

void spread_json(struct json *json, const struct spread_answer *answer) {
    json_key(json, "spread");
    json_object(json, JSON_LINES);
    json_key_number(json, "builds", (double)answer->builds);
    json_key_number(json, "seed", (double)answer->seed);
    json_key_number(json, "failed", (double)answer->failed);
    json_key_number(json, "fell", (double)answer->fell);
    json_key_string(json, "caution",
                    "no reliability analysis: it tells which checks are near and what they hang "
                    "on; what is not among the inputs stays as described");
    json_key(json, "inputs");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->input_count; k++) {
        json_object(json, JSON_ONE_LINE);
        name_input(json, &answer->inputs[k]);
        json_close(json);
    }
    json_close(json);
    json_key(json, "checks");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->checks.count; k++)
        check_json(json, answer, &answer->checks.items[k]);
    json_close(json);
    json_close(json);
}
