#include "loads/panels.h"

#include "base/vector.h"
#include "model/sections.h"

#include <math.h>
#include <stdlib.h>

#define SAME_LINE 0.005 /* of the run: sticks between its ends as near as this lie on one line */

static const double *corner(const struct model *model, const struct panel *panel, int k) {
    return model->frame->joints.items[panel->corners[k % 4]].at;
}

static double edge_length(const struct model *model, const struct panel *panel, int k) {
    double along[3];
    return vector_between(corner(model, panel, k), corner(model, panel, k + 1), along);
}

static double area(const struct model *model, const struct panel *panel) {
    double a[3], b[3], normal[3];
    vector_between(corner(model, panel, 0), corner(model, panel, 2), a);
    vector_between(corner(model, panel, 1), corner(model, panel, 3), b);
    vector_cross(a, b, normal);
    return vector_length(normal) / 2.0;
}

double panel_area(const struct model *model, const struct panel *panel) {
    double round = 0.0, o = panel->overhang;
    for (int k = 0; k < 4; k++)
        round += edge_length(model, panel, k);
    return area(model, panel) + o * round + 4.0 * o * o;
}

double panel_weight(const struct model *model, const struct panel *panel) {
    if (panel->weight.given)
        return panel->weight.value;
    double round = 0.0;
    for (int k = 0; k < 4; k++)
        round += edge_length(model, panel, k);
    double weight = table_sheet(panel->sheet)->weight * panel_area(model, panel);
    if (panel->framed >= 0) {
        const struct stick *stick = &model->frame->sticks.items[panel->framed];
        struct lumber lumber = sections_lumber(stick);
        double section = stick->has_section ? stick->section.A : stick->thickness * stick->width;
        weight += round * section * sections_density(&lumber, model->wet) *
                  table_constant("gravity").value;
    }
    return weight;
}

static void middle(const struct model *model, const struct panel *panel, int edge, double out[3]) {
    for (int c = 0; c < 3; c++)
        out[c] = (corner(model, panel, edge)[c] + corner(model, panel, edge + 1)[c]) / 2.0;
}

/* First edge of the pair at the two ends of the run: 0 (edges 0 and 2) or 1 (edges 1 and 3). */
static int end_edges(const struct model *model, const struct panel *panel) {
    double rise[2], depth[2];
    for (int pair = 0; pair < 2; pair++) {
        double a[3], b[3];
        middle(model, panel, pair, a);
        middle(model, panel, pair + 2, b);
        rise[pair] = fabs(b[2] - a[2]);
        depth[pair] = fabs(b[1] - a[1]);
    }
    bool level = fabs(rise[0] - rise[1]) <= ALONG_TOLERANCE;
    int up_down = level ? depth[1] > depth[0] : rise[1] > rise[0];
    return panel->runs_across ? 1 - up_down : up_down;
}

void panel_run(const struct model *model, const struct panel *panel, double run[3]) {
    double a[3], b[3];
    int edge = end_edges(model, panel);
    middle(model, panel, edge, a);
    middle(model, panel, edge + 2, b);
    vector_between(a, b, run);
}

double panel_longest_run(const struct model *model, const struct panel *panel) {
    int edge = end_edges(model, panel);
    return fmax(edge_length(model, panel, edge + 1), edge_length(model, panel, edge + 3));
}

/* The stick that both joints lie on; false where there is none. */
static bool stick_under(const struct model *model, int one, int other, struct bearer *bearer) {
    for (size_t m = 0; m < model->member_count; m++) {
        double at_one = NAN, at_other = NAN;
        for (size_t k = model->along.first[m]; k < model->along.first[m + 1]; k++) {
            if (model->along.joints[k].joint == one)
                at_one = model->along.joints[k].at;
            if (model->along.joints[k].joint == other)
                at_other = model->along.joints[k].at;
        }
        if (isfinite(at_one) && isfinite(at_other)) {
            bearer->member = (int)m;
            bearer->from = fmin(at_one, at_other);
            bearer->to = fmax(at_one, at_other);
            return true;
        }
    }
    return false;
}

struct lines {
    struct line {
        struct bearer bearer;
        double place; /* 0 at the first end of the run, 1 at the other */
    } * items;
    size_t count, capacity;
};

