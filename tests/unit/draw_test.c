/* Pictures: polygons, pieces of wood, what is hidden, labels, exaggeration, words of other people.
 */
#include "in_arena.h"
#include "near.h"
#include "second_frame.h"

#include "base/vector.h"
#include "brace/brace.h"
#include "draw/draw.h"
#include "draw/figure.h"
#include "draw/look.h"
#include "draw/markup.h"
#include "judge/judge.h"
#include "report/sketch.h"

#include <gsl/gsl_errno.h>
#include <math.h>

static void set_up_quietly(void) {
    gsl_set_error_handler_off();
    set_up();
}

TestSuite(draw, .init = set_up_quietly, .fini = tear_down);
TestSuite(sketch, .init = set_up, .fini = tear_down);

static bool has(const char *text, const char *part) {
    return strstr(text, part) != NULL;
}
#define HAS(text, part) cr_assert(has((text), (part)), "[%s] is not in [%.400s]", (part), (text))

/* ---- polygons ---- */

static struct convex rectangle(double left, double low, double right, double high) {
    struct point *corners = ARENA_ARRAY(arena, struct point, 4);
    corners[0] = (struct point){left, low};
    corners[1] = (struct point){right, low};
    corners[2] = (struct point){right, high};
    corners[3] = (struct point){left, high};
    return (struct convex){corners, 4};
}

static double area_of(const struct convexes *pieces) {
    double area = 0.0;
    for (size_t k = 0; k < pieces->count; k++)
        area += convex_area(&pieces->items[k]);
    return area;
}

Test(draw, polygons_are_clipped) {
    struct convex square = rectangle(0, 0, 2, 2);
    struct convex corner =
        convex_clip(arena, &square, 1, 1, 1); /* x + y <= 1: half a unit square */
    NEAR_ABS(convex_area(&corner), 0.5, 1e-12);
    struct convex nothing = convex_clip(arena, &square, 1, 0, -1);
    cr_assert(nothing.count == 0);
}

Test(draw, holes_are_taken_out) {
    struct convex square = rectangle(0, 0, 4, 4), hole = rectangle(1, 1, 2, 3);
    struct convexes pieces = {&square, 1, 1};
    struct convexes rest = convex_without(arena, &pieces, &hole);
    NEAR_ABS(area_of(&rest), 16 - 2, 1e-12);
    struct convex beside = rectangle(4, 0, 6, 4);
    rest = convex_without(arena, &pieces, &beside);
    cr_assert(rest.count == 1, "only touching it");
    struct convex over = rectangle(-1, -1, 5, 5);
    cr_assert(convex_without(arena, &pieces, &over).count == 0, "all of it");
}

Test(draw, stretches_of_lines) {
    struct convex square = rectangle(1, 0, 3, 2);
    double begin, end;
    cr_assert(
        convex_stretch(&square, (struct point){0, 1}, (struct point){4, 1}, true, &begin, &end));
    NEAR_ABS(begin, 0.25, 1e-3);
    NEAR_ABS(end, 0.75, 1e-3);
    cr_assert(
        convex_stretch(&square, (struct point){0, 2}, (struct point){4, 2}, true, &begin, &end),
        "on the border");
    cr_assert(
        !convex_stretch(&square, (struct point){0, 2}, (struct point){4, 2}, false, &begin, &end));
    cr_assert(
        !convex_stretch(&square, (struct point){0, 3}, (struct point){4, 3}, true, &begin, &end));
}

/* ---- views ---- */

Test(draw, views_are_square) {
    for (int v = 0; v < VIEW_COUNT; v++) {
        const struct view *view = &VIEWS[v];
        double cross[3];
        NEAR_ABS(vector_length(view->right), 1.0, 1e-12);
        NEAR_ABS(vector_length(view->up), 1.0, 1e-12);
        vector_cross(view->right, view->up, cross);
        for (int c = 0; c < 3; c++)
            NEAR_ABS(cross[c], view->toward[c], 1e-12);
    }
    cr_assert(VIEWS[VIEW_CORNER].toward[0] > 0 && VIEWS[VIEW_CORNER].toward[1] < 0 &&
                  VIEWS[VIEW_CORNER].toward[2] > 0,
              "from the front, the right and above");
}

