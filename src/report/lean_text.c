#include "report/brace_words.h"

#include "report/layout.h"
#include "units/quantity.h"

#include <math.h>

enum { LABEL_WIDTH = 14, MOVE_WIDTH = 20 };

static void add_cell(struct lean_cells *table, bool shown, size_t width, const char *words) {
    if (!shown)
        return;
    table->widths[table->count] = width;
    table->cells[table->count++] = words;
}

static bool some_sheet_counts(const struct brace_answer *answer) {
    for (size_t k = 0; k < answer->sheet_count; k++)
        if (answer->sheets[k].counts)
            return true;
    return false;
}

static struct lean_cells cells_of(const struct brace_answer *answer, const char *label,
                                  const char *without, const char *with_sheets,
                                  const char *with_braces, const char *limit) {
    struct lean_cells table = {.count = 0};
    add_cell(&table, true, LABEL_WIDTH, label);
    add_cell(&table, true, MOVE_WIDTH, without);
    add_cell(&table, some_sheet_counts(answer), MOVE_WIDTH, with_sheets);
    add_cell(&table, answer->brace_count > 0, MOVE_WIDTH, with_braces);
    add_cell(&table, true, 0, limit);
    return table;
}

static const char *length(struct arena *arena, double move, enum unit_system units) {
    return quantity_print(arena, move, QUANTITY_LENGTH, units);
}

static const char *movement(struct arena *arena, double move, bool over, enum unit_system units) {
    return arena_print(arena, "%s%s", movement_in_words(arena, move, units),
                       over && isfinite(move) ? ", too far" : "");
}

/* "0.21 in to 3.44 in": with stiff screws and with soft ones. */
static const char *range(struct arena *arena, const double *moves, enum unit_system units) {
    if (!isfinite(moves[LEAN_HIGH]))
        return "";
    return arena_print(arena, "%s to %s", length(arena, moves[LEAN_HIGH], units),
                       isfinite(moves[LEAN_LOW]) ? length(arena, moves[LEAN_LOW], units)
                                                 : "folding up");
}

struct lean_cells lean_heading(const struct brace_answer *answer) {
    return cells_of(answer, "", some_sheet_counts(answer) ? "without sheets" : "as it is",
                    "with its sheets", "with the diagonals", "may move");
}

struct lean_cells lean_moves(struct arena *arena, const struct brace_answer *answer,
                             const struct lean_row *row) {
    enum unit_system units = answer->frame->units;
    return cells_of(answer, direction_words(row->axis),
                    movement(arena, row->without_panels[LEAN_MIDDLE], row->over_without, units),
                    movement(arena, row->with_panels[LEAN_MIDDLE], row->over_with, units),
                    movement(arena, row->with_braces, row->over_braced, units),
                    isfinite(row->limit) ? length(arena, row->limit, units) : "");
}

struct lean_cells lean_ranges(struct arena *arena, const struct brace_answer *answer,
                              const struct lean_row *row) {
    enum unit_system units = answer->frame->units;
    return cells_of(answer, "  as screws go", range(arena, row->without_panels, units),
                    range(arena, row->with_panels, units), "", "");
}

static bool is_soft(const struct brace_answer *answer, int axis) {
    for (size_t k = 0; k < answer->soft_count; k++)
        if (answer->soft[k].axis == axis)
            return true;
    return false;
}

const char *lean_remark(struct arena *arena, const struct brace_answer *answer,
                        const struct lean_row *row) {
    const char *words = direction_words(row->axis);
    if (row->over_without && !answer->motion_count && !is_soft(answer, row->axis))
        return arena_print(arena, "Only its wood sheets keep it from leaning too far %s.", words);
    if (!row->over_without && row->without_panels[LEAN_LOW] > row->limit)
        return arena_print(arena,
                           "With screws as soft as they may be it leans too far %s; a diagonal "
                           "makes sure.",
                           words);
    return "";
}

const char *lean_introduction(const struct brace_answer *answer) {
    if (!answer->lean_count)
        return "Not tried: no upright is steep enough for somebody to lean on.";
    return some_lean_varies(answer)
               ? "How far the top moves when somebody leans on it; below that, from the stiffest "
                 "to the softest that its screws may be:"
               : "How far the top moves when somebody leans on it:";
}

static void cells_text(struct text *text, const struct lean_cells *cells) {
    row_of_cells(text, 2, cells->cells, cells->widths, cells->count);
}

void lean_section(struct text *text, const struct brace_answer *answer) {
    struct lean_cells heading = lean_heading(answer);
    text_add(text, "\nDoes it lean?\n");
    paragraph(text, "  ", 2, lean_introduction(answer));
    if (!answer->lean_count)
        return;
    cells_text(text, &heading);
    for (size_t k = 0; k < answer->lean_count; k++) {
        struct lean_cells moves = lean_moves(text->arena, answer, &answer->lean[k]);
        struct lean_cells ranges = lean_ranges(text->arena, answer, &answer->lean[k]);
        cells_text(text, &moves);
        if (lean_varies(&answer->lean[k]))
            cells_text(text, &ranges);
    }
    for (size_t k = 0; k < answer->lean_count; k++) {
        const char *remark = lean_remark(text->arena, answer, &answer->lean[k]);
        if (remark[0])
            paragraph(text, "  ", 2, remark);
    }
}
