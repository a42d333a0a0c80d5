#include "check/bend.h"
#include "check/shear.h"
#include "judge/load_shape.h"
#include "judge/steps.h"
#include "solve/stations.h"

#include <math.h>

/* Where a stick is worst for one kind of check. */
struct worst_place {
    bool found;
    struct rating rating;
    struct bend_input bend;
    struct shear_input shear;
    int combination;
    const char *lean;
    double at; /* m from the from-end */
    enum stiffness stiffness;
};

struct stick_work { /* one member in hand */
    struct run *run;
    size_t member;
    const struct model_member *stick;
    struct section section;
    int strong; /* local axis of edgewise bending */
    bool held_along, repetitive;
    const char *bend_id, *shear_id;
    struct worst_place bend, shear;
    double *largest_shear; /* N, per combination: smaller ones need no look */
};

struct section judge_section(const struct model_member *member, const struct stick *stick,
                             int *strong) {
    if (stick->has_section) {
        *strong = member->Iy >= member->Iz ? 1 : 2;
        return section_own(member->A, fmax(member->Iy, member->Iz), fmin(member->Iy, member->Iz),
                           stick->thickness, stick->width);
    }
    *strong = member->size_z >= member->size_y ? 1 : 2;
    return section_rectangle(member->size_y, member->size_z);
}

/* What of the bending input belongs to the segment and the combination, not to the station. The
 * shape of the load is taken as the general row, which is never kinder than the others. */
static struct bend_input bend_frame(const struct stick_work *work, size_t segment,
                                    enum duration duration) {
    const struct model *model = work->run->model;
    const struct stretch *sideways = work->run->holding->sideways[segment];
    /* along the wide face, and along the thickness */
    const struct stretch *wide = &sideways[work->strong == 1 ? 1 : 0];
    const struct stretch *thin = &sideways[work->strong == 1 ? 0 : 1];
    struct bend_input input = {.lumber = &work->stick->lumber,
                               .section = work->section,
                               .conditions = {.wet = model->wet,
                                              .repetitive = work->repetitive,
                                              .duration = duration},
                               .shape = LOAD_SHAPE_ANY};
    input.effective_length[0] = stretch_column_length(wide);
    if (work->held_along)
        return input;
    input.effective_length[1] = stretch_column_length(thin);
    input.unheld = thin->to - thin->from;
    return input;
}

static void keep_worse(struct worst_place *worst, const struct worst_place *other) {
    bool worse = !worst->found || !(other->rating.ratio <= worst->rating.ratio);
    if (worst->found && !worst->rating.covered && other->rating.covered)
        worse = other->rating.ratio > 1.0;
    if (worst->found && worst->rating.covered && !other->rating.covered)
        worse = worst->rating.ratio <= 1.0;
    bool slender = worst->rating.slender || other->rating.slender;
    if (worse)
        *worst = *other;
    worst->rating.slender = slender;
}

/* Bending at one station: by the general row first; only where that would be the worst so far is the
 * shape of the load looked at. */
static void judge_bend(struct stick_work *work, const struct bend_limits *limits,
                       const struct stick_state *states, size_t segment,
                       const double forces[FORCE_COUNT], struct worst_place place) {
    if (!run_wants_combination(work->run, work->bend_id, place.combination))
        return;
    double about_y = forces[FORCE_MY], about_z = forces[FORCE_MZ];
    double edgewise = work->strong == 1 ? about_y : about_z;
    double flatwise = work->strong == 1 ? about_z : about_y;
    place.found = true;
    place.rating = bend_rating(limits, forces[FORCE_N], edgewise, flatwise);
    if (work->bend.found && work->bend.rating.covered && place.rating.covered &&
        place.rating.ratio <= work->bend.rating.ratio) {
        work->bend.rating.slender |= place.rating.slender;
        return;
    }
    place.bend = limits->input;
    place.bend.N = forces[FORCE_N];
    place.bend.edgewise = edgewise;
    place.bend.flatwise = flatwise;
    if (place.bend.unheld > 0.0 && work->section.width > work->section.thickness) {
        const struct stretch *thin =
            &work->run->holding->sideways[segment][work->strong == 1 ? 0 : 1];
        place.bend.shape =
            load_shape_of(work->run->model, work->stick, states, thin, work->strong);
        place.rating = check_bend(&place.bend, NULL);
    }
    keep_worse(&work->bend, &place);
}

static void judge_shear(struct stick_work *work, const struct bend_limits *limits,
                        const double forces[FORCE_COUNT], struct worst_place place) {
    double shear = hypot(forces[FORCE_VY], forces[FORCE_VZ]);
    if (shear <= work->largest_shear[place.combination] ||
        !run_wants_combination(work->run, work->shear_id, place.combination))
        return;
    work->largest_shear[place.combination] = shear;
    place.found = true;
    place.shear = (struct shear_input){
        .lumber = limits->input.lumber,
        .conditions = limits->input.conditions,
        .section = limits->input.section,
        .edgewise = work->strong == 1 ? forces[FORCE_VZ] : forces[FORCE_VY],
        .flatwise = work->strong == 1 ? forces[FORCE_VY] : forces[FORCE_VZ]};
    place.rating = check_shear(&place.shear, NULL);
    keep_worse(&work->shear, &place);
}

