#include "buy/buy.h"

#include "buy/work.h"
#include "pieces/ends.h"
#include "pieces/weigh.h"

#include <math.h>

int64_t buy_nanometres(double metres) {
    /* nothing that is cut is a kilometre long; sums of so many stay whole numbers */
    static const double most = 1000.0;
    return llround((metres < most ? metres : most) * 1e9);
}

double buy_metres(int64_t nanometres) {
    return (double)nanometres / 1e9;
}

void buy_note(struct buying *buying, const char *words) {
    ARRAY_PUSH(buying->arena, &buying->answer->notes, words);
}

void buy_line(struct buying *buying, struct cut_cost_line line) {
    struct cut_answer *answer = buying->answer;
    if (!isfinite(line.cost)) {
        ARRAY_PUSH(buying->arena, &answer->unpriced, line.what);
        return;
    }
    ARRAY_PUSH(buying->arena, &answer->costs, line);
    answer->cost = isfinite(answer->cost) ? answer->cost + line.cost : line.cost;
}

static struct cut_weight weight_of(const struct model *model, const char *name,
                                   struct weight weight) {
    return (struct cut_weight){.name = name,
                               .dry = weight.dry,
                               .after_rain = weight.after_rain,
                               .with_trays = weight.after_rain + weight.trays,
                               .as_judged = model->wet ? weight.after_rain : weight.dry};
}

static void weigh(struct buying *buying) {
    const struct frame *frame = buying->frame;
    struct cut_answer *answer = buying->answer;
    struct cut_weight *parts = ARENA_ARRAY(buying->arena, struct cut_weight, frame->parts.count);
    answer->whole = weight_of(buying->model, "", weigh_frame(buying->arena, buying->model));
    for (size_t k = 0; k < frame->parts.count; k++) {
        const struct part *part = &frame->parts.items[k];
        parts[k] =
            weight_of(buying->model, part->name, weigh_part(buying->arena, buying->model, part));
    }
    answer->parts = parts;
    answer->part_count = frame->parts.count;
}

static void note_assumptions(struct buying *buying) {
    const struct cut_answer *answer = buying->answer;
    enum unit_system units = buying->frame->units;
    struct arena *arena = buying->arena;
    bool sticks = false, sheets = false, metric = units == UNITS_SI;
    for (size_t k = 0; k < answer->stick_count; k++)
        sticks |= answer->sticks[k].stock_assumed;
    for (size_t k = 0; k < answer->sheet_count; k++)
        sheets |= answer->sheets[k].size_assumed;
    if (sticks)
        buy_note(buying,
                 arena_print(
                     arena,
                     "boards are taken as %s long where no price says another length; "
                     "--stock \"%s\" names others",
                     quantity_print_length(arena, table_constant("cut-stick-length").value, units),
                     metric ? "2.4 m, 3 m" : "8 ft, 10 ft"));
    if (sheets)
        buy_note(
            buying,
            arena_print(
                arena, "sheets are taken as %s x %s where no price says another size",
                quantity_print_length(arena, table_constant("cut-sheet-width").value, units),
                quantity_print_length(arena, table_constant("cut-sheet-length").value, units)));
    if (answer->trim > 0.0)
        buy_note(buying, arena_print(arena, "%s is cut off both ends of every board first",
                                     quantity_print_length(arena, answer->trim, units)));
    else
        buy_note(buying, arena_print(arena,
                                     "the ends of boards are used as they come; where they are "
                                     "rough or split, --trim \"%s\" leaves that off both ends",
                                     metric ? "12 mm" : "1/2 in"));
}

/* Slats are cut for rails whose middle lines lie at the joints; in wood a lapped rail lies beside
 * its post. */
static void note_slats(struct buying *buying) {
    const struct frame *frame = buying->frame;
    for (size_t s = 0; s < frame->shelves.count; s++) {
        const struct shelf *shelf = &frame->shelves.items[s];
        if (shelf->deck != DECK_SLATS || !shelf->rail_count)
            continue;
        const struct model_member *rail = &buying->model->members[shelf->rails[0]];
        if (!ends_lapped(frame, &rail->ends[0]) && !ends_lapped(frame, &rail->ends[1]))
            continue;
        buy_note(
            buying,
            "slats are as long as the outer rails lie apart on their middle lines, over all; "
            "rails that are lapped on the outside of the posts lie farther apart by a post and "
            "a rail, on the inside nearer: measure there, and cut the slats last");
        return;
    }
}

struct cut_answer *cut_frame(struct arena *arena, const struct frame *frame,
                             const struct cut_options *options) {
    struct cut_answer *answer = ARENA_NEW(arena, struct cut_answer);
    *answer = (struct cut_answer){.frame = frame,
                                  .problems = problems_new(arena),
                                  .kerf = options->kerf,
                                  .trim = options->trim,
                                  .cost = NAN};
    struct buying buying = {arena, frame, NULL, options, answer};
    if (frame->members.count) {
        buying.model = model_build(arena, frame, &answer->problems);
        if (!buying.model)
            return answer;
        buy_sticks(&buying);
        buy_sheets(&buying);
        buy_smalls(&buying);
        weigh(&buying);
        note_assumptions(&buying);
        note_slats(&buying);
    }
    return answer;
}
