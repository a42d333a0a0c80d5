/* frame/shape_read.h - pieces of reading a shape; inside src/frame/ only. */
#ifndef FRAME_SHAPE_READ_H
#define FRAME_SHAPE_READ_H

#include "frame/reader.h"
#include "frame/shape_values.h"

void read_shape_covers(struct reader *reader, const struct node *map, struct shape_values *shape);
void read_shape_braces(struct reader *reader, const struct node *map, struct shape_values *shape);
void read_shape_shelves(struct reader *reader, const struct node *map, struct shape_values *shape);
void read_leave_out(struct reader *reader, const struct node *list, struct shape_values *shape);

/* True where heights are in order, shelves clear of each other, trays fit. All was read well. */
bool check_shape(struct reader *reader, const struct node *map, const struct shape_values *shape);

#endif
