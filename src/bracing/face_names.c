#include "bracing/faces.h"

#include "base/vector.h"
#include "units/quantity.h"

#include <math.h>
#include <string.h>

#define SQUARE_ON 0.94 /* cosine of 20 degrees: faces the front or a side */

/* Level direction that an upright face looks along: 0 x, 1 y; -1 neither. */
static int looks_along(const struct face *face) {
    if (face->kind != FACE_UPRIGHT)
        return -1;
    double level = hypot(face->normal[0], face->normal[1]);
    for (int c = 0; c < 2; c++)
        if (fabs(face->normal[c]) > SQUARE_ON * level)
            return c;
    return -1;
}

struct naming {
    struct arena *arena;
    struct cells *cells;
    const struct model *model;
    double from[3], to[3]; /* of the box around all joints */
    int highest;           /* joint */
    bool *on_top;          /* per face: the whole frame lies on or under its plane */
    size_t roofs;          /* sloped faces on top that look different ways */
};

static void measure(struct naming *naming) {
    const struct joint *joints = naming->model->frame->joints.items;
    for (int c = 0; c < 3; c++) {
        naming->from[c] = INFINITY;
        naming->to[c] = -INFINITY;
    }
    for (size_t j = 0; j < naming->model->frame->joints.count; j++) {
        for (int c = 0; c < 3; c++) {
            naming->from[c] = fmin(naming->from[c], joints[j].at[c]);
            naming->to[c] = fmax(naming->to[c], joints[j].at[c]);
        }
        if (joints[j].at[2] > joints[naming->highest].at[2])
            naming->highest = (int)j;
    }
}

static bool under(const struct naming *naming, const struct face *face, size_t joint) {
    double to[3];
    vector_between(face->at, naming->model->frame->joints.items[joint].at, to);
    return vector_dot(to, face->normal) <= 2.0 * CELL_FLAT;
}

/* The highest joint first: it settles nearly every face that is not on top. */
static bool is_on_top(const struct naming *naming, const struct face *face) {
    if (face->kind == FACE_UPRIGHT || !under(naming, face, (size_t)naming->highest))
        return false;
    for (size_t j = 0; j < naming->model->frame->joints.count; j++)
        if (!under(naming, face, j))
            return false;
    return true;
}

/* A face and another in one plane are one slope of the roof. */
static void find_roofs(struct naming *naming) {
    const struct face *faces = naming->cells->faces;
    naming->on_top = ARENA_ARRAY(naming->arena, bool, naming->cells->face_count);
    for (size_t f = 0; f < naming->cells->face_count; f++) {
        naming->on_top[f] = is_on_top(naming, &faces[f]);
        bool first = naming->on_top[f] && faces[f].kind == FACE_SLOPED;
        for (size_t g = 0; g < f && first; g++)
            first =
                !(naming->on_top[g] && vector_dot(faces[f].normal, faces[g].normal) > SQUARE_ON);
        naming->roofs += first;
    }
}

static const struct shelf *shelf_in(const struct model *model, const struct face *face) {
    const struct frame *frame = model->frame;
    for (size_t s = 0; s < frame->shelves.count; s++) {
        const struct shelf *shelf = &frame->shelves.items[s];
        size_t inside = 0;
        for (size_t r = 0; r < shelf->rail_count; r++) {
            const struct model_member *rail = &model->members[shelf->rails[r]];
            inside += fabs(rail->from[2] - face->at[2]) <= 2.0 * CELL_FLAT &&
                      fabs(rail->to[2] - face->at[2]) <= 2.0 * CELL_FLAT;
        }
        if (inside == shelf->rail_count)
            return shelf;
    }
    return NULL;
}

static void name_level(struct naming *naming, struct face *face, bool on_top) {
    const struct shelf *shelf = shelf_in(naming->model, face);
    if (shelf)
        face->words = arena_print(naming->arena, "%s shelf", shelf->name);
    else if (on_top)
        face->words = "top";
    else
        face->words =
            arena_print(naming->arena, "level at %s",
                        quantity_print_length(naming->arena, face->at[2] - naming->from[2],
                                              naming->model->frame->units));
    face->the = arena_print(naming->arena, "the %s", face->words);
}

