#include "draw/cut_picture.h"

#include "draw/ink.h"
#include "draw/markup.h"
#include "units/decimal.h"

#include <math.h>
#include <stdbool.h>

/* Units of the picture; narrower where it stands in a page, to be read on a phone. */
enum {
    WIDTH = 1000,
    WIDTH_IN_PAGE = 440,
    EDGE = 20,
    EDGE_IN_PAGE = 1,
    HEAD = 30,
    BOARD = 26,
    BETWEEN = 8,
    SHEET_MOST = 460,
    LETTERS = 11, /* size of the letters */
    LINE = 14,
    RIBS = 24
};

struct picture {
    struct text *text;
    const struct cut_answer *answer;
    double width, edge, y;
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
    double mm = ink_words_width(WORDS_PLAIN, string) / ink_words_height(WORDS_PLAIN);
    if (mm * LETTERS > room)
        return false;
    words(picture, "name", x + room / 2.0, y, string);
    return true;
}

static void head(struct picture *picture, const char *string) {
    picture->y += HEAD;
    words(picture, "head", picture->edge, picture->y - BETWEEN, string);
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
    double x = picture->edge, y = picture->y;
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

static double board_scale(const struct picture *picture) {
    double longest = longest_stock(picture->answer);
    return longest > 0.0 ? (picture->width - 2.0 * picture->edge) / longest : 1.0;
}

static void draw_boards(struct picture *picture, const struct cut_sticks *sticks) {
    double scale = board_scale(picture);
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
    double scale =
        fmin(SHEET_MOST / sheets->length, (picture->width - 2.0 * picture->edge) / sheets->width);
    double step = sheets->width * scale + EDGE;
    int columns = (int)fmax(1.0, floor((picture->width - 2.0 * picture->edge + EDGE) / step));
    for (int sheet = 1; sheet <= sheets->needed; sheet++) {
        int column = (sheet - 1) % columns;
        draw_sheet(picture, sheets, sheet, picture->edge + column * step, scale);
        if (column == columns - 1 || sheet == sheets->needed)
            picture->y += sheets->length * scale + BETWEEN;
    }
}

/* ---- */

static void write_picture(struct text *text, struct picture *picture, const char *title) {
    text_print(text,
               "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" role=\"img\" "
               "class=\"cut\">\n",
               number(picture, picture->width), number(picture, picture->y + picture->edge));
    text_add(text, "<title>");
    markup_add(text, title);
    text_add(text, "</title>\n"
                   "<style>\n"
                   ".cut text{font-family:sans-serif;font-size:11px;fill:#222}\n"
                   ".cut .name{text-anchor:middle}\n"
                   ".cut .head{font-size:15px;font-weight:bold}\n"
                   ".cut .piece{fill:#f3dfb8;stroke:#222;stroke-width:0.75}\n"
                   ".cut .left{fill:#d8d8d8;stroke:#222;stroke-width:0.75}\n"
                   ".cut .rib{stroke:#222;stroke-width:0.25;opacity:0.4;fill:none}\n"
                   "</style>\n");
    text_add(text, text_string(picture->text));
    text_add(text, "</svg>\n");
}

void cut_picture(struct text *text, const struct cut_answer *answer) {
    struct text inside = text_new(text->arena);
    struct picture picture = {.text = &inside, .answer = answer, .width = WIDTH, .edge = EDGE};
    for (size_t k = 0; k < answer->stick_count; k++) {
        const struct cut_sticks *sticks = &answer->sticks[k];
        head(&picture, arena_print(text->arena, "%s: %zu board%s", sticks->name,
                                   sticks->board_count, sticks->board_count == 1 ? "" : "s"));
        draw_boards(&picture, sticks);
    }
    for (size_t k = 0; k < answer->sheet_count; k++) {
        const struct cut_sheets *sheets = &answer->sheets[k];
        head(&picture, arena_print(text->arena, "%s: %d sheet%s", table_sheet(sheets->sheet)->name,
                                   sheets->needed, sheets->needed == 1 ? "" : "s"));
        draw_sheets(&picture, sheets);
    }
    write_picture(text, &picture,
                  answer->frame->title[0] ? answer->frame->title : "Boards and sheets");
}

static struct picture picture_in_page(struct text *inside, const struct cut_answer *answer) {
    return (struct picture){.text = inside,
                            .answer = answer,
                            .width = WIDTH_IN_PAGE,
                            .edge = EDGE_IN_PAGE,
                            .y = EDGE_IN_PAGE};
}

void cut_picture_boards(struct text *text, const struct cut_answer *answer,
                        const struct cut_sticks *sticks) {
    struct text inside = text_new(text->arena);
    struct picture picture = picture_in_page(&inside, answer);
    draw_boards(&picture, sticks);
    write_picture(text, &picture, arena_print(text->arena, "boards for %s", sticks->name));
}

void cut_picture_sheets(struct text *text, const struct cut_answer *answer,
                        const struct cut_sheets *sheets) {
    struct text inside = text_new(text->arena);
    struct picture picture = picture_in_page(&inside, answer);
    draw_sheets(&picture, sheets);
    write_picture(text, &picture,
                  arena_print(text->arena, "sheets of %s", table_sheet(sheets->sheet)->name));
}
