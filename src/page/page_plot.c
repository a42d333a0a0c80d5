#include "page/page.h"

#include "draw/ink.h"
#include "draw/markup.h"
#include "report/margin_text.h"
#include "units/decimal.h"
#include "units/unit.h"

#include <math.h>

/* mm of the picture */
#define WIDE 100.0
#define HIGH 64.0
#define LEFT 15.0
#define RIGHT 93.0
#define TOP 11.0
#define BOTTOM 53.0
#define LETTER_GAP 3.2
#define POINTS_MOST 20

struct plot {
    struct ink ink;
    const struct margin_answer *answer;
    enum margin_load load;
    const struct margin *margin;
    double top; /* the ratio at its upper edge */
};

static const enum pen CURVES[MARGIN_CURVES] = {PEN_CURVE_FULL, PEN_CURVE_DASHED, PEN_CURVE_DOTTED};
static const char *const LETTERS[MARGIN_CURVES] = {"A", "B", "C"};

static double across(const struct plot *plot, double load) {
    return LEFT + (RIGHT - LEFT) * load / plot->margin->plot.to;
}

static double down(const struct plot *plot, double ratio) {
    return BOTTOM - (BOTTOM - TOP) * ratio / plot->top;
}

/* Steps of 1, 2 or 5 times a power of ten, at most six of them. */
static double even_step(double to) {
    static const double steps[] = {1.0, 2.0, 5.0, 10.0};
    double decade = pow(10.0, floor(log10(to / 6.0)));
    for (int k = 0; k < 4; k++)
        if (to / (steps[k] * decade) <= 6.0)
            return steps[k] * decade;
    return 10.0 * decade;
}

/* As high as the curves go, from a quarter over the limit to four times it; higher only where the
 * frame as described is. */
static double upper_edge(const struct margin *margin) {
    double top = 1.25, described = 0.0;
    for (size_t c = 0; c < margin->plot.count; c++)
        for (size_t k = 0; k < margin->plot.curves[c].count; k++) {
            const struct margin_point *point = &margin->plot.curves[c].points[k];
            top = fmax(top, point->ratio);
            if (point->load == margin->as_described)
                described = fmax(described, point->ratio);
        }
    return fmin(top, fmax(4.0, 1.1 * described)) * 1.04;
}

/* ---- the axes ---- */

static enum quantity load_quantity(enum margin_load load) {
    return load == MARGIN_SNOW ? QUANTITY_LOAD : QUANTITY_SPEED;
}

static const char *load_axis(struct arena *arena, const struct plot *plot) {
    const struct frame *frame = plot->answer->frame;
    if (plot->load == MARGIN_TRAY)
        return "times the trays as described";
    const char *unit = unit_default(load_quantity(plot->load), frame->units)->name;
    if (plot->load == MARGIN_SNOW)
        return arena_print(arena, "%s of snow %s", unit,
                           frame->site.snow_depth.given ? "lying on it" : "on the ground");
    return arena_print(arena, "%s of wind, %s", unit,
                       frame->site.wind.given ? "as wind maps give it" : "in a real gust");
}

static void load_ticks(struct plot *plot) {
    struct arena *arena = plot->ink.arena;
    double unit = plot->load == MARGIN_TRAY
                      ? 1.0
                      : unit_default(load_quantity(plot->load), plot->answer->frame->units)->factor;
    double to = plot->margin->plot.to / unit, step = even_step(to);
    int decimals = (int)fmax(0.0, ceil(-log10(step) - 1e-9));
    for (int k = 0; k * step <= to * (1.0 + 1e-9); k++) {
        double x = across(plot, k * step * unit);
        ink_line(&plot->ink, PEN_MEASURE, (struct point){x, BOTTOM},
                 (struct point){x, BOTTOM + 1.0});
        ink_words(&plot->ink, WORDS_PLAIN, ANCHOR_MIDDLE, (struct point){x, BOTTOM + 4.2},
                  decimal_fixed(arena, k * step, decimals));
    }
    ink_words(&plot->ink, WORDS_QUIET, ANCHOR_MIDDLE,
              (struct point){(LEFT + RIGHT) / 2.0, BOTTOM + 8.4}, load_axis(arena, plot));
}

static const char *ratio_label(struct arena *arena, double ratio) {
    if (ratio < 1.0)
        return arena_print(arena, "%s %%", decimal_fixed(arena, 100.0 * ratio, 0));
    return arena_print(arena, "%s times",
                       decimal_fixed(arena, ratio, ratio == floor(ratio) ? 0 : 1));
}

