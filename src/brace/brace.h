/* brace/brace.h - can the frame fold or lean, and where do the fewest diagonals go.
 *
 * Engineering page, section 3: ways to fold with hinges everywhere, soft directions with the real
 * connections at their middle stiffness and no clear sheets, the fewest diagonals against both.
 * Memory of the arena.
 */
#ifndef BRACE_BRACE_H
#define BRACE_BRACE_H

#include "result/brace_answer.h"

struct brace_answer *brace_find(struct arena *arena, const struct frame *frame);

#endif
