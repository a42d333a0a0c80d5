#include "solve/contacts.h"

#include "solve/settlement.h"

#include <math.h>

enum { UP = 2 };
/* A pivot under this share of what it was says that nothing holds the frame that way. */
#define LOOSE 1e-9
/* A foot's own stiffness under this share of the largest of the frame is what round-off left. */
#define NONE 1e-12

static double pull(const struct response *response, size_t column, int member) {
    const struct model *model = response->system->model;
    const double *ends =
        &response->ends[column][ELEMENT_DOFS * model->members[member].first_segment];
    return (ends[6] - ends[0]) / 2.0;
}

/* What one unit of a column adds to a part: pull of the tie or force of the ground, N. */
static double effect(const struct contacts *contacts, const struct contact *contact,
                     const struct contact_part *part, size_t column) {
    if (contact->tie >= 0)
        return pull(contacts->response, column, contact->tie);
    return contacts->response->reactions[column][contact->foot][part->axis];
}

static void list(struct arena *arena, struct contacts *contacts, bool feet) {
    const struct response *response = contacts->response;
    contacts->items = ARENA_ARRAY(arena, struct contact, response->column_count);
    contacts->parts = ARENA_ARRAY(arena, struct contact_part, response->column_count);
    for (size_t c = 0; c < response->column_count; c++) {
        const struct column *column = &response->columns[c];
        if (column->tie < 0 && (column->foot < 0 || !feet))
            continue;
        struct contact *last = contacts->count ? &contacts->items[contacts->count - 1] : NULL;
        if (!last || column->tie >= 0 || last->foot != column->foot) {
            last = &contacts->items[contacts->count++];
            *last =
                (struct contact){column->tie, column->foot, contacts->part_count, 0, CONTACT_HOLDS};
            contacts->tie_count += column->tie >= 0;
        }
        contacts->parts[contacts->part_count++] =
            (struct contact_part){.axis = column->tie >= 0 ? -1 : column->axis, .column = c};
        last->count++;
    }
}

struct contacts contacts_of(struct arena *arena, struct response *response, const double *weights,
                            bool feet) {
    struct contacts contacts = {.response = response};
    list(arena, &contacts, feet);
    for (size_t k = 0; k < contacts.count; k++)
        for (size_t p = 0; p < contacts.items[k].count; p++) {
            struct contact_part *part = &contacts.parts[contacts.items[k].first + p];
            for (size_t c = 0; c < response->column_count; c++)
                if (response->columns[c].set >= 0 && weights[c] != 0.0)
                    part->base += weights[c] * effect(&contacts, &contacts.items[k], part, c);
            contacts.small = fmax(contacts.small, 1e-9 * fabs(part->base));
        }
    return contacts;
}

static bool lets_go(const struct contact *contact, const struct contact_part *part) {
    return contact->state == CONTACT_OUT || (contact->state == CONTACT_SLIDES && part->axis != UP);
}

/* The equations of what has let go: row by row of its parts, forces scaled so that a foot's own
 * stiffness is 1. Of a tie: what is left of 1 N. */
struct equations {
    size_t count;
    struct contact_part **parts;
    const struct contact **owners;
    double *scale, *matrix, *right; /* matrix: count x count */
    size_t *order;                  /* pivots in the order they were taken */
    bool *taken;
};

static struct equations equations_of(struct arena *arena, struct contacts *contacts) {
    size_t most = contacts->part_count;
    struct equations set = {.parts = ARENA_ARRAY(arena, struct contact_part *, most),
                            .owners = ARENA_ARRAY(arena, const struct contact *, most),
                            .scale = ARENA_ARRAY(arena, double, most),
                            .right = ARENA_ARRAY(arena, double, most),
                            .order = ARENA_ARRAY(arena, size_t, most),
                            .taken = ARENA_ARRAY(arena, bool, most)};
    for (size_t k = 0; k < contacts->count; k++)
        for (size_t p = 0; p < contacts->items[k].count; p++) {
            struct contact_part *part = &contacts->parts[contacts->items[k].first + p];
            if (!lets_go(&contacts->items[k], part))
                continue;
            set.owners[set.count] = &contacts->items[k];
            set.parts[set.count++] = part;
        }
    size_t n = set.count;
    set.matrix = ARENA_ARRAY(arena, double, n *n);
    for (size_t i = 0; i < n; i++) {
        bool tie = set.owners[i]->tie >= 0;
        double own = effect(contacts, set.owners[i], set.parts[i], set.parts[i]->column);
        double norm = contacts->response->system->norm;
        set.scale[i] = tie ? 1.0 : 1.0 / sqrt(own > NONE * norm ? own : norm);
    }
    for (size_t i = 0; i < n; i++) {
        bool tie = set.owners[i]->tie >= 0;
        double sign = tie ? -1.0 : 1.0;
        set.right[i] = -sign * set.scale[i] * set.parts[i]->base;
        for (size_t j = 0; j < n; j++) {
            double value = effect(contacts, set.owners[i], set.parts[i], set.parts[j]->column);
            if (tie && i == j)
                value -= 1.0;
            set.matrix[i * n + j] = sign * value * set.scale[i] * set.scale[j];
        }
    }
    return set;
}

