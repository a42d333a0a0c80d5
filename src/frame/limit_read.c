#include "frame/sections.h"

static void read_limit(struct reader *reader, const struct node *map, const char *key,
                       const char *word, struct limit *limit) {
    const struct node *node = node_child(map, key);
    const char *text =
        node ? read_text(reader, node, arena_print(reader->arena, "%s/240 or a length", word))
             : NULL;
    const char *why = NULL;
    if (!text)
        return;
    if (quantity_read_ratio(reader->arena, text, word, reader->frame->units, &limit->divisor,
                            &limit->length, &why))
        limit->given = true;
    else
        trouble(reader, node, "%s", why);
}

void read_limits(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "limits such as {shelf-sag: span/240}"))
        return;
    only_keys(reader, section, KEYS("shelf-sag", "roof-sag", "lean"));
    struct limits *limits = &reader->frame->limits;
    read_limit(reader, section, "shelf-sag", "span", &limits->shelf_sag);
    read_limit(reader, section, "roof-sag", "span", &limits->roof_sag);
    read_limit(reader, section, "lean", "height", &limits->lean);
}