/* A section without inertia (a wire) hangs in a curve instead of bending. */
static void forget_bending(const struct model_member *stick, double forces[FORCE_COUNT]) {
    if (!(stick->Iy > 0.0))
        forces[FORCE_MY] = forces[FORCE_VZ] = 0.0;
    if (!(stick->Iz > 0.0))
        forces[FORCE_MZ] = forces[FORCE_VY] = 0.0;
}

/* One combination of one stick: the limits of each segment, made once for all mixes. */
static void judge_combination(struct stick_work *work, int combination) {
    struct run *run = work->run;
    size_t count = work->stick->segment_count;
    struct bend_limits *limits = ARENA_ARRAY(run->arena, struct bend_limits, count);
    struct station **stations = ARENA_ARRAY(run->arena, struct station *, count);
    size_t *places = ARENA_ARRAY(run->arena, size_t, count);
    struct stick_state *states = ARENA_ARRAY(run->arena, struct stick_state, count);
    for (size_t k = 0; k < count; k++) {
        size_t segment = work->stick->first_segment + k;
        struct bend_input frame =
            bend_frame(work, segment, run->loads->combinations[combination].duration);
        limits[k] = bend_limits_of(&frame);
        places[k] = stations_of(run->arena, run->responses[STIFFNESS_MIDDLE], segment, &stations[k]);
    }
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        for (size_t x = 0; run_uses(run, s) && x < run->mix_count; x++) {
            const struct mix *mix = &run->mixes[x];
            if (mix->combination != combination || !mix->solved)
                continue;
            struct arena_mark mark = arena_mark(run->arena);
            for (size_t k = 0; k < count; k++)
                states[k] = stick_state(run->arena, run->responses[s],
                                        work->stick->first_segment + k, mix->weights);
            for (size_t k = 0; k < count; k++)
                for (size_t i = 0; i < places[k]; i++) {
                    size_t segment = work->stick->first_segment + k;
                    double forces[FORCE_COUNT];
                    struct worst_place place = {.combination = combination,
                                                .lean = mix->lean,
                                                .at = run->model->segments[segment].start +
                                                      stations[k][i].x,
                                                .stiffness = s};
                    stick_forces(&states[k], stations[k][i].x, stations[k][i].after, forces);
                    forget_bending(work->stick, forces);
                    judge_bend(work, &limits[k], states, segment, forces, place);
                    judge_shear(work, &limits[k], forces, place);
                }
            arena_rewind(run->arena, mark);
        }
}

static void head_working(struct run *run, struct working *working,
                         const struct worst_place *place) {
    static const char *const words[] = {"as soft as they may be", "at their middle stiffness",
                                        "as stiff as they may be"};
    if (!working)
        return;
    const char *screws = run->model->has_screws
                             ? arena_print(run->arena, ", screwed joints %s", words[place->stiffness])
                             : "";
    working_heading(working, arena_print(run->arena, "%s from the start of the stick%s%s%s",
                                         quantity_print_length(run->arena, place->at,
                                                               run->frame->units),
                                         *place->lean ? ", frame " : "", place->lean, screws));
}

/* Sticks of the user's own material without a strength: one line for all of them. */
struct missing {
    const char *kind;
    struct rating rating;
    int combination;
    size_t count;
    const char *names;
};

static void note_missing(struct run *run, struct missing *missing, const struct worst_place *place,
                         size_t member) {
    const char *name = run->frame->members.items[member].name;
    missing->rating = place->rating;
    missing->combination = place->combination;
    missing->count++;
    if (missing->count <= 3)
        missing->names = missing->count == 1 ? name
                                             : arena_print(run->arena, "%s, %s", missing->names, name);
}

static void add_missing(struct run *run, const struct missing *missing) {
    if (missing->count == 0)
        return;
    const char *more = missing->count > 3
                           ? arena_print(run->arena, " and %zu more", missing->count - 3)
                           : "";
    run_add_check(run, missing->kind, "own-material",
                  run->loads->combinations[missing->combination].name, missing->rating,
                  arena_print(run->arena, "%s%s", missing->names, more),
                  "give the strengths of this material in its entry under sticks", NULL);
}

/* Long-standing bending or any pull on a finger-jointed stick: stresses over a hundredth of the
 * strength count. */
