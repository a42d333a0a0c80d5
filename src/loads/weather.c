#include "loads/weather.h"

#include "base/vector.h"
#include "loads/shelves.h"
#include "loads/weather_words.h"

#include <math.h>

/* What the steps below share. */
struct making {
    struct arena *arena;
    const struct model *model;
    const struct shelf_loading *shelves;
    double ground;
    bool *open_shelf; /* per shelf: nothing over it */
    struct weather *weather;
};

static struct load_set *new_case(struct making *making, int frame_case, int way,
                                 const char *variant) {
    struct arena *arena = making->arena;
    const char *name = making->model->frame->cases.items[frame_case];
    struct weather_case made = {.frame_case = frame_case,
                                .way = way,
                                .variant = variant,
                                .name =
                                    *variant ? arena_print(arena, "%s/%s", name, variant) : name};
    made.set.present = true;
    made.set.leans = frame_case == CASE_SNOW;
    made.set.joints = arena_take(arena, making->model->frame->joints.count, sizeof(double[6]));
    ARRAY_PUSH(arena, &making->weather->cases, made);
    return &making->weather->cases.items[making->weather->cases.count - 1].set;
}

/* Does a shelf with this middle lie above the point? */
static bool shelf_over(const struct shelf_loading *loading, const double middle[3],
                       const double point[3]) {
    double off[3], across[3];
    vector_between(middle, point, off);
    if (!(off[2] < -ALONG_TOLERANCE))
        return false;
    vector_cross(loading->direction, (const double[3]){0.0, 0.0, 1.0}, across);
    return fabs(vector_dot(off, loading->direction)) <= (loading->end - loading->start) / 2.0 &&
           fabs(vector_dot(off, across)) <= loading->width / 2.0;
}

static void find_open_shelves(struct making *making) {
    size_t count = making->model->frame->shelves.count;
    const struct weather *weather = making->weather;
    making->open_shelf = ARENA_ARRAY(making->arena, bool, count);
    double(*middles)[3] = arena_take(making->arena, count, sizeof *middles);
    for (size_t k = 0; k < count; k++)
        shelf_middle(making->model, &making->model->frame->shelves.items[k], &making->shelves[k],
                     middles[k]);
    for (size_t k = 0; k < count; k++) {
        bool open = covers_leave_open(weather->covers, weather->cover_count, middles[k]);
        for (size_t over = 0; open && over < count; over++)
            open = over == k || !shelf_over(&making->shelves[over], middles[over], middles[k]);
        making->open_shelf[k] = open;
    }
}

/* Pressure on a surface, panels first, then shelves; Pa of its level area. */
static double snow_at(const struct making *making, size_t surface, enum snow_way way) {
    const struct weather *weather = making->weather;
    if (surface < weather->cover_count)
        return snow_on_cover(&weather->snow, weather->covers, weather->cover_count, surface, way,
                             NULL);
    size_t k = surface - weather->cover_count;
    double middle[3];
    if (!making->open_shelf[k])
        return 0.0;
    shelf_middle(making->model, &making->model->frame->shelves.items[k], &making->shelves[k],
                 middle);
    return snow_on_shelf(&weather->snow, middle[2] - making->ground, making->shelves[k].width, way);
}

/* Does the way differ from even snow anywhere? */
static bool snow_way_occurs(const struct making *making, enum snow_way way) {
    size_t surfaces = making->weather->cover_count + making->model->frame->shelves.count;
    for (size_t k = 0; k < surfaces; k++) {
        double even = snow_at(making, k, SNOW_EVEN);
        if (way == SNOW_EVEN ? even > 0.0
                             : fabs(snow_at(making, k, way) - even) > 1e-9 * (1.0 + even))
            return true;
    }
    return false;
}

static void snow_case(struct making *making, enum snow_way way) {
    struct weather *weather = making->weather;
    const struct frame *frame = making->model->frame;
    struct load_set *set = new_case(making, CASE_SNOW, way, snow_way_name(way));
    for (size_t k = 0; k < weather->cover_count; k++) {
        const struct cover *cover = &weather->covers[k];
        double force[3] = {0.0, 0.0, -snow_at(making, k, way) * cover->level_area};
        if (force[2] < 0.0)
            panel_load(making->arena, making->model, cover->bearers, cover->bearer_count, force,
                       set);
    }
    for (size_t k = 0; k < frame->shelves.count; k++) {
        const struct shelf_loading *loading = &making->shelves[k];
        double area = (loading->end - loading->start) * loading->width;
        double weight = snow_at(making, weather->cover_count + k, way) * area;
        shelves_spread(making->arena, making->model, &frame->shelves.items[k], loading,
                       loading->shares, loading->start, loading->end, weight, set);
        weather->shelf_snow[k] = fmax(weather->shelf_snow[k], weight);
    }
}

