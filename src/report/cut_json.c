#include "report/cut_json.h"

#include <math.h>

static void key_numbers(struct json *json, const char *key, const double *values, size_t count) {
    json_key(json, key);
    json_numbers(json, values, count);
}

/* ---- boards ---- */

static void board_json(struct json *json, const struct cut_sticks *sticks,
                       const struct cut_board *board) {
    json_object(json, JSON_ONE_LINE);
    json_key_number(json, "stock", board->stock);
    json_key(json, "pieces");
    json_list(json, JSON_ONE_LINE);
    for (size_t k = 0; k < board->count; k++) {
        const struct cut_piece *piece = &sticks->pieces[board->pieces[k]];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "member", piece->name);
        json_key_number(json, "length", piece->length);
        json_close(json);
    }
    json_close(json);
    json_key_number(json, "left", board->left);
    json_key_number(json, "off_cut", board->off_cut);
    json_close(json);
}

/* Pieces whose ends are not square. */
static void angles_json(struct json *json, const struct cut_sticks *sticks) {
    json_key(json, "slanting");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < sticks->piece_count; k++) {
        const struct cut_piece *piece = &sticks->pieces[k];
        double angles[2][2], largest = 0.0;
        for (int end = 0; end < 2; end++)
            for (int axis = 0; axis < 2; axis++) {
                angles[end][axis] = piece->slants[end][axis].angle;
                largest = fmax(largest, angles[end][axis]);
            }
        if (!(largest > 1e-6) && !piece->measure)
            continue;
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "member", piece->name);
        key_numbers(json, "from", angles[0], 2);
        key_numbers(json, "to", angles[1], 2);
        json_key_number(json, "needs", piece->needs);
        json_key_bool(json, "measure", piece->measure);
        json_close(json);
    }
    json_close(json);
}

/* The stock of all boards, or the longest in use. */
static double main_stock(const struct cut_sticks *sticks) {
    double longest = NAN;
    for (size_t b = 0; b < sticks->board_count; b++)
        longest = fmax(longest, sticks->boards[b].stock);
    return sticks->board_count ? longest : sticks->stocks[sticks->stock_count - 1];
}

static void sticks_json(struct json *json, const struct cut_sticks *sticks) {
    json_object(json, JSON_LINES);
    json_key_string(json, "stick", sticks->name);
    json_key_number(json, "stock", main_stock(sticks));
    key_numbers(json, "stocks", sticks->stocks, sticks->stock_count);
    json_key(json, "boards");
    json_list(json, JSON_LINES);
    for (size_t b = 0; b < sticks->board_count; b++)
        board_json(json, sticks, &sticks->boards[b]);
    json_close(json);
    json_key_number(json, "boards_needed", (double)sticks->board_count);
    json_key_number(json, "bound", (double)sticks->bound);
    json_key_bool(json, "proved", sticks->proved);
    json_key_number(json, "cost", sticks->cost);
    json_key_number(json, "least_cost", sticks->least_cost);
    json_key(json, "too_long");
    json_list(json, JSON_ONE_LINE);
    for (size_t k = 0; k < sticks->too_long_count; k++)
        json_string(json, sticks->pieces[sticks->too_long[k]].name);
    json_close(json);
    angles_json(json, sticks);
    json_close(json);
}

/* ---- sheets ---- */

static void sheet_piece_json(struct json *json, const struct cut_sheet_piece *piece) {
    json_object(json, JSON_ONE_LINE);
    json_key_string(json, "panel", piece->name);
    json_key_number(json, "sheet", piece->sheet ? (double)piece->sheet : NAN);
    key_numbers(json, "at", piece->at, 2);
    key_numbers(json, "size", piece->size, 2);
    json_key_bool(json, "turned", piece->turned);
    json_close(json);
}

