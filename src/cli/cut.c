#include "buy/buy.h"

#include "cli/asking.h"
#include "cli/judged.h"
#include "cli/output.h"
#include "cli/read_input.h"
#include "draw/cut_picture.h"
#include "report/cut_json.h"
#include "report/cut_text.h"

#include <string.h>

enum { STOCKS_MOST = 20 };

/* A length, in the file's own unit where it names none; `otherwise` where it is not given or wrong.
 */
static double ask_length(struct asking *asking, enum option option, const char *value,
                         enum unit_system units, bool positive, double otherwise) {
    const char *why;
    double length;
    if (!value)
        return otherwise;
    if (!quantity_read(asking->call->arena, value, QUANTITY_LENGTH, units, &length, &why))
        asking_wrong(asking, option, "%s", why);
    else if (length < 0.0 || (positive && !(length > 0.0)))
        asking_wrong(asking, option, "must be %s, found %s", positive ? "more than 0" : "0 or more",
                     value);
    else
        return length;
    return otherwise;
}

/* "8 ft, 10 ft": ascending, each once. */
static size_t ask_stocks(struct asking *asking, enum unit_system units, double *stocks) {
    struct arena *arena = asking->call->arena;
    const char *list = asking->call->options.value[OPTION_STOCK];
    size_t count = 0;
    while (list) {
        const char *comma = strchr(list, ',');
        const char *one = arena_copy(arena, list, comma ? (size_t)(comma - list) : strlen(list));
        double stock = ask_length(asking, OPTION_STOCK, one, units, true, 0.0);
        list = comma ? comma + 1 : NULL;
        if (!(stock > 0.0))
            continue;
        if (count == STOCKS_MOST) {
            asking_wrong(asking, OPTION_STOCK, "more than %d lengths", STOCKS_MOST);
            return count;
        }
        size_t at = 0;
        while (at < count && stocks[at] < stock)
            at++;
        if (at < count && stocks[at] == stock)
            continue;
        memmove(stocks + at + 1, stocks + at, (count - at) * sizeof *stocks);
        stocks[at] = stock;
        count++;
    }
    return count;
}

static void check_trim(struct asking *asking, const struct cut_options *options) {
    if (options->stock_count && !(options->stocks[0] > 2.0 * options->trim))
        asking_wrong(asking, OPTION_TRIM, "leaves nothing of the shortest board");
}

static void write_answer(const struct call *call, const struct cut_answer *answer) {
    struct text text = text_new(call->arena);
    if (call->options.given[OPTION_JSON]) {
        cut_json(json_new(call->arena, output_sink()), answer);
        return;
    }
    if (call->options.given[OPTION_SVG])
        cut_picture(&text, answer);
    else
        cut_text(&text, answer);
    output_text(&text);
}

enum exit_status cut_command(const struct call *call) {
    const struct frame *frame = read_frame(call);
    if (!frame)
        return EXIT_WRONG_INPUT;
    const bool *given = call->options.given;
    struct asking asking = asking_of(call);
    double stocks[STOCKS_MOST];
    struct cut_options options = {.together = given[OPTION_TOGETHER]};
    options.kerf = ask_length(&asking, OPTION_KERF, call->options.value[OPTION_KERF], frame->units,
                              false, table_constant("cut-kerf").value);
    options.trim = ask_length(&asking, OPTION_TRIM, call->options.value[OPTION_TRIM], frame->units,
                              false, 0.0);
    options.stock_count = ask_stocks(&asking, frame->units, stocks);
    options.stocks = options.stock_count ? stocks : NULL;
    check_trim(&asking, &options);
    if (given[OPTION_JSON] && given[OPTION_SVG])
        asking_wrong(&asking, OPTION_SVG, "--json or --svg, not both");
    if (asking.problems.count)
        return output_problems(call->arena, NULL, &asking.problems, given[OPTION_JSON]);
    struct cut_answer *answer = cut_frame(call->arena, frame, &options);
    if (answer->problems.count)
        return output_problems(call->arena, input_name(call_word(call, 0)), &answer->problems,
                               given[OPTION_JSON]);
    write_answer(call, answer);
    return EXIT_HOLDS;
}
