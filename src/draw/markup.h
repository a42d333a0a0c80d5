/* draw/markup.h - text of other people inside SVG and HTML.
 *
 * `<`, `>`, `&` and quotes become references; control characters, marks that turn the reading
 * direction and bytes that are no UTF-8 become U+FFFD, so that the result is well-formed in strict
 * XML too and cannot change what stands around it.
 */
#ifndef DRAW_MARKUP_H
#define DRAW_MARKUP_H

#include "base/text.h"

void markup_add(struct text *text, const char *string);
const char *markup(struct arena *arena, const char *string);

#endif
