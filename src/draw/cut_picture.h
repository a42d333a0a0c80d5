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

/* The boards of one kind of stick, or the sheets of one kind, as an <svg> to stand in a page. */
void cut_picture_boards(struct text *text, const struct cut_answer *answer,
                        const struct cut_sticks *sticks);
void cut_picture_sheets(struct text *text, const struct cut_answer *answer,
                        const struct cut_sheets *sheets);

#endif
