#include "weather/snow_shapes.h"

#include "weather/units.h"

#include <math.h>

static const char *const TABLE = "snow-factors";

/* N/m3 for each lb/ft3. */
static const double PCF = WEATHER_PSF / WEATHER_FOOT;

/* The published laws are written in psf, ft, lb/ft3. Table rows in pcf come as kg/m3. */
static double row_pcf(const char *row) {
    return weather_row(TABLE, row).value * table_constant("gravity").value / PCF;
}

double snow_weight(double ground) {
    double weight =
        weather_row(TABLE, "density.share").value * ground / WEATHER_PSF + row_pcf("density.base");
    return PCF * fmin(weight, row_pcf("density.most"));
}

/* Pressure (psf) and depth (ft) at which the foot of the pile weighs 30 lb/ft3. */
static void heaviest(double *pressure, double *depth) {
    double share = weather_row(TABLE, "density.share").value, base = row_pcf("density.base");
    *pressure = (row_pcf("density.most") - base) / share;
    *depth = *pressure / (base + share * *pressure);
}

double snow_pressure_of_depth(double depth) {
    double most, deep, d = depth / WEATHER_FOOT;
    heaviest(&most, &deep);
    double base = row_pcf("density.base"), share = weather_row(TABLE, "density.share").value;
    double psf =
        d <= deep ? base * d / (1.0 - share * d) : most + row_pcf("density.most") * (d - deep);
    return psf * WEATHER_PSF;
}

double snow_depth_of_pressure(double pressure) {
    double most, deep, p = pressure / WEATHER_PSF;
    heaviest(&most, &deep);
    double base = row_pcf("density.base"), share = weather_row(TABLE, "density.share").value;
    double ft = p <= most ? p / (base + share * p) : deep + (p - most) / row_pcf("density.most");
    return ft * WEATHER_FOOT;
}

double snow_pressure_by_density(double depth, double density) {
    return depth * density * table_constant("gravity").value;
}

double snow_drift_height(const struct snow_question *question, double fetch) {
    double least = weather_row(TABLE, "drift.fetch-least").value;
    double lu = fmax(fetch, least) / WEATHER_FOOT, pg = question->ground / WEATHER_PSF;
    if (!(pg > 0.0))
        return 0.0;
    if (question->edition == EDITION_ASCE7_16)
        return WEATHER_FOOT * fmax(0.0, 0.43 * cbrt(lu) * pow(pg + 10.0, 0.25) - 1.5);
    double wind = weather_row(TABLE, "drift.winter-wind").value;
    double weight = snow_weight(question->ground) / PCF;
    return WEATHER_FOOT * 1.5 * sqrt(pow(pg, 0.74) * pow(lu, 0.70) * pow(wind, 1.7) / weight);
}

struct unbalanced_snow snow_unbalanced(const struct snow_question *question,
                                       const struct roof_snow *roof, double width) {
    struct unbalanced_snow snow = {
        .applies = question->slope >= weather_row(TABLE, "unbalanced.least-slope").value &&
                   question->slope <= weather_row(TABLE, "unbalanced.most-slope").value};
    if (!snow.applies)
        return snow;
    if (width <= weather_row(TABLE, "unbalanced.narrow").value) {
        snow.lee = roof->Is * question->ground;
        return snow;
    }
    snow.windward = weather_row(TABLE, "unbalanced.windward").value * roof->sloped;
    snow.lee = roof->sloped + snow_drift_height(question, width) * snow_weight(question->ground) *
                                  sqrt(tan(question->slope));
    return snow;
}

struct snow_drift snow_step_drift(const struct snow_question *question,
                                  const struct roof_snow *roof, const struct snow_step *step) {
    double weight = snow_weight(question->ground);
    double even = roof->sloped / weight;
    double room = step->height - even;
    double height = fmin(snow_drift_height(question, step->fetch), room);
    if (!(height > 0.0))
        return (struct snow_drift){0.0, 0.0};
    return (struct snow_drift){.peak = weight * height, .reach = 4.0 * height};
}

double snow_slid(const struct snow_question *question, const struct snow_step *step) {
    if (!(step->height > 0.0) || !(step->slope > weather_row(TABLE, "sliding.least-slope").value))
        return 0.0;
    struct snow_question house = *question;
    house.risk = 2;
    house.thermal = SNOW_JUST_ABOVE_FREEZING; /* the row also holds cold ventilated roofs */
    house.low = false;
    house.slope = 0.0;
    struct roof_snow above = snow_on_roof(&house, NULL);
    return weather_row(TABLE, "sliding.share").value * above.flat * (step->fetch / 2.0) /
           weather_row(TABLE, "sliding.width").value;
}
