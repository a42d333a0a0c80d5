#include "shell/shell.h"

#include "base/version.h"
#include "cli/command.h"
#include "report/words.h"

/* Text of a manual page: a backslash would be a command, and so would a dot or an apostrophe at the
 * start of a line; a hyphen would be printed as a dash that cannot be copied. */
static void prose(struct text *text, const char *words) {
    if (*words == '.' || *words == '\'')
        text_add(text, "\\&");
    for (; *words; words++)
        if (*words == '\\')
            text_add(text, "\\e");
        else if (*words == '-')
            text_add(text, "\\-");
        else
            text_bytes(text, words, 1);
}

static void paragraph(struct text *text, const char *words) {
    text_add(text, ".PP\n");
    prose(text, words);
    text_add(text, "\n");
}

static void entry(struct text *text, const char *bold, const char *italic, const char *words) {
    text_add(text, ".TP\n\\fB");
    prose(text, bold);
    text_add(text, "\\fR");
    if (italic && *italic) {
        text_add(text, " \\fI");
        prose(text, italic);
        text_add(text, "\\fR");
    }
    text_add(text, "\n");
    prose(text, words);
    text_add(text, "\n");
}

static void heading(struct text *text, const char *words) {
    text_print(text, ".SH %s\n", words);
}

static void commands(struct text *text) {
    heading(text, "COMMANDS");
    for (size_t k = 0; k < COMMAND_COUNT; k++) {
        const struct command *command = &COMMANDS[k];
        struct text words = text_new(text->arena);
        text_print(&words, "%s.", command->question);
        if (command->more[0])
            text_print(&words, " %s", command->more);
        text_add(&words, " Options:");
        for (size_t o = 0; o < command->option_count; o++)
            text_print(&words, "%s %s", o ? "," : "", OPTION_RULES[command->options[o]].name);
        text_add(&words, command->option_count ? "." : " none.");
        entry(text, command->name, command->words, text_string(&words));
    }
}

static void options(struct text *text) {
    heading(text, "OPTIONS");
    paragraph(text, "Options stand before or after the command and its words, as --key value or "
                    "--key=value; -- ends them. Quantities carry their unit: \"2 ft 3-1/2 in\", "
                    "\"20 psf\", \"1.2 kN\".");
    for (int k = 0; k < OPTION_COUNT; k++)
        entry(text, OPTION_RULES[k].name, OPTION_RULES[k].value, OPTION_RULES[k].words);
}

static void statuses(struct text *text) {
    heading(text, "EXIT STATUS");
    entry(text, "0", NULL,
          "Every check passes; or the command judges nothing and has written its answer.");
    entry(text, "1", NULL,
          "A check fails or no published rule covers it; or something is to be braced.");
    entry(text, "2", NULL, "The description or the command line is wrong; nothing was checked.");
    entry(text, "3", NULL, "The frame folds or tips over as described.");
    entry(
        text, "4", NULL,
        "The answer could not be trusted, or the machine failed (no memory, cannot write). Nothing "
        "half-written is left.");
}

static void example(struct text *text) {
    heading(text, "EXAMPLES");
    text_add(text, ".nf\nbatten start stand \\-\\-output stand.yaml\nbatten check stand.yaml\n"
                   "batten why stand.yaml sag/lower/front\\-1\n"
                   "batten report stand.yaml \\-\\-output stand.html\n.fi\n");
}

void shell_manual(struct text *text) {
    text_add(text, ".\\\" Made when batten was built.\n"
                   ".TH BATTEN 1 \"\" \"batten " BATTEN_VERSION "\" \"User commands\"\n");
    heading(text, "NAME");
    text_add(text, "batten \\- will a light wood frame hold\n");
    heading(text, "SYNOPSIS");
    text_add(text, "\\fBbatten\\fR \\fICOMMAND\\fR [\\fIwords\\fR] [\\fIoptions\\fR]\n");
    heading(text, "DESCRIPTION");
    paragraph(text,
              "Reads a plain description of a small wood frame (a seedling stand, a bench, a "
              "cold frame) and answers before a board is cut: does it hold, what moves, where "
              "does a brace go, how much weight, snow and wind is left, what to buy and how "
              "to cut it. The description is a YAML file; README.md, installed beside this "
              "page, tells its keys, and \"batten start KIND\" writes one to begin with.");
    commands(text);
    options(text);
    statuses(text);
    example(text);
    heading(text, "CAUTION");
    paragraph(text, SAFETY_LINE);
}
