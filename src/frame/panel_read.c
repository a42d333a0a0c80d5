#include "frame/fastener_size.h"
#include "frame/sections.h"
#include "units/quote.h"

#include <string.h>

#define PI 3.14159265358979323846

enum { CORNERS = 4, YES_ANGLE = 60 };

/* ORDER HELD */
const char *const HELD_WORDS[] = {"screwed", "stapled", "clipped", "taped",
                                  "hinged",  "sliding", "loose"};

int read_held(struct reader *reader, const struct node *node) {
    return read_word(reader, node, "a way to hold a sheet",
                     (struct key_list){HELD_WORDS, HELD_LOOSE + 1});
}

/* What is neither yes nor no must be an angle. */
void read_opens(struct reader *reader, const struct node *node, bool *opens, double *angle) {
    const char *text = read_text(reader, node, "yes, no or an angle");
    if (!text)
        return;
    bool no = strcmp(text, "no") == 0 || strcmp(text, "false") == 0;
    bool yes = strcmp(text, "yes") == 0 || strcmp(text, "true") == 0;
    if (yes || no) {
        *opens = yes;
        *angle = yes ? YES_ANGLE * PI / 180 : 0;
        return;
    }
    if (!read_quantity(reader, node, QUANTITY_ANGLE, OVER_ZERO, angle))
        return;
    *opens = true;
    if (!(*angle <= PI))
        trouble(reader, node, "%s: a lid opens by 180 deg at most",
                quote_text(reader->arena, text));
}

static void read_corners(struct reader *reader, const struct node *entry, struct panel *panel) {
    static const char expected[] = "four joints, in order around the panel";
    const struct node *corners = node_child(entry, "corners");
    if (!corners) {
        trouble_missing(reader, entry, "corners", expected);
        return;
    }
    if (!is_list(reader, corners, expected))
        return;
    if (corners->count != CORNERS) {
        trouble(reader, corners, "a list of %d; expected %s", corners->count, expected);
        return;
    }
    int k = 0;
    for (const struct node *each = corners->first; each; each = each->next, k++) {
        panel->corners[k] = read_made_name(reader, each, "joint", &reader->joints);
        for (int before = 0; before < k; before++)
            if (panel->corners[k] >= 0 && panel->corners[before] == panel->corners[k])
                trouble(reader, each, "corner %s is given twice",
                        quote_text(reader->arena, each->text));
    }
}

static int corner_of(const struct panel *panel, int joint) {
    for (int k = 0; k < CORNERS; k++)
        if (joint >= 0 && panel->corners[k] == joint)
            return k;
    return -1;
}

static bool corners_known(const struct panel *panel) {
    for (int k = 0; k < CORNERS; k++)
        if (panel->corners[k] < 0)
            return false;
    return true;
}

static void read_hinge(struct reader *reader, const struct node *entry, struct panel *panel) {
    static const char expected[] = "two neighbouring corners, where the hinges are";
    const struct node *hinge = node_child(entry, "hinge");
    if (!hinge) {
        if (panel->held == HELD_HINGED)
            trouble_missing(reader, entry, "hinge", expected);
        return;
    }
    if (panel->held != HELD_HINGED)
        trouble_with_key(reader, hinge, "only a panel with 'held: hinged' has hinges");
    if (!is_list(reader, hinge, expected))
        return;
    if (hinge->count != 2) {
        trouble(reader, hinge, "a list of %d; expected %s", hinge->count, expected);
        return;
    }
    int corner[2] = {-1, -1}, k = 0;
    for (const struct node *each = hinge->first; each; each = each->next, k++) {
        panel->hinge[k] = read_made_name(reader, each, "joint", &reader->joints);
        corner[k] = corner_of(panel, panel->hinge[k]);
        if (panel->hinge[k] >= 0 && corner[k] < 0 && corners_known(panel))
            trouble(reader, each, "%s is no corner of this panel",
                    quote_text(reader->arena, each->text));
    }
    int apart = corner[0] > corner[1] ? corner[0] - corner[1] : corner[1] - corner[0];
    if (corner[0] >= 0 && corner[1] >= 0 && apart != 1 && apart != 3)
        trouble(reader, hinge, "the hinges must lie along one edge; these corners do not");
}

