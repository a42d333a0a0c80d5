#include "frame/frame_check.h"
#include "frame/geometry.h"
#include "units/quote.h"

#include <math.h>
#include <string.h>

#define OUT_OF_PLANE 5e-3       /* m: a stiff sheet cannot be screwed down flat over more */
#define UPRIGHT_ROOF 0.98480775 /* sine of 80 deg: no roof is as steep */

struct corners {
    const double *at[4];
};

static void edge(const struct corners *corners, int from, int to, double out[3]) {
    for (int k = 0; k < 3; k++)
        out[k] = corners->at[to % 4][k] - corners->at[from % 4][k];
}

static void cross(const double a[3], const double b[3], double product[3]) {
    product[0] = a[1] * b[2] - a[2] * b[1];
    product[1] = a[2] * b[0] - a[0] * b[2];
    product[2] = a[0] * b[1] - a[1] * b[0];
}

static double dot(const double a[3], const double b[3]) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/* Twice the area, as a vector square to the sheet. */
static double area_vector(const struct corners *corners, double normal[3]) {
    double first[3], second[3];
    edge(corners, 0, 2, first);
    edge(corners, 1, 3, second);
    cross(first, second, normal);
    return sqrt(dot(normal, normal));
}

/* True where the corners go round a sheet without a dent: every corner turns the same way. */
static bool goes_round(const struct corners *corners) {
    double normal[3];
    double size = area_vector(corners, normal);
    if (!(size > 1e-6))
        return false;
    for (int k = 0; k < 4; k++) {
        double before[3], after[3], turn[3];
        edge(corners, k, k + 1, before);
        edge(corners, k + 1, k + 2, after);
        cross(before, after, turn);
        if (!(dot(turn, normal) > 0))
            return false;
    }
    return true;
}

/* By its name: roof, roof-front, lid, lid-2. */
static bool called_roof(const char *name) {
    return strncmp(name, "roof", 4) == 0 || strncmp(name, "lid", 3) == 0;
}

static void check_roof(struct reader *reader, const struct panel *panel,
                       const struct corners *corners, const char *path) {
    double normal[3];
    double size = area_vector(corners, normal);
    if (called_roof(panel->name) && !(hypot(normal[0], normal[1]) <= UPRIGHT_ROOF * size))
        trouble_at(reader, panel->place, path,
                   "this stands upright (over 80 deg), so it is no roof or lid: snow does not lie "
                   "on it; mend its corners, or call it a wall");
}

void check_panel(struct reader *reader, const struct panel *panel) {
    const struct frame *frame = reader->frame;
    struct corners corners;
    for (int k = 0; k < 4; k++) {
        for (int before = 0; before < k; before++)
            if (panel->corners[before] == panel->corners[k])
                return; /* told before */
        if (panel->corners[k] < 0)
            return;
        corners.at[k] = frame->joints.items[panel->corners[k]].at;
    }
    const char *path =
        arena_print(reader->arena, "panels.%s.corners", plain_text(reader->arena, panel->name));
    double out = frame_panel_out_of_plane(frame, panel);
    const char *how_far = quantity_print(reader->arena, out, QUANTITY_LENGTH, frame->units);
    if (!goes_round(&corners))
        trouble_at(reader, panel->place, path,
                   "the corners do not go round a sheet; give them in order along its edges");
    else if (!(out <= OUT_OF_PLANE))
        trouble_at(reader, panel->place, path,
                   "the corners do not lie in one plane: one is %s out of it, and a sheet takes %s",
                   how_far,
                   quantity_print(reader->arena, OUT_OF_PLANE, QUANTITY_LENGTH, frame->units));
    else
        check_roof(reader, panel, &corners, path);
}
