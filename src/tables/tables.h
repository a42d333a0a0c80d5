/* tables/tables.h - published values, looked up by name.
 *
 * The values live in tables/ as text, one row one value, with unit, source, edition and mark; the
 * build turns them into C data, so the program needs no file at run time. Everything returned here
 * is SI (m, N, Pa, kg, N/m3 ...). Strings live as long as the program.
 *
 * Nothing is extrapolated: what the tables do not hold is answered with `false` (or -1), and the
 * caller says so.
 */
#ifndef TABLES_TABLES_H
#define TABLES_TABLES_H

#include <stdbool.h>
#include <stddef.h>

/* How a value is known. */
enum mark {
    MARK_READ,   /* seen in a copy of the text */
    MARK_MEMORY, /* recalled, to be confirmed */
    MARK_TRADE   /* common practice, no source */
};
const char *mark_name(enum mark mark);

/* A value with where it comes from. `source` names document, edition, table or clause. */
struct cited {
    double value;
    const char *source;
    enum mark mark;
};

/* ---- lumber: species, grades, design values (ASD, normal duration, dry) ---- */

enum property {
    PROPERTY_FB,
    PROPERTY_FT,
    PROPERTY_FV,
    PROPERTY_FCP,
    PROPERTY_FC,
    PROPERTY_E,
    PROPERTY_EMIN,
    PROPERTY_COUNT
};

/* As in the tables: "Fb" "Ft" "Fv" "Fcp" "Fc" "E" "Emin". */
const char *table_property_name(enum property property);

int table_species_count(void);
const char *table_species_name(int species); /* "spruce-pine-fir"; redwood is open grain */
int table_species_find(const char *name);    /* -1 where unknown */

int table_grade_count(void);
const char *table_grade_name(int grade); /* "select-structural" ... "ungraded" */
int table_grade_find(const char *name);  /* -1 where unknown */
extern const int GRADE_UNGRADED;         /* the grade that has no values of its own */

/* Reference design value for a nominal width in inches (only southern pine differs by width).
 * False where the tables hold none: unknown pair, width outside the row's scope, `ungraded`. */
bool table_design_value(int species, int grade, double nominal_width, enum property property,
                        struct cited *out);

/* The oven-dry specific gravity of a species, for weight and fastenings. */
bool table_specific_gravity(int species, struct cited *out);

/* ---- adjustment factors; nominal sizes in inches ---- */

/* CF: FB, FT, FC; 1 for the others. Thickness 2, 3 (and thinner boards) or 4. */
bool table_size_factor(int species, int grade, double nominal_thickness, double nominal_width,
                       enum property property, struct cited *out);
/* Cfu, for bending about the weak axis (load on the wide face). */
bool table_flat_use_factor(double nominal_thickness, double nominal_width, struct cited *out);
/* CM of a property. `exempt` gets the stress (Pa) up to which Fb x CF or Fc x CF keeps 1.0; 0 where
 * there is no such threshold. */
bool table_wet_factor(enum property property, struct cited *factor, struct cited *exempt);

enum duration {
    DURATION_PERMANENT,
    DURATION_TEN_YEARS,
    DURATION_TWO_MONTHS,
    DURATION_SEVEN_DAYS,
    DURATION_TEN_MINUTES,
    DURATION_COUNT
};
const char *duration_name(enum duration duration); /* "permanent", "ten-years" ... */
/* CD; the last is 1.6. */
struct cited table_duration_factor(enum duration duration);

/* ---- single numbers with a source, by row name: "repetitive-factor" (Cr), "creep-dry",
 * "creep-wet", "column-c" (0.8), "euler-column" (0.822), "euler-beam" (1.20), "shear-modulus-ratio"
 * (16), "moisture-dry" (15), "moisture-wet" (25), "out-of-plumb" (0.015), "close-ratio" (0.9) ...
 * An unknown row is a programmer's mistake and aborts. ---- */
struct cited table_constant(const char *row);

/* The edition of ASCE 7 that loads follow; never mixed. */
enum edition { EDITION_ASCE7_16, EDITION_ASCE7_22 };

/* Any row of any table ("sheet-spans", "twin-wall-6mm.50"); false where there is no such row. An
 * unknown table is a programmer's mistake and aborts. */
bool table_value(const char *table, const char *row, struct cited *out);

/* ---- sizes ---- */

struct dressed_size {
    const char *name;                        /* "2x4" */
    double nominal_thickness, nominal_width; /* inches: 2, 4 */
    double thickness, width;                 /* m: 0.0381, 0.0889 */
    const char *source;
    enum mark mark;
};
int table_size_count(void);
const struct dressed_size *table_size(int index);
int table_size_find(const char *name); /* -1 where unknown */
/* The nominal inches of an actual dressed dimension: the smallest nominal size whose dressed
 * dimension is not smaller than `actual` less 1/32 in; 14 above the largest. For [t, w] sticks. */
double table_nominal_inches(double actual);

/* ---- decks, sheets, trays, grounds, words ---- */

struct sheet {
    const char *name;
    double weight;      /* Pa (N per m2 of sheet) */
    double thickness;   /* m; 0 where it is not a solid sheet */
    const char *source; /* of the weight, as the mark */
    enum mark mark;
};
int table_sheet_count(void);
const struct sheet *table_sheet(int index);
int table_sheet_find(const char *name);

struct tray {
    const char *name;
    double weight;        /* N each, wet as named */
    double length, width; /* m of shelf that one takes; equal for round pots */
    const char *source;
    enum mark mark;
};
int table_tray_count(void);
const struct tray *table_tray(int index);
int table_tray_find(const char *name);

/* Friction by ground name ("paving" ...). */
int table_ground_count(void);
const char *table_ground_name(int ground);
int table_ground_find(const char *name);
struct cited table_ground_friction(int ground);

/* Snow kinds ("settled"): kg/m3. Wind words ("gale"): the real 3-second gust, m/s. */
int table_snow_count(void);
const char *table_snow_name(int snow);
int table_snow_find(const char *name);
struct cited table_snow_density(int snow);
int table_wind_word_count(void);
const char *table_wind_word_name(int word);
int table_wind_word_find(const char *name);
struct cited table_wind_word_gust(int word);

/* ---- the tables as they stand in the files, for `batten table` and the tests ---- */

struct table_row {
    const char *row;    /* row id, unique in its table */
    const char *value;  /* as published */
    const char *unit;   /* of the value: "psi", "in", "1" ... */
    const char *source; /* document and clause, spelled out */
    const char *edition;
    enum mark mark;
    const char *note; /* "" where none */
    double number;    /* the value, in `unit` */
    double si;        /* the value in SI (% stays percent, nominal inches stay inches) */
    const char *cite; /* document, edition and clause in one: "NDS 2018 3.5.2" */
};
struct table {
    const char *name;  /* "design-values" */
    const char *title; /* one line for people */
    const struct table_row *rows;
    size_t count;
};
size_t table_count(void);
const struct table *table_at(size_t index);
const struct table *table_find(const char *name); /* NULL where unknown */

#endif
