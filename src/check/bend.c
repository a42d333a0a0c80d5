#include "check/bend.h"

#include "check/bend_sums.h"
#include "check/strength.h"

#include <math.h>

/* Pa; less is dust of the solution, not a stress. */
static const double DUST = 1.0;

#define BEND_SOURCE "NDS 2018 3.3"
#define PUSH_SOURCE "NDS 2018 3.7"
#define PULL_SOURCE "NDS 2018 3.8"

static double clean(double stress) {
    return stress < DUST ? 0.0 : stress;
}

static void note_section(const struct section *section, struct working *working) {
    const char *area = section->own ? NULL : "b * d";
    if (!section->own || section->width > 0.0) {
        working_given(working, "b", "smaller side of the stick", section->thickness,
                      QUANTITY_LENGTH);
        working_given(working, "d", "larger side of the stick", section->width, QUANTITY_LENGTH);
    }
    working_step(working, "A", "area", area, section->area, QUANTITY_AREA, "");
}

/* fb1 and fb2; 0 where there is no moment, NAN where the section is not known. */
static void bending_stresses(const struct bend_input *input, struct stresses *stress,
                             struct working *working) {
    const struct section *section = &input->section;
    if (input->edgewise != 0.0) {
        working_given(working, "M1", "bending on edge", fabs(input->edgewise), QUANTITY_MOMENT);
        working_step(working, "S1", "section modulus on edge", section->own ? NULL : "b * d^2 / 6",
                     section->strong, QUANTITY_MODULUS, "");
        stress->fb1 = clean(working_step(working, "fb1", "stress from bending on edge", "M1 / S1",
                                         fabs(input->edgewise) / section->strong, QUANTITY_STRESS,
                                         BEND_SOURCE));
    }
    if (input->flatwise != 0.0) {
        working_given(working, "M2", "bending flatwise", fabs(input->flatwise), QUANTITY_MOMENT);
        working_step(working, "S2", "section modulus flatwise", section->own ? NULL : "d * b^2 / 6",
                     section->weak, QUANTITY_MODULUS, "");
        stress->fb2 = clean(working_step(working, "fb2", "stress from bending flatwise", "M2 / S2",
                                         fabs(input->flatwise) / section->weak, QUANTITY_STRESS,
                                         BEND_SOURCE));
    }
}

static void axial_stress(const struct bend_input *input, struct stresses *stress,
                         struct working *working) {
    if (input->N > 0.0) {
        double net = input->net_area > 0.0 ? input->net_area : input->section.area;
        working_given(working, "T", "pull along the stick", input->N, QUANTITY_WEIGHT);
        working_given(working, "An", "area left beside the screw holes", net, QUANTITY_AREA);
        stress->ft = clean(working_step(working, "ft", "stress from the pull", "T / An",
                                        input->N / net, QUANTITY_STRESS, PULL_SOURCE));
    } else if (input->N < 0.0) {
        working_given(working, "P", "push along the stick", -input->N, QUANTITY_WEIGHT);
        stress->fc =
            clean(working_step(working, "fc", "stress from the push", "P / A",
                               -input->N / input->section.area, QUANTITY_STRESS, PUSH_SOURCE));
    }
}

static bool any_nan(const struct bend_input *input) {
    return isnan(input->N) || isnan(input->edgewise) || isnan(input->flatwise) ||
           isnan(input->unheld) || isnan(input->effective_length[0]) ||
           isnan(input->effective_length[1]) || isnan(input->section.area) ||
           isnan(input->net_area);
}

/* What is needed and not there; NULL where all is. */
static const char *missing(const struct bend_input *input, const struct stresses *stress) {
    const struct lumber_value *values = input->lumber->values;
    bool bends = stress->fb1 != 0.0 || stress->fb2 != 0.0;
    if (isnan(stress->fb1) || isnan(stress->fb2))
        return "size of the stick";
    if (bends && !values[PROPERTY_FB].has)
        return property_words(PROPERTY_FB);
    if (stress->ft != 0.0 && !values[PROPERTY_FT].has)
        return property_words(PROPERTY_FT);
    if (stress->fc != 0.0 && !values[PROPERTY_FC].has)
        return property_words(PROPERTY_FC);
    if (!values[PROPERTY_EMIN].has)
        return property_words(PROPERTY_EMIN);
    return NULL;
}

/* Fb1', Fb2' and what turns the beam over. False where a factor has no value. */
static bool bending_strengths(const struct bend_input *input, struct stresses *stress,
                              struct working *working) {
    if (!strength_bending(input->lumber, &input->conditions, working,
                          stress->fb1 > 0.0 ? &stress->fb_star : NULL,
                          stress->fb2 > 0.0 ? &stress->fb2_limit : NULL))
        return false;
    if (!(stress->fb1 > 0.0))
        return true;
    stress->beam =
        beam_stability(input->shape, input->unheld, input->section.thickness, input->section.width,
                       stress->fb_star, stress->least_stiffness, working);
    stress->fb1_limit =
        working_step(working, "Fb1'", "bending strength on edge, after all factors", "Fbs * CL",
                     stress->fb_star * stress->beam.factor, QUANTITY_STRESS, "NDS 2018 3.3.3");
    return true;
}

