/* bracing/sheet_values.h - the published values of sheets that brace, tables/sheet-shear.tsv. For
 * src/bracing only. */
#ifndef BRACING_SHEET_VALUES_H
#define BRACING_SHEET_VALUES_H

#include "tables/tables.h"

enum sheet_kind { SHEET_NEVER, SHEET_WOOD, SHEET_CLEAR };
enum sheet_kind sheet_kind(int sheet);

/* A row of the table: what.field, "polycarbonate.bearing"; it must be there. */
struct cited sheet_value(const char *what, const char *field);

/* G t, N/m, of a sheet that is not SHEET_NEVER. */
double sheet_shear(int sheet);

/* Thickness of a clear sheet that takes shear, m. */
struct cited sheet_skins(int sheet);

/* Allowable unit shear, N/m, of a wood panel with fastenings `spacing` (m) apart: the row of the
 * next wider spacing of the table; *beyond: the spacing is wider than any. False where there is no
 * row. */
bool sheet_unit_shear(int sheet, double spacing, struct cited *out, bool *beyond);

/* Shear flow at which a clear sheet buckles, N/m. */
double sheet_buckling(int sheet, double width, double height);

#endif
