/* solve/wide.h - the same code for processors with narrow and with wide registers.
 *
 * A function marked WIDE is compiled once for each level of features, and the one that fits is
 * chosen when the program starts; IN_ALL marks what is compiled into each. Sums are written so that
 * every one of them is taken term by term in one order, whatever the registers, and without fused
 * multiplication: answers keep their bits on every processor and with every compiler.
 */
#ifndef SOLVE_WIDE_H
#define SOLVE_WIDE_H

#include <stddef.h>
#include <stdlib.h> /* says whether the C library is one that chooses at the start */

/* Numbers at once, wherever they lie: compilers leave such loops scalar at the usual level of
 * optimization. */
typedef double eight __attribute__((vector_size(64), aligned(8), may_alias));
typedef double four __attribute__((vector_size(32), aligned(8), may_alias));

/* By levels of features, not by models: those of other makers would get the narrow one. */
#if defined(__x86_64__) && defined(__GLIBC__) && defined(__GNUC__) && !defined(__clang__) &&       \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define WIDE __attribute__((target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")))
#else
#define WIDE
#endif
#define IN_ALL static inline __attribute__((always_inline))

#endif
