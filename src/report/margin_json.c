#include "report/margin_json.h"

void margin_json(struct json *json, const struct margin_answer *answer) {
    static const struct {
        const char *key, *number;
    } loads[MARGIN_COUNT] = {{"tray", "factor"}, {"snow", "pressure"}, {"wind", "speed"}};
    json_object(json, JSON_LINES);
    for (int k = 0; k < MARGIN_COUNT; k++) {
        const struct margin *margin = &answer->loads[k];
        json_key(json, loads[k].key);
        if (margin->reach == REACH_NOT_ASKED) {
            json_null(json);
            continue;
        }
        json_object(json, JSON_ONE_LINE);
        json_key_number(json, loads[k].number, margin->value);
        if (*margin->first)
            json_key_string(json, "first", margin->first);
        else {
            json_key(json, "first");
            json_null(json);
        }
        json_close(json);
    }
    json_close(json);
    json_end(json);
}
