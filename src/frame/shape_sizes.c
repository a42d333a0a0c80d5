#include "frame/shape_sizes.h"

double post_along_x(const struct stick *post) {
    return post->faces == FACES_SIDE ? post->thickness : post->width;
}

double post_along_y(const struct stick *post) {
    return post->faces == FACES_SIDE ? post->width : post->thickness;
}

double rail_depth(const struct stick *rail) {
    return rail->stands == STANDS_FLAT ? rail->thickness : rail->width;
}