/* ---- pieces of wood ---- */

#define STICKS "sticks: {p: {size: [20 mm, 40 mm], material: {E: 9 GPa, density: 420}}}\n"
/* A post of 40 x 20 (40 along x), a rail 40 deep and 20 thick lapped on it, of length 1 m. */
#define LAPPED                                                                                     \
    "batten: 1\nunits: si\nsite: {place: indoors}\n" STICKS                                        \
    "joints: {a: [0, 0, 0], b: [0, 0, 500], c: [1000, 0, 0], d: [1000, 0, 500],\n"                 \
    "  e: [0, 400, 0], f: [0, 400, 500]}\n"                                                        \
    "members:\n"                                                                                   \
    "  post-1: {from: a, to: b, stick: p}\n"                                                       \
    "  post-2: {from: c, to: d, stick: p}\n"                                                       \
    "  post-3: {from: e, to: f, stick: p}\n"                                                       \
    "  rail: {from: b, to: d, stick: p, ends: lap}\n"                                              \
    "  side: {from: b, to: f, stick: p, ends: butt}\n"                                             \
    "connections: {lap: {type: screwed-lap, screw: 8, length: 30 mm, count: 2},\n"                 \
    "  butt: {type: screwed-butt, screw: 8, length: 60 mm, count: 2}}\n"                           \
    "supports: {a: fixed, c: fixed, e: fixed}\n"

static const struct model *model_of(const char *text) {
    struct problems problems = problems_new(arena);
    const struct model *model = model_build(arena, frame_of_text(arena, text), &problems);
    cr_assert(model != NULL && problems.count == 0, "no model");
    return model;
}

static void reach(const struct wood *wood, int axis, double *low, double *high) {
    *low = INFINITY;
    *high = -INFINITY;
    for (int k = 0; k < 8; k++) {
        *low = fmin(*low, wood->corners[k][axis]);
        *high = fmax(*high, wood->corners[k][axis]);
    }
}

static void reaches(const struct wood *wood, int axis, double want_low, double want_high) {
    double low, high;
    reach(wood, axis, &low, &high);
    NEAR_ABS(low, want_low, 1e-12);
    NEAR_ABS(high, want_high, 1e-12);
}

Test(draw, wood_is_cut_as_it_is_fastened) {
    struct wood *woods = wood_pieces(arena, model_of(LAPPED));
    /* the post ends half a rail (20 mm) over the joint, and on the ground at it */
    reaches(&woods[0], 2, 0.0, 0.52);
    reaches(&woods[0], 0, -0.02, 0.02);
    /* the rail lies in front: half a post and half a rail, 10 + 10 mm, and reaches over the posts
     */
    reaches(&woods[3], 1, -0.03, -0.01);
    reaches(&woods[3], 0, -0.02, 1.02);
    reaches(&woods[3], 2, 0.48, 0.52);
    /* the butted one stands between the posts' faces, 10 mm in from either joint */
    reaches(&woods[4], 1, 0.01, 0.39);
    reaches(&woods[4], 0, -0.01, 0.01);
}

/* ---- what is hidden ---- */

/* Two sticks 20 thick that cross: the upright one 100 mm nearer, 40 wide; the level one 40 high. */
#define CROSSING(nearer)                                                                           \
    "batten: 1\nunits: si\nsite: {place: indoors}\n" STICKS "joints: {a: [500, " nearer            \
    ", 0], b: [500, " nearer ", 1000], c: [0, 0, 500],\n"                                          \
    "  d: [1000, 0, 500]}\n"                                                                       \
    "members: {upright: {from: a, to: b, stick: p}, level: {from: c, to: d, stick: p}}\n"          \
    "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\n"

static double seen_area(const struct look *look, int member) {
    double area = 0.0;
    for (size_t f = 0; f < look->face_count; f++)
        if (look->faces[f].member == member)
            area += area_of(&look->faces[f].pieces);
    return area;
}

static struct look *front_of(const char *text) {
    const struct model *model = model_of(text);
    return look_at(arena, wood_pieces(arena, model), model->member_count, &VIEWS[VIEW_FRONT],
                   100.0);
}

