/* loaded.h - the loads of a frame given as text, and what of them lies on a stick. */
#ifndef TESTS_UNIT_LOADED_H
#define TESTS_UNIT_LOADED_H

#include "in_arena.h"
#include "loads/loads.h"
#include "near.h"
#include "second_frame.h"

/* Indoors, weightless; what follows are the joints. Sticks 40 by 40 mm. */
#define LOADED                                                                                     \
    "batten: 1\nunits: si\nself-weight: no\n"                                                      \
    "sticks: {bar: {size: [40, 40], material: {E: 10 GPa, density: 450}},\n"                       \
    "  thin: {section: {A: 1000 mm2, Iy: 1e5 mm4, Iz: 1e5 mm4, J: 1e5 mm4}, "                      \
    "material: {E: 10 GPa, density: 450}}}\n"                                                      \
    "connections: {default: rigid}\n"

static inline const struct model *model_of_text(const char *text) {
    struct problems problems = problems_new(arena);
    const struct model *model = model_build(arena, frame_of_text(arena, text), &problems);
    cr_assert(model != NULL && problems.count == 0, "no model");
    return model;
}

static inline const struct loads *loads_of_text(const char *text) {
    return loads_build(arena, model_of_text(text));
}

static inline const struct load_case *case_if_any(const struct loads *loads, const char *name) {
    for (size_t c = 0; c < loads->case_count; c++)
        if (strcmp(loads->cases[c].name, name) == 0)
            return &loads->cases[c];
    return NULL;
}

/* The only set of a case. */
static inline const struct load_set *set_of(const struct loads *loads, const char *name) {
    const struct load_case *found = case_if_any(loads, name);
    cr_assert(found && found->set_count == 1, "no case %s of one set", name);
    return &loads->sets[found->sets[0]];
}

static inline int member_of(const struct loads *loads, const char *name) {
    for (size_t m = 0; m < loads->model->member_count; m++)
        if (strcmp(loads->model->frame->members.items[m].name, name) == 0)
            return (int)m;
    cr_assert_fail("no member %s", name);
    return -1;
}

/* A set's downward force on a stick, N, and how far along the stick its middle lies, m. */
static inline void weighs(const struct loads *loads, const struct load_set *set, const char *name,
                          double force, double middle) {
    int member = member_of(loads, name);
    double sum = 0.0, moment = 0.0;
    for (size_t k = 0; k < set->on_segments.count; k++) {
        const struct segment_load *load = &set->on_segments.items[k];
        const struct segment *segment = &loads->model->segments[load->segment];
        if (segment->member != member)
            continue;
        double part = -load->force[2] * (load->b > load->a ? load->b - load->a : 1.0);
        sum += part;
        moment += part * (segment->start + (load->a + load->b) / 2.0);
    }
    NEAR(sum, force, 1e-9, 1e-9);
    NEAR(moment, force * middle, 1e-9, 1e-9);
}

static inline bool warned(const struct loads *loads, const char *words) {
    for (size_t k = 0; k < loads->cautions.count; k++)
        if (strstr(loads->cautions.items[k], words))
            return true;
    return false;
}

#endif
