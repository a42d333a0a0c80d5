# embed.awk - the tables of tables/ as C data.
#
#   LC_ALL=C awk -f src/tables/embed.awk tables/*.tsv > build/tables_data.c
#
# sources.tsv has the columns id, document, clause, seen; every other file
# row, value, unit, source, edition, mark, note. "-" stands for none. Head comments that count:
#   # title: one line for people
#   # record: TYPE FIELD FIELD ...   rows are name.FIELD; they are also gathered into an array of
#                                    struct TYPE { name, FIELDs (SI), source, mark }; source and
#                                    mark are those of the first field
#   # order: FIELD FIELD ...         records sorted by these fields instead of by name
# A mistake ends the run with status 1 and a message that begins with file:line.

BEGIN {
    FS = "\t"
    units = "1 NUMBER,% NUMBER,nominal NUMBER,in INCHES,ft FEET,mm MILLIMETRES,lb POUNDS,psi PSI," \
        "psf PSF,kg/m2 AREAL_KG,pcf PCF,kg/m3 NUMBER,mph MPH,deg DEGREES,m/s2 NUMBER,N-m/rad NUMBER," \
        "lb/in POUNDS_AN_INCH,plf POUNDS_A_FOOT,N/mm2 NEWTONS_A_MM2"
    n = split(units, pairs, ",")
    for (i = 1; i <= n; i++) {
        split(pairs[i], pair, " ")
        conversion[pair[1]] = "IN_" pair[2]
    }
    # looked up thousands of times a run: not searched by name
    n = split("constants fastener-factors load-duration-factors", pairs, " ")
    for (i = 1; i <= n; i++)
        at_hand[pairs[i]] = 1
    constant["read"] = "MARK_READ"
    constant["trade"] = "MARK_TRADE"
    constant["memory"] = "MARK_MEMORY"
}

function wrong(message) {
    place_wrong(FILENAME ":" FNR, message)
}

function place_wrong(where, message) {
    print where ": " message | "cat 1>&2"
    mistakes++
}

function literal(text) {
    gsub(/\\/, "\\\\", text)
    gsub(/"/, "\\\"", text)
    return "\"" text "\""
}

function shown(text) {
    return text == "-" ? "" : text
}

function joined(left, between, right) {
    return right == "" ? left : left between right
}

FNR == 1 {
    name = FILENAME
    sub(/^.*\//, "", name)
    sub(/\.tsv$/, "", name)
    is_sources = (name == "sources")
    headed = 0
    last = ""
    if (!is_sources) {
        if (tables > 0 && table_name[tables] "" >= name "")
            wrong("tables out of order: " name " after " table_name[tables])
        table_name[++tables] = name
        table_file[tables] = FILENAME
        first_row[tables] = rows + 1
    }
}

/^# title: / && !is_sources {
    title[tables] = substr($0, 10)
}

/^# record: / {
    record[tables] = substr($0, 11)
}

/^# order: / {
    order[tables] = substr($0, 10)
}

/^#/ {
    next
}

!headed {
    wanted = is_sources ? "id\tdocument\tclause\tseen" : "row\tvalue\tunit\tsource\tedition\tmark\tnote"
    if ($0 != wanted)
        wrong("the line of column names was expected")
    headed = 1
    next
}

{
    columns = is_sources ? 4 : 7
    if (NF != columns) {
        wrong(NF " columns, " columns " expected")
        next
    }
    for (i = 1; i <= NF; i++)
        if ($i == "")
            wrong("column " i " is empty; write - for none")
    if ($1 "" == last "")
        wrong("\"" $1 "\" stands twice")
    else if ($1 "" < last "")
        wrong("\"" $1 "\" is out of order, it belongs before \"" last "\"")
    last = $1
}

is_sources {
    document[$1] = $2
    clause[$1] = shown($3)
    next
}

{
    if ($2 !~ /^-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][-+]?[0-9]+)?$/)
        wrong("\"" $2 "\" is not a number")
    if (!($3 in conversion))
        wrong("unknown unit \"" $3 "\"")
    if (!($6 in constant))
        wrong("unknown mark \"" $6 "\"; read, memory or trade")
    rows++
    row_id[rows] = $1
    row_value[rows] = $2
    row_unit[rows] = $3
    row_source[rows] = $4
    row_edition[rows] = shown($5)
    row_mark[rows] = $6
    row_note[rows] = shown($7)
    row_place[rows] = FILENAME ":" FNR
    last_row[tables] = rows
}

function si(row) {
    return conversion[row_unit[row]] "(" row_value[row] ")"
}

# Document, edition and clause in one: "NDS 2018 3.5.2", "ASCE 7-16 2.4.1".
function cite(row) {
    return joined(joined(document[row_source[row]], " ", row_edition[row]), " ", \
        clause[row_source[row]])
}

