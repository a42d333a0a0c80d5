#include "loads/shelves.h"

#include "base/vector.h"
#include "model/sections.h"

#include <math.h>

/* The length common to all rails, as places along the first rail's direction. */
static void common_length(const struct model *model, const struct shelf *shelf,
                          struct shelf_loading *loading) {
    const struct model_member *first = &model->members[shelf->rails[0]];
    loading->start = -INFINITY;
    loading->end = INFINITY;
    for (int k = 0; k < 3; k++)
        loading->direction[k] = first->axes[0][k];
    for (size_t r = 0; r < shelf->rail_count; r++) {
        const struct model_member *rail = &model->members[shelf->rails[r]];
        double a = vector_dot(rail->from, loading->direction);
        double b = vector_dot(rail->to, loading->direction);
        loading->start = fmax(loading->start, fmin(a, b));
        loading->end = fmin(loading->end, fmax(a, b));
    }
}

/* Distance between the axes of two parallel rails, and the direction across. */
static double gap(const struct model_member *a, const struct model_member *b, double across[3]) {
    double between[3];
    vector_between(a->from, b->from, between);
    double along = vector_dot(between, a->axes[0]);
    for (int k = 0; k < 3; k++)
        across[k] = between[k] - along * a->axes[0][k];
    double apart = vector_length(across);
    vector_unit(across);
    return apart;
}

static double deck_weight(const struct model *model, const struct shelf *shelf, double length,
                          double width) {
    switch (shelf->deck) {
    case DECK_NONE:
        break;
    case DECK_SLATS: {
        const struct stick *stick = &model->frame->sticks.items[shelf->slat];
        struct lumber lumber = sections_lumber(stick);
        double area = stick->has_section ? stick->section.A : stick->thickness * stick->width;
        return shelf->slat_count * width * area * sections_density(&lumber, model->wet) *
               table_constant("gravity").value;
    }
    case DECK_SHEET:
        return table_sheet(shelf->sheet)->weight * length * width;
    case DECK_WEIGHT:
        return shelf->deck_weight * length * width;
    }
    return 0.0;
}

static double tray_weight(const struct shelf *shelf, double length, double width) {
    switch (shelf->trays) {
    case TRAYS_NONE:
        break;
    case TRAYS_KIND:
        return shelf->tray_count * table_tray(shelf->tray)->weight;
    case TRAYS_LOAD:
        return shelf->tray_load * length * width;
    case TRAYS_WEIGHT:
        return shelf->tray_load;
    }
    return 0.0;
}

struct shelf_loading shelves_measure(struct arena *arena, const struct model *model,
                                     const struct shelf *shelf) {
    size_t rails = shelf->rail_count;
    struct shelf_loading loading = {.gaps = ARENA_ARRAY(arena, double, rails),
                                    .shares = ARENA_ARRAY(arena, double, rails)};
    common_length(model, shelf, &loading);
    const struct model_member *members = model->members;
    double across[3] = {0}, sum = 0.0;
    for (size_t r = 0; r + 1 < rails; r++) {
        loading.gaps[r] = gap(&members[shelf->rails[r]], &members[shelf->rails[r + 1]], across);
        sum += loading.gaps[r];
    }
    for (size_t r = 0; r < rails; r++) {
        double before = r > 0 ? loading.gaps[r - 1] : 0.0;
        double after = r + 1 < rails ? loading.gaps[r] : 0.0;
        loading.shares[r] = (before + after) / (2.0 * sum);
    }
    loading.width = sum + (member_extent(&members[shelf->rails[0]], across) +
                           member_extent(&members[shelf->rails[rails - 1]], across)) /
                              2.0;
    double length = loading.end - loading.start;
    loading.deck = deck_weight(model, shelf, length, loading.width);
    loading.trays = shelf->tray_share * tray_weight(shelf, length, loading.width);
    return loading;
}

void shelf_middle(const struct model *model, const struct shelf *shelf,
                  const struct shelf_loading *loading, double middle[3]) {
    const struct model_member *rails[] = {&model->members[shelf->rails[0]],
                                          &model->members[shelf->rails[shelf->rail_count - 1]]};
    double along = (loading->start + loading->end) / 2.0;
    middle[0] = middle[1] = middle[2] = 0.0;
    for (int r = 0; r < 2; r++) {
        double forward = along - vector_dot(rails[r]->from, loading->direction);
        for (int c = 0; c < 3; c++)
            middle[c] += (rails[r]->from[c] + forward * loading->direction[c]) / 2.0;
    }
}

void shelf_force(struct arena *arena, const struct model *model, const struct shelf *shelf,
                 const struct shelf_loading *loading, const double *shares, double from, double to,
                 const double force[3], struct load_set *set) {
    if (!(to > from))
        return;
    for (size_t r = 0; r < shelf->rail_count; r++) {
        const struct model_member *rail = &model->members[shelf->rails[r]];
        double a = vector_dot(rail->from, loading->direction);
        double sign = vector_dot(rail->axes[0], loading->direction) < 0.0 ? -1.0 : 1.0;
        double one = sign * (from - a), other = sign * (to - a), line[3];
        for (int c = 0; c < 3; c++)
            line[c] = force[c] * shares[r] / (to - from);
        if (shares[r] > 0.0)
            loads_on_member(arena, model, set, shelf->rails[r], fmin(one, other), fmax(one, other),
                            line);
    }
}

void shelves_spread(struct arena *arena, const struct model *model, const struct shelf *shelf,
                    const struct shelf_loading *loading, const double *shares, double from,
                    double to, double weight, struct load_set *set) {
    if (weight > 0.0)
        shelf_force(arena, model, shelf, loading, shares, from, to,
                    (const double[3]){0.0, 0.0, -weight}, set);
}

void shelves_load(struct arena *arena, const struct model *model, const struct shelf *shelf,
                  const struct shelf_loading *loading, struct load_set *self,
                  struct load_set *trays) {
    if (self)
        shelves_spread(arena, model, shelf, loading, loading->shares, loading->start, loading->end,
                       loading->deck, self);
    shelves_spread(arena, model, shelf, loading, loading->shares, loading->start, loading->end,
                   loading->trays, trays);
}
