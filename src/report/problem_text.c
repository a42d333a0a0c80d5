#include "report/problem_text.h"

#include "base/version.h"
#include "report/visible.h"

#include <math.h>

void problem_text(struct text *text, const char *file_name, const struct problems *problems) {
    struct arena *arena = text->arena;
    for (size_t k = 0; k < problems->count && k < PROBLEMS_SHOWN; k++) {
        const struct problem *problem = &problems->items[k];
        text_add(text, visible(arena, file_name));
        if (problem->place.line > 0)
            text_print(text, ":%d:%d", problem->place.line, problem->place.column);
        if (problem->key[0])
            text_print(text, ": %s", visible(arena, problem->key));
        text_print(text, ": %s\n", visible(arena, problem->message));
    }
    if (problems->count > PROBLEMS_SHOWN)
        text_print(text, "and %zu more\n", problems->count - PROBLEMS_SHOWN);
}

void problem_json(struct json *json, const struct problems *problems) {
    json_object(json, JSON_LINES);
    json_key_string(json, "batten", BATTEN_VERSION);
    json_key(json, "errors");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < problems->count && k < PROBLEMS_SHOWN; k++) {
        const struct problem *problem = &problems->items[k];
        bool placed = problem->place.line > 0;
        json_object(json, JSON_ONE_LINE);
        json_key_number(json, "line", placed ? (double)problem->place.line : NAN);
        json_key_number(json, "column", placed ? (double)problem->place.column : NAN);
        json_key_string(json, "key", problem->key);
        json_key_string(json, "message", problem->message);
        json_close(json);
    }
    json_close(json);
    if (problems->count > PROBLEMS_SHOWN)
        json_key_number(json, "more", (double)(problems->count - PROBLEMS_SHOWN));
    json_close(json);
    json_end(json);
}