static bool replaced(const struct frame *frame, int frame_case) {
    for (size_t k = 0; k < frame->loads.count; k++)
        if (frame->loads.items[k].load_case == frame_case)
            return true;
    return false;
}

/* Half of a force to each of two joints. */
static void on_two_joints(struct load_set *set, int one, int other, const double force[3]) {
    for (int c = 0; c < 3; c++) {
        set->joints[one][c] += force[c] / 2.0;
        set->joints[other][c] += force[c] / 2.0;
    }
    set->largest = fmax(set->largest, vector_length(force));
}

/* A panel that stands open; one that is not hinged is away. */
static void open_plate(const struct making *making, const struct cover *cover, enum wind_from from,
                       enum wind_way way, struct load_set *set) {
    const struct panel *panel = cover->panel;
    double at_hinges[3], at_edge[3];
    int edge[2] = {-1, -1}, found = 0;
    if (panel->held != HELD_HINGED)
        return;
    for (int k = 0; k < 4 && found < 2; k++)
        if (panel->corners[k] != panel->hinge[0] && panel->corners[k] != panel->hinge[1])
            edge[found++] = panel->corners[k];
    wind_on_plate(&making->weather->wind, cover, from, way, at_hinges, at_edge);
    on_two_joints(set, panel->hinge[0], panel->hinge[1], at_hinges);
    on_two_joints(set, edge[0], edge[1], at_edge);
}

static void wind_case(struct making *making, enum wind_from from, enum wind_way way) {
    struct weather *weather = making->weather;
    struct load_set *set =
        new_case(making, CASE_WIND_LEFT + (int)from, (int)way, wind_way_name(way));
    struct bare bare = {making->model, making->shelves, weather->covers, weather->cover_count,
                        &weather->wind};
    for (size_t k = 0; k < weather->cover_count; k++) {
        const struct cover *cover = &weather->covers[k];
        double force[3];
        if (wind_stands_open(cover, way)) {
            open_plate(making, cover, from, way, set);
            continue;
        }
        wind_on_cover(&weather->wind, &weather->box, cover, from, way, force);
        if (vector_length(force) > 0.0)
            panel_load(making->arena, making->model, cover->bearers, cover->bearer_count, force,
                       set);
    }
    bare_wind(making->arena, &bare, from, way, set);
}

static double frame_height(const struct making *making) {
    double top = making->ground;
    for (size_t j = 0; j < making->model->frame->joints.count; j++)
        top = fmax(top, making->model->frame->joints.items[j].at[2]);
    return top - making->ground;
}

struct weather *weather_build(struct arena *arena, const struct model *model,
                              const struct shelf_loading *shelves) {
    const struct frame *frame = model->frame;
    struct weather *weather = ARENA_NEW(arena, struct weather);
    struct making making = {arena, model, shelves, ground_level(model), NULL, weather};
    weather->covers = covers_of(arena, model);
    weather->cover_count = frame->panels.count;
    weather->shelf_snow = ARENA_ARRAY(arena, double, frame->shelves.count);
    weather->snow = site_snow_of(&frame->site);
    weather->wind = site_wind_of(&frame->site, frame_height(&making), frame->units);
    weather->box = wind_box_of(weather->covers, weather->cover_count, frame->site.beside_house);
    find_open_shelves(&making);
    for (int way = SNOW_EVEN; weather->snow.given && way < SNOW_WAY_COUNT; way++)
        if (snow_way_occurs(&making, (enum snow_way)way))
            snow_case(&making, (enum snow_way)way);
    for (int from = 0; weather->wind.given && from < WIND_SIDES; from++)
        for (int way = 0; way < WIND_WAY_COUNT; way++)
            if (!(frame->plane && from >= WIND_FROM_FRONT) &&
                !replaced(frame, CASE_WIND_LEFT + from) &&
                wind_way_occurs(&weather->box, (enum wind_way)way))
                wind_case(&making, (enum wind_from)from, (enum wind_way)way);
    weather_words(arena, frame, weather, frame_height(&making));
    return weather;
}

double weather_most_snow(const struct weather *weather, size_t cover) {
    double most = 0.0;
    for (size_t k = 0; k < weather->cases.count; k++)
        if (weather->cases.items[k].frame_case == CASE_SNOW)
            most =
                fmax(most, snow_on_cover(&weather->snow, weather->covers, weather->cover_count,
                                         cover, (enum snow_way)weather->cases.items[k].way, NULL));
    return most;
}