static bool push_strength(const struct bend_input *input, struct stresses *stress,
                          struct working *working) {
    double star;
    if (!strength(input->lumber, PROPERTY_FC, &input->conditions, working, &star))
        return false;
    stress->column =
        column_stability(input->effective_length, input->section.column_width,
                         input->section.column_thickness, star, stress->least_stiffness, working);
    stress->fc_limit =
        working_step(working, "Fc'", "push strength after all factors", "Fcs * CP",
                     star * stress->column.factor, QUANTITY_STRESS, "NDS 2018 3.7.1");
    return true;
}

static bool strengths(const struct bend_input *input, struct stresses *stress,
                      struct working *working) {
    strength_duration(input->conditions.duration, working);
    if (stress->fb1 > 0.0 || stress->fc > 0.0)
        stress->least_stiffness =
            lumber_least_stiffness(input->lumber, input->conditions.wet, working);
    if ((stress->fb1 > 0.0 || stress->fb2 > 0.0) && !bending_strengths(input, stress, working))
        return false;
    if (stress->fc > 0.0 && !push_strength(input, stress, working))
        return false;
    return !(stress->ft > 0.0) ||
           strength(input->lumber, PROPERTY_FT, &input->conditions, working, &stress->ft_limit);
}

struct rating check_bend(const struct bend_input *input, struct working *working) {
    struct stresses stress = {.beam = {0.0, INFINITY, 1.0},
                              .column = {{0.0, 0.0}, {INFINITY, INFINITY}, 1.0}};
    if (any_nan(input))
        return rating_of(NAN, NAN, QUANTITY_STRESS, BEND_SOURCE, "forces are not known");
    note_section(&input->section, working);
    bending_stresses(input, &stress, working);
    axial_stress(input, &stress, working);
    const char *lacking = missing(input, &stress);
    if (lacking)
        return rating_missing(lacking, BEND_SOURCE);
    if (!strengths(input, &stress, working))
        return rating_missing("a factor for this size", BEND_SOURCE);
    return worst_of_stresses(&stress, working);
}

struct bend_limits bend_limits_of(const struct bend_input *input) {
    struct bend_limits limits = {.input = *input};
    /* one stress of each kind asks for every limit */
    struct stresses all = {.fb1 = 1.0, .fb2 = 1.0, .fc = 1.0};
    all.least_stiffness = lumber_least_stiffness(input->lumber, input->conditions.wet, NULL);
    limits.has_flatwise =
        strength_bending(input->lumber, &input->conditions, NULL, NULL, &limits.fb2_limit);
    struct stresses edgewise = {.fb1 = 1.0, .least_stiffness = all.least_stiffness};
    limits.has_edgewise = bending_strengths(input, &edgewise, NULL);
    limits.fb_star = edgewise.fb_star;
    limits.fb1_limit = edgewise.fb1_limit;
    limits.beam = edgewise.beam;
    limits.has_push = push_strength(input, &all, NULL);
    limits.fc_limit = all.fc_limit;
    limits.column = all.column;
    limits.has_pull =
        strength(input->lumber, PROPERTY_FT, &input->conditions, NULL, &limits.ft_limit);
    limits.least_stiffness = all.least_stiffness;
    limits.stout = stresses_stout(&limits.column, &limits.beam);
    return limits;
}

struct rating bend_rating(const struct bend_limits *limits, double N, double edgewise,
                          double flatwise) {
    struct bend_input input = limits->input;
    input.N = N;
    input.edgewise = edgewise;
    input.flatwise = flatwise;
    if (any_nan(&input))
        return rating_of(NAN, NAN, QUANTITY_STRESS, BEND_SOURCE, "forces are not known");
    struct stresses stress = {.beam = {0.0, INFINITY, 1.0},
                              .column = {{0.0, 0.0}, {INFINITY, INFINITY}, 1.0}};
    bending_stresses(&input, &stress, NULL);
    axial_stress(&input, &stress, NULL);
    const char *lacking = missing(&input, &stress);
    if (lacking)
        return rating_missing(lacking, BEND_SOURCE);
    if ((stress.fb1 > 0.0 && !limits->has_edgewise) ||
        (stress.fb2 > 0.0 && !limits->has_flatwise) || (stress.ft > 0.0 && !limits->has_pull) ||
        (stress.fc > 0.0 && !limits->has_push))
        return rating_missing("a factor for this size", BEND_SOURCE);
    stress.stout = limits->stout;
    stress.least_stiffness = limits->least_stiffness;
    stress.fb_star = limits->fb_star;
    stress.fb1_limit = limits->fb1_limit;
    stress.fb2_limit = limits->fb2_limit;
    stress.ft_limit = limits->ft_limit;
    stress.fc_limit = limits->fc_limit;
    if (stress.fb1 > 0.0)
        stress.beam = limits->beam;
    if (stress.fc > 0.0)
        stress.column = limits->column;
    return worst_of_stresses(&stress, NULL);
}
