#include "report/fastener_advice.h"

#include "report/layout.h"

#include <math.h>
#include <string.h>

static const double INCH = 0.0254;

static const char *inches(struct arena *arena, double si) {
    return quantity_print(arena, si, QUANTITY_LENGTH, UNITS_US);
}

static const char *drill(struct arena *arena, double si) {
    return quantity_print_drill(arena, si, UNITS_US);
}

const char *distance_in_words(struct arena *arena, double si) {
    double sixteenth = INCH / 16.0;
    return quantity_print_length(arena, ceil(si / sixteenth - 1e-6) * sixteenth, UNITS_US);
}

static void remark(struct text *text, const char *words) {
    paragraph(text, "  - ", 4, words);
}

static const char *screw_holes(struct arena *arena, const struct fastener_answer *answer) {
    const char *pull = answer->pull_hole.thread_most > 0.0
                           ? arena_print(arena, "only pulled: %s for the thread",
                                         drill(arena, answer->pull_hole.thread_most))
                           : "only pulled: none needed in wood this light";
    return arena_print(
        arena,
        "Lead holes, pushed sideways: %s through the side member, %s for the thread; "
        "%s. Turn it in, do not hammer it.",
        drill(arena, answer->side_hole.shank), drill(arena, answer->main_hole.thread_most), pull);
}

static const char *lag_holes(struct arena *arena, const struct fastener_answer *answer) {
    return arena_print(
        arena,
        "Lead holes: %s for the shank as deep as the shank goes, %s to %s for the thread%s. Turn "
        "it "
        "in with a wrench, do not hammer it.",
        drill(arena, answer->side_hole.shank), drill(arena, answer->main_hole.thread_least),
        drill(arena, answer->main_hole.thread_most),
        answer->pull_hole.thread_most > 0.0 ? "" : " (none needed where it is only pulled)");
}

static const char *holes(struct arena *arena, const struct dowel *dowel,
                         const struct fastener_answer *answer) {
    switch (dowel->kind) {
    case DOWEL_SCREW:
        return screw_holes(arena, answer);
    case DOWEL_LAG:
        return lag_holes(arena, answer);
    case DOWEL_NAIL:
        return arena_print(arena, "Lead hole: none needed unless the wood splits; at most %s.",
                           drill(arena, answer->main_hole.thread_most));
    default:
        return arena_print(arena, "Hole: %s to %s. A washer under the head and under the nut.",
                           drill(arena, answer->main_hole.thread_least),
                           drill(arena, answer->main_hole.thread_most));
    }
}

static void distances(struct text *text, const struct fastener_answer *answer) {
    static const size_t WIDTHS[] = {46, 12, 16};
    const struct dowel_spacing *driven = &answer->driven, *bored = &answer->prebored;
    bool both = driven->end_pull != bored->end_pull;
    const struct {
        const char *what;
        double driven, bored;
    } rows[] = {
        {"to an end that the load pulls it towards", driven->end_pull, bored->end_pull},
        {"to an end that the load pushes it away from", driven->end_push, bored->end_push},
        {"to an edge", driven->edge, bored->edge},
        {"to an edge that the load pushes it towards", driven->edge_loaded, bored->edge_loaded},
        {"from one to the next along the grain", driven->row_along, bored->row_along},
        {"from one to the next across the grain", driven->row_across, bored->row_across},
        {"between two rows", driven->between_rows, bored->between_rows}};
    text_print(text, "\n%s [%s]\n",
               both ? "Distances that keep the wood from splitting"
                    : "Distances that the value asks for",
               mark_name(driven->source.mark));
    if (both)
        row_of_cells(text, 2, (const char *const[]){"", "driven", "with lead holes"}, WIDTHS, 3);
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++)
        row_of_cells(
            text, 2,
            (const char *const[]){rows[k].what, distance_in_words(text->arena, rows[k].driven),
                                  both ? distance_in_words(text->arena, rows[k].bored) : ""},
            WIDTHS, both ? 3 : 2);
}

/* How the value was taken, where a person might take it otherwise. */
static void value_remarks(struct text *text, const struct fastener_question *question,
                          const struct dowel_values *values) {
    const struct dowel *dowel = &question->dowel;
    bool angled = question->side.angle > 0.0 || question->main.angle > 0.0;
    if (dowel->kind == DOWEL_SCREW)
        remark(text,
               "Its root is that of the published wood screws. Many deck and chipboard screws "
               "are thinner there (two thirds of the shank) and hold about a quarter less "
               "sideways.");
    if (dowel->kind == DOWEL_NAIL && question->service.wet)
        remark(text, "Wood that gets wet and dries again lets go of smooth nails: a quarter of the "
                     "dry value is left for a pull. Use screws.");
    if (values->out_by > 0.0 && dowel->kind != DOWEL_BOLT)
        remark(text, arena_print(text->arena,
                                 "Its point comes out %s behind. Take a shorter one: it may catch "
                                 "somebody, and its smooth shank may lie where thread is counted.",
                                 inches(text->arena, values->out_by)));
    if (angled && dowel->D.value < table_fastener_factor("large-from").value)
        remark(text, "Under 1/4 in of diameter the angle to the grain makes no difference.");
    if (dowel->kind == DOWEL_BOLT || dowel->kind == DOWEL_LAG)
        remark(text, "Outer rows no more than 5 in apart across the grain: wood shrinks and splits "
                     "between them.");
    if (dowel->kind == DOWEL_LAG && values->withdrawal > 0.0)
        remark(text, "Not checked: whether its own steel tears when it is pulled.");
}

static bool has_tannin(const char *species) {
    return species && (strstr(species, "cedar") || strstr(species, "redwood"));
}

static void corrosion(struct text *text, const struct fastener_question *question) {
    remark(text,
           "Treated wood: hot-dip galvanized or stainless only; plain and thinly plated steel "
           "is eaten.");
    if (question->service.wet)
        remark(text,
               "Outdoors and where wood stays wet: no yellow or black indoor screws, they rust "
               "and snap. Hot-dip galvanized, better stainless (predrill, it snaps when "
               "forced).");
    if (has_tannin(question->side_wood) || has_tannin(question->main_wood))
        remark(text, "Cedar and redwood stain and eat plain steel: stainless.");
    if (question->dowel.kind == DOWEL_NAIL)
        remark(text, "Smooth stainless nails hold less against a pull than the value here.");
}

void fastener_advice_text(struct text *text, const struct fastener_question *question,
                          const struct fastener_answer *answer) {
    struct arena *arena = text->arena;
    text_add(text, "\n");
    paragraph(text, "", 0, holes(arena, &question->dowel, answer));
    distances(text, answer);
    text_add(text, "\nGood to know\n");
    value_remarks(text, question, &answer->values);
    corrosion(text, question);
}
