/* Takes a fuzz target once over files: `replay FILE...`; for builds without libFuzzer. */
#include "fuzz.h"

static void replay(const char *path) {
    static uint8_t bytes[1 << 20];
    FILE *file = fopen(path, "rb");
    HOLDS(file);
    size_t length = fread(bytes, 1, sizeof bytes, file);
    fclose(file);
    /* A copy of its own size, so that a sanitizer sees a step past its end. */
    uint8_t *copy = malloc(length ? length : 1);
    HOLDS(copy);
    for (size_t k = 0; k < length; k++)
        copy[k] = bytes[k];
    LLVMFuzzerTestOneInput(copy, length);
    free(copy);
}

int main(int argc, char **argv) {
    for (int k = 1; k < argc; k++)
        replay(argv[k]);
    printf("%d files\n", argc - 1);
    return argc > 1 ? 0 : 1;
}
