#include "fix/effort.h"
#include "fix/panel_changes.h"
#include "frame/fastener_size.h"

static const long SCREWS[] = {8, 10, 12, 14};
enum {
    SCREW_COUNT = sizeof SCREWS / sizeof *SCREWS,
    HINGE_SCREWS = 8 /* of two hinges, two in each leaf */
};

static const double SAME = 1e-6;                    /* m */
static const double LID_STICK_MOST = 0.040 * 0.065; /* m2, a 2x3 */

/* The thinnest stick of a known wood that the frame is made of; a lid of posts is none. -1: none.
 */
static int lid_stick(const struct work *work) {
    double least = LID_STICK_MOST;
    int thinnest = -1;
    for (size_t k = 0; k < work->frame->sticks.count; k++) {
        const struct stick *stick = &work->frame->sticks.items[k];
        double area = stick->thickness * stick->width;
        if (!work->pieces[k] || !stick->has_size || stick->species < 0 || !(area < least))
            continue;
        least = area;
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
            effort += piece_effort(work, stick, panel_edge(work, panel, k));
    }
    for (int k = 0, steps = 0; k < SCREW_COUNT; k++) {
        if (!(screw_diameter(SCREWS[k]) > now + SAME))
            continue;
        steps++;
        choice_add(work, slot,
                   arena_print(arena, "%shang %s with No.%ld screws in its hinges", words,
                               panel->name, SCREWS[k]),
                   panel_edit(work, panel, arena_print(arena, "%sscrew: %ld", framed, SCREWS[k])),
                   effort + HINGE_SCREWS * steps * effort_of("fix-screw-length"), 0);
    }
    if (stick >= 0)
        choice_add(work, slot, arena_print(arena, "%sscrew its hinges to them", words),
                   panel_edit(work, panel, framed), effort, 0);
}

void changes_of_hinges(struct work *work, int index) {
    const struct panel *panel = &work->frame->panels.items[index];
    struct choice *slot = panel_slot(work, CHANGE_HINGES, index);
    add_hinge_screws(work, slot, panel, -1);
    if (panel->framed < 0 && lid_stick(work) >= 0)
        add_hinge_screws(work, slot, panel, lid_stick(work));
}
