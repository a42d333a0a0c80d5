/* draw/view.h - the four directions in which a frame is looked at, without perspective.
 *
 * Paper coordinates of a view are metres to the right and up; `depth` grows towards the one who
 * looks.
 */
#ifndef DRAW_VIEW_H
#define DRAW_VIEW_H

/* ORDER VIEW */
enum view_kind { VIEW_FRONT, VIEW_SIDE, VIEW_PLAN, VIEW_CORNER, VIEW_COUNT };

struct view {
    const char *name;  /* as `--view` takes it */
    const char *title; /* "from the front" */
    double right[3], up[3], toward[3];
};
extern const struct view VIEWS[VIEW_COUNT];

struct spot {
    double x, y, depth;
};
struct spot view_spot(const struct view *view, const double at[3]);

#endif
