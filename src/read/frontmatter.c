#include "read/frontmatter.h"

#include "read/encoding.h"

static span without_trailing_white(span line) {
    while (line.length && (line.at[line.length - 1] == ' ' || line.at[line.length - 1] == '\t'))
        line.length--;
    return line;
}

static bool opens(span line) {
    return span_is(without_trailing_white(line), "---");
}

static bool closes(span line) {
    return opens(line) || span_is(without_trailing_white(line), "...");
}

static void add_no_front(const char *file, span bytes, problems *found) {
    bool late = opens(span_first(span_trim(bytes), 3));
    problem_add(found, (place){file, 1, 1},
                late ? "take out the empty lines before it"
                     : "begin the file with a line ---, then \"title: …\", then a line ---",
                late ? "the front matter must begin on the first line"
                     : "there is no front matter");
}

bool front_matter_cut(const char *file, span bytes, front_matter *out, problems *found) {
    bytes = encoding_skip_mark(bytes);
    if (!encoding_check(file, bytes, 1, found))
        return false;
    span rest = bytes, line;
    if (!span_next_line(&rest, &line) || !opens(line)) {
        add_no_front(file, bytes, found);
        return false;
    }
    const char *start = rest.at;
    for (unsigned number = 2; span_next_line(&rest, &line); number++)
        if (closes(line)) {
            *out = (front_matter){{start, (size_t)(line.at - start)}, 2, rest, number + 1};
            return true;
        }
    problem_add(found, (place){file, 1, 1}, "close it with a line ---, before the method",
                "the front matter that begins here is not closed");
    return false;
}
