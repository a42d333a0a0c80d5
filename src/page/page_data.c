#include "page/page.h"

#include "draw/figure.h"
#include "report/json_write.h"

#include <math.h>

/* To a hundredth of a millimetre: more shows nowhere. */
static double rounded(double m) {
    return round(m * 1e5) / 1e5;
}

static void three(struct json *json, const double at[3]) {
    const double numbers[3] = {rounded(at[0]), rounded(at[1]), rounded(at[2])};
    json_numbers(json, numbers, 3);
}

/* Where the stations of a stick lie; without a bent shape its joints. */
static size_t stations_of(const struct page *page, size_t member) {
    const struct bent *bent = &page->drawing->result->bent;
    return bent->members ? bent->members[member].count
                         : page->drawing->model->members[member].segment_count + 1;
}

static double station_at(const struct page *page, size_t member, size_t k) {
    const struct bent *bent = &page->drawing->result->bent;
    const struct model_member *stick = &page->drawing->model->members[member];
    if (bent->members)
        return bent->members[member].at[k];
    return k < stick->segment_count ? page->drawing->model->segments[stick->first_segment + k].start
                                    : stick->length;
}

static void stick_data(struct json *json, const struct page *page, size_t member) {
    const struct drawing *drawing = page->drawing;
    const struct model_member *stick = &drawing->model->members[member];
    const struct bent *bent = &drawing->result->bent;
    const double still[3] = {0.0, 0.0, 0.0};
    json_object(json, JSON_ONE_LINE);
    json_key_string(json, "name", drawing->frame->members.items[member].name);
    json_key_number(json, "width", rounded(fmax(0.004, fmin(stick->size_y, stick->size_z))));
    json_key_number(json, "work", drawing->work[member]);
    json_key(json, "at");
    json_list(json, JSON_ONE_LINE);
    for (size_t k = 0; k < stations_of(page, member); k++) {
        double at[3];
        for (int c = 0; c < 3; c++)
            at[c] = stick->from[c] + station_at(page, member, k) * stick->axes[0][c] +
                    drawing->woods[member].lapped[c];
        three(json, at);
    }
    json_close(json);
    json_key(json, "by");
    json_list(json, JSON_ONE_LINE);
    for (size_t k = 0; k < stations_of(page, member); k++)
        three(json, bent->members ? bent->members[member].by[k] : still);
    json_close(json);
    json_close(json);
}

/* Inside a script element only `<` could end it; `&` would not be well-formed XML. */
static void add_for_script(struct text *out, const char *json) {
    for (; *json; json++) {
        if (*json == '<' || *json == '&' || *json == '>')
            text_print(out, "\\u%04x", *json);
        else
            text_bytes(out, json, 1);
    }
}

void page_data(struct text *out, const struct page *page) {
    const struct bent *bent = &page->drawing->result->bent;
    struct json *json = json_new(out->arena, (struct json_sink){NULL, NULL});
    double times = bent_exaggeration(page->drawing);
    json_object(json, JSON_LINES);
    json_key_string(json, "combination", bent->members ? bent->combination : NULL);
    json_key_number(json, "times", times);
    json_key_string(json, "words", exaggeration_in_words(out->arena, times));
    json_key(json, "sticks");
    json_list(json, JSON_LINES);
    for (size_t m = 0; m < page->drawing->model->member_count; m++)
        stick_data(json, page, m);
    json_close(json);
    json_close(json);
    json_end(json);
    text_add(out, "<script type=\"application/json\" id=\"frame-data\">\n");
    add_for_script(out, text_string(&json->text));
    text_add(out, "</script>\n");
}
