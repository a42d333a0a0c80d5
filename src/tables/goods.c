#include "tables/data.h"

int table_sheet_count(void) {
    return (int)sheet_records_count;
}

const struct sheet *table_sheet(int index) {
    return &sheet_records[index];
}

int table_sheet_find(const char *name) {
    return table_name_index(sheet_records, sheet_records_count, sizeof *sheet_records, name);
}

int table_tray_count(void) {
    return (int)tray_records_count;
}

const struct tray *table_tray(int index) {
    return &tray_records[index];
}

int table_tray_find(const char *name) {
    return table_name_index(tray_records, tray_records_count, sizeof *tray_records, name);
}
