# check-tables.awk - relations between the values of tables/*.tsv; run by check-tables.

BEGIN {
    FS = "\t"
    better = "select-structural no-1 no-2 no-3"
}

function wrong(where, message) {
    print where ": " message | "cat 1>&2"
    mistakes++
}

function need(holds, key, message) {
    tested++
    if (!holds)
        wrong(place[key], message)
}

function has(key) {
    return key in value
}

# The part of an id before its last dot, and after it.
function head(id) {
    return match(id, /\.[^.]*$/) ? substr(id, 1, RSTART - 1) : id
}

function tail(id) {
    return match(id, /\.[^.]*$/) ? substr(id, RSTART + 1) : ""
}

FNR == 1 {
    name = FILENAME
    sub(/^.*\//, "", name)
    sub(/\.tsv$/, "", name)
    names[++files] = name
    headed = 0
}

/[^ -~\t]/ {
    wrong(FILENAME ":" FNR, "a character that is not printable ASCII")
}

/[ \t]$/ || /\t / || / \t/ || (!/^#/ && /  /) {
    wrong(FILENAME ":" FNR, "white space that does not belong there")
}

/^#/ {
    next
}

!headed {
    headed = 1
    next
}

$1 !~ /^[A-Za-z0-9][A-Za-z0-9.\/-]*$/ {
    wrong(FILENAME ":" FNR, "the id \"" $1 "\" holds more than letters, digits, . - /")
}

name == "sources" {
    seen[$1] = $4
    source_place[$1] = FILENAME ":" FNR
    next
}

{
    key = name ":" $1
    value[key] = $2 + 0
    unit[key] = $3
    source[key] = $4
    mark[key] = $6
    place[key] = FILENAME ":" FNR
    used[$4] = 1
    keys[++count] = key
    marks[name, $6]++
    in_file[name]++
}

function check_sources(    id, k) {
    for (id in seen)
        if (!(id in used))
            wrong(source_place[id], "no row uses \"" id "\"")
    for (k = 1; k <= count; k++)
        if (mark[keys[k]] == "read")
            need(seen[source[keys[k]]] != "-", keys[k], \
                "marked read, but sources.tsv does not say where " source[keys[k]] " was seen")
}

# Emin = 1.03 E (1 - 1.645 x 0.25) / 1.66 to 10 000 psi (NDS Appendix D).
function check_emin(key,    e) {
    e = key
    sub(/\.Emin$/, ".E", e)
    need(has(e) && value[key] == 10000 * int(0.3653 * value[e] / 10000 + 0.5), key, \
        "Emin is not 0.3653 E to 10 000 psi")
}

# A better grade of the same species (and width) is not weaker or softer.
function check_grades(key,    grades, n, i, worse, better_key) {
    n = split(better, grades, " ")
    for (i = 1; i < n; i++) {
        if (index(key, "." grades[i + 1] ".") == 0)
            continue
        better_key = key
        sub("\\." grades[i + 1] "\\.", "." grades[i] ".", better_key)
        need(has(better_key) && value[better_key] >= value[key], key, \
            "more than the better grade, or no better grade: " better_key)
    }
}

function check_design(key,    property, other) {
    property = tail(key)
    need(unit[key] == "psi" && value[key] > 0, key, "not a stress above 0 in psi")
    if (property == "Emin")
        check_emin(key)
    check_grades(key)
    if (property == "Ft") {
        other = head(key) ".Fb"
        need(has(other) && value[key] < value[other], key, "Ft is not under Fb")
    }
    other = key
    if (sub(/\.w5-6\./, ".w2-4.", other) || sub(/\.w8\./, ".w5-6.", other) || \
        sub(/\.w10\./, ".w8.", other) || sub(/\.w12\./, ".w10.", other))
        need(has(other) && value[key] <= value[other], key, "more than the narrower piece")
}

