/* loads/weather_words.h - what was assumed about snow and wind, in sentences. */
#ifndef LOADS_WEATHER_WORDS_H
#define LOADS_WEATHER_WORDS_H

#include "loads/weather.h"

/* Adds to the cautions of `weather`. `height` of the frame above the ground, m. */
void weather_words(struct arena *arena, const struct frame *frame, struct weather *weather,
                   double height);

#endif