Test(draw, the_nearer_stick_hides_the_other) {
    struct look *look = front_of(CROSSING("-100"));
    /* at 100 mm a metre: 100 x 4 of the nearer; 100 x 4 less 4 x 4 of the other */
    NEAR_ABS(seen_area(look, 0), 400.0, 1e-6);
    NEAR_ABS(seen_area(look, 1), 400.0 - 16.0, 1e-6);
    look = front_of(CROSSING("100"));
    NEAR_ABS(seen_area(look, 0), 400.0 - 16.0, 1e-6);
    NEAR_ABS(seen_area(look, 1), 400.0, 1e-6);
}

Test(draw, edges_stop_where_they_are_hidden) {
    struct look *look = front_of(CROSSING("-100"));
    size_t cut = 0;
    for (size_t e = 0; e < look->edge_count; e++) {
        const struct line_seen *edge = &look->edges[e];
        struct stretches seen = look_line(look, edge);
        if (edge->member != 1 || fabs(edge->ends[1].x - edge->ends[0].x) < 50.0 || !edge->outer)
            continue;
        cr_assert(seen.count == 2, "%zu parts", seen.count);
        /* 4 mm of 100 are hidden in the middle */
        NEAR_ABS(seen.items[0].end, 0.48, 1e-3);
        NEAR_ABS(seen.items[1].begin, 0.52, 1e-3);
        cut++;
    }
    cr_assert(cut == 2, "%zu long edges", cut);
}

Test(draw, in_one_plane_the_first_of_the_file_is_on_top) {
    struct look *look = front_of(CROSSING("0"));
    NEAR_ABS(seen_area(look, 0), 400.0, 1e-6);
    NEAR_ABS(seen_area(look, 1), 400.0 - 16.0, 1e-6);
}

/* A stick that runs into another is seen up to where it goes in: from y = -0.5, rising away from
 * the eye, through the front face of a level one. */
Test(draw, sticks_that_run_into_one_another_part_on_a_line) {
    const struct model *model = model_of(
        "batten: 1\nunits: si\nsite: {place: indoors}\n"
        "sticks: {p: {size: [20 mm, 40 mm], material: {E: 9 GPa, density: 420}},\n"
        "  board: {size: [20 mm, 400 mm], material: {E: 9 GPa, density: 420}}}\n"
        "joints: {a: [500, -500, 0], b: [500, 500, 1000], c: [0, 0, 500], d: [1000, 0, 500]}\n"
        "members: {board: {from: c, to: d, stick: board}, rising: {from: a, to: b, stick: p}}\n"
        "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\n");
    struct look *look = look_at(arena, wood_pieces(arena, model), 2, &VIEWS[VIEW_FRONT], 1000.0);
    double hidden = 0.0;
    for (size_t f = 0; f < look->face_count; f++)
        if (look->faces[f].member == 0)
            hidden += convex_area(&look->faces[f].outline) - area_of(&look->faces[f].pieces);
    /* The stick is 20 mm wide (its 40 stand upright in its plane). Its upper long edge runs along
     * z = 500 + y + 20 sqrt 2, so its topmost line goes into the face y = -10 at z = 518.3; the
     * board begins at z = 300. Depths within 0.2 mm count as one plane, where the board is first.
     */
    NEAR_ABS(hidden, 20.0 * (490.0 - 0.2 + 20.0 * sqrt(2.0) - 300.0), 1e-6);
}

/* ---- labels ---- */

