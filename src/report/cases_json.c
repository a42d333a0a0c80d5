#include "report/result_json.h"

static void joints_json(struct json *json, const struct frame *frame,
                        const struct case_result *load_case) {
    json_key(json, "joints");
    json_object(json, JSON_LINES);
    for (size_t k = 0; k < frame->joints.count; k++) {
        json_key(json, frame->joints.items[k].name);
        json_numbers(json, load_case->joints[k], 6);
    }
    json_close(json);
}

static void reactions_json(struct json *json, const struct frame *frame,
                           const struct case_result *load_case) {
    json_key(json, "reactions");
    json_object(json, JSON_LINES);
    for (size_t k = 0; k < frame->supports.count; k++) {
        json_key(json, frame->joints.items[frame->supports.items[k].joint].name);
        json_numbers(json, load_case->reactions[k], 6);
    }
    json_close(json);
}

static void stations_json(struct json *json, const struct stations *stations) {
    const struct {
        const char *key;
        const double *values;
    } lists[] = {{"at", stations->at}, {"N", stations->N}, {"Vy", stations->Vy},
                 {"Vz", stations->Vz}, {"T", stations->T}, {"My", stations->My},
                 {"Mz", stations->Mz}};
    json_object(json, JSON_ONE_LINE);
    for (size_t k = 0; k < sizeof lists / sizeof *lists; k++) {
        json_key(json, lists[k].key);
        json_numbers(json, lists[k].values, stations->count);
    }
    json_close(json);
}

static void members_json(struct json *json, const struct frame *frame,
                         const struct case_result *load_case) {
    json_key(json, "members");
    json_object(json, JSON_LINES);
    for (size_t k = 0; k < frame->members.count; k++) {
        json_key(json, frame->members.items[k].name);
        stations_json(json, &load_case->members[k]);
    }
    json_close(json);
}

void cases_json(struct json *json, const struct result *result) {
    json_key(json, "cases");
    json_object(json, JSON_LINES);
    for (size_t k = 0; k < result->cases.count; k++) {
        const struct case_result *load_case = &result->cases.items[k];
        if (!load_case->solved)
            continue;
        json_key(json, load_case->name);
        json_object(json, JSON_LINES);
        joints_json(json, result->frame, load_case);
        reactions_json(json, result->frame, load_case);
        members_json(json, result->frame, load_case);
        json_close(json);
    }
    json_close(json);
}

static void combination_json(struct json *json, const struct combination_result *combination) {
    json_key(json, combination->name);
    json_object(json, JSON_ONE_LINE);
    json_key(json, "parts");
    json_object(json, JSON_ONE_LINE);
    for (size_t k = 0; k < combination->part_count; k++) {
        json_key_number(json, combination->parts[k].name, combination->parts[k].factor);
    }
    json_close(json);
    json_key_number(json, "duration_factor", combination->duration_factor);
    json_key_number(json, "buckling_factor", combination->buckling_factor);
    json_key_number(json, "buckling_factor_crept", combination->buckling_factor_crept);
    json_close(json);
}

void combinations_json(struct json *json, const struct result *result) {
    json_key(json, "combinations");
    json_object(json, JSON_LINES);
    for (size_t k = 0; k < result->combinations.count; k++)
        if (result->combinations.items[k].solved)
            combination_json(json, &result->combinations.items[k]);
    json_close(json);
}