function write_row(row) {
    printf "    {%s, %s, %s,\n     %s, %s, %s,\n     %s, %s, %s,\n     %s},\n", \
        literal(row_id[row]), literal(row_value[row]), literal(row_unit[row]), \
        literal(joined(document[row_source[row]], ", ", clause[row_source[row]])), \
        literal(row_edition[row]), constant[row_mark[row]], literal(row_note[row]), \
        "IN_NUMBER(" row_value[row] ")", si(row), literal(cite(row))
}

# The number of the record that belongs before the other by the order fields, else by name.
function goes_before(a, b, fields, count,    i, x, y) {
    for (i = 1; i <= count; i++) {
        x = row_value[member[a, fields[i]]] + 0
        y = row_value[member[b, fields[i]]] + 0
        if (x != y)
            return x < y
    }
    return a "" < b ""
}

# Gather the rows name.field of table t; fills names[1..count] and member[name, field].
function gather(t, fields, field_count,    row, at, thing, field, i, known) {
    thing_count = 0
    split("", member)
    for (i = 1; i <= field_count; i++)
        known[fields[i]] = 1
    for (row = first_row[t]; row <= last_row[t]; row++) {
        at = length(row_id[row])
        while (at > 0 && substr(row_id[row], at, 1) != ".")
            at--
        thing = substr(row_id[row], 1, at - 1)
        field = substr(row_id[row], at + 1)
        if (!(field in known))
            place_wrong(row_place[row], "unknown field \"" field "\"")
        if (thing_count == 0 || names[thing_count] != thing)
            names[++thing_count] = thing
        member[thing, field] = row
    }
    for (row = 1; row <= thing_count; row++)
        for (i = 1; i <= field_count; i++)
            if (!((names[row], fields[i]) in member))
                place_wrong(table_file[t] ":1", "\"" names[row] "\" has no row for \"" fields[i] "\"")
}

function sort_names(fields, count,    i, j, held) {
    for (i = 2; i <= thing_count; i++) {
        held = names[i]
        for (j = i - 1; j >= 1 && goes_before(held, names[j], fields, count); j--)
            names[j + 1] = names[j]
        names[j + 1] = held
    }
}

function write_records(t,    type, fields, count, sort_fields, sort_count, i, j, c_field, row) {
    count = split(record[t], fields, " ") - 1
    type = fields[1]
    for (i = 1; i <= count; i++)
        fields[i] = fields[i + 1]
    gather(t, fields, count)
    if (mistakes)
        return
    sort_count = split(order[t], sort_fields, " ")
    sort_names(sort_fields, sort_count)
    printf "const struct %s %s_records[] = {\n", type, type
    for (i = 1; i <= thing_count; i++) {
        printf "    {.name = %s", literal(names[i])
        for (j = 1; j <= count; j++) {
            row = member[names[i], fields[j]]
            c_field = fields[j]
            gsub(/-/, "_", c_field)
            printf ", .%s = %s", c_field, si(row)
        }
        row = member[names[i], fields[1]]
        printf ",\n     .source = %s, .mark = %s},\n", literal(cite(row)), constant[row_mark[row]]
    }
    printf "};\nconst size_t %s_records_count = %d;\n\n", type, thing_count
}

END {
    for (row = 1; row <= rows; row++)
        if (!(row_source[row] in document))
            place_wrong(row_place[row], "unknown source \"" row_source[row] "\"")
    for (t = 1; t <= tables; t++) {
        if (title[t] == "")
            place_wrong(table_file[t] ":1", "no title")
        if (last_row[t] < first_row[t])
            place_wrong(table_file[t] ":1", "no rows")
    }
    if (mistakes)
        exit 1
    print "/* Made by src/tables/embed.awk from tables/; change those. */"
    print "#include \"tables/data.h\"\n"
    for (t = 1; t <= tables; t++) {
        printf "static const struct table_row rows_%d[] = {\n", t
        for (row = first_row[t]; row <= last_row[t]; row++)
            write_row(row)
        print "};\n"
    }
    for (t = 1; t <= tables; t++)
        if (record[t] != "")
            write_records(t)
    print "const struct table table_data[] = {"
    for (t = 1; t <= tables; t++)
        printf "    {%s, %s, rows_%d, %d},\n", literal(table_name[t]), literal(title[t]), t, \
            last_row[t] - first_row[t] + 1
    printf "};\nconst size_t table_data_count = %d;\n", tables
    for (t = 1; t <= tables; t++)
        if (table_name[t] in at_hand) {
            c_name = table_name[t]
            gsub(/-/, "_", c_name)
            printf "const struct table *const table_of_%s = &table_data[%d];\n", c_name, t - 1
        }
    if (mistakes)
        exit 1
}
