#include "draw/cut_picture.h"

#include "draw/markup.h"
#include "units/decimal.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

/* Units of the picture. */
enum {
    WIDTH = 1000,
    EDGE = 20,
    HEAD = 30,
    BOARD = 26,
    BETWEEN = 8,
    SHEET_MOST = 460,
    LETTER = 6,
    LINE = 14,
    RIBS = 24
};

struct picture {
    struct text *text;
    const struct cut_answer *answer;
    double y;
};

static const char *number(struct picture *picture, double value) {
    return decimal_fixed(picture->text->arena, value, 2);
}

static const char *length_words(struct picture *picture, double length) {
    return quantity_print_length(picture->text->arena, length, picture->answer->frame->units);
}

static void rectangle(struct picture *picture, const char *look, double x, double y, double width,
                      double height, const char *title) {
    text_print(picture->text, "<rect class=\"%s\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\">",
               look, number(picture, x), number(picture, y), number(picture, width),
               number(picture, height));
    text_add(picture->text, "<title>");
    markup_add(picture->text, title);
    text_add(picture->text, "</title></rect>\n");
}

static void words(struct picture *picture, const char *look, double x, double y,
                  const char *string) {
    text_print(picture->text, "<text class=\"%s\" x=\"%s\" y=\"%s\">", look, number(picture, x),
               number(picture, y));
    markup_add(picture->text, string);
    text_add(picture->text, "</text>\n");
}

/* In the middle of its room, where it fits. */
static bool label(struct picture *picture, double x, double y, double room, const char *string) {
    if ((double)strlen(string) * LETTER > room)
        return false;
    words(picture, "name", x + room / 2.0, y, string);
    return true;
}

static void head(struct picture *picture, const char *string) {
    picture->y += HEAD;
    words(picture, "head", EDGE, picture->y - BETWEEN, string);
}

/* ---- boards ---- */

static double longest_stock(const struct cut_answer *answer) {
    double longest = 0.0;
    for (size_t k = 0; k < answer->stick_count; k++)
        for (size_t b = 0; b < answer->sticks[k].board_count; b++)
            longest = fmax(longest, answer->sticks[k].boards[b].stock);
    return longest;
}

static void draw_board(struct picture *picture, const struct cut_sticks *sticks,
                       const struct cut_board *board, double scale) {
    struct arena *arena = picture->text->arena;
    double x = EDGE, y = picture->y;
    rectangle(picture, "left", x, y, board->stock * scale, BOARD,
              arena_print(arena, "%s of %s", sticks->name, length_words(picture, board->stock)));
    x += picture->answer->trim * scale;
    for (size_t k = 0; k < board->count; k++) {
        const struct cut_piece *piece = &sticks->pieces[board->pieces[k]];
        const char *length = length_words(picture, piece->length);
        double wide = piece->needs * scale;
        rectangle(picture, "piece", x, y, wide, BOARD,
                  arena_print(arena, "%s, %s", piece->name, length));
        if (!label(picture, x, y + 0.65 * BOARD, wide,
                   arena_print(arena, "%s %s", piece->name, length)))
            label(picture, x, y + 0.65 * BOARD, wide, length);
        x += wide + picture->answer->kerf * scale;
    }
    picture->y += BOARD + BETWEEN;
}

static void draw_sticks(struct picture *picture, const struct cut_sticks *sticks, double scale) {
    head(picture, arena_print(picture->text->arena, "%s: %zu board%s", sticks->name,
                              sticks->board_count, sticks->board_count == 1 ? "" : "s"));
    for (size_t b = 0; b < sticks->board_count; b++)
        draw_board(picture, sticks, &sticks->boards[b], scale);
}

/* ---- sheets ---- */

static void draw_ribs(struct picture *picture, double x, double y, double width, double height) {
    for (int k = 1; k < RIBS; k++)
        text_print(picture->text, "<path class=\"rib\" d=\"M%s %sv%s\"/>\n",
                   number(picture, x + width * k / RIBS), number(picture, y),
                   number(picture, height));
}

/* Upright, its lower left corner the one that places count from. */
static void draw_sheet(struct picture *picture, const struct cut_sheets *sheets, int sheet,
                       double x, double scale) {
    struct arena *arena = picture->text->arena;
    double y = picture->y, height = sheets->length * scale, width = sheets->width * scale;
    rectangle(picture, "left", x, y, width, height,
              arena_print(arena, "%s, sheet %d", table_sheet(sheets->sheet)->name, sheet));
    for (size_t k = 0; k < sheets->piece_count; k++) {
        const struct cut_sheet_piece *piece = &sheets->pieces[k];
        if (piece->sheet != sheet)
            continue;
        const char *size = arena_print(arena, "%s x %s", length_words(picture, piece->size[0]),
                                       length_words(picture, piece->size[1]));
        double left = x + piece->at[0] * scale, wide = piece->size[0] * scale;
        double tall = piece->size[1] * scale, top = y + height - piece->at[1] * scale - tall;
        rectangle(picture, "piece", left, top, wide, tall,
                  arena_print(arena, "%s, %s", piece->name, size));
        if (tall > 2 * LINE) {
            label(picture, left, top + tall / 2.0, wide, piece->name);
            label(picture, left, top + tall / 2.0 + LINE, wide, size);
        }
    }
    if (sheets->fluted)
        draw_ribs(picture, x, y, width, height);
}

static void draw_sheets(struct picture *picture, const struct cut_sheets *sheets) {
    double scale = SHEET_MOST / fmax(sheets->width, sheets->length);
    head(picture,
         arena_print(picture->text->arena, "%s: %d sheet%s", table_sheet(sheets->sheet)->name,
                     sheets->needed, sheets->needed == 1 ? "" : "s"));
    double step = sheets->width * scale + EDGE;
    int columns = (int)fmax(1.0, floor((WIDTH - EDGE) / step));
    for (int sheet = 1; sheet <= sheets->needed; sheet++) {
        int column = (sheet - 1) % columns;
        draw_sheet(picture, sheets, sheet, EDGE + column * step, scale);
        if (column == columns - 1 || sheet == sheets->needed)
            picture->y += sheets->length * scale + BETWEEN;
    }
}

/* ---- */

void cut_picture(struct text *text, const struct cut_answer *answer) {
    struct text inside = text_new(text->arena);
    struct picture picture = {.text = &inside, .answer = answer};
    double longest = longest_stock(answer);
    double scale = longest > 0.0 ? (WIDTH - 2.0 * EDGE) / longest : 1.0;
    for (size_t k = 0; k < answer->stick_count; k++)
        draw_sticks(&picture, &answer->sticks[k], scale);
    for (size_t k = 0; k < answer->sheet_count; k++)
        draw_sheets(&picture, &answer->sheets[k]);
    text_print(text,
               "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %s\" role=\"img\">\n",
               WIDTH, number(&picture, picture.y + EDGE));
    text_add(text, "<title>");
    markup_add(text, answer->frame->title[0] ? answer->frame->title : "Boards and sheets");
    text_add(text, "</title>\n"
                   "<style>\n"
                   "text{font-family:sans-serif;font-size:11px;fill:#222}\n"
                   ".name{text-anchor:middle}\n"
                   ".head{font-size:15px;font-weight:bold}\n"
                   ".piece{fill:#f3dfb8;stroke:#222;stroke-width:0.75}\n"
                   ".left{fill:#d8d8d8;stroke:#222;stroke-width:0.75}\n"
                   ".rib{stroke:#222;stroke-width:0.25;opacity:0.4;fill:none}\n"
                   "</style>\n");
    text_add(text, text_string(&inside));
    text_add(text, "</svg>\n");
}
