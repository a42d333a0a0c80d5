#include "cut/sheets.h"
#include "buy/work.h"

#include <math.h>

/* The parts of one kind of sheet. */
struct kind_of_sheet {
    int sheet;
    const struct sheet_part **parts;
    size_t count;
};

static struct sheet_task task_of(struct buying *buying, const struct kind_of_sheet *kind,
                                 struct sheet_size size) {
    bool fluted = sheet_is_fluted(kind->sheet);
    struct sheet_piece *pieces = ARENA_ARRAY(buying->arena, struct sheet_piece, kind->count);
    for (size_t k = 0; k < kind->count; k++)
        pieces[k] = (struct sheet_piece){.width = buy_nanometres(kind->parts[k]->rectangle.across),
                                         .height = buy_nanometres(kind->parts[k]->rectangle.along),
                                         .may_turn = !fluted};
    return (struct sheet_task){.pieces = pieces,
                               .count = kind->count,
                               .width = buy_nanometres(size.width),
                               .height = buy_nanometres(size.length),
                               .kerf = buy_nanometres(buying->options->kerf)};
}

static struct cut_sheets cut_from(struct buying *buying, const struct kind_of_sheet *kind,
                                  struct sheet_size size) {
    struct sheet_task task = task_of(buying, kind, size);
    struct sheet_plan plan = sheets_cut(buying->arena, &task);
    struct cut_sheet_piece *pieces =
        ARENA_ARRAY(buying->arena, struct cut_sheet_piece, kind->count);
    for (size_t k = 0; k < kind->count; k++) {
        const struct placed *place = &plan.places[k];
        int64_t width = task.pieces[k].width, height = task.pieces[k].height;
        pieces[k] = (struct cut_sheet_piece){.name = kind->parts[k]->name,
                                             .sheet = place->sheet + 1,
                                             .at = {buy_metres(place->x), buy_metres(place->y)},
                                             .size = {buy_metres(place->turned ? height : width),
                                                      buy_metres(place->turned ? width : height)},
                                             .turned = place->turned,
                                             .holds_corners = !kind->parts[k]->rectangle.is_whole};
    }
    double price = price_of_sheet(buying->frame, kind->sheet, size.width, size.length);
    return (struct cut_sheets){.sheet = kind->sheet,
                               .width = size.width,
                               .length = size.length,
                               .fluted = sheet_is_fluted(kind->sheet),
                               .pieces = pieces,
                               .piece_count = kind->count,
                               .needed = plan.sheets,
                               .bound = plan.bound,
                               .proved = plan.proved,
                               .too_large = (size_t)plan.too_large,
                               .cost = price * plan.sheets};
}

/* Fewer pieces left over, then cheaper, then fewer sheets. */
static bool is_better(const struct cut_sheets *a, const struct cut_sheets *b) {
    if (a->too_large != b->too_large)
        return a->too_large < b->too_large;
    if (a->cost != b->cost && (isfinite(a->cost) || isfinite(b->cost)))
        return a->cost < b->cost || !isfinite(b->cost);
    return a->needed < b->needed;
}

/* All of a kind are cut from sheets of one size: the best of those that are priced. */
static struct cut_sheets cut_kind(struct buying *buying, const struct kind_of_sheet *kind) {
    struct sheet_size *sizes;
    size_t count = priced_sizes(buying->arena, buying->frame, kind->sheet, &sizes);
    if (!count) {
        struct sheet_size usual = {
            buy_metres(buy_nanometres(table_constant("cut-sheet-width").value)),
            buy_metres(buy_nanometres(table_constant("cut-sheet-length").value))};
        struct cut_sheets only = cut_from(buying, kind, usual);
        only.size_assumed = true;
        return only;
    }
    struct cut_sheets best = cut_from(buying, kind, sizes[0]);
    for (size_t k = 1; k < count; k++) {
        struct cut_sheets now = cut_from(buying, kind, sizes[k]);
        if (is_better(&now, &best))
            best = now;
    }
    return best;
}

static void add_line(struct buying *buying, const struct cut_sheets *sheets) {
    enum unit_system units = buying->frame->units;
    double price = price_of_sheet(buying->frame, sheets->sheet, sheets->width, sheets->length);
    if (sheets->needed)
        buy_line(buying, (struct cut_cost_line){
                             .what = table_sheet(sheets->sheet)->name,
                             .each = arena_print(
                                 buying->arena, "%s x %s",
                                 quantity_print_length(buying->arena, sheets->width, units),
                                 quantity_print_length(buying->arena, sheets->length, units)),
                             .count = (size_t)sheets->needed,
                             .price = price,
                             .cost = sheets->cost});
}

static void note_edges(struct buying *buying, const struct sheet_parts *parts) {
    for (size_t k = 0; k < parts->count; k++)
        if (parts->items[k].rectangle.edge_without_stick)
            buy_note(buying,
                     arena_print(buying->arena,
                                 "panel %s: an edge lies on no stick, so there it is cut to the "
                                 "line between its corners",
                                 parts->items[k].name));
}

void buy_sheets(struct buying *buying) {
    struct sheet_parts parts = sheet_parts(buying->arena, buying->model);
    struct cut_sheets *all = ARENA_ARRAY(buying->arena, struct cut_sheets, parts.count);
    size_t made = 0;
    for (int sheet = 0; sheet < table_sheet_count(); sheet++) {
        struct kind_of_sheet kind = {
            sheet, ARENA_ARRAY(buying->arena, const struct sheet_part *, parts.count), 0};
        for (size_t k = 0; k < parts.count; k++)
            if (parts.items[k].sheet == sheet)
                kind.parts[kind.count++] = &parts.items[k];
        if (!kind.count)
            continue;
        all[made] = cut_kind(buying, &kind);
        add_line(buying, &all[made++]);
    }
    buying->answer->sheets = all;
    buying->answer->sheet_count = made;
    note_edges(buying, &parts);
}
