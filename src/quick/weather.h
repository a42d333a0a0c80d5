/* quick/weather.h - snow on a roof and the pressure of the wind: the quick question without a
 * frame. SI: Pa, m, m/s, rad. */
#ifndef QUICK_WEATHER_H
#define QUICK_WEATHER_H

#include "base/arena.h"
#include "weather/snow.h"
#include "weather/wind.h"

struct weather_question {
    bool asks_snow, asks_wind;
    struct snow_question snow;
    struct wind_question wind;
};
struct weather_answer {
    struct roof_snow snow;   /* where it is asked for */
    struct wind_answer wind; /* the same */
    double snow_depth;       /* m: how deep the ground snow lies by the published density */
    struct working *snow_working, *wind_working;
};
struct weather_answer weather_answer(struct arena *arena, const struct weather_question *question);

#endif
