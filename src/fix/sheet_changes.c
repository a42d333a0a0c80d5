#include "fix/effort.h"
#include "fix/panel_changes.h"
#include "frame/fastener_size.h"

#include <math.h>
#include <string.h>

/* Sheets are screwed with no thicker ones. */
static const long SCREWS[] = {8, 10, 12};
static const char *const SPACINGS_US[] = {"12 in", "8 in", "6 in", "4 in", "3 in"};
static const char *const SPACINGS_SI[] = {"300 mm", "200 mm", "150 mm", "100 mm", "75 mm"};
enum { SCREW_COUNT = sizeof SCREWS / sizeof *SCREWS, SPACING_COUNT = 5 };

static const double SAME = 1e-6; /* m */

/* ---- thicker sheets ---- */

/* "twin-wall-6mm": its kind is "twin-wall-", the rest its thickness in m; NAN where it is none. */
static double thickness_named(const struct work *work, const char *sheet, size_t *kind) {
    const char *dash = strrchr(sheet, '-'), *why;
    double thickness = NAN;
    *kind = dash ? (size_t)(dash - sheet) + 1 : 0;
    bool is =
        dash && quantity_read(work->arena, dash + 1, QUANTITY_LENGTH, UNITS_US, &thickness, &why);
    return is ? thickness : NAN;
}

/* The sheet of that kind that is next thicker than so much; -1. */
static int next_thicker(const struct work *work, const char *sheet, size_t kind, double thickness) {
    int best = -1;
    double least = INFINITY;
    for (int k = 0; k < table_sheet_count(); k++) {
        const char *name = table_sheet(k)->name;
        size_t other;
        double then = thickness_named(work, name, &other);
        if (other == kind && strncmp(name, sheet, kind) == 0 && then > thickness + SAME &&
            then < least) {
            least = then;
            best = k;
        }
    }
    return best;
}

void changes_of_sheet(struct work *work, int index) {
    static const double square_foot = 0.3048 * 0.3048; /* m2 */
    const struct panel *panel = &work->frame->panels.items[index];
    const char *sheet = table_sheet(panel->sheet)->name;
    struct choice *slot = panel_slot(work, CHANGE_SHEET, index);
    double feet = panel_edge(work, panel, 0) * panel_edge(work, panel, 1) / square_foot;
    size_t kind;
    double thickness = thickness_named(work, sheet, &kind);
    int thicker = next_thicker(work, sheet, kind, thickness);
    for (int step = 1; thicker >= 0; step++) {
        const char *name = table_sheet(thicker)->name;
        choice_add(
            work, slot,
            arena_print(work->arena, "take %s for %s in place of %s", name, panel->name, sheet),
            panel_edit(work, panel, arena_print(work->arena, "sheet: %s", name)),
            effort_of("fix-change") + step * feet * effort_of("fix-sheet"), 0);
        thicker = next_thicker(work, sheet, kind, thickness_named(work, name, &kind));
    }
}

/* ---- screws of sheets that brace: both are said ---- */

/* As the file says it. */
static const char *typed(const struct work *work, const struct panel *panel, const char *key) {
    const struct node *panels = node_child(work->frame->tree, "panels");
    const struct node *value = node_child(node_child(panels, panel->name), key);
    return value ? value->text : "";
}

struct sheet_screws {
    const char *size, *spacing;
    double apart; /* m */
    int steps;    /* of the size over what there is */
};

static int screws_round(const struct work *work, const struct panel *panel, double apart) {
    int count = 0;
    for (int k = 0; k < 4; k++)
        count += (int)ceil(panel_edge(work, panel, k) / apart - SAME);
    return count;
}

static void add_screws(struct work *work, struct choice *slot, const struct panel *panel,
                       const struct sheet_screws *screws) {
    int count = screws_round(work, panel, screws->apart);
    int more = count - screws_round(work, panel, panel->spacing.value);
    struct option *option =
        choice_add(work, slot,
                   arena_print(work->arena, "screw %s down with No.%s screws %s apart", panel->name,
                               screws->size, screws->spacing),
                   panel_edit(work, panel,
                              arena_print(work->arena, "screw: %s, spacing: %s",
                                          yaml_quoted(work, screws->size),
                                          yaml_quoted(work, screws->spacing))),
                   effort_of("fix-change") + more * effort_of("fix-screw") +
                       count * screws->steps * effort_of("fix-screw-length"),
                   0);
    if (option)
        option->fine = screws->steps > 0 && more > 0;
}

/* With screws of one size: as far apart as now, where they are thicker, and closer. */
static void add_spacings(struct work *work, struct choice *slot, const struct panel *panel,
                         struct sheet_screws screws) {
    const char *const *spacings = work->frame->units == UNITS_US ? SPACINGS_US : SPACINGS_SI;
    screws.spacing = typed(work, panel, "spacing");
    screws.apart = panel->spacing.value;
    if (screws.steps > 0)
        add_screws(work, slot, panel, &screws);
    for (int k = 0; k < SPACING_COUNT; k++) {
        const char *why;
        quantity_read(work->arena, spacings[k], QUANTITY_LENGTH, work->frame->units, &screws.apart,
                      &why);
        screws.spacing = spacings[k];
        if (screws.apart < panel->spacing.value - SAME)
            add_screws(work, slot, panel, &screws);
    }
}

void changes_of_sheet_screws(struct work *work, int index) {
    const struct panel *panel = &work->frame->panels.items[index];
    struct choice *slot = panel_slot(work, CHANGE_SHEET_SCREWS, index);
    struct sheet_screws screws = {.size = typed(work, panel, "screw")};
    add_spacings(work, slot, panel, screws);
    for (int k = 0; k < SCREW_COUNT; k++) {
        if (!(screw_diameter(SCREWS[k]) > panel->screw_diameter + SAME))
            continue;
        screws.size = arena_print(work->arena, "%ld", SCREWS[k]);
        screws.steps++;
        add_spacings(work, slot, panel, screws);
    }
}
