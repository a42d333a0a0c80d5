#include "judge/steps.h"

#include <string.h>

static void sticks_taken(struct run *run) {
    const struct frame *frame = run->frame;
    bool *told = ARENA_ARRAY(run->arena, bool, frame->sticks.count);
    for (size_t m = 0; m < run->model->member_count; m++) {
        int kind = frame->members.items[m].stick;
        const struct lumber *lumber = &run->model->members[m].lumber;
        if (told[kind])
            continue;
        told[kind] = true;
        const char *words = lumber_basis_words(lumber->basis);
        const char *name = frame->sticks.items[kind].name;
        if (*words && lumber->basis != LUMBER_OWN)
            run_caution(run, arena_print(run->arena, "stick %s: %s", name, words));
        if (lumber->emin_is_e)
            run_caution(run, arena_print(run->arena,
                                         "stick %s: no Emin given, so E itself is used against "
                                         "buckling, which is kinder than the rule for graded wood",
                                         name));
        if (lumber->worse_than_taken)
            run_caution(
                run, arena_print(run->arena,
                                 "stick %s: the knots or the grain that you measured leave "
                                 "it weaker than an ungraded one: it has no strength that can be "
                                 "counted on; do not use it",
                                 name));
        if (lumber->basis == LUMBER_OWN && !lumber->has_density && frame->self_weight)
            run_caution(run, arena_print(run->arena,
                                         "stick %s: no density given, so its weight counts as none",
                                         name));
    }
}

static void service(struct run *run) {
    const struct site *site = &run->frame->site;
    bool wood = false; /* own numbers are used as given, wet or dry */
    for (size_t m = 0; m < run->model->member_count; m++)
        wood |= run->model->members[m].lumber.basis != LUMBER_OWN;
    if (wood && !site->wet_service_given)
        run_caution(run,
                    run->model->wet
                        ? "the wood is taken as wet in service (weaker, softer, sags more); say "
                          "wet-service: no, or place: indoors, under site if it stays dry"
                        : "the wood is taken as dry in service because the frame stands indoors");
}

static void not_checked(struct run *run, const char *what) {
    run_caution(run, arena_print(run->arena, "not checked: %s", what));
}

/* What the description holds or leaves out and this version does not judge. */
static void left_out(struct run *run) {
    const struct frame *frame = run->frame;
    bool indoors = frame->site.place == PLACE_INDOORS;
    if (!indoors && !frame->site.ground_snow.given && !frame->site.snow_depth.given)
        not_checked(run, "snow (none given under site)");
    if (!indoors && !frame->site.wind.given && !frame->site.gust.given && frame->site.wind_word < 0)
        not_checked(run, "wind (none given under site)");
    for (size_t k = 0; k < frame->shelves.count; k++) {
        const struct shelf *shelf = &frame->shelves.items[k];
        if (shelf->deck == DECK_SHEET || shelf->deck == DECK_WEIGHT)
            not_checked(run,
                        arena_print(run->arena, "the deck of the shelf %s itself between its rails",
                                    shelf->name));
    }
}

/* Ends whose fastening is a word or a number: nothing is known of what holds them. */
static void bare_fastenings(struct run *run) {
    size_t count = 0;
    const char *first = NULL;
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            int connection = run->model->members[m].ends[end].connection;
            enum connection_type type =
                connection < 0 ? CONNECTION_HINGE : run->frame->connections.items[connection].type;
            if (type != CONNECTION_PINNED && type != CONNECTION_RIGID && type != CONNECTION_SPRINGS)
                continue;
            if (count++ == 0)
                first = run->frame->members.items[m].name;
        }
    if (count)
        not_checked(run, arena_print(run->arena,
                                     "what holds %zu stick end%s together (pinned, rigid or given "
                                     "by springs; the first: %s): name the screws to have them "
                                     "judged",
                                     count, count == 1 ? "" : "s", first));
}

void judge_cautions(struct run *run) {
    for (size_t k = 0; k < run->frame->cautions.count; k++)
        run_caution(run, run->frame->cautions.items[k]);
    if (run->model) {
        for (size_t k = 0; k < run->model->cautions.count; k++)
            run_caution(run, run->model->cautions.items[k]);
        sticks_taken(run);
        service(run);
        judge_workshop(run);
        bare_fastenings(run);
    }
    if (run->loads)
        for (size_t k = 0; k < run->loads->cautions.count; k++)
            run_caution(run, run->loads->cautions.items[k]);
    left_out(run);
    run_caution(run,
                "creep is counted as published on average (1.5 times dry, 2 times wet); in bad "
                "cases wood sags up to 3 times its first sag");
    run_caution(run,
                "values are for sound wood: no rot, no splits, no large knots beyond the grade");
    run_caution(run, "nobody climbs or kneels on the frame or its roof");
    run_caution(run,
                "a shut box in the sun may pass 100 F, where wood is weaker than counted here");
    run_caution(run,
                "local codes and licensed practice decide; this is a check of your own drawing, "
                "not a permit");
}
