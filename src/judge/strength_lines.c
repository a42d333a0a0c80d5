#include "judge/strength.h"

#include <math.h>

static void head_working(struct run *run, struct working *working,
                         const struct worst_place *place) {
    if (!working)
        return;
    working_heading(working,
                    arena_print(run->arena, "%s from the start of the stick%s%s%s%s",
                                quantity_print_length(run->arena, place->at, run->frame->units),
                                *place->lean ? ", frame " : "", place->lean,
                                *place->how ? ", " : "", place->how));
}

static void note_missing(struct run *run, struct missing *missing, const struct worst_place *place,
                         size_t member) {
    const char *name = run->frame->members.items[member].name;
    missing->rating = place->rating;
    missing->combination = place->combination;
    missing->count++;
    if (missing->count <= 3)
        missing->names =
            missing->count == 1 ? name : arena_print(run->arena, "%s, %s", missing->names, name);
}

static void add_missing(struct run *run, const struct missing *missing) {
    if (missing->count == 0)
        return;
    const char *more =
        missing->count > 3 ? arena_print(run->arena, " and %zu more", missing->count - 3) : "";
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
    if (place->bend.lumber->worse_than_taken)
        return "the knots or the grain that you measured leave it too weak: choose another stick";
    if (place->bend.lumber->basis == LUMBER_NO_VALUES)
        return "no published strength for this grade at this size: choose another grade or size";
    if (place->bend.N < 0.0 && fabs(place->bend.edgewise) + fabs(place->bend.flatwise) < 1.0)
        return "shorten the stretch that nothing holds sideways, or use a thicker stick";
    return "use the next size up, a better grade, or shorten its span";
}

static void add_bend(struct stick_work *work, struct missing *no_bend) {
    struct run *run = work->run;
    const char *name = run->frame->members.items[work->member].name;
    bool own = work->stick->lumber.basis == LUMBER_OWN;
    if (work->bend.found && unfit_finger_joints(work)) {
        run_add_check(run, "bend", name, run->loads->combinations[work->bend.combination].name,
                      rating_missing("finger-jointed, with long-standing bending or a pull",
                                     "engineering practice [trade]"),
                      name,
                      "use a solid stick here: finger joints without a structural stamp have "
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
}

static void add_shear(struct stick_work *work, struct missing *no_shear) {
    struct run *run = work->run;
    const char *name = run->frame->members.items[work->member].name;
    bool own = work->stick->lumber.basis == LUMBER_OWN;
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

static void note_slim(struct run *run, const struct stick_work *work, struct slim *slim) {
    const char *name = run->frame->members.items[work->member].name;
    if (!work->bend.rating.slender || work->bend.rating.ratio > 1.0)
        return;
    slim->count++;
    if (slim->count <= 4)
        slim->names =
            slim->count == 1 ? name : arena_print(run->arena, "%s, %s", slim->names, name);
}

static void caution_slim(struct run *run, const struct slim *slim) {
    if (!slim->count)
        return;
    const char *more =
        slim->count > 4 ? arena_print(run->arena, " and %zu more", slim->count - 4) : "";
    run_caution(run, arena_print(run->arena,
                                 "slimmer than a post may be (over 50 times the thickness between "
                                 "the joints that hold it, NDS 2018 3.7.1.4), but pushed too "
                                 "little for that to count: %s%s",
                                 slim->names, more));
}

void strength_add(struct stick_work *work, struct strength_lines *lines) {
    add_bend(work, &lines->no_bend);
    add_shear(work, &lines->no_shear);
    note_slim(work->run, work, &lines->slim);
}

void strength_finish(struct run *run, const struct strength_lines *lines) {
    add_missing(run, &lines->no_bend);
    add_missing(run, &lines->no_shear);
    caution_slim(run, &lines->slim);
}
