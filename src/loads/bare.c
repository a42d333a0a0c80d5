#include "loads/bare.h"

#include "base/vector.h"
#include "loads/shelves.h"
#include "weather/units.h"

#include <math.h>

/* A stick nearer than this to the plane of a panel lies under it (its axis stands off by half). */
#define UNDER_PANEL 0.02

static bool lies_under(const struct cover *cover, const double point[3]) {
    double off[3], start[3], back[3];
    vector_between(cover->middle, point, off);
    double away = vector_dot(off, cover->normal);
    if (fabs(away) > UNDER_PANEL)
        return false;
    /* a little off the plane, so that the line back goes through it */
    for (int c = 0; c < 3; c++) {
        start[c] = point[c] - (away - 0.01) * cover->normal[c];
        back[c] = -cover->normal[c];
    }
    return cover_in_the_way(cover, start, back);
}

/* Is the point out of the wind? */
static bool hidden(const struct bare *bare, const double point[3], enum wind_from from,
                   enum wind_way way) {
    const double *blows = wind_direction(from);
    const double upwind[3] = {-blows[0], -blows[1], -blows[2]};
    for (size_t k = 0; k < bare->cover_count; k++) {
        const struct cover *cover = &bare->covers[k];
        if (cover->kind != COVER_INSIDE && !wind_stands_open(cover, way) &&
            (lies_under(cover, point) || cover_in_the_way(cover, point, upwind)))
            return true;
    }
    return false;
}

/* Width of a stick across the wind times the share of its length that meets it. */
static double stick_width(const struct model_member *stick, const double blows[3]) {
    double across[3];
    vector_cross(stick->axes[0], blows, across);
    double share = vector_length(across);
    if (!(share > 1e-9))
        return 0.0;
    vector_unit(across);
    return share * member_extent(stick, across);
}

static double exposed_stick(const struct bare *bare, size_t member, enum wind_from from,
                            enum wind_way way) {
    const struct model_member *stick = &bare->model->members[member];
    double middle[3];
    for (int c = 0; c < 3; c++)
        middle[c] = (stick->from[c] + stick->to[c]) / 2.0;
    return hidden(bare, middle, from, way) ? 0.0 : stick_width(stick, wind_direction(from));
}

/* Height of what stands on a shelf: pots are as high as wide. */
static double tray_height(const struct shelf *shelf) {
    if (shelf->trays == TRAYS_KIND &&
        table_tray(shelf->tray)->length == table_tray(shelf->tray)->width)
        return table_tray(shelf->tray)->width;
    return table_constant("tray-side").value;
}

/* Area of a shelf's trays across the wind, m2. */
static double exposed_trays(const struct bare *bare, size_t index, enum wind_from from,
                            enum wind_way way) {
    const struct shelf *shelf = &bare->model->frame->shelves.items[index];
    const struct shelf_loading *loading = &bare->shelves[index];
    double middle[3];
    if (shelf->trays == TRAYS_NONE)
        return 0.0;
    shelf_middle(bare->model, shelf, loading, middle);
    if (hidden(bare, middle, from, way))
        return 0.0;
    double along = fabs(vector_dot(loading->direction, wind_direction(from)));
    double length = (loading->end - loading->start) * sqrt(fmax(0.0, 1.0 - along * along)) +
                    loading->width * along;
    return length * tray_height(shelf);
}

/* Area of the box around all joints across the wind. */
static double outline(const struct model *model, const double blows[3]) {
    double low[3] = {INFINITY, INFINITY, INFINITY}, high[3] = {-INFINITY, -INFINITY, -INFINITY};
    for (size_t j = 0; j < model->frame->joints.count; j++)
        for (int c = 0; c < 3; c++) {
            low[c] = fmin(low[c], model->frame->joints.items[j].at[c]);
            high[c] = fmax(high[c], model->frame->joints.items[j].at[c]);
        }
    int across = fabs(blows[0]) > 0.5 ? 1 : 0;
    return (high[across] - low[across]) * (high[2] - low[2]);
}

double lattice_coefficient(double solid, bool trays) {
    if (!trays && solid <= 0.7)
        return weather_row("wind-factors", solid < 0.1   ? "open-frame.0"
                                           : solid < 0.3 ? "open-frame.0.1"
                                                         : "open-frame.0.3")
            .value;
    double whole = weather_row("wind-factors", "shelf-unit").value;
    return solid > 1e-9 ? whole * (1.0 - pow(1.0 - solid, 1.5)) / solid : 1.5 * whole;
}

struct lattice bare_lattice(const struct bare *bare, enum wind_from from, enum wind_way way) {
    const struct model *model = bare->model;
    struct lattice lattice = {.outline = outline(model, wind_direction(from))};
    for (size_t m = 0; m < model->member_count; m++)
        lattice.sticks += exposed_stick(bare, m, from, way) * model->members[m].length;
    for (size_t k = 0; k < model->frame->shelves.count; k++)
        lattice.trays += exposed_trays(bare, k, from, way);
    double solid = lattice.sticks / 2.0 + lattice.trays;
    lattice.solid = lattice.outline > 0.0 ? fmin(1.0, solid / lattice.outline) : 0.0;
    lattice.coefficient = lattice_coefficient(lattice.solid, lattice.trays > 0.0);
    return lattice;
}

void bare_wind(struct arena *arena, const struct bare *bare, enum wind_from from, enum wind_way way,
               struct load_set *set) {
    const struct model *model = bare->model;
    const double *blows = wind_direction(from);
    struct lattice lattice = bare_lattice(bare, from, way);
    double pressure = lattice.coefficient * bare->wind->q, force[3];
    for (size_t m = 0; m < model->member_count; m++) {
        double width = exposed_stick(bare, m, from, way);
        for (int c = 0; c < 3; c++)
            force[c] = pressure * width * blows[c];
        if (width > 0.0)
            loads_on_member(arena, model, set, (int)m, 0.0, model->members[m].length, force);
    }
    for (size_t k = 0; k < model->frame->shelves.count; k++) {
        double area = exposed_trays(bare, k, from, way);
        for (int c = 0; c < 3; c++)
            force[c] = pressure * area * blows[c];
        if (area > 0.0)
            shelf_force(arena, model, &model->frame->shelves.items[k], &bare->shelves[k],
                        bare->shelves[k].shares, bare->shelves[k].start, bare->shelves[k].end,
                        force, set);
    }
}
