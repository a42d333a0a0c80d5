#include "judge/steps.h"

#include "units/quantity.h"

#include <math.h>
#include <string.h>

/* Sheets that grow much with heat; film is slack, and glass and wood grow little. */
static bool is_plastic(int sheet) {
    const char *name = table_sheet(sheet)->name;
    return strstr(name, "polycarbonate") || strncmp(name, "twin-wall", 9) == 0 ||
           strncmp(name, "acrylic", 7) == 0;
}

static double longest_edge(const struct run *run, const struct panel *panel) {
    double longest = 0.0;
    for (int k = 0; k < 4; k++) {
        const double *a = run->frame->joints.items[panel->corners[k]].at;
        const double *b = run->frame->joints.items[panel->corners[(k + 1) % 4]].at;
        longest = fmax(longest, sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]) +
                                     (a[2] - b[2]) * (a[2] - b[2])));
    }
    return longest;
}

void judge_panel_advice(struct run *run) {
    const struct panel *largest = NULL;
    double longest = 0.0;
    for (size_t k = 0; k < run->frame->panels.count; k++) {
        const struct panel *panel = &run->frame->panels.items[k];
        double edge = longest_edge(run, panel);
        if (is_plastic(panel->sheet) && edge > longest) {
            longest = edge;
            largest = panel;
        }
    }
    if (!largest || run->frame->site.place == PLACE_INDOORS)
        return;
    double gap = longest * table_constant("plastic-gap").value;
    double over = table_constant("plastic-hole").value;
    enum unit_system units = run->frame->units;
    run_caution(run,
                arena_print(run->arena,
                            "plastic sheet grows in the sun: leave %s of room along the longest "
                            "edge (%s) and bore its holes %s larger than the screw, and more "
                            "towards the ends; do not drive the screws tight",
                            quantity_print(run->arena, gap, QUANTITY_LENGTH, units), largest->name,
                            quantity_print(run->arena, over, QUANTITY_LENGTH, units)));
}
