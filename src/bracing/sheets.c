#include "bracing/sheets.h"

#include "base/vector.h"
#include "bracing/cells.h"
#include "bracing/sheet_edges.h"
#include "bracing/sheet_values.h"
#include "frame/geometry.h"
#include "model/fastening.h"

#include <math.h>

#define RISES 0.3      /* sine of the rise of an upright sheet's height */
#define PLAY_GAP 0.001 /* m all round, for information */

static const double *corner(const struct model *model, const struct panel *panel, int k) {
    return model->frame->joints.items[panel->corners[k % 4]].at;
}

/* Mean length of an edge and the one opposite; *rise: mean sine of their rise. */
static double pair_length(const struct model *model, const struct panel *panel, int edge,
                          double *rise) {
    double length = 0.0;
    *rise = 0.0;
    for (int k = edge; k < 4; k += 2) {
        double along[3];
        double one = vector_between(corner(model, panel, k), corner(model, panel, k + 1), along);
        length += one / 2.0;
        *rise += fabs(along[2]) / one / 2.0;
    }
    return length;
}

static void measure(const struct model *model, const struct panel *panel,
                    struct bracing_sheet *sheet) {
    double rise[2], length[2], along[3];
    for (int pair = 0; pair < 2; pair++)
        length[pair] = pair_length(model, panel, pair, &rise[pair]);
    int level = rise[1] < rise[0] - 1e-9 ? 1 : 0;
    sheet->width = length[level];
    sheet->height = length[1 - level];
    sheet->upright = rise[1 - level] > RISES;
    for (int k = 0; k < 2; k++)
        sheet->diagonals[k] =
            vector_between(corner(model, panel, k), corner(model, panel, k + 2), along);
}

static const char *held_badly(const struct panel *panel) {
    static const char *const reasons[] = {
        /* ORDER held */
        NULL,           "it is only stapled", "it is held by clips", "it is held by tape",
        "it is hinged", "it slides",          "it lies loose"};
    return panel->opens ? "it opens" : reasons[panel->held];
}

/* Why its own description rules a panel out; NULL where it does not. */
static const char *unfit(struct arena *arena, const struct frame *frame,
                         const struct panel *panel) {
    enum sheet_kind kind = sheet_kind(panel->sheet);
    const char *held = held_badly(panel);
    if (kind == SHEET_NEVER)
        return arena_print(arena, "%s is no sheet that braces", table_sheet(panel->sheet)->name);
    if (held)
        return held;
    if (!(frame_panel_out_of_plane(frame, panel) <= CELL_FLAT))
        return "its corners are not in one plane";
    if (kind == SHEET_CLEAR && !panel->braces)
        return "a clear sheet braces only with tight screws and washers (braces: yes)";
    if (!(panel->screw_diameter > 0.0) || !panel->spacing.given)
        return panel->spacing.given          ? "the size of its screws is not said"
               : panel->screw_diameter > 0.0 ? "the spacing of its screws is not said"
                                             : "the size and spacing of its screws are not said";
    return NULL;
}

/* Why its size does. */
static const char *ill_sized(const struct bracing_sheet *sheet, const struct panel *panel) {
    double tall = sheet->height / sheet->width;
    if (!sheet->upright)
        tall = fmax(tall, 1.0 / tall);
    if (!(panel->spacing.value <= fmin(sheet->width, sheet->height)))
        return "its screws are farther apart than its shorter edges are long";
    if (!(tall <= sheet_value("wood", "aspect-most").value))
        return "it is more than 3-1/2 times as long as wide";
    return NULL;
}

static double screw_slip(const struct model *model, const struct panel *panel, double density) {
    double wood = fastening_slip(density, panel->screw_diameter, model->wet);
    if (sheet_kind(panel->sheet) == SHEET_WOOD)
        return wood;
    double hole = sheet_value("polycarbonate", "hole-share").value *
                  sheet_value("polycarbonate", "modulus").value * sheet_skins(panel->sheet).value;
    return 1.0 / (1.0 / wood + 1.0 / hole);
}

static const char *bare_edge(struct arena *arena, const struct net *net, const struct panel *panel,
                             struct edge_wood *wood) {
    const struct joint *joints = net->model->frame->joints.items;
    for (int k = 0; k < 4; k++) {
        int from = panel->corners[k], to = panel->corners[(k + 1) % 4];
        if (!edge_has_sticks(net, from, to, wood))
            return arena_print(arena, "no stick lies under its edge from %s to %s",
                               joints[from].name, joints[to].name);
    }
    return NULL;
}

static struct bracing_sheet sheet_of(struct arena *arena, const struct net *net, size_t index) {
    const struct model *model = net->model;
    const struct panel *panel = &model->frame->panels.items[index];
    struct bracing_sheet sheet = {.panel = (int)index,
                                  .clear = sheet_kind(panel->sheet) == SHEET_CLEAR};
    struct edge_wood wood = {INFINITY, INFINITY};
    sheet.reason = unfit(arena, model->frame, panel);
    if (!sheet.reason) {
        measure(model, panel, &sheet);
        sheet.reason = ill_sized(&sheet, panel);
    }
    if (!sheet.reason)
        sheet.reason = bare_edge(arena, net, panel, &wood);
    sheet.braces = !sheet.reason;
    if (!sheet.braces)
        return sheet;
    sheet.reason = "";
    sheet.gravity = wood.gravity;
    sheet.play = sheet.clear ? racking_play(sheet.width, sheet.height, PLAY_GAP) : 0.0;
    double slip = screw_slip(model, panel, wood.density);
    double range[STIFFNESS_COUNT];
    fastening_slip_range(range);
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        struct racking_sheet one = {.width = sheet.width,
                                    .height = sheet.height,
                                    .shear = sheet_shear(panel->sheet),
                                    .slip = slip * range[s],
                                    .spacing = panel->spacing.value};
        sheet.racking[s] = racking_of(&one);
    }
    return sheet;
}

struct bracing_sheet *bracing_sheets(struct arena *arena, const struct model *model) {
    size_t count = model->frame->panels.count;
    struct bracing_sheet *sheets = ARENA_ARRAY(arena, struct bracing_sheet, count);
    struct net net = net_of(arena, model);
    for (size_t k = 0; k < count; k++)
        sheets[k] = sheet_of(arena, &net, k);
    return sheets;
}

void bracing_sheet_bars(const struct model *model, const struct bracing_sheet *sheet,
                        enum stiffness stiffness, struct bar bars[2]) {
    const struct panel *panel = &model->frame->panels.items[sheet->panel];
    for (int k = 0; k < 2; k++) {
        double lean = sheet->diagonals[k] / sheet->width;
        bars[k] = (struct bar){{panel->corners[k], panel->corners[k + 2]},
                               sheet->racking[stiffness].stiffness * lean * lean / 2.0};
    }
}

size_t bracing_bars(struct arena *arena, const struct model *model,
                    const struct bracing_sheet *sheets, enum stiffness stiffness, bool clear_too,
                    struct bar **bars, int **panel_of) {
    size_t panels = model->frame->panels.count, count = 0;
    struct bar *list = ARENA_ARRAY(arena, struct bar, 2 * panels);
    int *panel = ARENA_ARRAY(arena, int, 2 * panels);
    for (size_t k = 0; k < panels; k++) {
        if (!sheets[k].braces || (sheets[k].clear && !clear_too))
            continue;
        bracing_sheet_bars(model, &sheets[k], stiffness, &list[count]);
        panel[count] = panel[count + 1] = sheets[k].panel;
        count += 2;
    }
    *bars = list;
    if (panel_of)
        *panel_of = panel;
    return count;
}