static void name_sloped(struct naming *naming, struct face *face, bool on_top) {
    if (!on_top) {
        face->words = "sloped face";
        face->the = "the sloped face";
        return;
    }
    const double *n = face->normal;
    const char *slope = fabs(n[1]) >= fabs(n[0]) ? n[1] < 0.0 ? "front" : "back"
                        : n[0] < 0.0             ? "left"
                                                 : "right";
    bool one = naming->roofs <= 1;
    face->words = one ? "roof" : arena_print(naming->arena, "%s roof", slope);
    face->the = one ? "the roof" : arena_print(naming->arena, "the %s slope of the roof", slope);
}

/* The outermost faces that look along `axis`: front or left, back or right. */
static void name_upright(struct naming *naming, int axis) {
    static const char *const names[2][2] = {{"left", "right"}, {"front", "back"}};
    static const char *const sides[2][2] = {{"the left side", "the right side"},
                                            {"the front", "the back"}};
    const struct cells *cells = naming->cells;
    double low = INFINITY, high = -INFINITY;
    double middle = (naming->from[axis] + naming->to[axis]) / 2.0;
    for (size_t f = 0; f < cells->face_count; f++)
        if (looks_along(&cells->faces[f]) == axis) {
            low = fmin(low, cells->faces[f].at[axis]);
            high = fmax(high, cells->faces[f].at[axis]);
        }
    for (size_t f = 0; f < cells->face_count; f++) {
        struct face *face = &cells->faces[f];
        if (looks_along(face) != axis)
            continue;
        face->axis = 1 - axis;
        double at = face->at[axis];
        int side = at <= low + CELL_FLAT && at <= middle + CELL_FLAT ? 0
                   : at >= high - CELL_FLAT && at > middle           ? 1
                                                                     : -1;
        if (side >= 0) {
            face->words = names[axis][side];
            face->the = sides[axis][side];
            continue;
        }
        face->words = arena_print(naming->arena, "inner upright face %s from the %s",
                                  quantity_print_length(naming->arena, at - naming->from[axis],
                                                        naming->model->frame->units),
                                  axis == 0 ? "left" : "front");
        face->the = arena_print(naming->arena, "the %s", face->words);
    }
}

/* Names in `keep-open`: the words of the face; for slopes of a roof also roof, roof-front ... */
static bool kept_open(const struct frame *frame, const struct face *face, bool roof) {
    for (size_t k = 0; k < frame->keep_open.count; k++) {
        const char *name = frame->keep_open.items[k];
        if (strcmp(name, face->words) == 0)
            return true;
        if (!roof)
            continue;
        size_t slope = strcspn(face->words, " ");
        if (strcmp(name, "roof") == 0 ||
            (strncmp(name, "roof-", 5) == 0 && strlen(name + 5) == slope &&
             strncmp(name + 5, face->words, slope) == 0))
            return true;
    }
    return false;
}

static bool kept_open_shelf(const struct frame *frame, const struct shelf *shelf) {
    for (size_t k = 0; shelf && k < frame->keep_open.count; k++)
        if (strcmp(frame->keep_open.items[k], shelf->name) == 0)
            return true;
    return false;
}

void faces_name(struct arena *arena, struct cells *cells) {
    struct naming naming = {.arena = arena, .cells = cells, .model = cells->model};
    measure(&naming);
    find_roofs(&naming);
    for (size_t f = 0; f < cells->face_count; f++) {
        struct face *face = &cells->faces[f];
        face->axis = -1;
        if (face->kind == FACE_LEVEL)
            name_level(&naming, face, naming.on_top[f]);
        else if (face->kind == FACE_SLOPED)
            name_sloped(&naming, face, naming.on_top[f]);
        else {
            face->words = "slanting upright face";
            face->the = "the slanting upright face";
        }
    }
    for (int axis = 0; axis < 2; axis++)
        name_upright(&naming, axis);
    for (size_t f = 0; f < cells->face_count; f++) {
        struct face *face = &cells->faces[f];
        bool roof = face->kind == FACE_SLOPED && naming.on_top[f];
        face->kept_open = kept_open(cells->model->frame, face, roof) ||
                          (face->kind == FACE_LEVEL &&
                           kept_open_shelf(cells->model->frame, shelf_in(cells->model, face)));
    }
}
