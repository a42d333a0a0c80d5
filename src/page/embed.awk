# src/page/page.css and page.js as C strings, PAGE_CSS and PAGE_JS, a piece a line. Arguments: the files.

function literal(text) {
    gsub(/\\/, "&&", text)
    gsub(/"/, "\\\\&", text)
    return "\"" text "\\n\""
}

BEGIN {
    print "/* Made by src/page/embed.awk from page.css and page.js; change those. */"
    print "#include \"page/assets.h\"\n"
}

FNR == 1 {
    if (files++)
        print "    ;"
    name = FILENAME
    sub(/.*\//, "", name)
    sub(/\./, "_", name)
    print "const char " toupper(name) "[] ="
}

{ print "    " literal($0) }

END { print "    ;" }
