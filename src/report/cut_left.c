/* What is left over and worth keeping. */
#include "report/cut_words.h"
#include "report/layout.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

static int larger_first(const void *left, const void *right) {
    double a = *(const double *)left, b = *(const double *)right;
    return (a < b) - (a > b);
}

static const char *off_cuts_of_boards(struct arena *arena, const struct cut_answer *answer,
                                      const struct cut_sticks *sticks) {
    double *kept = ARENA_ARRAY(arena, double, sticks->board_count);
    size_t count = 0;
    for (size_t b = 0; b < sticks->board_count; b++)
        if (sticks->boards[b].off_cut >= table_constant("cut-keep").value)
            kept[count++] = sticks->boards[b].off_cut;
    if (count)
        qsort(kept, count, sizeof *kept, larger_first);
    struct text list = text_new(arena);
    for (size_t from = 0, same; from < count; from += same) {
        const char *length = cut_length_words(arena, answer, kept[from]);
        for (same = 1; from + same < count &&
                       strcmp(length, cut_length_words(arena, answer, kept[from + same])) == 0;)
            same++;
        text_add(&list, list.count ? ", " : "");
        if (same > 1)
            text_print(&list, "%zu x ", same);
        text_add(&list, length);
    }
    return text_string(&list);
}

/* What no piece of a sheet reaches, over its whole width or its whole length: the larger of the
 * two that is worth keeping; false where neither is. */
static bool strip_of(const struct cut_answer *answer, const struct cut_sheets *sheets, int number,
                     double strip[2]) {
    double keep = table_constant("cut-keep").value, reach[2] = {0.0, 0.0}, largest = 0.0;
    const double sheet[2] = {sheets->width, sheets->length};
    for (size_t k = 0; k < sheets->piece_count; k++)
        for (int c = 0; c < 2 && sheets->pieces[k].sheet == number; c++)
            reach[c] = fmax(reach[c], sheets->pieces[k].at[c] + sheets->pieces[k].size[c]);
    for (int c = 0; c < 2; c++) {
        double left = sheet[c] - reach[c] - answer->kerf, whole = sheet[1 - c];
        if (left < keep || whole < keep || left * whole <= largest)
            continue;
        largest = left * whole;
        strip[c] = left;
        strip[1 - c] = whole;
    }
    return largest > 0.0;
}

static const char *off_cuts_of_sheets(struct arena *arena, const struct cut_answer *answer,
                                      const struct cut_sheets *sheets) {
    struct text list = text_new(arena);
    for (int number = 1; number <= sheets->needed; number++) {
        double strip[2];
        if (strip_of(answer, sheets, number, strip))
            text_print(&list, "%s%s of sheet %d", list.count ? ", " : "",
                       cut_size_words(arena, answer, strip[0], strip[1]), number);
    }
    return text_string(&list);
}

const char **cut_left_lines(struct arena *arena, const struct cut_answer *answer, size_t *count) {
    size_t kinds = answer->stick_count + answer->sheet_count;
    const char **lines = ARENA_ARRAY(arena, const char *, kinds);
    *count = 0;
    for (size_t k = 0; k < answer->stick_count; k++) {
        const char *list = off_cuts_of_boards(arena, answer, &answer->sticks[k]);
        if (list[0])
            lines[(*count)++] = arena_print(arena, "%s: %s", answer->sticks[k].name, list);
    }
    for (size_t k = 0; k < answer->sheet_count; k++) {
        const struct cut_sheets *sheets = &answer->sheets[k];
        const char *list = off_cuts_of_sheets(arena, answer, sheets);
        if (list[0])
            lines[(*count)++] =
                arena_print(arena, "%s: %s", table_sheet(sheets->sheet)->name, list);
    }
    return lines;
}

const char *cut_left_heading(struct arena *arena, const struct cut_answer *answer) {
    return arena_print(arena, "What is left over, from %s on",
                       cut_length_words(arena, answer, table_constant("cut-keep").value));
}

void cut_left_section(struct text *text, const struct cut_answer *answer) {
    size_t count;
    const char **lines = cut_left_lines(text->arena, answer, &count);
    if (count)
        text_print(text, "\n%s\n", cut_left_heading(text->arena, answer));
    for (size_t k = 0; k < count; k++)
        paragraph(text, "  ", 6, lines[k]);
}
