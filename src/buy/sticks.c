#include "base/text.h"
#include "buy/work.h"
#include "cut/boards.h"

#include <math.h>
#include <stdlib.h>

static const double MONEY = 1e4; /* costs as whole numbers: hundredths of a cent */

/* Kinds of stick that are cut from the same boards. */
struct group {
    int *kinds;
    size_t count;
};

/* ---- which kinds go together ---- */

static bool is_same_wood(const struct stick *a, const struct stick *b) {
    bool plain = !a->has_section && !b->has_section && !a->has_material && !b->has_material &&
                 !a->knots.given && !b->knots.given;
    return plain && a->thickness == b->thickness && a->width == b->width &&
           a->species == b->species && a->grade == b->grade && a->stress_rated == b->stress_rated &&
           a->finger_jointed == b->finger_jointed;
}

static size_t groups_of(struct arena *arena, const struct frame *frame, bool together,
                        struct group *groups) {
    size_t count = 0;
    for (size_t s = 0; s < frame->sticks.count; s++) {
        size_t g = together ? 0 : count;
        while (g < count &&
               !is_same_wood(&frame->sticks.items[groups[g].kinds[0]], &frame->sticks.items[s]))
            g++;
        if (g == count) {
            groups[count++] = (struct group){ARENA_ARRAY(arena, int, frame->sticks.count), 0};
        }
        groups[g].kinds[groups[g].count++] = (int)s;
    }
    return count;
}

static bool has_kind(const struct group *group, int stick) {
    for (size_t k = 0; k < group->count; k++)
        if (group->kinds[k] == stick)
            return true;
    return false;
}

/* Leave out the kinds of which there is no piece. */
static void keep_used(struct group *group, const struct stick_pieces *pieces) {
    size_t kept = 0;
    for (size_t k = 0; k < group->count; k++) {
        size_t p = 0;
        while (p < pieces->count && pieces->items[p].stick != group->kinds[k])
            p++;
        if (p < pieces->count)
            group->kinds[kept++] = group->kinds[k];
    }
    group->count = kept;
}

/* "post", "post, rail" */
static const char *name_of(struct arena *arena, const struct frame *frame,
                           const struct group *group) {
    struct text text = text_new(arena);
    for (size_t k = 0; k < group->count; k++)
        text_print(&text, "%s%s", k ? ", " : "", frame->sticks.items[group->kinds[k]].name);
    return text_string(&text);
}

/* ---- pieces ---- */

static struct cut_piece piece_of(const struct model *model, const struct stick_piece *from) {
    struct cut_piece piece = {.name = from->name,
                              .stick = from->stick,
                              .length = buy_metres(buy_nanometres(from->length)),
                              .needs = buy_metres(buy_nanometres(from->needs))};
    if (from->member < 0 || from->given)
        return piece;
    const struct model_member *stick = &model->members[from->member];
    for (int end = 0; end < 2; end++) {
        const struct end_cut *cut = &from->ends[end];
        piece.slants[end][0] = (struct cut_slant){end_cut_angle(cut, 1), stick->size_y};
        piece.slants[end][1] = (struct cut_slant){end_cut_angle(cut, 2), stick->size_z};
        piece.measure |= cut->slanting;
    }
    return piece;
}

static void take_pieces(struct buying *buying, const struct group *group,
                        const struct stick_pieces *all, struct cut_sticks *sticks) {
    struct cut_piece *pieces = ARENA_ARRAY(buying->arena, struct cut_piece, all->count);
    for (size_t k = 0; k < all->count; k++)
        if (has_kind(group, all->items[k].stick))
            pieces[sticks->piece_count++] = piece_of(buying->model, &all->items[k]);
    sticks->pieces = pieces;
}

/* ---- stocks and their prices ---- */

static double group_price(const struct frame *frame, const struct group *group, double length) {
    double least = NAN;
    for (size_t k = 0; k < group->count; k++)
        least = fmin(least, price_of_board(frame, group->kinds[k], length));
    return least;
}

