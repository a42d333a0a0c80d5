#include "report/fix_json.h"

#include "frame/merge.h"
#include "frame/node.h"

/* An edit as it stands in the description: every value is text, what goes away is null. */
static void node_json(struct json *json, const struct node *node) {
    if (node->kind == NODE_TEXT && node_removes(node)) {
        json_null(json);
        return;
    }
    if (node->kind == NODE_TEXT) {
        json_string(json, node->text);
        return;
    }
    bool map = node->kind == NODE_MAP;
    if (map)
        json_object(json, JSON_ONE_LINE);
    else
        json_list(json, JSON_ONE_LINE);
    for (const struct node *child = node->first; child; child = child->next) {
        if (map)
            json_key(json, child->key);
        node_json(json, child);
    }
    json_close(json);
}

static void ids_json(struct json *json, const char *key, const struct fix_check *checks,
                     size_t count) {
    json_key(json, key);
    json_list(json, JSON_ONE_LINE);
    for (size_t k = 0; k < count; k++)
        if (*checks[k].id)
            json_string(json, checks[k].id);
    json_close(json);
}

static void changes_json(struct json *json, const struct fix_answer *answer) {
    json_key(json, "changes");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->change_count; k++) {
        const struct fix_change *change = &answer->changes[k];
        json_object(json, JSON_LINES);
        json_key_string(json, "what", change->what);
        json_key(json, "edit");
        node_json(json, change->edit);
        json_key_number(json, "cost", change->cost);
        json_key_number(json, "effort", change->effort);
        ids_json(json, "mends", change->mends, change->mend_count);
        json_close(json);
    }
    json_close(json);
}

void fix_json(struct json *json, const struct fix_answer *answer) {
    json_object(json, JSON_LINES);
    changes_json(json, answer);
    json_key_number(json, "cost", answer->cost);
    json_key_string(json, "verdict_after", verdict_name(answer->after));
    json_key_number(json, "tried", (double)answer->tried);
    json_key_bool(json, "proved_cheapest", answer->proved);
    json_key_number(json, "effort", answer->effort);
    ids_json(json, "left", answer->left.items, answer->left.count);
    json_close(json);
    json_end(json);
}
