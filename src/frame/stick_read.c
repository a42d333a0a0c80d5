#include "frame/sections.h"
#include "frame/table_names.h"
#include "units/quote.h"

#include <math.h>

#define ROOMY 1.0 /* m: no stick is thicker; more means that the unit was forgotten */

static void read_actual_size(struct reader *reader, const struct node *node, struct stick *stick) {
    double sides[2] = {0, 0};
    if (!read_quantities(reader, node, QUANTITY_LENGTH, 2, "two sides [thickness, width]", sides))
        return;
    if (!(sides[0] > 0 && sides[1] > 0)) {
        trouble(reader, node, "both sides of a stick must be more than 0");
        return;
    }
    stick->thickness = fmin(sides[0], sides[1]);
    stick->width = fmax(sides[0], sides[1]);
    stick->has_size = true;
    if (!(stick->width <= ROOMY))
        trouble(reader, node, "%s is too thick for a stick; was another unit meant?",
                quote_text(reader->arena, quantity_print(reader->arena, stick->width,
                                                         QUANTITY_LENGTH, reader->frame->units)));
}

static void read_size(struct reader *reader, const struct node *node, struct stick *stick) {
    if (node->kind == NODE_LIST) {
        read_actual_size(reader, node, stick);
        return;
    }
    int size = read_table_name(reader, node, NAMES_SIZES);
    if (size < 0)
        return;
    const struct dressed_size *dressed = table_size(size);
    stick->size = size;
    stick->has_size = true;
    stick->thickness = fmin(dressed->thickness, dressed->width);
    stick->width = fmax(dressed->thickness, dressed->width);
}

/* One of the second moments: 0 where it is not given, and said. */
static void read_inertia(struct reader *reader, const struct node *map, const char *key,
                         double *value) {
    struct optional given = {0};
    optional_quantity(reader, map, key, QUANTITY_INERTIA, NOT_NEGATIVE, &given);
    *value = given.value;
    if (!node_child(map, key))
        caution(reader, "Stick %s: no %s is given; it is taken as 0.", map->parent->key, key);
}

static void read_section(struct reader *reader, const struct node *node, struct stick *stick) {
    if (!is_map(reader, node, "{A: .., Iy: .., Iz: .., J: ..}"))
        return;
    only_keys(reader, node, KEYS("A", "Iy", "Iz", "J", "Ay", "Az"));
    struct own_section *section = &stick->section;
    required_quantity(reader, node, "A", QUANTITY_AREA, OVER_ZERO, &section->A);
    read_inertia(reader, node, "Iy", &section->Iy);
    read_inertia(reader, node, "Iz", &section->Iz);
    read_inertia(reader, node, "J", &section->J);
    struct optional Ay = {0}, Az = {0};
    optional_quantity(reader, node, "Ay", QUANTITY_AREA, OVER_ZERO, &Ay);
    optional_quantity(reader, node, "Az", QUANTITY_AREA, OVER_ZERO, &Az);
    section->Ay = Ay.value;
    section->Az = Az.value;
    stick->has_section = true;
}

static void read_material(struct reader *reader, const struct node *node, struct stick *stick) {
    if (!is_map(reader, node, "{E: .., density: .., ...}"))
        return;
    only_keys(reader, node, KEYS("E", "G", "density", "Fb", "Fv", "Fc", "Ft", "Fcp", "Emin"));
    struct own_material *material = &stick->material;
    required_quantity(reader, node, "E", QUANTITY_STRESS, OVER_ZERO, &material->E);
    optional_quantity(reader, node, "G", QUANTITY_STRESS, OVER_ZERO, &material->G);
    optional_quantity(reader, node, "density", QUANTITY_DENSITY, NOT_NEGATIVE, &material->density);
    optional_quantity(reader, node, "Fb", QUANTITY_STRESS, OVER_ZERO, &material->Fb);
    optional_quantity(reader, node, "Fv", QUANTITY_STRESS, OVER_ZERO, &material->Fv);
    optional_quantity(reader, node, "Fc", QUANTITY_STRESS, OVER_ZERO, &material->Fc);
    optional_quantity(reader, node, "Ft", QUANTITY_STRESS, OVER_ZERO, &material->Ft);
    optional_quantity(reader, node, "Fcp", QUANTITY_STRESS, OVER_ZERO, &material->Fcp);
    optional_quantity(reader, node, "Emin", QUANTITY_STRESS, OVER_ZERO, &material->Emin);
    stick->has_material = true;
    if (!node_child(node, "density") && reader->frame->self_weight)
        caution(reader, "Stick %s: no density is given, so it weighs nothing here.", stick->name);
}

