#include "cut/sheets.h"

#include "cut/free_parts.h"
#include "cut/guillotine.h"
#include "cut/sheet_bounds.h"
#include "cut/tight.h"

static void place(const struct sheet_task *task, const struct plates *plates,
                  const struct sheets_layout *layout, int *used, struct sheet_plan *plan) {
    for (size_t s = 0; s < layout->count; s++)
        for (size_t k = 0; k < layout->items[s].count; k++) {
            const struct spot *spot = &layout->items[s].items[k];
            const struct plate *plate = &plates->items[spot->plate];
            int number = plate->pieces[used[spot->plate]++];
            int64_t width = plate_width(plate, spot->turned) - task->kerf;
            plan->places[number] = (struct placed){.sheet = (int)s,
                                                   .x = spot->x,
                                                   .y = spot->y,
                                                   .turned = width != task->pieces[number].width};
        }
    plan->sheets = (int)layout->count;
}

/* Few plates: every set. Many: as few sheets as the bound says, if they can be that full. */
static struct sheets_layout fewest(struct arena *arena, const struct plates *plates, int *bound) {
    struct sheets_layout layout = free_parts_fewest(arena, plates, (size_t)*bound);
    if ((int)layout.count == *bound)
        return layout;
    struct guillotine *guillotine = guillotine_new(arena, plates);
    if (guillotine) {
        layout = guillotine_fewest(arena, guillotine);
        *bound = (int)layout.count;
        return layout;
    }
    while ((int)layout.count > *bound) {
        struct sheets_layout tight = {0};
        switch (tight_sheets(arena, plates, *bound, &tight)) {
        case TIGHT_FOUND:
            return tight;
        case TIGHT_NONE:
            ++*bound;
            break;
        case TIGHT_UNDECIDED:
            return layout;
        }
    }
    return layout;
}

struct sheet_plan sheets_cut(struct arena *arena, const struct sheet_task *task) {
    struct sheet_plan plan = {.places = ARENA_ARRAY(arena, struct placed, task->count)};
    struct plates plates = plates_of(arena, task, &plan);
    int *used = ARENA_ARRAY(arena, int, plates.count);
    plan.bound = sheets_bound(&plates);
    if (plates.count) {
        struct sheets_layout layout = fewest(arena, &plates, &plan.bound);
        place(task, &plates, &layout, used, &plan);
    }
    plan.proved = plan.sheets <= plan.bound && !plan.too_large;
    return plan;
}