static bool unfit_finger_joints(const struct stick_work *work) {
    if (!work->stick->lumber.finger_jointed)
        return false;
    const struct lumber_value *Fb = &work->stick->lumber.values[PROPERTY_FB];
    const struct lumber_value *Ft = &work->stick->lumber.values[PROPERTY_FT];
    const struct run *run = work->run;
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    double *weights = ARENA_ARRAY(run->arena, double, response->column_count);
    bool bending = false, tension = false;
    for (size_t c = 0; c < run->loads->combination_count; c++)
        for (int share = SHARE_ALL; share <= SHARE_STANDING; share++) {
            if (!run_weights(run, response, (int)c, share, weights))
                continue;
            for (size_t k = 0; k < work->stick->segment_count; k++) {
                size_t segment = work->stick->first_segment + k;
                struct stick_state state = stick_state(run->arena, response, segment, weights);
                for (int part = 0; part <= 8; part++) {
                    double f[FORCE_COUNT];
                    stick_forces(&state, state.length * part / 8.0, part < 8, f);
                    double moment = hypot(f[FORCE_MY], f[FORCE_MZ]);
                    if (share == SHARE_STANDING)
                        bending |= !(moment / work->section.strong <=
                                     0.01 * (Fb->has ? Fb->cited.value : 0.0));
                    tension |= !(f[FORCE_N] / work->section.area <=
                                 0.01 * (Ft->has ? Ft->cited.value : 0.0));
                }
            }
        }
    return lumber_unfit_finger_joints(&work->stick->lumber, bending, tension);
}

static const char *bend_advice(const struct worst_place *place) {
    if (place->bend.lumber->basis == LUMBER_NO_VALUES)
        return "no published strength for this grade at this size: choose another grade or size";
    if (place->bend.N < 0.0 && fabs(place->bend.edgewise) + fabs(place->bend.flatwise) < 1.0)
        return "shorten the stretch that nothing holds sideways, or use a thicker stick";
    return "use the next size up, a better grade, or shorten its span";
}

static void add_checks(struct stick_work *work, struct missing *no_bend, struct missing *no_shear) {
    struct run *run = work->run;
    const char *name = run->frame->members.items[work->member].name;
    bool own = work->stick->lumber.basis == LUMBER_OWN;
    if (work->bend.found && unfit_finger_joints(work)) {
        run_add_check(run, "bend", name, run->loads->combinations[work->bend.combination].name,
                      rating_missing("finger-jointed, with long-standing bending or a pull",
                                     "engineering practice [trade]"),
                      name, "use a solid stick here: finger joints without a structural stamp have "
                            "no strength for this",
                      NULL);
    } else if (work->bend.found && own && !work->bend.rating.covered) {
        note_missing(run, no_bend, &work->bend, work->member);
    } else if (work->bend.found) {
        struct working *working = run_working(run, work->bend_id);
        head_working(run, working, &work->bend);
        check_bend(&work->bend.bend, working);
        run_add_check(run, "bend", name, run->loads->combinations[work->bend.combination].name,
                      work->bend.rating, name, bend_advice(&work->bend), working);
    }
    if (work->shear.found && own && !work->shear.rating.covered) {
        note_missing(run, no_shear, &work->shear, work->member);
    } else if (work->shear.found) {
        struct working *working = run_working(run, work->shear_id);
        head_working(run, working, &work->shear);
        check_shear(&work->shear.shear, working);
        run_add_check(run, "shear", name, run->loads->combinations[work->shear.combination].name,
                      work->shear.rating, name, "use a deeper or thicker stick", working);
    }
}

static void caution_slender(struct run *run, const struct stick_work *work) {
    if (!work->bend.rating.slender)
        return;
    run_caution(run, arena_print(run->arena,
                                 "%s is slimmer than a post may be (over 50 times its thickness "
                                 "between the joints that hold it, NDS 2018 3.7.1.4); it carries "
                                 "too little here for that to count",
                                 run->frame->members.items[work->member].name));
}

void judge_strength(struct run *run) {
    struct missing no_bend = {.kind = "bend"}, no_shear = {.kind = "shear"};
    for (size_t m = 0; m < run->model->member_count; m++) {
        const struct member *member = &run->frame->members.items[m];
        struct stick_work work = {.run = run,
                                  .member = m,
                                  .stick = &run->model->members[m],
                                  .held_along = member->held_along,
                                  .repetitive = member->repetitive,
                                  .bend_id = arena_print(run->arena, "bend/%s", member->name),
                                  .shear_id = arena_print(run->arena, "shear/%s", member->name)};
        work.section =
            judge_section(work.stick, &run->frame->sticks.items[member->stick], &work.strong);
        work.largest_shear =
            ARENA_ARRAY(run->arena, double, run->loads->combination_count);
        for (size_t c = 0; c < run->loads->combination_count; c++) {
            work.largest_shear[c] = -1.0;
            struct arena_mark mark = arena_mark(run->arena);
            judge_combination(&work, (int)c);
            arena_rewind(run->arena, mark);
        }
        add_checks(&work, &no_bend, &no_shear);
        caution_slender(run, &work);
    }
    add_missing(run, &no_bend);
    add_missing(run, &no_shear);
}
