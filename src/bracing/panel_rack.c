#include "bracing/panel_rack.h"

#include "bracing/sheet_values.h"

#include <math.h>

struct rack_case {
    const struct panel *panel;
    const struct bracing_sheet *sheet;
    const struct racking *racking;
    double screw_lateral;
    enum duration duration;
    struct working *working;
    struct panel_rack *rack;
};

static void limit_by(struct rack_case *rack, double limit, const char *governs,
                     const char *source) {
    /* a limit that is no number stays, whatever comes after it */
    if (isnan(rack->rack->limit) || rack->rack->limit <= limit)
        return;
    rack->rack->limit = limit;
    rack->rack->governs = governs;
    rack->rack->source = source;
}

static void note_shape(const struct rack_case *rack) {
    struct working *working = rack->working;
    working_given(working, "b", "mean width of the sheet", rack->sheet->width, QUANTITY_LENGTH);
    working_given(working, "h", "mean height of the sheet", rack->sheet->height, QUANTITY_LENGTH);
    working_given(working, "s", "spacing of its screws", rack->panel->spacing.value,
                  QUANTITY_LENGTH);
}

/* Force on the corner screw for each unit of racking force. */
static double note_corner(const struct rack_case *rack) {
    struct working *working = rack->working;
    static const char *const source = "slip of evenly spaced screws, least energy";
    working_step(working, "Sx", "sum of the squares of the screws' distances sideways",
                 "b^2 * (3 * h + b) / (6 * s)", rack->racking->sum_x2, QUANTITY_AREA, source);
    working_step(working, "Sy", "the same upwards", "h^2 * (3 * b + h) / (6 * s)",
                 rack->racking->sum_y2, QUANTITY_AREA, source);
    return working_step(working, "q", "force on the corner screw over the racking force",
                        "h * sqrt((b / 2 / Sx)^2 + (h / 2 / Sy)^2)", rack->racking->corner_share,
                        QUANTITY_NUMBER, source);
}

static double note_light_wood(const struct rack_case *rack) {
    struct cited full = sheet_value("wood", "gravity");
    double gravity = working_given(rack->working, "G", "specific gravity of the lightest stick",
                                   rack->sheet->gravity, QUANTITY_NUMBER);
    working_cited(rack->working, "Gf", "specific gravity for the whole value", full,
                  QUANTITY_NUMBER);
    double factor = 1.0 - (full.value - gravity);
    return working_step(rack->working, "Cw", "factor for light wood", "min(1, 1 - (Gf - G))",
                        factor < 1.0 ? factor : 1.0, QUANTITY_NUMBER, full.source);
}

static double note_aspect(const struct rack_case *rack) {
    struct cited full = sheet_value("wood", "aspect-full");
    double tall = rack->sheet->height / rack->sheet->width;
    const char *formula = "min(1, Ra * b / h)";
    if (!rack->sheet->upright && tall < 1.0) {
        tall = 1.0 / tall;
        formula = "min(1, Ra * h / b)";
    }
    working_cited(rack->working, "Ra", "height over width for the whole value", full,
                  QUANTITY_NUMBER);
    return working_step(rack->working, "Ca", "factor for tall narrow sheets", formula,
                        fmin(1.0, full.value / tall), QUANTITY_NUMBER, full.source);
}

static double note_spacing(const struct rack_case *rack, bool beyond) {
    if (!beyond)
        return working_given(rack->working, "Cs", "factor for wide spacing", 1.0, QUANTITY_NUMBER);
    struct cited widest = sheet_value("wood", "widest-spacing");
    working_cited(rack->working, "s6", "widest spacing of the table", widest, QUANTITY_LENGTH);
    return working_step(rack->working, "Cs", "factor for wider spacing", "s6 / s",
                        widest.value / rack->panel->spacing.value, QUANTITY_NUMBER,
                        "trade practice");
}

static void rate_wood(struct rack_case *rack) {
    struct cited unit;
    bool beyond;
    if (!sheet_unit_shear(rack->panel->sheet, rack->panel->spacing.value, &unit, &beyond)) {
        rack->rack->missing = "shear value of this sheet";
        return;
    }
    if (!isfinite(rack->sheet->gravity)) {
        rack->rack->missing = "specific gravity of the sticks under the sheet's edges";
        return;
    }
    struct working *working = rack->working;
    working_cited(working, "v", "allowable shear along an edge, nails this close", unit,
                  QUANTITY_LINE_LOAD);
    double wood = note_light_wood(rack), aspect = note_aspect(rack),
           spacing = note_spacing(rack, beyond);
    struct cited wind = sheet_value("wood", "wind-duration");
    struct cited duration = table_duration_factor(rack->duration);
    working_cited(working, "CD", "load duration factor", duration, QUANTITY_NUMBER);
    working_cited(working, "CDw", "load duration factor within v", wind, QUANTITY_NUMBER);
    double limit = working_step(
        working, "Hv", "racking force by the shear of the sheet", "v * b * Cw * Ca * Cs * CD / CDw",
        unit.value * rack->sheet->width * wood * aspect * spacing * duration.value / wind.value,
        QUANTITY_WEIGHT, "");
    rack->rack->covered = true;
    limit_by(rack, limit, "shear of the sheet", unit.source);
}

