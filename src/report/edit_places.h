/* report/edit_places.h - where the values of a description lie in its text. For report/edit_text
 * only.
 */
#ifndef REPORT_EDIT_PLACES_H
#define REPORT_EDIT_PLACES_H

#include "frame/node.h"

#include <stddef.h>

struct file_text {
    const char *bytes;
    size_t length;
    bool lost; /* something lies otherwise than is known here: no place can be trusted */
};

/* Byte of a place; columns count characters. */
size_t offset_of(const struct file_text *file, struct place place);
/* Past the last byte of a value, without the blanks and comments behind it. */
size_t end_of(struct file_text *file, const struct node *node);
/* The end of the line that the byte is in. */
size_t line_end(const struct file_text *file, size_t at);

const struct node *last_child(const struct node *node);
/* {..} or [..], not a block of lines. */
bool in_brackets(const struct file_text *file, const struct node *node);
/* Of a block: the column of its keys or dashes, from 1. */
int column_of(const struct file_text *file, const struct node *block);

#endif
