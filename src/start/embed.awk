# examples/starters/KIND.yaml and KIND-si.yaml as C data, a string a line. Arguments: the files, in the order
# in which they are to be listed.

function literal(text) {
    gsub(/\\/, "\\\\", text)
    gsub(/"/, "\\\"", text)
    return "\"" text "\\n\""
}

FNR == 1 {
    if (files++)
        print "    },"
    name = FILENAME
    sub(/.*\//, "", name)
    sub(/\.yaml$/, "", name)
    si = sub(/-si$/, "", name)
    printf "    {\"%s\", %s,\n", name, si ? "UNITS_SI" : "UNITS_US"
}

BEGIN {
    print "/* Made by src/start/embed.awk from examples/starters/; change those. */"
    print "#include \"start/starters.h\"\n"
    print "const struct starter STARTERS[] = {"
}

{ print "     " literal($0) }

END {
    print "    },"
    print "};"
    printf "const size_t STARTER_COUNT = %d;\n", files
}
