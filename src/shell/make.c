/* Writes one of the pages to standard output, while batten is built:
 *
 *   make-shell manual|bash|zsh|fish
 */
#include "shell/shell.h"

#include <stdio.h>
#include <string.h>

static const struct {
    const char *name;
    void (*write)(struct text *text);
} PAGES[] = {
    {"manual", shell_manual}, {"bash", shell_bash}, {"zsh", shell_zsh}, {"fish", shell_fish}};

static int write_page(struct arena *arena, const char *name) {
    if (ARENA_TRAP(arena))
        return 1;
    for (size_t k = 0; k < sizeof PAGES / sizeof *PAGES; k++)
        if (strcmp(PAGES[k].name, name) == 0) {
            struct text text = text_new(arena);
            PAGES[k].write(&text);
            return fputs(text_string(&text), stdout) < 0 || fflush(stdout) != 0;
        }
    fprintf(stderr, "make-shell: no page called %s\n", name);
    return 1;
}

int main(int argc, char **argv) {
    struct arena *arena = arena_new();
    int status = argc == 2 && arena ? write_page(arena, argv[1]) : 1;
    arena_free(arena);
    return status;
}
