#include "frame/input_guard.h"

#include "frame/utf8.h"

/* True for what may stand in the file outside of escapes. */
static bool may_stand(long code) {
    if (code < 0x20)
        return code == '\t' || code == '\n' || code == '\r';
    return code != 0x7F && (code < 0x80 || code > 0x9F || code == 0x85) && code != 0xFFFE &&
           code != 0xFFFF;
}

static bool refuse_character(struct problems *problems, struct place place, long code,
                             unsigned char byte) {
    if (code < 0)
        problem_add(problems, place, "",
                    "this is not UTF-8 text (byte 0x%02X); save the file as UTF-8", byte);
    else
        problem_add(problems, place, "", "a control character (U+%04lX) cannot stand here", code);
    return false;
}

bool input_guard(const char *bytes, size_t length, struct problems *problems) {
    struct place place = {1, 1};
    if (length > INPUT_BYTES) {
        problem_add(problems, place, "", "the file is too large: %zu bytes, at most %d (4 MiB)",
                    length, INPUT_BYTES);
        return false;
    }
    for (size_t at = 0; at < length;) {
        long code = 0;
        size_t size = utf8_decode(bytes + at, length - at, &code);
        if (size == 0 || !may_stand(code))
            return refuse_character(problems, place, size ? code : -1, (unsigned char)bytes[at]);
        if (place.column == 1 && code == '%') {
            problem_add(problems, place, "", "a line cannot start with '%%' here");
            return false;
        }
        at += size;
        place.column++;
        if (code == '\n' || (code == '\r' && (at == length || bytes[at] != '\n')))
            place = (struct place){place.line + 1, 1};
    }
    return true;
}
