#include "fix/panel_changes.h"

#include "base/vector.h"
#include "bracing/sheets.h"

struct choice *panel_slot(struct work *work, enum change_kind kind, int panel) {
    struct choice *slot = choice_new(work, kind, -1, -1);
    if (slot)
        slot->panel = panel;
    return slot;
}

const char *panel_edit(const struct work *work, const struct panel *panel, const char *keys) {
    return arena_print(work->arena, "panels: {\"%s\": {%s}}", panel->name, keys);
}

double panel_edge(const struct work *work, const struct panel *panel, int k) {
    const struct joint *joints = work->frame->joints.items;
    double along[3];
    return vector_between(joints[panel->corners[k]].at, joints[panel->corners[(k + 1) % 4]].at,
                          along);
}

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
            changes_of_sheet(work, (int)k);
        if (braces && panel->spacing.given && panel->screw_diameter > 0.0)
            changes_of_sheet_screws(work, (int)k);
        if (panel->held == HELD_HINGED)
            changes_of_hinges(work, (int)k);
    }
}