Test(draw, labels_keep_off_lines_and_one_another) {
    struct ink ink;
    struct labels labels = {.arena = arena, .room = {0, 0, 120, 90}};
    ink_start(&ink, arena);
    for (int k = 0; k < 10; k++)
        labels_keep_off_line(&labels, (struct point){10 + 10 * k, 10},
                             (struct point){15 + 9 * k, 80});
    size_t lines = labels.lines.count;
    for (int k = 0; k < 40; k++) {
        struct label_anchor anchors[2] = {{{10 + 10 * (k % 10), 10 + 15 * (k / 10)}, 0.0},
                                          {{12 + 10 * (k % 10), 20 + 15 * (k / 10)}, 0.4}};
        labels_ask(&labels, WORDS_PLAIN, arena_print(arena, "rail-%d", k), anchors, 2);
    }
    struct left_out left_out = {0};
    labels_place(&labels, &ink, &left_out);
    size_t placed = 0;
    for (size_t k = 0; k < labels.asked.count; k++) {
        const struct label *one = &labels.asked.items[k];
        placed += one->placed;
        for (size_t m = 0; m < k && one->placed; m++)
            cr_assert(!labels.asked.items[m].placed ||
                          !boxes_overlap(one->box, labels.asked.items[m].box),
                      "%s on %s", one->words, labels.asked.items[m].words);
        struct convex shape =
            rectangle(one->box.left, one->box.top, one->box.right, one->box.bottom);
        double begin, end;
        for (size_t l = 0; l < lines && one->placed; l++)
            cr_assert(!convex_stretch(&shape, labels.lines.items[l][0], labels.lines.items[l][1],
                                      false, &begin, &end),
                      "a line through %s", one->words);
        cr_assert(!one->placed || (one->box.left >= 0 && one->box.right <= 120), "in its room");
    }
    cr_assert(placed + left_out.count == 40 && placed >= 15, "%zu placed", placed);
    for (size_t k = 0, next = 0; k < labels.asked.count; k++)
        if (!labels.asked.items[k].placed)
            cr_assert_str_eq(left_out.items[next++], labels.asked.items[k].words);
}

Test(draw, words_break_between_words_and_at_letters) {
    struct ink ink;
    ink_start(&ink, arena);
    double down =
        ink_wrapped(&ink, WORDS_PLAIN, (struct point){0, 0}, 20, "a few short words here");
    cr_assert(down > 2 * 2.5 && down < 6 * 2.5, "%g", down);
    ink_start(&ink, arena);
    ink_wrapped(&ink, WORDS_PLAIN, (struct point){0, 0}, 6,
                "\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9");
    cr_assert(!has(text_string(&ink.words), "\xEF\xBF\xBD"), "no letter is cut in two");
    HAS(text_string(&ink.words), "\xC3\xA9");
}

/* ---- words of other people ---- */

Test(draw, markup_is_harmless) {
    SAME_TEXT(markup(arena, "a<b>&\"c'"), "a&lt;b&gt;&amp;&quot;c&#39;");
    SAME_TEXT(markup(arena, "x\x01\x1b[31my"), "x\xEF\xBF\xBD\xEF\xBF\xBD[31my");
    SAME_TEXT(markup(arena, "\xE2\x80\xAE"
                            "evil"),
              "\xEF\xBF\xBD"
              "evil");
    SAME_TEXT(markup(arena, "\xFF\xC3"), "\xEF\xBF\xBD\xEF\xBF\xBD");
    SAME_TEXT(markup(arena, "caf\xC3\xA9 \xF0\x9F\x8C\xB1"), "caf\xC3\xA9 \xF0\x9F\x8C\xB1");
}

/* ---- a whole drawing ---- */

static struct drawing drawing_for(const char *text, const char *under, struct result *result) {
    struct frame *frame = frame_of_text(arena, text);
    judge_frame(arena, frame, &(struct judge_options){.bent_under = under}, result);
    cr_assert(result->problems.count == 0);
    const struct model *model = model_build(arena, frame, &result->problems);
    return drawing_of(arena, model, loads_build(arena, model), result, brace_find(arena, frame));
}

/* A simple beam 2 m long, 100 N in the middle: F L^3 / (48 E I), E 10 GPa, I = 45 x 95^3 / 12 mm4 =
 * 3215156 mm4: 800 / (48 x 10e9 x 3.2151562e-6) = 0.51838 mm. */
#define BEAM                                                                                       \
    "batten: 1\ntitle: \"Beam <&> '\\u05d0'\"\nunits: si\nself-weight: no\nsite: {place: "         \
    "indoors}\n"                                                                                   \
    "sticks: {a: {size: [45, 95], material: {E: 10 GPa, density: 420, Fb: 8 MPa}}}\n"              \
    "joints: {l: [0, 0], r: [2000, 0]}\n"                                                          \
    "members: {beam: {from: l, to: r, stick: a}}\n"                                                \
    "supports: {l: pinned, r: [z]}\n"                                                              \
    "loads: [{case: mine, member: beam, point: [0, 0, -100], at: 1000}]\n"                         \
    "combine: {service: {mine: 1}, double: {mine: 2}}\n"

