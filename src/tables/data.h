/* tables/data.h - what embed.awk makes of tables/, and finding a row in it. For src/tables only.
 *
 * embed.awk writes each value as IN_...(number), so that the conversion to SI is done by the
 * compiler. The definitions are exact: inch, pound mass and standard gravity.
 */
#ifndef TABLES_DATA_H
#define TABLES_DATA_H

#include "tables/tables.h"

#define INCH 0.0254
#define POUND_MASS 0.45359237
#define GRAVITY 9.80665
#define POUND (POUND_MASS * GRAVITY)

#define IN_NUMBER(x) ((x)*1.0)
#define IN_INCHES(x) ((x)*INCH)
#define IN_FEET(x) ((x) * (12.0 * INCH))
#define IN_MILLIMETRES(x) ((x) / 1000.0)
#define IN_POUNDS(x) ((x)*POUND)
#define IN_PSI(x) ((x) * (POUND / (INCH * INCH)))
#define IN_NEWTONS_A_MM2(x) ((x)*1e6)
#define IN_PSF(x) ((x) * (POUND / (144.0 * INCH * INCH)))
#define IN_POUNDS_AN_INCH(x) ((x) * (POUND / INCH))
#define IN_POUNDS_A_FOOT(x) ((x) * (POUND / (12.0 * INCH)))
#define IN_PCF(x) ((x) * (POUND_MASS / (1728.0 * INCH * INCH * INCH)))
#define IN_AREAL_KG(x) ((x)*GRAVITY) /* kg/m2 of a sheet, as its weight in Pa */
#define IN_MPH(x) ((x) * (63360.0 * INCH / 3600.0))
#define IN_DEGREES(x) ((x) * (3.14159265358979323846 / 180.0))

/* ORDER RECORD: the records that embed.awk gathers from rows name.field, see "# record:" there. */
extern const struct dressed_size dressed_size_records[];
extern const size_t dressed_size_records_count;
extern const struct sheet sheet_records[];
extern const size_t sheet_records_count;
extern const struct tray tray_records[];
extern const size_t tray_records_count;

/* Every table, sorted by name; the rows of each are sorted by id (bytes). */
extern const struct table table_data[];
extern const size_t table_data_count;
extern const struct table *const table_of_constants;
extern const struct table *const table_of_fastener_factors;
extern const struct table *const table_of_load_duration_factors;

/* A row of a table that must be there: an unknown table is a programmer's mistake and aborts.
 * NULL where it has no such row. */
const struct table_row *table_row_find(const char *table, const char *row);

/* A row of a table in hand; NULL where it has none of that name. */
const struct table_row *table_row_in(const struct table *table, const char *row);

/* The same with a row id put together from parts: a format as of printf, with %s and %d alone. */
const struct table_row *table_row_named(const char *table, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* For tables that serve as lists: how many rows, one of them, and the index of an id (-1). */
int table_row_count(const char *table);
const struct table_row *table_row_at(const char *table, int index);
int table_row_index(const char *table, const char *row);

/* A row as a cited value. */
struct cited table_row_cited(const struct table_row *row);

/* True with *out filled where there is a row. */
bool table_row_give(const struct table_row *row, struct cited *out);

/* The index of a name in `count` things of `size` bytes that begin with their name; -1. */
int table_name_index(const void *things, size_t count, size_t size, const char *name);

/* The grade whose rows hold at a width row: stud in 8 in and wider is no-3; GRADE_UNGRADED where
 * the grade does not exist in that width. */
int table_grade_in_width(int grade, int width);

/* The group of a species and grade in size-factors: "structural" ... */
const char *table_factor_group(int species, int grade);

/* The nominal width whose row holds for `width` inches: the next larger of 2 3 4 5 6 8 10 12, 14
 * for anything wider; 0 where it is under 2 in or not a number. */
int table_width_row(double width);

#endif
