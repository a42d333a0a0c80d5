/* tables/fasteners.h - the sizes of screws, nails, lags and bolts, by name.
 *
 * SI (m). A name is the number of a wood screw ("8", "No.8"), the penny size of a nail ("10d") or
 * the diameter of a lag or bolt ("1/4", "1/4in", "1/4 in"). Values are rows of
 * tables/fastener-sizes.tsv.
 */
#ifndef TABLES_FASTENERS_H
#define TABLES_FASTENERS_H

#include "tables/tables.h"

/* ORDER DOWEL KIND, NAIL KIND */
enum dowel_kind { DOWEL_SCREW, DOWEL_NAIL, DOWEL_LAG, DOWEL_BOLT, DOWEL_KIND_COUNT };
enum nail_kind { NAIL_COMMON, NAIL_BOX, NAIL_SINKER, NAIL_KIND_COUNT };

/* "screw" "nail" "lag" "bolt"; "common" "box" "sinker" */
const char *dowel_kind_name(enum dowel_kind kind);
const char *nail_kind_name(enum nail_kind kind);

struct fastener_size {
    enum dowel_kind kind;
    enum nail_kind nail;   /* DOWEL_NAIL */
    const char *name;      /* as in the table: "8", "10d", "1/4" */
    struct cited diameter; /* nominal: of the unthreaded shank */
    struct cited root;     /* screws, lags, bolts; value NAN for nails */
    struct cited head;     /* diameter of the head; NAN where the table has none */
    struct cited length;   /* nails; NAN for the others */
    struct cited tip;      /* E, lags; NAN for the others */
};
/* `nail` counts for nails alone. False where the tables do not know the size. */
bool table_fastener_find(enum dowel_kind kind, enum nail_kind nail, const char *name,
                         struct fastener_size *out);
/* The same by diameter (to 0.01 mm; of nails of one thickness the first). */
bool table_fastener_of_diameter(enum dowel_kind kind, enum nail_kind nail, double diameter,
                                struct fastener_size *out);
/* The sizes that are known, by thickness: for messages. NULL past the last. */
const char *table_fastener_name(enum dowel_kind kind, enum nail_kind nail, size_t index);

/* A number of the rules, by the row of tables/fastener-factors.tsv ("W.screw"). An unknown row is a
 * programmer's mistake and aborts. */
struct cited table_fastener_factor(const char *row);

#endif
