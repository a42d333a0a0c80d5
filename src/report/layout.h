/* report/layout.h - plain text in columns and paragraphs, at most LINE_WIDTH wide.
 *
 * Widths count characters. A word that is longer than its room stays whole and sticks out (a name
 * that somebody may want to copy); the cells behind it go to the next line.
 */
#ifndef REPORT_LAYOUT_H
#define REPORT_LAYOUT_H

#include "base/text.h"

#include <stddef.h>

enum { LINE_WIDTH = 100 };

/* A paragraph: the first line after `first` (printed as it is), the next ones after `indent`
 * spaces; ends with a newline. Runs of spaces in `words` are kept within a line. */
void paragraph(struct text *text, const char *first, size_t indent, const char *words);

/* One row of cells, each wrapped within its column: `widths` in characters, two spaces between,
 * after `indent` spaces. The last column may have width 0: not wrapped. */
void row_of_cells(struct text *text, size_t indent, const char *const *cells, const size_t *widths,
                  size_t count);

void spaces(struct text *text, size_t count);

#endif