/* Sticks in the panel's plane between its ends and parallel to them. */
static void sticks_between(struct arena *arena, const struct model *model,
                           const struct panel *panel, int edge, struct lines *lines) {
    double a[3], b[3], run[3], across[3], normal[3];
    middle(model, panel, edge, a);
    middle(model, panel, edge + 2, b);
    double length = vector_between(a, b, run);
    double wide =
        vector_between(corner(model, panel, edge), corner(model, panel, edge + 1), across);
    vector_unit(across);
    vector_cross(run, across, normal);
    vector_unit(normal);
    for (size_t m = 0; m < model->member_count; m++) {
        const struct model_member *stick = &model->members[m];
        double from[3], to[3];
        vector_between(a, stick->from, from);
        vector_between(a, stick->to, to);
        if (fabs(vector_dot(stick->axes[0], across)) < 0.999 ||
            fabs(vector_dot(from, normal)) > 0.005 || fabs(vector_dot(to, normal)) > 0.005)
            continue;
        double place = vector_dot(from, run) / (length * length);
        double s0 = vector_dot(from, across), s1 = vector_dot(to, across);
        double low = fmax(fmin(s0, s1), -wide / 2.0), high = fmin(fmax(s0, s1), wide / 2.0);
        if (place < 0.02 || place > 0.98 || high - low < wide / 2.0)
            continue;
        double p = s1 > s0 ? low - s0 : s0 - high;
        struct line line = {.place = place,
                            .bearer = {.member = (int)m, .from = p, .to = p + (high - low)}};
        ARRAY_PUSH(arena, lines, line);
    }
}

static int compare_lines(const void *left, const void *right) {
    const struct line *a = left, *b = right;
    if (a->place != b->place)
        return a->place < b->place ? -1 : 1;
    return (a->bearer.member > b->bearer.member) - (a->bearer.member < b->bearer.member);
}

/* Half of the way to the lines before and behind it; the sticks of one line by their lengths. */
static void share_out(struct lines *lines) {
    struct line *all = lines->items;
    for (size_t k = 0, next; k < lines->count; k = next) {
        double length = 0.0;
        for (next = k; next < lines->count && all[next].place - all[k].place <= SAME_LINE; next++) {
            all[next].place = all[k].place;
            length += all[next].bearer.to - all[next].bearer.from;
        }
        double before = k > 0 ? all[k].place - all[k - 1].place : 0.0;
        double after = next < lines->count ? all[next].place - all[k].place : 0.0;
        for (size_t i = k; i < next; i++) {
            double part = next - k > 1 ? (all[i].bearer.to - all[i].bearer.from) / length : 1.0;
            all[i].bearer.share = (before + after) / 2.0 * part;
            all[i].bearer.place = all[i].place;
        }
    }
}

size_t panel_bearers(struct arena *arena, const struct model *model, const struct panel *panel,
                     struct bearer **bearers) {
    struct lines lines = {0};
    int edge = end_edges(model, panel);
    for (int end = 0; end < 2; end++) {
        int e = edge + 2 * end;
        struct bearer bearer = {.member = -1,
                                .corners = {panel->corners[e % 4], panel->corners[(e + 1) % 4]}};
        stick_under(model, bearer.corners[0], bearer.corners[1], &bearer);
        ARRAY_PUSH(arena, &lines, (struct line){.bearer = bearer, .place = end});
    }
    sticks_between(arena, model, panel, edge, &lines);
    qsort(lines.items, lines.count, sizeof *lines.items, compare_lines);
    share_out(&lines);
    *bearers = ARENA_ARRAY(arena, struct bearer, lines.count);
    for (size_t k = 0; k < lines.count; k++)
        (*bearers)[k] = lines.items[k].bearer;
    return lines.count;
}

void panel_load(struct arena *arena, const struct model *model, const struct bearer *bearers,
                size_t count, const double force[3], struct load_set *set) {
    for (size_t k = 0; k < count; k++) {
        const struct bearer *bearer = &bearers[k];
        double part[3];
        for (int c = 0; c < 3; c++)
            part[c] = force[c] * bearer->share;
        if (bearer->member >= 0) {
            for (int c = 0; c < 3; c++)
                part[c] /= bearer->to - bearer->from;
            loads_on_member(arena, model, set, bearer->member, bearer->from, bearer->to, part);
            continue;
        }
        for (int end = 0; end < 2; end++)
            for (int c = 0; c < 3; c++)
                set->joints[bearer->corners[end]][c] += part[c] / 2.0;
        set->largest = fmax(set->largest, vector_length(part));
    }
}

void panels_weigh(struct arena *arena, const struct model *model, struct load_set *set) {
    for (size_t k = 0; k < model->frame->panels.count; k++) {
        const struct panel *panel = &model->frame->panels.items[k];
        struct bearer *bearers;
        size_t count = panel_bearers(arena, model, panel, &bearers);
        double force[3] = {0.0, 0.0, -panel_weight(model, panel)};
        panel_load(arena, model, bearers, count, force, set);
    }
}