# A wider piece has no larger size factor; a flat one no smaller flat use factor.
function check_width(key, rises,    ladder, n, i, other) {
    n = split("w2 w3 w4 w5 w6 w8 w10 w12 w14", ladder, " ")
    for (i = 2; i <= n; i++) {
        other = key
        if (!sub("\\." ladder[i] "(\\.|$)", "." ladder[i - 1] ".", other))
            continue
        sub(/\.$/, "", other)
        if (has(other) && index(key, "utility") == 0 && key !~ /southern-pine.*-4in/)
            need(rises ? value[key] >= value[other] : value[key] <= value[other], key, \
                "the factor goes the wrong way from " other)
    }
}

function check_size(key,    nominal) {
    nominal = key
    sub(/\.thickness$/, ".nominal-thickness", nominal)
    sub(/\.width$/, ".nominal-width", nominal)
    if (nominal != key)
        need(unit[key] == "in" && value[key] > 0 && value[key] < value[nominal], key, \
            "dressed is not under nominal")
    if (tail(key) == "width")
        need(value[key] >= value[head(key) ".thickness"], key, "the width is under the thickness")
}

function check_soil(key) {
    if (tail(key) == "drained")
        need(value[key] > value[head(key) ".dry"], key, "drained is not heavier than dry")
    if (tail(key) == "soaked")
        need(value[key] > value[head(key) ".drained"], key, "soaked is not heavier than drained")
}

# Root under shank under head, and a nail longer than thick.
function check_fastener(key,    shank) {
    shank = value[head(key) ".D"]
    need(has(head(key) ".D") && shank > 0, key, "no D, or none above 0")
    if (tail(key) == "root")
        need(value[key] > 0.6 * shank && value[key] < shank, key, "not 0.6 to 1 of D")
    if (tail(key) == "head")
        need(value[key] > 1.5 * shank && value[key] < 3 * shank, key, "not 1.5 to 3 times D")
    if (tail(key) == "length")
        need(value[key] > 10 * shank, key, "not ten times as long as thick")
}

function check_row(key,    table) {
    table = substr(key, 1, index(key, ":") - 1)
    if (table == "design-values")
        check_design(key)
    else if (table == "size-factors")
        check_width(key, 0)
    else if (table == "flat-use-factors")
        check_width(key, 1)
    else if (table == "dressed-sizes")
        check_size(key)
    else if (table == "fastener-sizes")
        check_fastener(key)
    else if (table == "lead-holes" && unit[key] == "1")
        need(value[key] > 0 && value[key] <= 1, key, "a lead hole over the fastener")
    else if (table == "soils")
        check_soil(key)
    else if (table == "specific-gravity")
        need(value[key] > 0.25 && value[key] < 0.75, key, "no softwood")
    else if (table == "grounds")
        need(value[key] > 0 && value[key] <= 0.5, key, "not a cautious friction")
    else if (table ~ /^(wet-service|temperature|incising)-factors$/ && unit[key] == "1")
        need(value[key] > 0 && value[key] <= 1, key, "a reduction over 1")
    else if (table == "sheets" || table == "trays")
        need(tail(key) == "thickness" || value[key] > 0, key, "not above 0")
}

# Ids of one file that are known from memory, the last part gathered: "spruce-pine-fir.utility E Fb".
function list_memory(table,    k, key, id, before, line) {
    for (k = 1; k <= count; k++) {
        key = keys[k]
        if (substr(key, 1, index(key, ":") - 1) != table || mark[key] != "memory")
            continue
        id = substr(key, index(key, ":") + 1)
        if (line != "" && head(id) == before && tail(id) != "") {
            line = line " " tail(id)
            continue
        }
        if (line != "")
            print "    " line
        before = head(id)
        line = tail(id) == "" ? id : before ": " tail(id)
    }
    if (line != "")
        print "    " line
}

END {
    check_sources()
    for (k = 1; k <= count; k++)
        check_row(keys[k])
    print "tables: " count " rows in " files - 1 " files, " tested " relations, " mistakes + 0 " wrong"
    for (f = 1; f <= files; f++) {
        if (names[f] == "sources")
            continue
        printf "  %s: %d rows, %d read, %d trade, %d memory\n", names[f], in_file[names[f]], \
            marks[names[f], "read"], marks[names[f], "trade"], marks[names[f], "memory"]
        list_memory(names[f])
    }
    if (mistakes)
        exit 1
}
