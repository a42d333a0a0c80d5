#include "report/cut_words.h"

#include <math.h>
#include <string.h>

const char *money_in_words(struct arena *arena, double amount) {
    if (!(fabs(amount) < 1e13))
        return "?";
    long long hundredths = llround(amount * 100.0);
    return arena_print(arena, "%lld.%02lld", hundredths / 100, hundredths % 100);
}

const char *cut_length_words(struct arena *arena, const struct cut_answer *answer, double m) {
    return quantity_print_length(arena, m, answer->frame->units);
}

const char *cut_size_words(struct arena *arena, const struct cut_answer *answer, double a,
                           double b) {
    return arena_print(arena, "%s x %s", cut_length_words(arena, answer, a),
                       cut_length_words(arena, answer, b));
}

const char *kerf_in_words(struct arena *arena, const struct cut_answer *answer) {
    const double part = 0.0254 / 64.0;
    long parts = lround(answer->kerf / part), whole = 64;
    bool fits = parts > 0 && parts < whole && fabs(answer->kerf - (double)parts * part) < 1e-9;
    if (answer->frame->units == UNITS_SI || !fits)
        return quantity_print(arena, answer->kerf, QUANTITY_LENGTH, answer->frame->units);
    while (parts % 2 == 0) {
        parts /= 2;
        whole /= 2;
    }
    return arena_print(arena, "%ld/%ld in", parts, whole);
}

const char *wood_in_words(struct arena *arena, const struct cut_answer *answer, int number) {
    const struct stick *stick = &answer->frame->sticks.items[number];
    struct text text = text_new(arena);
    if (stick->size >= 0)
        text_add(&text, table_size(stick->size)->name);
    else if (stick->has_size)
        text_print(&text, "%s x %s", cut_length_words(arena, answer, stick->thickness),
                   cut_length_words(arena, answer, stick->width));
    else
        text_add(&text, "own section");
    if (stick->species >= 0)
        text_print(&text, " %s, %s", table_species_name(stick->species),
                   table_grade_name(stick->grade));
    return text_string(&text);
}

const char *piece_label(struct arena *arena, const struct cut_piece *piece) {
    const char *slash = strchr(piece->name, '/'), *dash = strrchr(piece->name, '-');
    return slash && dash > slash ? arena_copy(arena, piece->name, (size_t)(dash - piece->name))
                                 : piece->name;
}

/* Pieces from `from` on that are of one length: how many. */
static size_t same_length(struct arena *arena, const struct cut_answer *answer,
                          const struct cut_sticks *sticks, const struct cut_board *board,
                          size_t from) {
    const char *length =
        cut_length_words(arena, answer, sticks->pieces[board->pieces[from]].length);
    size_t count = 1;
    while (from + count < board->count &&
           strcmp(length, cut_length_words(arena, answer,
                                           sticks->pieces[board->pieces[from + count]].length)) ==
               0)
        count++;
    return count;
}

static void add_labels(struct text *text, const struct cut_sticks *sticks,
                       const struct cut_board *board, size_t from, size_t count) {
    const char *before = "";
    for (size_t k = 0; k < count; k++) {
        const char *label = piece_label(text->arena, &sticks->pieces[board->pieces[from + k]]);
        if (strcmp(label, before) != 0)
            text_print(text, "%s%s", k ? " + " : " ", label);
        before = label;
    }
}

const char *board_in_words(struct arena *arena, const struct cut_answer *answer,
                           const struct cut_sticks *sticks, const struct cut_board *board) {
    struct text text = text_new(arena);
    for (size_t from = 0, count; from < board->count; from += count) {
        const struct cut_piece *piece = &sticks->pieces[board->pieces[from]];
        count = same_length(arena, answer, sticks, board, from);
        text_add(&text, from ? ", " : "");
        if (count > 1)
            text_print(&text, "%zu x ", count);
        text_add(&text, cut_length_words(arena, answer, piece->length));
        add_labels(&text, sticks, board, from, count);
    }
    return text_string(&text);
}

/* "18.4 deg on the 1-1/2 in face", both where it slants both ways; "" square */
static const char *slants_in_words(struct arena *arena, const struct cut_answer *answer,
                                   const struct cut_slant slants[2]) {
    struct text text = text_new(arena);
    for (int axis = 0; axis < 2; axis++) {
        const char *angle =
            quantity_print(arena, slants[axis].angle, QUANTITY_ANGLE, answer->frame->units);
        if (strcmp(angle, "0 deg") != 0)
            text_print(&text, "%s%s on the %s face", text.count ? " and " : "", angle,
                       cut_length_words(arena, answer, slants[axis].face));
    }
    return text_string(&text);
}

const char *ends_in_words(struct arena *arena, const struct cut_answer *answer,
                          const struct cut_piece *piece) {
    const char *one = slants_in_words(arena, answer, piece->slants[0]);
    const char *other = slants_in_words(arena, answer, piece->slants[1]);
    if (!one[0] && !other[0])
        return "";
    if (strcmp(one, other) == 0)
        return arena_print(arena, "both ends off square by %s", one);
    if (!one[0] || !other[0])
        return arena_print(arena, "one end off square by %s", one[0] ? one : other);
    return arena_print(arena, "one end off square by %s, the other by %s", one, other);
}

const char *boards_proof(struct arena *arena, const struct cut_sticks *sticks) {
    bool by_cost = isfinite(sticks->least_cost);
    if (sticks->too_long_count)
        return "not all of it can be cut from these";
    if (sticks->proved)
        return by_cost ? "no cheaper choice will do" : "no fewer will do";
    return by_cost ? arena_print(arena, "not proved to be cheapest: %s is the least it can cost",
                                 money_in_words(arena, sticks->least_cost))
                   : arena_print(arena, "not proved to be fewest: at least %zu are needed",
                                 sticks->bound);
}

const char *sheets_proof(struct arena *arena, const struct cut_sheets *sheets) {
    if (sheets->too_large)
        return "not all of it can be cut from these";
    if (sheets->proved)
        return "no fewer will do";
    return arena_print(arena, "not proved to be fewest: at least %d are needed", sheets->bound);
}