static void ratio_ticks(struct plot *plot) {
    double step = plot->top > 2.2 ? even_step(plot->top) : 0.5;
    for (int k = 0; k * step <= plot->top; k++) {
        bool limit = k * step == 1.0;
        double y = down(plot, k * step);
        ink_line(&plot->ink, PEN_MEASURE, (struct point){LEFT - 1.0, y},
                 (struct point){limit || !k ? LEFT : RIGHT, y});
        if (!limit && fabs(y - down(plot, 1.0)) > LETTER_GAP)
            ink_words(&plot->ink, WORDS_PLAIN, ANCHOR_END, (struct point){LEFT - 1.8, y + 0.9},
                      ratio_label(plot->ink.arena, k * step));
    }
    double y = down(plot, 1.0);
    ink_line(&plot->ink, PEN_OUTLINE_HEAVY, (struct point){LEFT, y}, (struct point){RIGHT, y});
    ink_words(&plot->ink, WORDS_HEADING, ANCHOR_END, (struct point){LEFT - 1.8, y + 0.9}, "limit");
    ink_line(&plot->ink, PEN_OUTLINE, (struct point){LEFT, TOP - 1.0},
             (struct point){LEFT, BOTTOM});
    ink_line(&plot->ink, PEN_OUTLINE, (struct point){LEFT, BOTTOM}, (struct point){RIGHT, BOTTOM});
}

/* ---- the curves ---- */

static void mark(struct plot *plot, int curve, struct point at) {
    const double half = curve ? 0.75 : 0.6;
    const struct point forms[MARGIN_CURVES][4] = {
        {{at.x - half, at.y - half},
         {at.x + half, at.y - half},
         {at.x + half, at.y + half},
         {at.x - half, at.y + half}},
        {{at.x, at.y - half}, {at.x + half, at.y}, {at.x, at.y + half}, {at.x - half, at.y}},
        {{at.x - half, at.y + half},
         {at.x + half, at.y + half},
         {at.x, at.y - half},
         {at.x, at.y - half}}};
    ink_shape(&plot->ink, PEN_CURVE_MARK, forms[curve], 4);
}

static void ring(struct plot *plot, double load) {
    enum { CORNERS = 20 };
    const double radius = 1.3, turn = 6.283185307179586;
    struct point corners[CORNERS];
    for (int k = 0; k < CORNERS; k++)
        corners[k] = (struct point){across(plot, load) + radius * cos(turn * k / CORNERS),
                                    down(plot, 1.0) + radius * sin(turn * k / CORNERS)};
    ink_shape(&plot->ink, PEN_CURVE_RING, corners, CORNERS);
}

/* From inside the plot to where the line to a point above it leaves. */
static struct point at_the_edge(const struct plot *plot, struct margin_point inside,
                                struct margin_point above) {
    double share = (plot->top - inside.ratio) / (above.ratio - inside.ratio);
    return (struct point){across(plot, inside.load + (above.load - inside.load) * share), TOP};
}

/* As far as it is in the plot; it may leave and come back. Returns its end. */
static struct point curve(struct plot *plot, int number) {
    const struct margin_curve *curve = &plot->margin->plot.curves[number];
    struct point trace[POINTS_MOST], end = {RIGHT, BOTTOM};
    size_t count = 0;
    for (size_t k = 0; k < curve->count && count + 1 < POINTS_MOST; k++) {
        struct margin_point at = curve->points[k];
        bool inside = at.ratio <= plot->top,
             came_from_inside = k && curve->points[k - 1].ratio <= plot->top;
        if (k && inside != came_from_inside)
            trace[count++] = inside ? at_the_edge(plot, at, curve->points[k - 1])
                                    : at_the_edge(plot, curve->points[k - 1], at);
        if (inside) {
            trace[count++] = (struct point){across(plot, at.load), down(plot, at.ratio)};
            mark(plot, number, trace[count - 1]);
        }
        if (count)
            end = trace[count - 1];
        if (!inside || k + 1 == curve->count) {
            ink_trace(&plot->ink, CURVES[number], trace, count);
            count = 0;
        }
    }
    return end;
}

/* A letter at each end, from the top down, under one another where the ends are near. */
static void letters(struct plot *plot, const struct point *ends, size_t count) {
    struct point placed[MARGIN_CURVES];
    bool done[MARGIN_CURVES] = {false};
    for (size_t number = 0; number < count; number++) {
        size_t next = count;
        for (size_t c = 0; c < count; c++)
            if (!done[c] && (next == count || ends[c].y < ends[next].y))
                next = c;
        struct point at = {ends[next].x + 1.2, ends[next].y + 0.9};
        for (size_t above = 0; above < number; above++)
            if (fabs(at.x - placed[above].x) < LETTER_GAP)
                at.y = fmax(at.y, placed[above].y + LETTER_GAP);
        ink_words(&plot->ink, WORDS_HEADING, ANCHOR_START, at, LETTERS[next]);
        placed[number] = at;
        done[next] = true;
    }
}