static void read_wood(struct reader *reader, const struct node *entry, struct stick *stick) {
    const struct node *species = node_child(entry, "species");
    const struct node *grade = node_child(entry, "grade");
    if (species)
        stick->species = read_table_name(reader, species, NAMES_SPECIES);
    if (grade)
        stick->grade = read_table_name(reader, grade, NAMES_GRADES);
    if (species && !grade)
        trouble_missing(reader, entry, "grade",
                        "what is stamped on it, such as no-2; 'ungraded' where there is no stamp");
    if (grade && !species)
        trouble_missing(reader, entry, "species", "the kind of wood, such as spruce-pine-fir");
}

/* Exactly one of a size and a section, exactly one of a wood and a material. */
static void read_choices(struct reader *reader, const struct node *entry, struct stick *stick) {
    const struct node *size = node_child(entry, "size");
    const struct node *section = node_child(entry, "section");
    const struct node *material = node_child(entry, "material");
    bool wood = node_child(entry, "species") || node_child(entry, "grade");
    if (size && section)
        trouble_with_key(reader, section, "'size' and 'section' are both given; give one");
    if (material && wood)
        trouble_with_key(reader, material,
                         "'material' and a species or grade are both given; give one");
    if (!size && !section)
        trouble_missing(reader, entry, "size", "a size such as 2x2, [20 mm, 90 mm], or 'section'");
    if (!material && !wood)
        trouble_missing(reader, entry, "species", "'species' and 'grade', or 'material'");
    if (size)
        read_size(reader, size, stick);
    if (section)
        read_section(reader, section, stick);
    if (material)
        read_material(reader, material, stick);
    if (wood)
        read_wood(reader, entry, stick);
    bool shear = stick->section.Ay > 0 || stick->section.Az > 0;
    if (shear && (!stick->has_material || !stick->material.G.given))
        caution(reader, "Stick %s: Ay and Az need a material with G; they are not used.",
                stick->name);
}

static void read_stress_rated(struct reader *reader, const struct node *entry,
                              struct stick *stick) {
    const struct node *node = node_child(entry, "stress-rated");
    if (!node || !read_yes_no(reader, node, &stick->stress_rated) || !stick->stress_rated)
        return;
    if (stick->has_material)
        trouble_with_key(reader, node, "only a stick with a species and a grade is stress-rated");
    else if (stick->grade >= 0 && stick->grade == GRADE_UNGRADED)
        trouble_with_key(reader, node, "an ungraded stick is not stress-rated");
    else if (stick->has_size && fabs(table_nominal_inches(stick->thickness) - 1) > 0.01)
        trouble_with_key(reader, node, "only 1-inch boards are marked so; leave it out");
}

/* The user's own grading counts only where there is no stamp. */
static void read_own_grading(struct reader *reader, const struct node *entry, struct stick *stick) {
    const struct node *knots = node_child(entry, "knots");
    const struct node *slope = node_child(entry, "slope-of-grain");
    if (knots)
        optional_quantity(reader, entry, "knots", QUANTITY_LENGTH, NOT_NEGATIVE, &stick->knots);
    if (stick->knots.given && stick->has_size && !(stick->knots.value < stick->width))
        trouble(reader, knots, "a knot as wide as the stick leaves no wood");
    const char *text = slope ? read_text(reader, slope, "a slope such as 1:12") : NULL;
    double run = 0, length = 0;
    const char *why = NULL;
    if (text &&
        quantity_read_ratio(reader->arena, text, NULL, reader->frame->units, &run, &length, &why))
        stick->slope_of_grain = (struct optional){true, 1 / run};
    else if (text)
        trouble(reader, slope, "%s", why);
    if ((knots || slope) && (stick->has_material || stick->grade != GRADE_UNGRADED))
        caution(reader, "Stick %s: knots and slope-of-grain count only where it is ungraded.",
                stick->name);
}

static void read_stick(struct reader *reader, const struct node *entry) {
    check_name(reader, entry);
    struct stick stick = {
        .name = entry->key, .place = entry->key_place, .size = -1, .species = -1, .grade = -1};
    if (is_map(reader, entry, "a stick such as {size: 2x2, species: .., grade: ..}")) {
        only_keys(reader, entry,
                  KEYS("size", "species", "grade", "section", "material", "stands", "faces", "turn",
                       "knots", "slope-of-grain", "finger-jointed", "stress-rated", "treated"));
        read_choices(reader, entry, &stick);
        read_stance(reader, entry, &stick.stands, &stick.faces, &stick.turn);
        optional_yes_no(reader, entry, "finger-jointed", &stick.finger_jointed);
        optional_yes_no(reader, entry, "treated", &stick.treated);
        read_stress_rated(reader, entry, &stick);
        read_own_grading(reader, entry, &stick);
    }
    ARRAY_PUSH(reader->arena, &reader->frame->sticks, stick);
    name_index_add(reader->arena, &reader->sticks, entry->key);
}

void read_sticks(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "sticks by name"))
        return;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next)
        read_stick(reader, entry);
}
