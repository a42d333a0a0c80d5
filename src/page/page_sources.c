#include "page/page.h"

#include "draw/markup.h"
#include "report/why_text.h"

#include <string.h>

void page_cautions(struct text *out, const struct page *page) {
    const struct result *result = page->drawing->result;
    if (!result->cautions.count)
        return;
    page_heading(out, "What this does not know, and what to keep in mind");
    text_add(out, "<ul>\n");
    for (size_t k = 0; k < result->cautions.count; k++)
        page_item(out, result->cautions.items[k]);
    text_add(out, "</ul>\n");
}

struct sources { /* each once, in the order in which they are used */
    struct {
        const char *words;
        bool has_mark;
        enum mark mark;
    } * items;
    size_t count, capacity;
};

static void add_source(struct arena *arena, struct sources *sources, const char *words,
                       bool has_mark, enum mark mark) {
    for (size_t k = 0; k < sources->count; k++)
        if (strcmp(sources->items[k].words, words) == 0 && sources->items[k].has_mark == has_mark &&
            (!has_mark || sources->items[k].mark == mark))
            return;
    if (!words[0])
        return;
    sources->items = arena_grow(arena, sources->items, sources->count, &sources->capacity,
                                sizeof *sources->items);
    sources->items[sources->count].words = words;
    sources->items[sources->count].has_mark = has_mark;
    sources->items[sources->count++].mark = mark;
}

static struct sources sources_of(struct arena *arena, const struct result *result) {
    struct sources sources = {0};
    for (size_t k = 0; k < result->checks.count; k++) {
        const struct working *working = result->checks.items[k].working;
        for (size_t s = 0; working && s < working->count; s++)
            add_source(arena, &sources, working->items[s].source, working->items[s].has_mark,
                       working->items[s].mark);
    }
    for (size_t k = 0; k < result->checks.count; k++) {
        bool known = false;
        const char *rule = result->checks.items[k].source;
        for (size_t s = 0; s < sources.count; s++)
            known |= strcmp(sources.items[s].words, rule) == 0;
        if (!known)
            add_source(arena, &sources, rule, false, MARK_READ);
    }
    return sources;
}

/* Those that are known in one way: a mark, or (-1) the rules themselves, which have none. */
static void known_as(struct text *out, const struct sources *sources, int mark, const char *how) {
    const char *between = "";
    for (size_t k = 0; k < sources->count; k++) {
        if ((sources->items[k].has_mark ? (int)sources->items[k].mark : -1) != mark)
            continue;
        if (!between[0])
            text_print(out, "<dt>%s</dt>\n<dd>", how);
        text_print(out, "%s%s", between, markup(out->arena, sources->items[k].words));
        between = "; ";
    }
    text_add(out, between[0] ? "</dd>\n" : "");
}

void page_sources(struct text *out, const struct page *page) {
    struct sources sources = sources_of(out->arena, page->drawing->result);
    if (!sources.count)
        return;
    page_heading(out, "Sources");
    text_add(out, "<dl>\n");
    known_as(out, &sources, -1, "rules");
    for (int mark = MARK_READ; mark <= MARK_TRADE; mark++)
        known_as(out, &sources, mark,
                 arena_print(out->arena, "values: %s", mark_in_words((enum mark)mark)));
    text_add(out, "</dl>\n");
}