/* Elimination with the largest pivot of the diagonal each time (the matrix is a stiffness, rows of
 * ties scaled); stops where only loose ones are left. Returns how many were taken. */
static size_t eliminate(struct equations *set) {
    size_t n = set->count, taken = 0;
    for (; taken < n; taken++) {
        size_t best = n;
        for (size_t i = 0; i < n; i++)
            if (!set->taken[i] &&
                (best == n || set->matrix[i * n + i] > set->matrix[best * n + best]))
                best = i;
        double pivot = set->matrix[best * n + best];
        if (!(pivot > LOOSE))
            break;
        set->taken[best] = true;
        set->order[taken] = best;
        for (size_t i = 0; i < n; i++) {
            if (set->taken[i])
                continue;
            double share = set->matrix[i * n + best] / pivot;
            for (size_t j = 0; share != 0.0 && j < n; j++)
                if (!set->taken[j])
                    set->matrix[i * n + j] -= share * set->matrix[best * n + j];
            set->right[i] -= share * set->right[best];
        }
    }
    return taken;
}

/* What is loose must have nothing acting on it; it then stays where it is. */
static bool loose_ones_rest(const struct equations *set, double small) {
    for (size_t i = 0; i < set->count; i++)
        if (!set->taken[i] && !(fabs(set->right[i] / set->scale[i]) <= small))
            return false;
    return true;
}

static void substitute(const struct equations *set, size_t taken) {
    size_t n = set->count;
    for (size_t k = taken; k-- > 0;) {
        size_t i = set->order[k];
        double x = set->right[i];
        for (size_t later = k + 1; later < taken; later++) {
            size_t j = set->order[later];
            x -= set->matrix[i * n + j] * set->parts[j]->weight / set->scale[j];
        }
        set->parts[i]->weight = set->scale[i] * x / set->matrix[i * n + i];
        set->parts[i]->gone = true;
    }
}

/* A foot that would have to move further than the frame is big stands nowhere. */
static bool within_reach(const struct contacts *contacts) {
    for (size_t p = 0; p < contacts->part_count; p++)
        if (contacts->parts[p].axis >= 0 &&
            !(fabs(contacts->parts[p].weight) <= contacts->response->system->model->size))
            return false;
    return true;
}

bool contacts_solve(struct arena *arena, struct contacts *contacts) {
    for (size_t p = 0; p < contacts->part_count; p++) {
        contacts->parts[p].weight = 0.0;
        contacts->parts[p].gone = false;
    }
    for (size_t k = 0; k < contacts->count; k++)
        if (contacts->items[k].state != CONTACT_HOLDS && contacts->items[k].foot >= 0)
            settlement_solve(arena, contacts->response, contacts->items[k].foot);
    struct arena_mark mark = arena_mark(arena);
    struct equations set = equations_of(arena, contacts);
    size_t taken = eliminate(&set);
    bool holds = loose_ones_rest(&set, contacts->small);
    if (holds)
        substitute(&set, taken);
    arena_rewind(arena, mark);
    return holds && within_reach(contacts);
}

double contact_wrong(const struct contacts *contacts, size_t which) {
    const struct contact *contact = &contacts->items[which];
    const struct contact_part *part = &contacts->parts[contact->first];
    for (size_t p = 0; p < contact->count; p++)
        if (contacts->parts[contact->first + p].axis == UP)
            part = &contacts->parts[contact->first + p];
    bool out = contact->state == CONTACT_OUT;
    if (out && contact->foot >= 0)
        return -part->weight * effect(contacts, contact, part, part->column);
    double force = part->base;
    for (size_t p = 0; p < contacts->part_count; p++)
        if (contacts->parts[p].weight != 0.0)
            force += contacts->parts[p].weight *
                     effect(contacts, contact, part, contacts->parts[p].column);
    return out ? force : -force;
}
