#include "read/encoding.h"

#include "base/words.h"

span encoding_skip_mark(span bytes) {
    return span_begins(bytes, "\xEF\xBB\xBF") ? span_from(bytes, 3) : bytes;
}

place encoding_place(const char *file, span bytes, unsigned first_line, size_t offset) {
    place at = {file, first_line, 1};
    size_t line_start = 0;
    for (size_t i = 0; i < offset && i < bytes.length; i++)
        if (bytes.at[i] == '\n') {
            at.line++;
            line_start = i + 1;
        }
    at.column = 1 + words_columns(bytes.at + line_start, offset - line_start);
    return at;
}

bool encoding_check(const char *file, span bytes, unsigned first_line, problems *found) {
    size_t bad;
    if (words_are_utf8(bytes, &bad))
        return true;
    place at = encoding_place(file, bytes, first_line, bad);
    unsigned byte = (unsigned char)bytes.at[bad];
    if (byte == 0)
        problem_add(found, at, "is it a text file? write it with a text editor",
                    "there is a NUL byte here, which no text holds");
    else
        problem_add(found, at, "save the file as UTF-8 (some editors call it Unicode)",
                    "byte %02X is not UTF-8", byte);
    return false;
}
