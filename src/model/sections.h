/* model/sections.h - section, material and weight of a member from its kind of stick. */
#ifndef MODEL_SECTIONS_H
#define MODEL_SECTIONS_H

#include "model/model.h"

/* Fills axes, section, stiffness, weight and lumber, which is that of the member's kind of stick.
 * False where no stiffness is known. */
bool sections_member(const struct frame *frame, const struct member *member,
                     const struct lumber *lumber, bool wet, struct model_member *out);

/* What the wood of a kind of stick is worth (slats have no member of their own). */
struct lumber sections_lumber(const struct stick *stick);

/* kg/m3 for weight; 0 for an own material without density. */
double sections_density(const struct lumber *lumber, bool wet);

#endif