static void rate_clear(struct rack_case *rack, double corner_share) {
    struct working *working = rack->working;
    struct cited bearing = sheet_value("polycarbonate", "bearing");
    struct cited share = table_constant("clear-bearing-share");
    struct cited skins = sheet_skins(rack->panel->sheet);
    double d = rack->panel->screw_diameter;
    working_cited(working, "fb", "bearing strength of the sheet", bearing, QUANTITY_STRESS);
    working_cited(working, "t", "thickness of sheet that the screw bears on", skins,
                  QUANTITY_LENGTH);
    working_given(working, "d", "diameter of the screws", d, QUANTITY_LENGTH);
    working_cited(working, "C3", "share of it that may be used", share, QUANTITY_NUMBER);
    double limit = working_step(
        working, "Hb", "racking force by bearing at the corner screw", "d * t * fb * C3 / q",
        d * skins.value * bearing.value * share.value / corner_share, QUANTITY_WEIGHT, "");
    limit_by(rack, limit, "corner screw in the sheet", bearing.source);
    struct cited half = table_constant("clear-buckling-share");
    double flow =
        working_given(working, "n", "shear along an edge at which the sheet buckles",
                      sheet_buckling(rack->panel->sheet, rack->sheet->width, rack->sheet->height),
                      QUANTITY_LINE_LOAD);
    working_cited(working, "C2", "share of it that may be used", half, QUANTITY_NUMBER);
    limit = working_step(working, "Hn", "racking force by buckling of the sheet", "n * b * C2",
                         flow * rack->sheet->width * half.value, QUANTITY_WEIGHT, "");
    limit_by(rack, limit, "buckling of the sheet", "elastic shear buckling of a plate");
    rack->rack->covered = true;
}

static void rate_screw(struct rack_case *rack, double corner_share) {
    rack->rack->screw_left_out = !isfinite(rack->screw_lateral);
    if (rack->rack->screw_left_out || !rack->rack->covered)
        return;
    working_given(rack->working, "Z", "sideways value of one screw, all factors in",
                  rack->screw_lateral, QUANTITY_WEIGHT);
    double limit = working_step(rack->working, "Hz", "racking force by the corner screw", "Z / q",
                                rack->screw_lateral / corner_share, QUANTITY_WEIGHT, "");
    limit_by(rack, limit, "corner screw", "yield limit equations, NDS 12.3");
}

/* In pure racking the two bars pull and push alike; where they do not, both are taken in full. */
static double note_demand(const struct rack_case *rack, const double forces[2]) {
    const struct bracing_sheet *sheet = rack->sheet;
    struct working *working = rack->working;
    working_given(working, "F1", "force in one crossing bar", fabs(forces[0]), QUANTITY_WEIGHT);
    working_given(working, "F2", "force in the other", fabs(forces[1]), QUANTITY_WEIGHT);
    working_given(working, "d1", "length of the one", sheet->diagonals[0], QUANTITY_LENGTH);
    working_given(working, "d2", "length of the other", sheet->diagonals[1], QUANTITY_LENGTH);
    double demand = fabs(forces[0]) * sheet->width / sheet->diagonals[0] +
                    fabs(forces[1]) * sheet->width / sheet->diagonals[1];
    return working_step(working, "H", "racking force on the sheet", "F1 * b / d1 + F2 * b / d2",
                        demand, QUANTITY_WEIGHT, "");
}

struct panel_rack panel_rack_rating(const struct model *model, const struct bracing_sheet *sheet,
                                    enum stiffness stiffness, const double bar_forces[2],
                                    double screw_lateral, enum duration duration,
                                    struct working *working) {
    struct panel_rack answer = {
        .missing = "", .limit = INFINITY, .source = "", .governs = "", .demand = NAN};
    struct rack_case rack = {.panel = &model->frame->panels.items[sheet->panel],
                             .sheet = sheet,
                             .racking = &sheet->racking[stiffness],
                             .screw_lateral = screw_lateral,
                             .duration = duration,
                             .working = working,
                             .rack = &answer};
    note_shape(&rack);
    answer.demand = note_demand(&rack, bar_forces);
    double corner_share = note_corner(&rack);
    if (sheet->clear)
        rate_clear(&rack, corner_share);
    else
        rate_wood(&rack);
    rate_screw(&rack, corner_share);
    if (!answer.covered)
        answer.limit = NAN;
    return answer;
}
