#include "fix/effort.h"
#include "pieces/sticks.h"

#include <math.h>

enum { SLATS_MORE = 8 };

/* Room for so many slats side by side; a slat lies on its wide face. */
static int slats_that_fit(const struct work *work, const struct shelf *shelf) {
    const struct stick *slat = &work->frame->sticks.items[shelf->slat];
    double common = INFINITY;
    for (size_t k = 0; k < shelf->rail_count; k++)
        common = fmin(common, work->model->members[shelf->rails[k]].length);
    double wide = slat->stands == STANDS_ON_EDGE ? slat->thickness : slat->width;
    return slat->has_size ? (int)floor(common / wide) : 0;
}

static double slat_length(const struct work *work, int shelf) {
    struct stick_pieces pieces = stick_pieces(work->arena, work->model);
    for (size_t k = 0; k < pieces.count; k++)
        if (pieces.items[k].shelf == shelf)
            return pieces.items[k].length;
    return 0.0;
}

/* What stands below the shelf's name: in a file with a shape the whole made entry comes along. */
static const char *edit_of(const struct work *work, const struct shelf *shelf, const char *key,
                           int count) {
    return arena_print(work->arena, "shelves: {\"%s\": {%s: {count: %d}}}", shelf->name, key,
                       count);
}

static void add_slats(struct work *work, int index) {
    const struct shelf *shelf = &work->frame->shelves.items[index];
    if (shelf->deck != DECK_SLATS)
        return;
    struct choice *slot = choice_new(work, CHANGE_SLATS, shelf->slat, index);
    int most = slats_that_fit(work, shelf), now = shelf->slat_count;
    double each = piece_effort(work, shelf->slat, slat_length(work, index)) +
                  2.0 * (double)shelf->rail_count * effort_of("fix-screw");
    for (int more = 1; more <= SLATS_MORE && now + more <= most; more++)
        choice_add(work, slot,
                   arena_print(work->arena, "lay %d slats on the %s shelf in place of %d",
                               now + more, shelf->name, now),
                   edit_of(work, shelf, "deck", now + more), effort_of("fix-change") + more * each,
                   0);
}

static void add_trays(struct work *work, int index) {
    const struct shelf *shelf = &work->frame->shelves.items[index];
    if (shelf->trays != TRAYS_KIND)
        return;
    struct choice *slot = choice_new(work, CHANGE_TRAYS, -1, index);
    for (int left = shelf->tray_count - 1; left >= 1; left--)
        choice_add(work, slot,
                   arena_print(work->arena, "put %d %s on the %s shelf in place of %d", left,
                               left == 1 ? "tray" : "trays", shelf->name, shelf->tray_count),
                   edit_of(work, shelf, "trays", left), effort_of("fix-change"),
                   shelf->tray_count - left);
}

void catalogue_shelves(struct work *work) {
    for (size_t k = 0; k < work->frame->shelves.count; k++)
        add_slats(work, (int)k);
    for (size_t k = 0; k < work->frame->shelves.count; k++)
        add_trays(work, (int)k);
}
