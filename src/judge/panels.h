/* judge/panels.h - what the steps of panels, their screws and hinges share: the panel as weather
 * meets it, and what acts on it in a combination. */
#ifndef JUDGE_PANELS_H
#define JUDGE_PANELS_H

#include "check/sheet.h"
#include "judge/steps.h"
#include "loads/covers.h"

struct panel_work {
    struct run *run;
    size_t index;
    const struct cover *cover;
    const struct panel *panel;
    struct sheet_press press; /* factors of the combination left out */
};
struct panel_work panel_work(struct run *run, size_t index);

/* With the factors of a combination. False where neither snow nor wind acts in it. */
bool panel_press(const struct panel_work *work, int combination, struct sheet_press *press);

/* A screw or the like whose length no description says: it reaches ten diameters into the wood
 * behind what it goes through. False where nothing is published for its size. */
bool panel_screw(double diameter, double through, struct dowel *screw);

/* The least specific gravity of the sticks on a joint; NAN where one is not known. */
double panel_wood(const struct run *run, int joint);

/* "not covered" with what to know. */
void panel_not_covered(const struct panel_work *work, const char *kind, const char *what,
                       const char *place, const char *advice);

#endif
