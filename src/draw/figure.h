/* draw/figure.h - one view of a frame on the paper.
 *
 * The parts of a picture are drawn by a function each; all of them know the figure, which turns
 * places of the frame into places of the sheet (mm from its left and top).
 */
#ifndef DRAW_FIGURE_H
#define DRAW_FIGURE_H

#include "draw/drawing.h"
#include "draw/ink.h"
#include "draw/labels.h"
#include "draw/look.h"

struct figure {
    struct arena *arena;
    const struct drawing *drawing;
    const struct view *view;
    enum view_kind kind;
    double scale;     /* mm of paper a metre */
    double left, top; /* of the sheet, where the view's own 0 | 0 comes */
    struct box taken; /* by the sticks, and by arrows and bent lines beside them */
    struct ink *ink;
    struct labels labels;
    struct look *look;
    double *shares; /* per member: how much of what faces this way is seen */
};

/* What a view takes on paper at a scale of one metre a metre: the sticks, m. */
struct extent {
    double left, low, right, high;
};
struct extent figure_extent(const struct drawing *drawing, const struct view *view);

/* Room that a view needs round its sticks, mm, for dimensions, names and loads. */
struct margins {
    double left, top, right, bottom;
};
struct margins figure_margins(const struct drawing *drawing, enum view_kind kind);

/* Where a view goes: the upper left corner of its sticks, and where its words may stand. */
struct site_of_view {
    double scale; /* mm of paper a metre */
    struct point at;
    struct box room;
};

/* Draw one view. Names and values that found no place are added to `left_out`. */
void figure_draw(const struct drawing *drawing, enum view_kind kind,
                 const struct site_of_view *site, struct ink *ink, struct left_out *left_out);

/* The frame from the corner as it moves in a way to fold. */
void figure_fold(const struct drawing *drawing, const struct site_of_view *site,
                 const struct motion *motion, struct ink *ink);

struct point figure_point(const struct figure *figure, const double at[3]);
/* A direction, mm on paper for a metre. */
struct point figure_direction(const struct figure *figure, const double along[3]);

/* ---- the parts; each in a file of its own ---- */

void figure_woods(struct figure *figure);    /* sticks, hatched by how hard they work */
void figure_names(struct figure *figure);    /* asks for labels */
void figure_feet(struct figure *figure);     /* what holds the frame */
void figure_sheets(struct figure *figure);   /* panels */
void figure_measures(struct figure *figure); /* dimensions */
void figure_loads(struct figure *figure);
void figure_bent(struct figure *figure);
void figure_braces(struct figure *figure);

/* A way to fold: ghost of the moved frame, and arrows. */
void figure_motion(struct figure *figure, const struct motion *motion);

/* An arrow of a load or of anything else that stands beside the sticks. */
void figure_take(struct figure *figure, struct point at);

/* Where the name of a panel belongs; false where it is not seen from here. */
bool figure_panel_middle(const struct figure *figure, size_t panel, struct point *middle);

/* Is the stick seen well enough, and not from its end, to have its name and its loads here? */
bool figure_shows_stick(const struct figure *figure, size_t member);

/* Does the combination shown have loads besides the own weight; along that direction, where one is
 * given? */
bool figure_has_loads(const struct drawing *drawing, const double along[3]);

/* Dimensions go over the wood; without posts from joint to joint. */
bool figure_measures_wood(const struct drawing *drawing);

/* The widest height that stands beside a view, mm. */
double figure_heights_width(const struct drawing *drawing);

/* By how much movements are enlarged so that they read well: "nice" numbers, under 1 where they are
 * too large as they are. `largest` m. */
double bent_exaggeration(const struct drawing *drawing);
/* "drawn 20 times too large" */
const char *exaggeration_in_words(struct arena *arena, double times);

#endif
