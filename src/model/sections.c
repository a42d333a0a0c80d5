#include "model/sections.h"

#include "base/vector.h"
#include "model/axes.h"

#include <math.h>

static double or_nan(struct optional value) {
    return value.given ? value.value : NAN;
}

struct lumber sections_lumber(const struct stick *stick) {
    if (!stick->has_material) {
        struct lumber_from_table named = {
            .species = stick->species,
            .grade = stick->grade,
            .size = stick->size,
            .thickness = stick->thickness,
            .width = stick->width,
            .stress_rated = stick->stress_rated,
            .finger_jointed = stick->finger_jointed,
            .measured = stick->knots.given && stick->slope_of_grain.given,
            .knots = stick->knots.value,
            .slope_of_grain = stick->slope_of_grain.value,
        };
        return lumber_from_table(named);
    }
    const struct own_material *own = &stick->material;
    struct lumber_from_numbers numbers = {.thickness = stick->thickness,
                                          .width = stick->width,
                                          .shear_modulus = or_nan(own->G),
                                          .density = or_nan(own->density),
                                          .finger_jointed = stick->finger_jointed};
    numbers.values[PROPERTY_FB] = or_nan(own->Fb);
    numbers.values[PROPERTY_FT] = or_nan(own->Ft);
    numbers.values[PROPERTY_FV] = or_nan(own->Fv);
    numbers.values[PROPERTY_FCP] = or_nan(own->Fcp);
    numbers.values[PROPERTY_FC] = or_nan(own->Fc);
    numbers.values[PROPERTY_E] = own->E;
    numbers.values[PROPERTY_EMIN] = or_nan(own->Emin);
    return lumber_from_numbers(numbers);
}

double sections_density(const struct lumber *lumber, bool wet) {
    double density;
    return lumber_density(lumber, wet, &density) ? density : 0.0;
}

static void own_section(const struct stick *stick, struct model_member *out) {
    const struct own_section *own = &stick->section;
    out->A = own->A;
    out->Iy = own->Iy;
    out->Iz = own->Iz;
    out->J = own->J;
    if (stick->has_material && stick->material.G.given) {
        out->Ay = own->Ay;
        out->Az = own->Az;
    }
    /* Sides of the rectangle of equal inertias, where a fastening or a sheet needs a size. */
    out->size_y = own->A > 0.0 ? sqrt(12.0 * own->Iz / own->A) : 0.0;
    out->size_z = own->A > 0.0 ? sqrt(12.0 * own->Iy / own->A) : 0.0;
}

static void rectangle(struct model_member *out) {
    double y = out->size_y, z = out->size_z;
    out->A = y * z;
    out->Iy = y * z * z * z / 12.0;
    out->Iz = z * y * y * y / 12.0;
    out->J = rectangle_torsion(y, z);
}

bool sections_member(const struct frame *frame, const struct member *member,
                     const struct lumber *lumber, bool wet, struct model_member *out) {
    const struct stick *stick = &frame->sticks.items[member->stick];
    for (int k = 0; k < 3; k++) {
        out->from[k] = frame->joints.items[member->from].at[k];
        out->to[k] = frame->joints.items[member->to].at[k];
    }
    double along[3];
    out->length = vector_between(out->from, out->to, along);
    struct attitude attitude = attitude_of(member, stick);
    axes_local(out->from, out->to, attitude.turn, out->axes);
    if (stick->has_section) {
        own_section(stick, out);
    } else {
        axes_sizes(axes_vertical(out->from, out->to), attitude, stick->thickness, stick->width,
                   &out->size_y, &out->size_z);
        rectangle(out);
    }
    out->lumber = *lumber;
    out->E = lumber_stiffness(&out->lumber, wet, NULL);
    out->G = lumber_shear_modulus(&out->lumber, wet);
    out->weight = out->A * sections_density(&out->lumber, wet) * table_constant("gravity").value;
    return out->E > 0.0 && isfinite(out->E) && isfinite(out->G);
}

double member_extent(const struct model_member *member, const double direction[3]) {
    return fabs(vector_dot(member->axes[1], direction)) * member->size_y +
           fabs(vector_dot(member->axes[2], direction)) * member->size_z;
}

bool member_steep(const struct model_member *member) {
    return fabs(member->axes[0][2]) > SINE_45;
}
