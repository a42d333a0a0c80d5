#include "frame/yaml_words.h"

#include <stdbool.h>
#include <string.h>

/* `found` is a piece of libyaml 0.2.5's text. */
static const struct {
    const char *found, *words;
} translations[] = {
    {"mapping values are not allowed", "a colon stands where none can; put text with ': ' in it in "
                                       "quotes, and check the indentation"},
    {"could not find expected ':'", "a colon is missing after this name, or a quote is not closed"},
    {"did not find expected key",
     "this line does not fit the lines above it; check the indentation, commas and quotes"},
    {"did not find expected '-' indicator",
     "this line does not fit the list above it; check the indentation"},
    {"did not find expected ',' or ']'", "a comma or a closing ] is missing"},
    {"did not find expected ',' or '}'", "a comma or a closing } is missing"},
    {"did not find expected node content", "a value is missing here"},
    {"did not find expected <document start>",
     "this line does not belong to the description above it; check the indentation"},
    {"found a tab character", "a tab stands here; indent with spaces"},
    {"found character that cannot start any token",
     "this character cannot start a value; indent with spaces, not tabs, and put text in quotes"},
    {"found unexpected end of stream", "the text ends before its closing quote"},
    {"found unexpected document indicator", "the text ends before its closing quote"},
    {"found unknown escape character",
     "unknown escape after \\; use single quotes to keep a backslash"},
    {"block sequence entries are not allowed",
     "a list with '-' cannot start here; put it on the next line, indented"},
    {"block mapping", "this line does not fit the lines above it; check the indentation"},
    {"while scanning an anchor", "a name cannot start with & or * here; put it in quotes"},
    {"while scanning an alias", "a name cannot start with & or * here; put it in quotes"},
    {"did not find expected alphabetic or numeric",
     "a name cannot start with & or * here; put it in quotes"},
};

const char *yaml_words(struct arena *arena, const char *problem, const char *context, int line) {
    const char *words = NULL;
    for (size_t k = 0; problem && !words && k < sizeof translations / sizeof translations[0]; k++)
        if (strstr(problem, translations[k].found))
            words = translations[k].words;
    if (!words)
        words = problem ? arena_print(arena, "this cannot be read as YAML: %s", problem)
                        : "this cannot be read as YAML";
    bool opened = context && (strstr(context, "flow") || strstr(context, "quoted"));
    return opened ? arena_print(arena, "%s (opened in line %d)", words, line) : words;
}
