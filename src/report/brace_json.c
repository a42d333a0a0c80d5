#include "report/brace_json.h"

#include "report/brace_words.h"
#include "report/result_json.h"

#include <math.h>

static const char *axis_name(int axis) {
    return axis ? "y" : "x";
}

static void soft_json(struct json *json, const struct brace_answer *answer) {
    json_key(json, "soft");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->soft_count; k++) {
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "direction", axis_name(answer->soft[k].axis));
        json_key_number(json, "lean", answer->soft[k].lean);
        json_key_number(json, "limit", answer->soft[k].limit);
        json_close(json);
    }
    json_close(json);
}

static void motions_json(struct json *json, const struct brace_answer *answer) {
    json_key(json, "motions");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->motion_count; k++)
        motion_json(json, answer->frame, &answer->motions[k]);
    json_close(json);
}

static void braces_json(struct json *json, const struct brace_answer *answer) {
    const struct joint *joints = answer->frame->joints.items;
    json_key(json, "braces");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->brace_count; k++) {
        const struct brace_choice *brace = &answer->braces[k];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "from", joints[brace->from].name);
        json_key_string(json, "to", joints[brace->to].name);
        json_key_string(json, "where", brace->where);
        json_key_number(json, "stops", brace->stops < 0 ? NAN : (double)brace->stops);
        json_key_number(json, "force", brace->force);
        json_close(json);
    }
    json_close(json);
}

static void movements_json(struct json *json, const char *key, const struct lean_row *row, int at) {
    json_key(json, key);
    json_object(json, JSON_ONE_LINE);
    json_key_number(json, "without_panels", row->without_panels[at]);
    json_key_number(json, "with_panels", row->with_panels[at]);
    json_close(json);
}

static void lean_json(struct json *json, const struct brace_answer *answer) {
    json_key(json, "lean");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->lean_count; k++) {
        const struct lean_row *row = &answer->lean[k];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "direction", axis_name(row->axis));
        json_key_number(json, "without_panels", row->without_panels[LEAN_MIDDLE]);
        json_key_number(json, "with_panels", row->with_panels[LEAN_MIDDLE]);
        json_key_number(json, "with_braces", answer->brace_count ? row->with_braces : NAN);
        json_key_number(json, "limit", row->limit);
        movements_json(json, "low", row, LEAN_LOW);
        movements_json(json, "high", row, LEAN_HIGH);
        json_close(json);
    }
    json_close(json);
}

static void alternatives_json(struct json *json, const struct brace_answer *answer) {
    json_key(json, "alternatives");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->alternative_count; k++) {
        const struct alternative *other = &answer->alternatives[k];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "what", other->words);
        json_key_number(json, "ways", other->ways);
        json_key(json, "lean");
        json_object(json, JSON_ONE_LINE);
        json_key_number(json, "x", other->lean[0]);
        json_key_number(json, "y", other->lean[1]);
        json_close(json);
        json_key_bool(json, "enough", alternative_is_enough(other));
        json_close(json);
    }
    json_close(json);
}

static void sheets_json(struct json *json, const struct brace_answer *answer) {
    json_key(json, "sheets");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->sheet_count; k++) {
        const struct sheet_remark *sheet = &answer->sheets[k];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "panel", answer->frame->panels.items[sheet->panel].name);
        json_key_bool(json, "counts", sheet->counts);
        json_key_bool(json, "clear", sheet->clear);
        json_key_string(json, "reason", sheet->reason);
        json_close(json);
    }
    json_close(json);
}

void brace_json(struct json *json, const struct brace_answer *answer) {
    json_object(json, JSON_LINES);
    json_key_number(json, "ways", answer->ways);
    json_key_number(json, "ways_with_panels", answer->ways_with_panels);
    soft_json(json, answer);
    motions_json(json, answer);
    json_key_number(json, "fewest", answer->fewest < 0 ? NAN : (double)answer->fewest);
    json_key_bool(json, "proved", answer->proved);
    braces_json(json, answer);
    lean_json(json, answer);
    json_key_string(json, "brace_stick", answer->brace_stick);
    alternatives_json(json, answer);
    sheets_json(json, answer);
    json_key_strings(json, "notes", answer->notes.items, answer->notes.count);
    struct result cautions = {.frame = answer->frame};
    brace_cautions(json->text.arena, answer, &cautions);
    json_key_strings(json, "cautions", cautions.cautions.items, cautions.cautions.count);
    json_close(json);
    json_end(json);
}
