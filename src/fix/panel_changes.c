#include "base/vector.h"
#include "bracing/sheets.h"
#include "fix/effort.h"
#include "frame/fastener_size.h"

#include <math.h>
#include <string.h>

static const long SCREWS[] = {8, 10, 12, 14};
static const char *const SPACINGS_US[] = {"12 in", "8 in", "6 in", "4 in", "3 in"};
static const char *const SPACINGS_SI[] = {"300 mm", "200 mm", "150 mm", "100 mm", "75 mm"};
/* Sheets are screwed with no thicker ones; two hinges with two screws in each of two leaves. */
enum { SCREW_COUNT = 4, SHEET_SCREW_COUNT = 3, SPACING_COUNT = 5, HINGE_SCREWS = 8 };

static const double SAME = 1e-6; /* m */

static struct choice *panel_slot(struct work *work, enum change_kind kind, int panel) {
    struct choice *slot = choice_new(work, kind, -1, -1);
    if (slot)
        slot->panel = panel;
    return slot;
}

static const char *edit_of(const struct work *work, const struct panel *panel, const char *keys) {
    return arena_print(work->arena, "panels: {\"%s\": {%s}}", panel->name, keys);
}

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

static double edge(const struct work *work, const struct panel *panel, int k) {
    const struct joint *joints = work->frame->joints.items;
    double along[3];
    return vector_between(joints[panel->corners[k]].at, joints[panel->corners[(k + 1) % 4]].at,
                          along);
}

static void add_thicker(struct work *work, int index) {
    static const double square_foot = 0.3048 * 0.3048; /* m2 */
    const struct panel *panel = &work->frame->panels.items[index];
    const char *sheet = table_sheet(panel->sheet)->name;
    struct choice *slot = panel_slot(work, CHANGE_SHEET, index);
    double feet = edge(work, panel, 0) * edge(work, panel, 1) / square_foot;
    size_t kind;
    double thickness = thickness_named(work, sheet, &kind);
    int thicker = next_thicker(work, sheet, kind, thickness);
    for (int step = 1; thicker >= 0; step++) {
        const char *name = table_sheet(thicker)->name;
        choice_add(
            work, slot,
            arena_print(work->arena, "take %s for %s in place of %s", name, panel->name, sheet),
            edit_of(work, panel, arena_print(work->arena, "sheet: %s", name)),
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
        count += (int)ceil(edge(work, panel, k) / apart - SAME);
    return count;
}

static void add_screws(struct work *work, struct choice *slot, const struct panel *panel,
                       const struct sheet_screws *screws) {
    int count = screws_round(work, panel, screws->apart);
    int more = count - screws_round(work, panel, panel->spacing.value);
    struct option *option = choice_add(
        work, slot,
        arena_print(work->arena, "screw %s down with No.%s screws %s apart", panel->name,
                    screws->size, screws->spacing),
        edit_of(work, panel,
                arena_print(work->arena, "screw: %s, spacing: %s", yaml_quoted(work, screws->size),
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

static const char *number(const struct work *work, long size) {
    return arena_print(work->arena, "%ld", size);
}

static void add_sheet_screws(struct work *work, int index) {
    const struct panel *panel = &work->frame->panels.items[index];
    struct choice *slot = panel_slot(work, CHANGE_SHEET_SCREWS, index);
    struct sheet_screws screws = {.size = typed(work, panel, "screw")};
    add_spacings(work, slot, panel, screws);
    for (int k = 0; k < SHEET_SCREW_COUNT; k++) {
        if (!(screw_diameter(SCREWS[k]) > panel->screw_diameter + SAME))
            continue;
        screws.size = number(work, SCREWS[k]);
        screws.steps++;
        add_spacings(work, slot, panel, screws);
    }
}

/* ---- hinges ---- */

/* The thinnest stick of a known wood that the frame is made of: lids should be light. -1: none. */
static int lid_stick(const struct work *work) {
    int thinnest = -1;
    for (size_t k = 0; k < work->frame->sticks.count; k++) {
        const struct stick *stick = &work->frame->sticks.items[k], *best = NULL;
        if (thinnest >= 0)
            best = &work->frame->sticks.items[thinnest];
        if (work->pieces[k] && stick->has_size && stick->species >= 0 &&
            (!best ||
             stick->thickness * stick->width < best->thickness * best->width - SAME * SAME))
            thinnest = (int)k;
    }
    return thinnest;
}

/* Thicker screws, with sticks round the sheet (-1: none) that hold the other leaf. */
static void add_hinge_screws(struct work *work, struct choice *slot, const struct panel *panel,
                             int stick) {
    struct arena *arena = work->arena;
    double now =
        panel->screw_diameter > 0.0 ? panel->screw_diameter : table_constant("hinge-screw").value;
    const char *framed = "", *words = "";
    double effort = effort_of("fix-change");
    if (stick >= 0) {
        const char *name = work->frame->sticks.items[stick].name;
        framed = arena_print(arena, "framed: \"%s\", ", name);
        words = arena_print(arena, "frame %s with sticks of %s and ", panel->name, name);
        for (int k = 0; k < 4; k++)
            effort += piece_effort(work, stick, edge(work, panel, k));
    }
    for (int k = 0, steps = 0; k < SCREW_COUNT; k++) {
        if (!(screw_diameter(SCREWS[k]) > now + SAME))
            continue;
        steps++;
        choice_add(work, slot,
                   arena_print(arena, "%shang %s with No.%ld screws in its hinges", words,
                               panel->name, SCREWS[k]),
                   edit_of(work, panel, arena_print(arena, "%sscrew: %ld", framed, SCREWS[k])),
                   effort + HINGE_SCREWS * steps * effort_of("fix-screw-length"), 0);
    }
    if (stick >= 0)
        choice_add(work, slot, arena_print(arena, "%sscrew its hinges to them", words),
                   edit_of(work, panel, framed), effort, 0);
}

static void add_hinges(struct work *work, int index) {
    const struct panel *panel = &work->frame->panels.items[index];
    struct choice *slot = panel_slot(work, CHANGE_HINGES, index);
    add_hinge_screws(work, slot, panel, -1);
    if (panel->framed < 0 && lid_stick(work) >= 0)
        add_hinge_screws(work, slot, panel, lid_stick(work));
}

/* ---- all ---- */

static bool has_weather(const struct site *site) {
    return site->ground_snow.given || site->snow_depth.given || site->wind.given ||
           site->gust.given || site->wind_word >= 0;
}

/* Are spans published for sheets of its kind? Others are `not-covered` however thick. */
static bool has_spans(const struct work *work, int sheet) {
    struct cited span;
    const char *row = arena_print(work->arena, "%s.50", table_sheet(sheet)->name);
    return table_value("sheet-spans", row, &span);
}

/* Nothing is offered where no published value could change: screws of sheets count where the sheet
 * braces, for no screw that wind pulls at passes in a clear sheet, and no wood panel under weather.
 */
void catalogue_panels(struct work *work) {
    size_t count = work->frame->panels.count;
    if (!count)
        return;
    const struct bracing_sheet *sheets = bracing_sheets(work->arena, work->model);
    for (size_t k = 0; k < count; k++) {
        const struct panel *panel = &work->frame->panels.items[k];
        bool braces = sheets[k].braces && !sheets[k].clear;
        if (braces || (has_weather(&work->frame->site) && has_spans(work, panel->sheet)))
            add_thicker(work, (int)k);
        if (braces && panel->spacing.given && panel->screw_diameter > 0.0)
            add_sheet_screws(work, (int)k);
        if (panel->held == HELD_HINGED)
            add_hinges(work, (int)k);
    }
}