Test(draw, the_bent_shape_is_that_of_the_beam) {
    struct result result = {0};
    struct drawing drawing = drawing_for(BEAM, "service", &result);
    NEAR_REL(result.bent.largest, 0.51838e-3, 1e-4);
    SAME_TEXT(result.bent.combination, "service");
    const struct bent_stick *stick = &result.bent.members[0];
    cr_assert(stick->count == 13, "%zu", stick->count);
    NEAR_REL(stick->by[6][2], -0.51838e-3, 1e-4);
    NEAR_ABS(stick->by[0][2], 0.0, 1e-12);
    /* a tenth of 2 m is 200 mm: 200 times would be 104 mm, 500 times 259 */
    NEAR_REL(bent_exaggeration(&drawing), 200.0, 1e-9);
    struct result twice = {0};
    drawing_for(BEAM, "double", &twice);
    NEAR_REL(twice.bent.largest, 2 * result.bent.largest, 1e-12);
}

Test(draw, exaggeration_is_told) {
    SAME_TEXT(exaggeration_in_words(arena, 200.0), "drawn 200 times too large");
    SAME_TEXT(exaggeration_in_words(arena, 1.0), "drawn as large as it is");
    SAME_TEXT(exaggeration_in_words(arena, 0.2), "drawn 5 times too small");
}

Test(draw, the_worst_check_of_a_stick_marks_it) {
    struct result result = {0};
    struct drawing drawing = drawing_for(BEAM, "service", &result);
    /* M = 50 N-m, W = 45 x 95^2 / 6 mm3: 0.74 MPa of 8 and more: under half */
    cr_assert(drawing.work[0] == WORK_EASY || drawing.work[0] == WORK_NO_RULE);
    struct check worse = {.kind = "bend", .where = "beam", .ratio = NAN, .verdict = VERDICT_FAILS};
    struct check other = {.kind = "slat", .where = "beam", .ratio = 2.0, .verdict = VERDICT_FAILS};
    struct check checks[2] = {other, worse};
    result.checks.items = checks;
    result.checks.count = 1;
    drawing = drawing_of(arena, drawing.model, drawing.loads, &result, NULL);
    cr_assert(drawing.work[0] == WORK_PLAIN, "a shelf of the same name is no stick");
    result.checks.count = 2;
    drawing = drawing_of(arena, drawing.model, drawing.loads, &result, NULL);
    cr_assert(drawing.work[0] == WORK_FAILS, "a number that is none is over its limit");
}

Test(draw, a_sheet_says_what_it_shows) {
    struct result result = {0};
    struct drawing drawing = drawing_for(BEAM, "service", &result);
    struct text out = text_new(arena), again = text_new(arena);
    const bool views[VIEW_COUNT] = {true, true, true, true};
    for (int k = 0; k < SHOW_COUNT; k++)
        drawing.shows[k] = true;
    draw_sheet(&out, &drawing, views);
    draw_sheet(&again, &drawing, views);
    const char *svg = text_string(&out);
    SAME_TEXT(svg, text_string(&again));
    HAS(svg, "Beam &lt;&amp;&gt; &#39;\xD7\x90&#39;");
    HAS(svg, ">100 N</text>");
    HAS(svg, ">beam</text>");
    HAS(svg, ">2000 mm</text>");
    HAS(svg, "bent under service, drawn 200 times too large");
    HAS(svg, "from the front");
    cr_assert(!has(svg, "from above"), "a plane frame has one view");
}

/* ---- plain characters ---- */

Test(sketch, shows_the_front_in_characters) {
    struct text out = text_new(arena);
    sketch_text(&out, frame_of_text(arena, LAPPED));
    /* 1 m by 0.5 m: 64 columns, so 63 steps of 15.9 mm, rows of 31.7 mm: 15.75, that is 17 rows */
    const char *lines = text_string(&out);
    HAS(lines, "  +--------------------------------------------------------------+\n"
               "  |                                                              |\n");
    HAS(lines, "  ==                                                            ==\n");
    HAS(lines, "from the front: 1000 mm wide and 500 mm high");
    size_t rows = 0;
    for (; *lines; lines++)
        rows += *lines == '\n';
    cr_assert(rows == 17 + 1 + 2, "%zu rows", rows);
}
