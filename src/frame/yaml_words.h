/* frame/yaml_words.h - what the YAML parser complains about, in a builder's words. */
#ifndef FRAME_YAML_WORDS_H
#define FRAME_YAML_WORDS_H

#include "base/arena.h"

/* `problem` and `context` are libyaml's (either may be NULL); `line` is where the context began. */
const char *yaml_words(struct arena *arena, const char *problem, const char *context, int line);

#endif
