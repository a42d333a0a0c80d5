/* frame/reader.h - typed reading of the tree, shared by the readers of the sections.
 *
 * A reader of a value returns false (or -1) after it has told the problem, at the value's place and
 * under its key path; nothing stops, so that one run tells everything. Inside src/frame/ only.
 */
#ifndef FRAME_READER_H
#define FRAME_READER_H

#include "frame/frame.h"
#include "frame/name_index.h"
#include "frame/node.h"

struct reader {
    struct arena *arena;
    struct problems *problems;
    struct frame *frame;
    bool whole_tree;       /* nothing was wrong with the tree: no node is broken or left out */
    bool made_names;       /* a shape that is wrong would make joints, members, panels: unknown */
    int most_entries;      /* under `joints` and under `members` */
    long comparisons_left; /* names that may still be compared for a suggestion */
    struct name_index sticks, joints, members, connections, shelves, panels, cases;
};

/* ---- problems and cautions ---- */

/* At the value; at the key; at the entry for a key that is not there. */
void trouble(struct reader *reader, const struct node *node, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void trouble_with_key(struct reader *reader, const struct node *node, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void trouble_missing(struct reader *reader, const struct node *map, const char *key,
                     const char *expected);
/* Under a key path put together by the caller: for what is found after the tree was read. */
void trouble_at(struct reader *reader, struct place place, const char *key, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
/* True once more problems are told than anybody reads: time to stop looking. */
bool told_enough(const struct reader *reader);
void caution(struct reader *reader, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* "; did you mean 'x'?", or, where nothing is near and the names are few, "; known: a, b" with
 * `word` for "known:". "" where neither helps. */
const char *hint(struct reader *reader, const char *found, const char *word,
                 const char *const *names, size_t count);

/* ---- maps ---- */

/* True for a map (also an empty one). `expected` says what should stand there. */
bool is_map(struct reader *reader, const struct node *node, const char *expected);
bool is_list(struct reader *reader, const struct node *node, const char *expected);

/* A list of literal keys for only_keys(): KEYS("from", "to"). */
struct key_list {
    const char *const *names;
    size_t count;
};
#define KEYS(...)                                                                                  \
    ((struct key_list){(const char *const[]){__VA_ARGS__},                                         \
                       sizeof((const char *const[]){__VA_ARGS__}) / sizeof(const char *)})
void only_keys(struct reader *reader, const struct node *map, struct key_list keys);

/* A name of the user's: letters, digits, '-', '_', '.', at most 64 bytes. What is wrong with it,
 * NULL where nothing is; and the same told about the key of an entry. */
const char *wrong_name(struct reader *reader, const char *name);
void check_name(struct reader *reader, const struct node *entry);

/* ---- values ---- */

enum bound { ANY_SIZE, NOT_NEGATIVE, OVER_ZERO };

/* The text of a scalar, NULL (and told) where there is a list, a map or nothing. */
const char *read_text(struct reader *reader, const struct node *node, const char *expected);
bool read_quantity(struct reader *reader, const struct node *node, enum quantity kind,
                   enum bound bound, double *value);
/* Exactly `count` quantities in a list. `expected`: "three forces [x, y, z]". */
bool read_quantities(struct reader *reader, const struct node *node, enum quantity kind, int count,
                     const char *expected, double *values);
bool read_whole(struct reader *reader, const struct node *node, int least, int most, int *value);
bool read_yes_no(struct reader *reader, const struct node *node, bool *value);
/* The number of the word in `words`, -1 where it is none of them. `what`: "a face". */
int read_word(struct reader *reader, const struct node *node, const char *what,
              struct key_list words);
/* The number of a name, -1 where there is none: "no joint named 'fl9'; did you mean 'fl0'?". */
int read_name(struct reader *reader, const struct node *node, const char *what,
              const struct name_index *names);
/* The same for what a shape may make: then an unknown name is -1 without a problem. */
int read_made_name(struct reader *reader, const struct node *node, const char *what,
                   const struct name_index *names);

/* ---- values of a map by key; what is not there is left as it is ---- */

bool optional_quantity(struct reader *reader, const struct node *map, const char *key,
                       enum quantity kind, enum bound bound, struct optional *value);
bool required_quantity(struct reader *reader, const struct node *map, const char *key,
                       enum quantity kind, enum bound bound, double *value);
bool optional_yes_no(struct reader *reader, const struct node *map, const char *key, bool *value);

/* ---- words used in several sections ---- */

void read_stance(struct reader *reader, const struct node *map, enum stands *stands,
                 enum faces *faces, struct optional *turn);

#endif