static void take_stocks(struct buying *buying, const struct group *group,
                        struct cut_sticks *sticks) {
    const struct cut_options *options = buying->options;
    double *stocks = NULL;
    for (size_t k = 0; !options->stocks && k < group->count; k++) {
        double *now;
        size_t count = priced_lengths(buying->arena, buying->frame, group->kinds[k], &now);
        if (count > sticks->stock_count) {
            stocks = now;
            sticks->stock_count = count;
        }
    }
    sticks->stocks = stocks;
    if (options->stocks) {
        sticks->stocks = options->stocks;
        sticks->stock_count = options->stock_count;
    } else if (!sticks->stock_count) {
        stocks = ARENA_NEW(buying->arena, double);
        *stocks = buy_metres(buy_nanometres(table_constant("cut-stick-length").value));
        sticks->stocks = stocks;
        sticks->stock_count = 1;
        sticks->stock_assumed = true;
    }
}

static bool all_priced(const struct frame *frame, const struct group *group,
                       const struct cut_sticks *sticks) {
    for (size_t k = 0; k < sticks->stock_count; k++)
        if (!isfinite(group_price(frame, group, sticks->stocks[k])))
            return false;
    return true;
}

/* ---- boards ---- */

static struct board_task task_of(struct buying *buying, const struct group *group,
                                 const struct cut_sticks *sticks, bool by_cost) {
    struct arena *arena = buying->arena;
    int64_t *lengths = ARENA_ARRAY(arena, int64_t, sticks->piece_count);
    struct board_stock *stocks = ARENA_ARRAY(arena, struct board_stock, sticks->stock_count);
    for (size_t k = 0; k < sticks->piece_count; k++)
        lengths[k] = buy_nanometres(sticks->pieces[k].needs);
    for (size_t k = 0; k < sticks->stock_count; k++) {
        double price = by_cost ? group_price(buying->frame, group, sticks->stocks[k]) : 0.0;
        int64_t cost = llround(price * MONEY);
        stocks[k] = (struct board_stock){buy_nanometres(sticks->stocks[k]), cost > 0 ? cost : 1};
    }
    return (struct board_task){.lengths = lengths,
                               .count = sticks->piece_count,
                               .stocks = stocks,
                               .stock_count = sticks->stock_count,
                               .kerf = buy_nanometres(buying->options->kerf),
                               .trim = buy_nanometres(buying->options->trim)};
}

/* The shortest stock that holds what is on a board. */
static int shortest_stock(const struct board_task *task, const struct board *board) {
    int64_t used = task->stocks[board->stock].length - board->left;
    int best = board->stock;
    for (size_t k = 0; k < task->stock_count; k++)
        if (task->stocks[k].length >= used && task->stocks[k].length < task->stocks[best].length)
            best = (int)k;
    return best;
}

static struct cut_board board_of(const struct buying *buying, const struct cut_sticks *sticks,
                                 const struct board_task *task, const struct board *from,
                                 int stock) {
    int64_t used = task->stocks[from->stock].length - from->left;
    int64_t left = task->stocks[stock].length - used; /* beside the long points */
    double points = 0.0;
    for (size_t k = 0; k < from->count; k++) {
        const struct cut_piece *piece = &sticks->pieces[from->pieces[k]];
        points += piece->needs - piece->length;
    }
    double off_cut = buy_metres(left) - buying->options->kerf;
    return (struct cut_board){.stock = sticks->stocks[stock],
                              .pieces = from->pieces,
                              .count = from->count,
                              .left = buy_metres(left) + points,
                              .off_cut = off_cut > 0.0 ? off_cut : 0.0};
}

/* Boards at least, whatever they cost. */
static size_t fewest_by_length(const struct board_task *task, const struct board_plan *plan) {
    int64_t room = 0, sum = 0;
    for (size_t k = 0; k < task->stock_count; k++) {
        int64_t now = task->stocks[k].length - 2 * task->trim + task->kerf;
        room = now > room ? now : room;
    }
    for (size_t k = 0; k < task->count; k++)
        sum += task->lengths[k] + task->kerf;
    for (size_t k = 0; k < plan->too_long_count; k++)
        sum -= task->lengths[plan->too_long[k]] + task->kerf;
    return sum > 0 ? (size_t)((sum + room - 1) / room) : 0;
}

