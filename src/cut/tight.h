/* cut/tight.h - guillotine patterns that lose little, for plates too many to look at every set.
 *
 * With a number of sheets given, what may be lost on them altogether is known. Holders are joined
 * from smaller ones as long as they lose no more (Wang 1983), and sets of them that make all plates
 * are looked for. The fuller the sheets must be, the less there is to look at. For src/cut only.
 */
#ifndef CUT_TIGHT_H
#define CUT_TIGHT_H

#include "cut/plates.h"

enum tight_outcome {
    TIGHT_FOUND,
    TIGHT_NONE,     /* these sheets are too few */
    TIGHT_UNDECIDED /* too much to look at */
};
enum tight_outcome tight_sheets(struct arena *arena, const struct plates *plates, int sheets,
                                struct sheets_layout *layout);

#endif