static void curves(struct plot *plot) {
    struct point ends[MARGIN_CURVES];
    size_t count = plot->margin->plot.count;
    for (size_t c = 0; c < count; c++)
        ends[c] = curve(plot, (int)c);
    letters(plot, ends, count);
    for (size_t c = 0; c < count; c++)
        if (isfinite(plot->margin->plot.curves[c].limit_at))
            ring(plot, plot->margin->plot.curves[c].limit_at);
}

/* The load as described, and above it that at which the first check fails; each with a line, and
 * the lower words beside the line of the upper ones. */
static void uprights(struct plot *plot) {
    struct arena *arena = plot->ink.arena;
    const struct margin *margin = plot->margin;
    const double rows[] = {3.2, 7.4}, near = 10.0;
    bool found = margin->reach == REACH_FOUND;
    double described = across(plot, margin->as_described), first = across(plot, margin->value);
    double away = found && fabs(described - first) < near ? first - described : 0.0;
    ink_line(&plot->ink, PEN_MEASURE, (struct point){described, rows[1] + 0.8},
             (struct point){described, BOTTOM});
    ink_words(&plot->ink, WORDS_PLAIN,
              away > 0.0   ? ANCHOR_END
              : away < 0.0 ? ANCHOR_START
                           : ANCHOR_MIDDLE,
              (struct point){described, rows[1]}, "as described");
    if (!found)
        return;
    const char *words = arena_print(arena, "the first fails: %s",
                                    margin_amount(arena, plot->answer, plot->load, margin->value));
    double room = ink_words_width(WORDS_PLAIN, words) / 2.0;
    ink_line(&plot->ink, PEN_LOAD, (struct point){first, rows[0] + 0.8},
             (struct point){first, BOTTOM});
    ink_words(&plot->ink, WORDS_PLAIN, ANCHOR_MIDDLE,
              (struct point){fmin(fmax(first, room + 1.0), WIDE - room - 1.0), rows[0]}, words);
}

static void write_picture(struct text *out, const struct plot *plot) {
    struct arena *arena = out->arena;
    const char *title = arena_print(arena, "how much of its limit each check uses, under more %s",
                                    MARGIN_NAMES[plot->load]);
    text_print(out,
               "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" "
               "role=\"img\">\n<title>%s</title>\n",
               ink_number(arena, WIDE), ink_number(arena, HIGH), title);
    ink_write(&plot->ink, out);
    text_add(out, "</svg>\n");
}

static const char *limit_words(struct arena *arena, const struct plot *plot,
                               const struct margin_curve *curve) {
    if (isfinite(curve->limit_at))
        return arena_print(arena, "; at its limit at %s",
                           margin_amount(arena, plot->answer, plot->load, curve->limit_at));
    return curve->beyond ? "; for more load than where it ends nothing is published" : "";
}

static void legend(struct text *out, const struct plot *plot) {
    static const char *const lines[MARGIN_CURVES] = {"full line, squares", "dashed, diamonds",
                                                     "dotted, triangles"};
    text_add(out, "<ul class=\"curves\">\n");
    for (size_t c = 0; c < plot->margin->plot.count; c++) {
        const struct margin_curve *curve = &plot->margin->plot.curves[c];
        page_item(out, arena_print(out->arena, "%s (%s): %s%s [%s]", LETTERS[c], lines[c],
                                   curve->words, limit_words(out->arena, plot, curve), curve->id));
    }
    text_add(out, "</ul>\n");
}

void page_plot(struct text *out, const struct margin_answer *answer, enum margin_load load) {
    const struct margin *margin = &answer->loads[load];
    struct plot plot = {.answer = answer, .load = load, .margin = margin};
    if (!margin->plot.count)
        return;
    ink_start(&plot.ink, out->arena);
    plot.top = upper_edge(margin);
    load_ticks(&plot);
    ratio_ticks(&plot);
    uprights(&plot);
    curves(&plot);
    text_print(
        out,
        "<figure class=\"plot\">\n<figcaption>%s: share of the limit against load</figcaption>\n",
        MARGIN_NAMES[load]);
    write_picture(out, &plot);
    legend(out, &plot);
    text_add(out, "</figure>\n");
}
