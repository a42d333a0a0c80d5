#include "report/check_text.h"

#include "report/layout.h"
#include "report/visible.h"

const char *title_in_words(struct arena *arena, const struct result *result) {
    const char *title = result->frame->title;
    return title[0] ? visible(arena, title) : "This frame";
}

static const char *ways(struct arena *arena, int count) {
    return arena_print(arena, "%d %s", count, count == 1 ? "way" : "ways");
}

static void ways_text(struct text *text, const struct folding *folding) {
    struct arena *arena = text->arena;
    if (!folding->known || folding->ways < 1) {
        paragraph(
            text, "", 0,
            "No joint works as a bare hinge, but the frame is so soft that its own load would "
            "push it over. Add diagonals, or stiffen what holds it upright.");
        return;
    }
    int stopped = folding->ways - folding->ways_with_panels;
    const char *panels = stopped > 0
                             ? arena_print(arena,
                                           " Its sheets would stop %d of them, but a sheet counts "
                                           "only where it is screwed tight on all edges.",
                                           stopped)
                             : "";
    paragraph(text, "", 0,
              arena_print(arena, "With every fastening taken as a hinge it can fold in %s.%s",
                          ways(arena, folding->ways), panels));
}

static void tips_text(struct text *text, const struct motion *motion) {
    paragraph(text, "", 0, motion->sentence);
    text_add(text, "\nWhat stops it?\n");
    paragraph(
        text, "  ", 2,
        "Feet set further out under the weight; or hold them down (hold-down under supports), "
        "or strap the frame to a wall.");
}

static void motions_text(struct text *text, const struct folding *folding) {
    struct arena *arena = text->arena;
    text_add(text, "\nHow does it fold?\n");
    for (size_t k = 0; k < folding->motion_count; k++)
        paragraph(text, arena_print(arena, "  %zu. ", k + 1), 5, folding->motions[k].sentence);
    if (folding->ways < 1)
        return; /* it is soft: the sentence says how it falls */
    text_add(text, "\nWhat stops it?\n");
    paragraph(text, "  ", 2,
              "One diagonal for each way to fold: a stick across the face that skews, from low on "
              "one side to high on the other, screwed at both ends. Plywood screwed on all four "
              "edges does the same. batten brace says where the fewest go.");
}

void fold_text(struct text *text, const struct result *result) {
    struct arena *arena = text->arena;
    const char *title = title_in_words(arena, result);
    if (result->verdict == VERDICT_FAILED) {
        paragraph(text, "", 0,
                  arena_print(arena, "%s could not be judged: %s. Do not build on this answer.",
                              title, result->trouble ? result->trouble : "the numbers disagree"));
        return;
    }
    bool tips = result->folding.motion_count && result->folding.motions[0].tips;
    if (tips) {
        paragraph(text, "", 0,
                  arena_print(arena,
                              "%s tips over by its own weight: as described it does not stand, so "
                              "nothing else was checked.",
                              title));
        tips_text(text, &result->folding.motions[0]);
        return;
    }
    paragraph(text, "", 0,
              arena_print(arena,
                          "%s folds up: as described it does not stand, so nothing else was "
                          "checked.",
                          title));
    ways_text(text, &result->folding);
    if (result->folding.motion_count)
        motions_text(text, &result->folding);
}

void cautions_text(struct text *text, const struct result *result) {
    if (!result->cautions.count)
        return;
    text_add(text, "\nWhat this does not know, and what to keep in mind\n");
    for (size_t k = 0; k < result->cautions.count; k++)
        paragraph(text, "  - ", 4, visible(text->arena, result->cautions.items[k]));
}
