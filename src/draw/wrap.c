#include "draw/ink.h"

#define LINE 1.45 /* of the size of words, from line to line */

double ink_wrapped(struct ink *ink, enum words_style style, struct point at, double width,
                   const char *words) {
    double down = 0.0;
    while (*words) {
        size_t fits = 0, space = 0;
        for (size_t k = 1;; k++) {
            bool letter_ends = ((unsigned char)words[k] & 0xC0) != 0x80;
            if (!letter_ends)
                continue;
            if (ink_words_width(style, arena_copy(ink->arena, words, k)) > width && fits)
                break;
            fits = k;
            if (words[k] == ' ' || !words[k])
                space = k;
            if (!words[k])
                break;
        }
        size_t take = space ? space : fits;
        ink_words(ink, style, ANCHOR_START, (struct point){at.x, at.y + down},
                  arena_copy(ink->arena, words, take));
        down += LINE * ink_words_height(style);
        words += take;
        while (*words == ' ')
            words++;
    }
    return down;
}
