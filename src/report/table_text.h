/* report/table_text.h - the built-in tables with their sources, and the names of the format.
 */
#ifndef REPORT_TABLE_TEXT_H
#define REPORT_TABLE_TEXT_H

#include "base/text.h"
#include "report/json_write.h"
#include "tables/tables.h"

/* All tables with a line each, then every name that a frame may use. */
void table_list_text(struct text *text);
void table_list_json(struct json *json, struct arena *arena);

/* The rows of one table, each with value, unit, source, edition, mark and note. */
void table_text(struct text *text, const struct table *table);
void table_json(struct json *json, const struct table *table);

#endif
