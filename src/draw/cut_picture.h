/* draw/cut_picture.h - every board and sheet as a picture: SVG text, for a file or inside a page.
 *
 * Boards lie as they are cut, pieces from the left with a saw cut between; what is left is grey. On
 * sheets thin lines show the ribs that keep their direction.
 */
#ifndef DRAW_CUT_PICTURE_H
#define DRAW_CUT_PICTURE_H

#include "base/text.h"
#include "result/cut_answer.h"

void cut_picture(struct text *text, const struct cut_answer *answer);

#endif
