#include "working/working.h"

static double note(struct working *working, struct step step) {
    if (working)
        ARRAY_PUSH(working->arena, working, step);
    return step.value;
}

double working_given(struct working *working, const char *symbol, const char *words, double value,
                     enum quantity kind) {
    return note(working, (struct step){symbol, words, NULL, value, kind, "", MARK_TRADE, false});
}

double working_cited(struct working *working, const char *symbol, const char *words,
                     struct cited cited, enum quantity kind) {
    return note(working, (struct step){symbol, words, NULL, cited.value, kind, cited.source,
                                       cited.mark, true});
}

double working_step(struct working *working, const char *symbol, const char *words,
                    const char *formula, double value, enum quantity kind, const char *source) {
    return note(working,
                (struct step){symbol, words, formula, value, kind, source, MARK_TRADE, false});
}

void working_heading(struct working *working, const char *words) {
    note(working, (struct step){"", words, NULL, 0.0, QUANTITY_NUMBER, "", MARK_TRADE, false});
}
