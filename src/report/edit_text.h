/* report/edit_text.h - an edit put into the text of a file, so that its comments and its layout
 * stay.
 *
 * What is written reads back as `edited`, which is the tree of the file with the edit merged in
 * (frame/merge); that is tried before it is handed out.
 */
#ifndef REPORT_EDIT_TEXT_H
#define REPORT_EDIT_TEXT_H

#include "base/text.h"
#include "frame/node.h"

#include <stdbool.h>

/* False where the file is laid out in a way that this does not know: it is then written anew,
 * without its comments. */
bool edit_text(struct text *text, const char *bytes, size_t length, const struct node *edit,
               const struct node *edited);

#endif
