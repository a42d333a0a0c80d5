/* fuzz.h - what the fuzz targets share.
 *
 * A target is a function that takes any bytes and must neither crash, nor hang, nor break a
 * promise. Built with libFuzzer (make fuzz) it hunts; built with replay.c it goes once over a
 * corpus.
 */
#ifndef FUZZ_H
#define FUZZ_H

#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length);

/* A promise. */
#define HOLDS(condition)                                                                           \
    do {                                                                                           \
        if (!(condition)) {                                                                        \
            fprintf(stderr, "%s:%d: does not hold: %s\n", __FILE__, __LINE__, #condition);         \
            abort();                                                                               \
        }                                                                                          \
    } while (0)

#endif
