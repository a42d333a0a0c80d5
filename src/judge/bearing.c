#include "check/bearing.h"
#include "base/vector.h"
#include "judge/answers.h"
#include "judge/steps.h"
#include "model/sections.h"

#include <math.h>

enum seat {
    SEAT_BUTTS,    /* its end grain on the host's side */
    SEAT_LIES,     /* level, on a level host */
    SEAT_ON_END,   /* level, its end on top of a post that ends there */
    SEAT_ON_BLOCK, /* of a cleat */
    SEAT_IN_NOTCH  /* of the host's face */
};

struct contact { /* one stick pressing on another across its grain */
    int member, host, joint;
    int end;     /* of the ending stick */
    int pressed; /* the stick whose grain is pressed across */
    enum seat seat;
    double ledge;                 /* m that the block or the notch sticks out */
    double across, along, to_end; /* m, on the pressed stick */
};

static bool host_ends_at(const struct model_member *host, int joint) {
    return host->ends[0].joint == joint || host->ends[1].joint == joint;
}

/* The size of the patch on the pressed stick, and its distance to that stick's nearer end. */
static void measure(const struct model *model, struct contact *contact) {
    const struct model_member *stick = &model->members[contact->member];
    const struct model_member *host = &model->members[contact->host];
    const double up[3] = {0.0, 0.0, 1.0};
    double sideways[3];
    if (contact->ledge > 0.0) {
        vector_cross(stick->axes[0], up, sideways);
        vector_unit(sideways);
        double thick = member_extent(stick, sideways);
        bool notch = contact->seat == SEAT_IN_NOTCH;
        contact->pressed = contact->member;
        contact->along = notch ? member_extent(host, stick->axes[0]) : contact->ledge;
        contact->across = notch ? fmin(contact->ledge, thick) : thick;
        return;
    }
    contact->pressed = contact->seat == SEAT_ON_END ? contact->member : contact->host;
    const struct model_member *pressed = &model->members[contact->pressed];
    const struct model_member *presser = contact->seat == SEAT_ON_END ? host : stick;
    vector_cross(pressed->axes[0], contact->seat == SEAT_LIES ? up : presser->axes[0], sideways);
    vector_unit(sideways);
    contact->along = member_extent(presser, pressed->axes[0]);
    contact->across = member_extent(pressed, sideways);
    if (contact->seat != SEAT_LIES)
        contact->across = fmin(contact->across, member_extent(presser, sideways));
    double place = 0.0;
    for (size_t k = model->along.first[contact->pressed];
         k < model->along.first[contact->pressed + 1]; k++)
        if (model->along.joints[k].joint == contact->joint)
            place = model->along.joints[k].at;
    contact->to_end = fmax(0.0, fmin(place, pressed->length - place) - contact->along / 2.0);
}

/* How an ending stick meets its host, where a push can pass without a fastening. A lap hangs on its
 * screws: nothing sits. */
static bool contact_of(const struct run *run, int member, int end, struct contact *contact) {
    const struct model *model = run->model;
    const struct model_member *stick = &model->members[member];
    const struct member_end *at = &stick->ends[end];
    if (at->host || at->connection < 0)
        return false;
    const struct connection *connection = &run->frame->connections.items[at->connection];
    if (connection->type == CONNECTION_SCREWED_LAP || connection->type == CONNECTION_GLUED_LAP ||
        connection->type == CONNECTION_HINGE)
        return false;
    const struct model_member *host = &model->members[model->host[at->joint]];
    if (fabs(vector_dot(stick->axes[0], host->axes[0])) > SINE_45)
        return false;
    bool host_level = !member_steep(host);
    bool level = !member_steep(stick);
    bool butt = connection->type == CONNECTION_SCREWED_BUTT;
    bool cleat = connection->type == CONNECTION_CLEAT;
    bool notch = connection->type == CONNECTION_NOTCHED;
    *contact = (struct contact){.member = member,
                                .host = model->host[at->joint],
                                .joint = at->joint,
                                .end = end,
                                .ledge = cleat   ? connection->block
                                         : notch ? connection->depth
                                                 : 0.0,
                                .seat = SEAT_BUTTS};
    if (cleat || notch)
        contact->seat = cleat ? SEAT_ON_BLOCK : SEAT_IN_NOTCH;
    else if (level && host_level && !butt)
        contact->seat = SEAT_LIES;
    else if (level && !host_level && !butt && host_ends_at(host, at->joint))
        contact->seat = SEAT_ON_END;
    measure(model, contact);
    return true;
}

/* Force that presses: along the stick where it butts, downwards where it lies or sits. */
static double pressing(const struct contact *contact, const struct model_member *stick,
                       const double ends[6]) {
    if (contact->seat == SEAT_BUTTS) {
        /* the joint pushes along +x at the from-end, along -x at the to-end */
        return not_below_zero(contact->end == 0 ? ends[0] : -ends[0]);
    }
    double up = 0.0; /* force of the joint on the stick, upwards */
    for (int i = 0; i < 3; i++)
        up += stick->axes[i][2] * ends[i];
    return not_below_zero(up);
}

/* A force of this size is what round-off left of none. */
static double round_off(const struct run *run) {
    double largest = 0.0;
    for (size_t s = 0; s < run->loads->set_count; s++)
        largest = fmax(largest, run->loads->sets[s].largest);
    return 1e-9 * largest;
}

