#include "report/sketch.h"

#include <math.h>
#include <string.h>

#define HIGH_AS_WIDE 2.0 /* how much higher a character is than wide */

struct sketch {
    char cells[SKETCH_ROWS + 1][SKETCH_COLUMNS + 1]; /* a row for the ground */
    double left, bottom, column;                     /* m; how wide a character is */
    int columns, rows;
};

static struct sketch sketch_of(const struct frame *frame, double *wide, double *high) {
    struct sketch sketch;
    double low[2] = {INFINITY, INFINITY}, top[2] = {-INFINITY, -INFINITY};
    for (size_t j = 0; j < frame->joints.count; j++)
        for (int c = 0; c < 2; c++) {
            low[c] = fmin(low[c], frame->joints.items[j].at[2 * c]);
            top[c] = fmax(top[c], frame->joints.items[j].at[2 * c]);
        }
    *wide = top[0] - low[0];
    *high = top[1] - low[1];
    sketch.column = fmax(*wide / (SKETCH_COLUMNS - 1), *high / (SKETCH_ROWS - 1) / HIGH_AS_WIDE);
    if (!(sketch.column > 0.0))
        sketch.column = 1.0;
    sketch.left = low[0];
    sketch.bottom = low[1];
    sketch.columns = (int)round(*wide / sketch.column) + 1;
    sketch.rows = (int)round(*high / sketch.column / HIGH_AS_WIDE) + 1;
    memset(sketch.cells, ' ', sizeof sketch.cells);
    return sketch;
}

/* Row 0 is the uppermost. */
static void cell_of(const struct sketch *sketch, const double at[3], int *column, int *row) {
    *column = (int)round((at[0] - sketch->left) / sketch->column);
    *row = sketch->rows - 1 - (int)round((at[2] - sketch->bottom) / sketch->column / HIGH_AS_WIDE);
}

static void draw_stick(struct sketch *sketch, const double from[3], const double to[3]) {
    int a, b, c, d;
    cell_of(sketch, from, &a, &b);
    cell_of(sketch, to, &c, &d);
    int across = c - a, down = d - b;
    int steps = (int)fmax(fabs((double)across), fabs((double)down));
    char mark = across == 0 ? '|' : down == 0 ? '-' : (across > 0) == (down > 0) ? '\\' : '/';
    for (int k = 0; k <= steps && steps > 0; k++) {
        int column = a + (int)round((double)across * k / steps);
        int row = b + (int)round((double)down * k / steps);
        char *cell = &sketch->cells[row][column];
        if (*cell == ' ' || *cell == mark)
            *cell = mark;
        else if ((*cell == '-' && mark == '|') || (*cell == '|' && mark == '-'))
            *cell = '+';
        else if (mark == '/' || mark == '\\')
            *cell = *cell == '/' || *cell == '\\' ? 'X' : *cell;
    }
}

static void draw_joints(struct sketch *sketch, const struct frame *frame) {
    int column, row;
    for (size_t j = 0; j < frame->joints.count; j++) {
        cell_of(sketch, frame->joints.items[j].at, &column, &row);
        sketch->cells[row][column] = '+';
    }
    for (size_t s = 0; s < frame->supports.count; s++) {
        cell_of(sketch, frame->joints.items[frame->supports.items[s].joint].at, &column, &row);
        for (int c = column - 1; c <= column + 1; c++)
            if (c >= 0 && c < sketch->columns && sketch->cells[row + 1][c] == ' ')
                sketch->cells[row + 1][c] = '=';
    }
}

static void add_row(struct text *text, const char *cells, int columns) {
    while (columns > 0 && cells[columns - 1] == ' ')
        columns--;
    if (columns)
        text_add(text, "  ");
    text_bytes(text, cells, (size_t)columns);
    text_add(text, "\n");
}

void sketch_text(struct text *text, const struct frame *frame) {
    double wide, high;
    if (!frame->members.count)
        return;
    struct sketch sketch = sketch_of(frame, &wide, &high);
    for (size_t m = 0; m < frame->members.count; m++)
        draw_stick(&sketch, frame->joints.items[frame->members.items[m].from].at,
                   frame->joints.items[frame->members.items[m].to].at);
    draw_joints(&sketch, frame);
    for (int row = 0; row <= sketch.rows; row++)
        add_row(text, sketch.cells[row], sketch.columns);
    text_print(text, "  from the front: %s wide and %s high between the middles of its sticks\n\n",
               quantity_print_length(text->arena, wide, frame->units),
               quantity_print_length(text->arena, high, frame->units));
}
