#include "fix/screw_lengths.h"

#include "units/quantity.h"

/* What shops keep [trade]. */
static const char *const US[] = {"1 in",     "1-1/4 in", "1-1/2 in", "1-3/4 in", "2 in",
                                 "2-1/2 in", "3 in",     "3-1/2 in", "4 in"};
static const char *const SI[] = {"25 mm", "30 mm", "40 mm", "45 mm", "50 mm",
                                 "60 mm", "75 mm", "90 mm", "100 mm"};
_Static_assert(sizeof US / sizeof *US == SCREW_LENGTHS && sizeof SI / sizeof *SI == SCREW_LENGTHS,
               "as many in either");

const char *screw_length_words(const struct work *work, int step) {
    return work->frame->units == UNITS_US ? US[step] : SI[step];
}

double screw_length(const struct work *work, int step) {
    const char *why;
    double metres = 0.0;
    quantity_read(work->arena, screw_length_words(work, step), QUANTITY_LENGTH, work->frame->units,
                  &metres, &why);
    return metres;
}
