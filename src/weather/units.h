/* weather/units.h - what the formulas of the code are written for, in SI, and rows that must be
 * there. */
#ifndef WEATHER_UNITS_H
#define WEATHER_UNITS_H

#include "tables/tables.h"

#define WEATHER_FOOT 0.3048
#define WEATHER_POUND 4.4482216152605
#define WEATHER_PSF (WEATHER_POUND / (WEATHER_FOOT * WEATHER_FOOT))
#define WEATHER_MPH 0.44704
#define WEATHER_DEGREE (3.14159265358979323846 / 180.0)

/* A row that must be there: an unknown one is a programmer's mistake and aborts. */
struct cited weather_row(const char *table, const char *row);

#endif