struct worst_contact {
    bool found;
    struct bearing_input input;
    struct rating rating;
    int combination;
};

static void judge_contact(struct run *run, const struct contact *contact) {
    const struct model *model = run->model;
    const char *where =
        arena_print(run->arena, "%s/%s", run->frame->joints.items[contact->joint].name,
                    run->frame->members.items[contact->member].name);
    const char *id = arena_print(run->arena, "bearing/%s", where);
    const struct model_member *stick = &model->members[contact->member];
    struct worst_contact worst = {0};
    double nothing = round_off(run);
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        for (size_t x = 0; run_uses(run, s) && x < run->mix_count; x++) {
            struct answer answer = answer_first_order(run, &run->mixes[x], s);
            if (!answer.weights || (answer.slack && answer.slack[contact->member]) ||
                !run_wants_combination(run, id, answer.mix->combination))
                continue;
            double ends[6];
            answer_at_end(run, &answer, (size_t)contact->member, contact->end, ends);
            struct bearing_input input = {.lumber = &model->members[contact->pressed].lumber,
                                          .wet = model->wet,
                                          .force = pressing(contact, stick, ends),
                                          .across = contact->across,
                                          .along = contact->along,
                                          .to_end = contact->to_end};
            /* nothing but the force changes */
            if (input.force <= nothing || (worst.found && input.force <= worst.input.force))
                continue;
            struct rating rating = check_bearing(&input, NULL);
            if (!worst.found || rating_is_worse(&rating, &worst.rating))
                worst = (struct worst_contact){true, input, rating, answer.mix->combination};
        }
    if (!worst.found || !(contact->across * contact->along > 0.0))
        return;
    if (!worst.rating.covered && worst.input.lumber->basis == LUMBER_OWN)
        return;
    struct working *working = run_working(run, id);
    check_bearing(&worst.input, working);
    run_add_check(
        run, "bearing", where, run->loads->combinations[worst.combination].name, worst.rating,
        arena_print(run->arena, "%s on %s", run->frame->members.items[contact->member].name,
                    run->frame->members.items[contact->host].name),
        "give it a wider seat: a block, a wider stick, or a plate under it", working);
}

/* A slat on one rail of its shelf: the weaker wood of the two is pressed across its grain. */
static void judge_slat_seat(struct run *run, size_t shelf_index, size_t rail) {
    const struct shelf *shelf = &run->frame->shelves.items[shelf_index];
    const struct shelf_loading *loading = &run->loads->shelves[shelf_index];
    const struct model_member *stick = &run->model->members[shelf->rails[rail]];
    const struct stick *slat = &run->frame->sticks.items[shelf->slat];
    struct lumber woods[2] = {stick->lumber, sections_lumber(slat)};
    const char *where = arena_print(run->arena, "%s/%s", shelf->name,
                                    run->frame->members.items[shelf->rails[rail]].name);
    const char *id = arena_print(run->arena, "bearing/%s", where);
    double across[3];
    vector_cross(stick->axes[0], (const double[3]){0.0, 0.0, 1.0}, across);
    vector_unit(across);
    bool on_edge = slat->stands == STANDS_ON_EDGE;
    double slat_width = on_edge ? slat->thickness : slat->width;
    double rail_width = member_extent(stick, across);
    struct worst_contact worst = {0};
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        if (!run_wants_combination(run, id, (int)c) || !(slat_width * rail_width > 0.0))
            continue;
        double weight =
            loads_tray_factor(run->loads, (int)c, shelf->short_standing) * loading->trays +
            loads_shelf_snow(run->loads, (int)c, shelf_index) +
            (run->frame->self_weight ? loads_case_factor(run->loads, (int)c, CASE_SELF) : 0.0) *
                loading->deck;
        for (int wood = 0; wood < 2; wood++) {
            struct bearing_input input = {.lumber = &woods[wood],
                                          .wet = run->model->wet,
                                          .force =
                                              weight * loading->shares[rail] / shelf->slat_count,
                                          .across = wood ? slat_width : rail_width,
                                          .along = wood ? rail_width : slat_width};
            struct rating rating = check_bearing(&input, NULL);
            if (input.force > 0.0 && (!worst.found || rating_is_worse(&rating, &worst.rating)))
                worst = (struct worst_contact){true, input, rating, (int)c};
        }
    }
    if (!worst.found || (!worst.rating.covered && worst.input.lumber->basis == LUMBER_OWN))
        return;
    struct working *working = run_working(run, id);
    check_bearing(&worst.input, working);
    run_add_check(run, "bearing", where, run->loads->combinations[worst.combination].name,
                  worst.rating,
                  arena_print(run->arena, "%s shelf, slats on %s", shelf->name,
                              run->frame->members.items[shelf->rails[rail]].name),
                  "use more or wider slats", working);
}

void judge_bearing(struct run *run) {
    for (size_t k = 0; k < run->frame->shelves.count; k++)
        if (run->frame->shelves.items[k].deck == DECK_SLATS)
            for (size_t r = 0; r < run->frame->shelves.items[k].rail_count; r++)
                judge_slat_seat(run, k, r);
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            struct contact contact;
            if (contact_of(run, (int)m, end, &contact))
                judge_contact(run, &contact);
        }
}
