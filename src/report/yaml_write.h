/* report/yaml_write.h - a tree of nodes as YAML, an entry a line.
 *
 * What is written reads back as the same tree: whatever could mean something else to YAML is put in
 * quotes.
 */
#ifndef REPORT_YAML_WRITE_H
#define REPORT_YAML_WRITE_H

#include "base/text.h"
#include "frame/node.h"

/* A key of the file with all below it: "joints:" and a line for each joint. */
void yaml_section(struct text *text, const struct node *section);

/* A value on one line: a, [a, b], {a: b}; and the same with its key before it. */
void yaml_value(struct text *text, const struct node *node);
void yaml_entry(struct text *text, const struct node *node);

/* The whole file; `root` is a map. */
void yaml_file(struct text *text, const struct node *root);

#endif
