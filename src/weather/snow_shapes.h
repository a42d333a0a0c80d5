/* weather/snow_shapes.h - snow that does not lie evenly: unbalanced, drifted, slid from above; and
 * how deep a pressure of snow is.
 *
 * ASCE 7-16 and 7-22 chapter 7. SI: Pa, m, rad, N/m3. Pure functions.
 */
#ifndef WEATHER_SNOW_SHAPES_H
#define WEATHER_SNOW_SHAPES_H

#include "weather/snow.h"

/* Weight of lying snow by the ground snow, N/m3: 0.13 pg + 14, at most 30 lb/ft3. */
double snow_weight(double ground);

/* The same law for a pile that presses itself together: p = 14 d/(1 - 0.13 d) (psf, ft) until its
 * foot weighs 30 lb/ft3, from there 30 for each ft. Pressure of a depth, and depth of a pressure.
 */
double snow_pressure_of_depth(double depth);
double snow_depth_of_pressure(double pressure);

/* Pressure of a depth of snow of a known density (kg/m3). */
double snow_pressure_by_density(double depth, double density);

/* A gable under wind across its ridge: what lies on either side, Pa on the level area. */
struct unbalanced_snow {
    bool applies; /* false: flatter or steeper than the rule */
    double windward, lee;
};
/* `width` from ridge to eave, level, of the side from which snow is blown over. Up to 20 ft the lee
 * side takes the ground snow (x Is) and the other nothing; wider roofs 0.3 ps, and ps with the
 * surcharge hd weight / sqrt(S), S the run for a rise of one, taken over the whole side. */
struct unbalanced_snow snow_unbalanced(const struct snow_question *question,
                                       const struct roof_snow *roof, double width);

/* Height of a drift (no step) behind a fetch of roof, m. 7-22 uses the largest winter wind. */
double snow_drift_height(const struct snow_question *question, double fetch);

/* A house wall that stands higher than the roof beside it. */
struct snow_step {
    double height; /* m, from the roof beside it to the eave of the house */
    double fetch;  /* m, depth of the house from eave to eave */
    double slope;  /* rad, of the house roof */
};
/* Drift at the foot of the wall: its peak beside the even snow, Pa, and how far it reaches, m. The
 * even snow and the drift fill the step at most. */
struct snow_drift {
    double peak, reach;
};
struct snow_drift snow_step_drift(const struct snow_question *question,
                                  const struct roof_snow *roof, const struct snow_step *step);

/* What slides from the house roof, Pa over the 15 ft beside it: 0.4 of its flat snow from eave to
 * ridge. 0 where its roof is too flat. The house is taken as of risk category 2, with a cold
 * ventilated roof. */
double snow_slid(const struct snow_question *question, const struct snow_step *step);

#endif