static void read_fixing(struct reader *reader, const struct node *entry, struct panel *panel) {
    const struct node *held = node_child(entry, "held");
    int word = held ? read_held(reader, held) : -1;
    if (word >= 0)
        panel->held = (enum held)word;
    if (!held)
        trouble_missing(reader, entry, "held",
                        "screwed, stapled, clipped, taped, hinged, sliding or loose");
    const struct node *screw = node_child(entry, "screw");
    if (screw)
        read_screw_size(reader, screw, &panel->screw_diameter);
    optional_quantity(reader, entry, "spacing", QUANTITY_LENGTH, OVER_ZERO, &panel->spacing);
    if (word == HELD_SCREWED && (!screw || !node_child(entry, "spacing")))
        caution(reader, "Panel %s: %s not said, so its screws cannot be judged.", panel->name,
                screw ? "the spacing of its screws is" : "the size of its screws is");
    const struct node *braces = node_child(entry, "braces");
    if (braces && read_yes_no(reader, braces, &panel->braces) && panel->braces && word >= 0 &&
        word != HELD_SCREWED)
        trouble_with_key(reader, braces, "only a screwed sheet braces; this one is %s", held->text);
    if (word >= 0)
        read_hinge(reader, entry, panel);
    const struct node *opens = node_child(entry, "opens");
    if (opens)
        read_opens(reader, opens, &panel->opens, &panel->opens_angle);
    if (panel->opens && (word == HELD_SCREWED || word == HELD_STAPLED || word == HELD_TAPED))
        trouble_with_key(reader, opens, "a %s panel does not open", held->text);
}

static void read_panel_keys(struct reader *reader, const struct node *entry, struct panel *panel) {
    only_keys(reader, entry,
              KEYS("corners", "sheet", "held", "screw", "spacing", "runs", "overhang", "hinge",
                   "opens", "stay", "framed", "weight", "braces"));
    read_corners(reader, entry, panel);
    const struct node *sheet = node_child(entry, "sheet");
    if (sheet)
        panel->sheet = read_sheet(reader, sheet);
    else
        trouble_missing(reader, entry, "sheet", "a sheet such as twin-wall-6mm");
    read_fixing(reader, entry, panel);
    const struct node *runs = node_child(entry, "runs");
    if (runs)
        panel->runs_across =
            read_word(reader, runs, "a way for a sheet to run", KEYS("up-down", "across")) == 1;
    struct optional overhang = {0};
    optional_quantity(reader, entry, "overhang", QUANTITY_LENGTH, NOT_NEGATIVE, &overhang);
    panel->overhang = overhang.value;
    optional_yes_no(reader, entry, "stay", &panel->stay);
    const struct node *framed = node_child(entry, "framed");
    if (framed)
        panel->framed = read_name(reader, framed, "stick", &reader->sticks);
    optional_quantity(reader, entry, "weight", QUANTITY_WEIGHT, NOT_NEGATIVE, &panel->weight);
}

void read_panels(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "panels by name"))
        return;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next) {
        check_name(reader, entry);
        struct panel panel = {.name = entry->key,
                              .place = entry->key_place,
                              .corners = {-1, -1, -1, -1},
                              .sheet = -1,
                              .hinge = {-1, -1},
                              .framed = -1};
        if (is_map(reader, entry, "a panel such as {corners: [..], sheet: .., held: ..}"))
            read_panel_keys(reader, entry, &panel);
        ARRAY_PUSH(reader->arena, &reader->frame->panels, panel);
        name_index_add(reader->arena, &reader->panels, entry->key);
    }
}
