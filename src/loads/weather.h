/* loads/weather.h - snow and wind of the site, as load cases.
 *
 * Cases made here: `snow` (even) and its variants `snow/drift` ..., and for each side `wind-left`
 * (pressed in) and its variants `wind-left/out`, `wind-left/open`, `wind-left/open-out`; see
 * loads/snow.h and loads/wind.h. The first explicit load of a wind case of the file replaces all
 * that is made for that side.
 */
#ifndef LOADS_WEATHER_H
#define LOADS_WEATHER_H

#include "loads/bare.h"
#include "loads/snow.h"

struct weather_case {
    int frame_case;
    int way;             /* enum snow_way or enum wind_way */
    const char *name;    /* "wind-left/out" */
    const char *variant; /* "out"; "" for the first of its side */
    struct load_set set; /* sealed by the caller */
};

struct weather {
    struct site_snow snow;
    struct site_wind wind;
    struct wind_box box;
    struct cover *covers; /* per frame panel */
    size_t cover_count;
    double *shelf_snow; /* per frame shelf: the most that lies on it in any way, N */
    struct {
        struct weather_case *items;
        size_t count, capacity;
    } cases;
    struct {
        const char **items;
        size_t count, capacity;
    } cautions;
};

struct weather *weather_build(struct arena *arena, const struct model *model,
                              const struct shelf_loading *shelves);

/* Most pressure of snow on a panel in any way, Pa of its level area. */
double weather_most_snow(const struct weather *weather, size_t cover);

#endif