static void plan_boards(struct buying *buying, const struct group *group,
                        struct cut_sticks *sticks) {
    bool by_cost = sticks->stock_count > 1 && all_priced(buying->frame, group, sticks);
    struct board_task task = task_of(buying, group, sticks, by_cost);
    struct board_plan plan = boards_cut(buying->arena, &task);
    struct cut_board *boards = ARENA_ARRAY(buying->arena, struct cut_board, plan.board_count);
    sticks->cost = 0.0;
    for (size_t b = 0; b < plan.board_count; b++) {
        const struct board *board = &plan.boards[b];
        int stock = by_cost ? board->stock : shortest_stock(&task, board);
        boards[b] = board_of(buying, sticks, &task, board, stock);
        sticks->cost += group_price(buying->frame, group, sticks->stocks[stock]);
    }
    sticks->boards = boards;
    sticks->board_count = plan.board_count;
    sticks->bound = by_cost ? fewest_by_length(&task, &plan) : (size_t)plan.bound;
    sticks->least_cost = by_cost ? (double)plan.bound / MONEY : NAN;
    sticks->proved = plan.proved;
    sticks->too_long = plan.too_long;
    sticks->too_long_count = plan.too_long_count;
}

static struct cut_sticks cut_group(struct buying *buying, const struct group *group,
                                   const struct stick_pieces *pieces) {
    struct cut_sticks sticks = {.name = name_of(buying->arena, buying->frame, group),
                                .kinds = group->kinds,
                                .kind_count = group->count};
    take_pieces(buying, group, pieces, &sticks);
    take_stocks(buying, group, &sticks);
    plan_boards(buying, group, &sticks);
    return sticks;
}

/* ---- the bill ---- */

static void add_lines(struct buying *buying, const struct group *group,
                      const struct cut_sticks *sticks) {
    for (size_t s = sticks->stock_count; s-- > 0;) {
        double stock = sticks->stocks[s];
        size_t count = 0;
        for (size_t b = 0; b < sticks->board_count; b++)
            count += sticks->boards[b].stock == stock;
        double price = group_price(buying->frame, group, stock);
        if (count)
            buy_line(buying, (struct cut_cost_line){.what = sticks->name,
                                                    .each = quantity_print_length(
                                                        buying->arena, stock, buying->frame->units),
                                                    .count = count,
                                                    .price = price,
                                                    .cost = price * (double)count});
    }
}

/* Is it worth cutting kinds of the same wood together? */
static void hint_together(struct buying *buying, const struct stick_pieces *pieces) {
    const struct frame *frame = buying->frame;
    struct group *groups = ARENA_ARRAY(buying->arena, struct group, frame->sticks.count);
    size_t count = groups_of(buying->arena, frame, true, groups);
    for (size_t g = 0; g < count; g++) {
        keep_used(&groups[g], pieces);
        if (groups[g].count < 2)
            continue;
        size_t apart = 0;
        for (size_t s = 0; s < buying->answer->stick_count; s++)
            if (has_kind(&groups[g], buying->answer->sticks[s].kinds[0]))
                apart += buying->answer->sticks[s].board_count;
        struct cut_sticks sticks = cut_group(buying, &groups[g], pieces);
        if (sticks.board_count < apart)
            buy_note(buying,
                     arena_print(buying->arena,
                                 "%s are the same wood: cut from the same boards they need %zu and "
                                 "not %zu boards (--together)",
                                 sticks.name, sticks.board_count, apart));
    }
}

void buy_sticks(struct buying *buying) {
    const struct frame *frame = buying->frame;
    struct stick_pieces pieces = stick_pieces(buying->arena, buying->model);
    struct group *groups = ARENA_ARRAY(buying->arena, struct group, frame->sticks.count);
    struct cut_sticks *all = ARENA_ARRAY(buying->arena, struct cut_sticks, frame->sticks.count);
    size_t count = groups_of(buying->arena, frame, buying->options->together, groups), made = 0;
    for (size_t g = 0; g < count; g++) {
        keep_used(&groups[g], &pieces);
        if (!groups[g].count)
            continue;
        all[made] = cut_group(buying, &groups[g], &pieces);
        add_lines(buying, &groups[g], &all[made++]);
    }
    buying->answer->sticks = all;
    buying->answer->stick_count = made;
    if (!buying->options->together)
        hint_together(buying, &pieces);
}