static void sheets_json(struct json *json, const struct cut_sheets *sheets) {
    const double size[] = {sheets->width, sheets->length};
    json_object(json, JSON_LINES);
    json_key_string(json, "sheet", table_sheet(sheets->sheet)->name);
    key_numbers(json, "size", size, 2);
    json_key_number(json, "sheets_needed", sheets->needed);
    json_key_number(json, "bound", sheets->bound);
    json_key_bool(json, "proved", sheets->proved);
    json_key(json, "pieces");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < sheets->piece_count; k++)
        sheet_piece_json(json, &sheets->pieces[k]);
    json_close(json);
    json_key_number(json, "cost", sheets->cost);
    json_close(json);
}

/* ---- screws, weight, cost ---- */

static void smalls_json(struct json *json, const struct cut_answer *answer) {
    json_key(json, "small_parts");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->small_count; k++) {
        const struct cut_small *small = &answer->smalls[k];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "what", small->key);
        json_key_number(json, "count", small->count);
        json_key_number(json, "box", small->in_box ? (double)small->in_box : NAN);
        json_key_number(json, "boxes", small->in_box ? (double)small->boxes : NAN);
        json_key_number(json, "cost", small->cost);
        json_close(json);
    }
    json_close(json);
}

enum state { AS_JUDGED, DRY, AFTER_RAIN, WITH_TRAYS };

static double weight_in(const struct cut_weight *weight, enum state state) {
    switch (state) {
    case DRY:
        return weight->dry;
    case AFTER_RAIN:
        return weight->after_rain;
    case WITH_TRAYS:
        return weight->with_trays;
    default:
        return weight->as_judged;
    }
}

static void weights_in(struct json *json, const struct cut_answer *answer, enum state state) {
    json_key_number(json, "total", weight_in(&answer->whole, state));
    json_key(json, "parts");
    json_object(json, JSON_ONE_LINE);
    for (size_t k = 0; k < answer->part_count; k++)
        json_key_number(json, answer->parts[k].name, weight_in(&answer->parts[k], state));
    json_close(json);
}

static void weight_json(struct json *json, const struct cut_answer *answer) {
    static const char *const names[] = {
        [DRY] = "dry", [AFTER_RAIN] = "after_rain", [WITH_TRAYS] = "with_trays"};
    json_key(json, "weight");
    json_object(json, JSON_LINES);
    weights_in(json, answer, AS_JUDGED);
    for (enum state state = DRY; state <= WITH_TRAYS; state++) {
        json_key(json, names[state]);
        json_object(json, JSON_ONE_LINE);
        weights_in(json, answer, state);
        json_close(json);
    }
    json_close(json);
}

static void cost_json(struct json *json, const struct cut_answer *answer) {
    json_key(json, "cost");
    json_object(json, JSON_LINES);
    json_key_number(json, "total", answer->cost);
    json_key(json, "lines");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->costs.count; k++) {
        const struct cut_cost_line *line = &answer->costs.items[k];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "what", line->what);
        json_key_string(json, "each", line->each);
        json_key_number(json, "count", (double)line->count);
        json_key_number(json, "price", line->price);
        json_key_number(json, "cost", line->cost);
        json_close(json);
    }
    json_close(json);
    json_key_strings(json, "without_price", answer->unpriced.items, answer->unpriced.count);
    json_close(json);
}

void cut_json(struct json *json, const struct cut_answer *answer) {
    json_object(json, JSON_LINES);
    json_key(json, "sticks");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->stick_count; k++)
        sticks_json(json, &answer->sticks[k]);
    json_close(json);
    json_key(json, "sheets");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->sheet_count; k++)
        sheets_json(json, &answer->sheets[k]);
    json_close(json);
    weight_json(json, answer);
    cost_json(json, answer);
    smalls_json(json, answer);
    json_key_number(json, "kerf", answer->kerf);
    json_key_number(json, "trim", answer->trim);
    json_key_strings(json, "notes", answer->notes.items, answer->notes.count);
    json_close(json);
    json_end(json);
}
