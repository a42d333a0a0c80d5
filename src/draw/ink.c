#include "draw/ink.h"

#include "draw/markup.h"
#include "units/decimal.h"

#include <math.h>

#define INK "#3a332b"      /* soft pencil */
#define LOAD_INK "#8a2f1c" /* red carpenter's pencil: what acts on the frame */
#define PLAN_INK "#1f4e6e" /* blue carpenter's pencil: what is not there, or not so */
#define FILLED " stroke-width=\"0.1\" stroke-linejoin=\"round\""

/* ORDER PEN. Each tells itself from the others by its form and not by its colour alone. */
static const char *const PENS[PEN_COUNT] = {
    [PEN_WOOD_PLAIN] = "fill=\"#ffffff\" stroke=\"#ffffff\"" FILLED,
    [PEN_WOOD_EASY] = "fill=\"#fcf8ee\" stroke=\"#fcf8ee\"" FILLED,
    [PEN_WOOD_SOME] = "fill=\"#f3e7cd\" stroke=\"#f3e7cd\"" FILLED,
    [PEN_WOOD_CLOSE] = "fill=\"#e6cfa2\" stroke=\"#e6cfa2\"" FILLED,
    [PEN_WOOD_NO_RULE] = "fill=\"#efefec\" stroke=\"#efefec\"" FILLED,
    [PEN_WOOD_FAILS] = "fill=\"#d3a878\" stroke=\"#d3a878\"" FILLED,
    [PEN_HATCH] = "stroke=\"" INK "\" stroke-width=\"0.12\"",
    [PEN_HATCH_DOTS] = "stroke=\"" INK "\" stroke-width=\"0.25\" stroke-dasharray=\"0.25 0.9\"",
    [PEN_SHEET] = "stroke=\"#8a8377\" stroke-width=\"0.15\"",
    [PEN_EDGE] = "stroke=\"" INK "\" stroke-width=\"0.12\" stroke-linecap=\"round\"",
    [PEN_OUTLINE] = "stroke=\"" INK "\" stroke-width=\"0.22\" stroke-linecap=\"round\"",
    [PEN_OUTLINE_HEAVY] = "stroke=\"" INK "\" stroke-width=\"0.42\" stroke-linecap=\"round\"",
    [PEN_GROUND] = "stroke=\"" INK "\" stroke-width=\"0.2\"",
    [PEN_MEASURE] = "stroke=\"#6e665b\" stroke-width=\"0.15\"",
    [PEN_GHOST] = "stroke=\"" PLAN_INK "\" stroke-width=\"0.25\" stroke-dasharray=\"1.2 0.8\"",
    [PEN_BRACE] = "stroke=\"" PLAN_INK "\" stroke-width=\"0.4\" stroke-dasharray=\"2.4 1.2\"",
    [PEN_BENT] = "stroke=\"" PLAN_INK "\" stroke-width=\"0.4\" stroke-linejoin=\"round\"",
    [PEN_LOAD] = "stroke=\"" LOAD_INK "\" stroke-width=\"0.25\"",
    [PEN_LOAD_HEAD] = "fill=\"" LOAD_INK "\" stroke=\"none\"",
    [PEN_FOLD] = "stroke=\"" LOAD_INK "\" stroke-width=\"0.55\"",
    [PEN_FOLD_HEAD] = "fill=\"" LOAD_INK "\" stroke=\"none\"",
    [PEN_LEADER] = "stroke=\"#6e665b\" stroke-width=\"0.12\"",
    [PEN_CURVE_FULL] = "stroke=\"" INK "\" stroke-width=\"0.45\" stroke-linejoin=\"round\"",
    [PEN_CURVE_DASHED] =
        "stroke=\"" INK
        "\" stroke-width=\"0.35\" stroke-dasharray=\"2.4 1\" stroke-linejoin=\"round\"",
    [PEN_CURVE_DOTTED] =
        "stroke=\"" INK
        "\" stroke-width=\"0.4\" stroke-dasharray=\"0.5 0.8\" stroke-linejoin=\"round\"",
    [PEN_CURVE_MARK] = "fill=\"" INK "\" stroke=\"none\"",
    [PEN_CURVE_RING] = "stroke=\"" LOAD_INK "\" stroke-width=\"0.4\"",
};

