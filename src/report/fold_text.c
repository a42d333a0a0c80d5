#include "report/check_text.h"

#include "report/layout.h"
#include "report/summary.h"
#include "report/visible.h"

const char *title_in_words(struct arena *arena, const struct result *result) {
    const char *title = result->frame->title;
    return title[0] ? visible(arena, title) : "This frame";
}

static const char *ways(struct arena *arena, int count) {
    return arena_print(arena, "%d %s", count, count == 1 ? "way" : "ways");
}

const char *fold_reason_in_words(struct arena *arena, const struct result *result) {
    const struct folding *folding = &result->folding;
    if (it_tips(result))
        return folding->motions[0].sentence;
    if (!folding->known || folding->ways < 1)
        return "No joint works as a bare hinge, but the frame is so soft that its own load would "
               "push it over. Add diagonals, or stiffen what holds it upright.";
    int stopped = folding->ways - folding->ways_with_panels;
    const char *panels = stopped > 0
                             ? arena_print(arena,
                                           " Its sheets would stop %d of them, but a sheet counts "
                                           "only where it is screwed tight on all edges.",
                                           stopped)
                             : "";
    return arena_print(arena, "With every fastening taken as a hinge it can fold in %s.%s",
                       ways(arena, folding->ways), panels);
}

const char *fold_remedy_in_words(const struct result *result) {
    if (it_tips(result))
        return "Feet set further out under the weight; or hold them down (hold-down under "
               "supports), or strap the frame to a wall.";
    if (result->folding.ways < 1)
        return ""; /* it is soft: the sentence says how it falls */
    return "One diagonal for each way to fold: a stick across the face that skews, from low on one "
           "side to high on the other, screwed at both ends. Plywood screwed on all four edges "
           "does the same. batten brace says where the fewest go.";
}

static void motions_text(struct text *text, const struct folding *folding) {
    text_add(text, "\nHow does it fold?\n");
    for (size_t k = 0; k < folding->motion_count; k++)
        paragraph(text, arena_print(text->arena, "  %zu. ", k + 1), 5,
                  folding->motions[k].sentence);
}

void fold_text(struct text *text, const struct result *result) {
    paragraph(text, "", 0, summary_in_words(text->arena, result));
    if (result->verdict == VERDICT_FAILED)
        return;
    paragraph(text, "", 0, fold_reason_in_words(text->arena, result));
    if (!result->folding.motion_count)
        return;
    if (!it_tips(result))
        motions_text(text, &result->folding);
    const char *remedy = fold_remedy_in_words(result);
    if (!remedy[0])
        return;
    text_add(text, "\nWhat stops it?\n");
    paragraph(text, "  ", 2, remedy);
}

void cautions_text(struct text *text, const struct result *result) {
    if (!result->cautions.count)
        return;
    text_add(text, "\nWhat this does not know, and what to keep in mind\n");
    for (size_t k = 0; k < result->cautions.count; k++)
        paragraph(text, "  - ", 4, visible(text->arena, result->cautions.items[k]));
}