/* ORDER WORDS_STYLE; sizes mm */
static const struct {
    double size;
    const char *fill, *weight;
} STYLES[] = {{2.5, INK, "normal"},      {2.3, "#5d564c", "normal"}, {2.5, LOAD_INK, "normal"},
              {2.5, PLAN_INK, "normal"}, {4.6, INK, "bold"},         {2.9, INK, "bold"}};

void ink_start(struct ink *ink, struct arena *arena) {
    ink->arena = arena;
    for (int pen = 0; pen < PEN_COUNT; pen++)
        ink->paths[pen] = text_new(arena);
    ink->words = text_new(arena);
}

const char *ink_number(struct arena *arena, double mm) {
    return decimal_fixed(arena, mm, 2);
}

static void path_point(struct ink *ink, enum pen pen, char letter, struct point at) {
    text_print(&ink->paths[pen], "%c%s %s", letter, ink_number(ink->arena, at.x),
               ink_number(ink->arena, at.y));
}

void ink_line(struct ink *ink, enum pen pen, struct point from, struct point to) {
    path_point(ink, pen, 'M', from);
    path_point(ink, pen, 'L', to);
}

void ink_trace(struct ink *ink, enum pen pen, const struct point *points, size_t count) {
    for (size_t k = 0; k < count; k++)
        path_point(ink, pen, k ? 'L' : 'M', points[k]);
}

void ink_shape(struct ink *ink, enum pen pen, const struct point *corners, size_t count) {
    ink_trace(ink, pen, corners, count);
    text_add(&ink->paths[pen], "Z");
}

void ink_arrow(struct ink *ink, enum pen line, enum pen head, struct point from, struct point to) {
    double x = to.x - from.x, y = to.y - from.y, length = hypot(x, y);
    double long_way = fmin(1.9, 0.6 * length), half = 0.36 * long_way;
    if (!(length > 0.0))
        return;
    x /= length;
    y /= length;
    struct point neck = {to.x - x * long_way, to.y - y * long_way};
    ink_line(ink, line, from, neck);
    ink_shape(ink, head,
              (struct point[]){to,
                               {neck.x - y * half, neck.y + x * half},
                               {neck.x + y * half, neck.y - x * half}},
              3);
}

void ink_words(struct ink *ink, enum words_style style, enum anchor anchor, struct point at,
               const char *words) {
    static const char *const anchors[] = {"start", "middle", "end"};
    text_print(&ink->words,
               "<text x=\"%s\" y=\"%s\" font-size=\"%s\" fill=\"%s\" font-weight=\"%s\" "
               "text-anchor=\"%s\">%s</text>\n",
               ink_number(ink->arena, at.x), ink_number(ink->arena, at.y),
               ink_number(ink->arena, STYLES[style].size), STYLES[style].fill, STYLES[style].weight,
               anchors[anchor], markup(ink->arena, words));
}

/* Widths of a wide sans-serif font, in shares of its size. */
static double letter_width(unsigned char letter) {
    if (letter >= 0xC0)
        return 1.1; /* the first byte of a letter of any other script */
    if (letter >= 0x80)
        return 0.0;
    if (letter >= '0' && letter <= '9')
        return 0.64;
    if (letter >= 'A' && letter <= 'Z')
        return 0.76;
    switch (letter) {
    case 'm':
    case 'w':
    case '%':
        return 0.97;
    case 'i':
    case 'j':
    case 'l':
    case ' ':
    case '.':
    case ',':
    case '\'':
    case ':':
        return 0.34;
    case 'f':
    case 't':
    case 'r':
    case '-':
    case '/':
    case '(':
    case ')':
        return 0.42;
    default:
        return 0.64;
    }
}

double ink_words_width(enum words_style style, const char *words) {
    double width = 0.0;
    for (; *words; words++)
        width += letter_width((unsigned char)*words);
    return width * STYLES[style].size * (STYLES[style].weight[0] == 'b' ? 1.12 : 1.0);
}

double ink_words_height(enum words_style style) {
    return STYLES[style].size;
}

void ink_write(const struct ink *ink, struct text *out) {
    text_add(out, "<g fill=\"none\" stroke-linecap=\"butt\">\n");
    for (int pen = 0; pen < PEN_COUNT; pen++)
        if (ink->paths[pen].count)
            text_print(out, "<path %s d=\"%s\"/>\n", PENS[pen], text_string(&ink->paths[pen]));
    text_add(out, "</g>\n");
    if (ink->words.count)
        text_print(out, "<g font-family=\"sans-serif\" stroke=\"none\">\n%s</g>\n",
                   text_string(&ink->words));
}
