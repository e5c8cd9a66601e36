#include "preview/notices.h"

enum { SHOWN_MOST = 100 };

void notices_add_script(span page, const char *token, text *out) {
    size_t head = span_find(page, "</head>");
    text_add_span(out, span_first(page, head));
    text_format(out,
                "<link rel=\"stylesheet\" href=\"/.preview/refresh.css\">\n"
                "<script src=\"/.preview/refresh.js\" data-token=\"%s\" defer></script>\n",
                token);
    text_add_span(out, span_from(page, head));
}

void notices_make_local(span page, const char *address, text *out) {
    size_t length = strlen(address), found;
    while (length && (found = span_find(page, address)) < page.length) {
        text_add_span(out, span_first(page, found));
        text_add_char(out, '/');
        page = span_from(page, found + length);
    }
    text_add_span(out, page);
}

static void add_text(text *out, const char *key, const char *words) {
    text_format(out, ",\"%s\":", key);
    text_add_json(out, span_of(words));
}

static void add_problem(const problem *of, text *out) {
    text_format(out, "%s{\"line\":%u,\"column\":%u", out->bytes[out->length - 1] == '[' ? "" : ",",
                of->at.line, of->at.column);
    add_text(out, "file", of->at.file);
    add_text(out, "level", problem_level_word(of->level));
    add_text(out, "message", of->message);
    add_text(out, "hint", of->hint);
    text_add_char(out, '}');
}

void notices_add_problems(const problems *found, text *out) {
    static const problem_level order[] = {PROBLEM_ERROR, PROBLEM_WARNING};
    size_t shown = 0;
    text_format(out, "{\"errors\":%zu,\"warnings\":%zu,\"problems\":[", found->errors,
                found->warnings);
    for (size_t k = 0; k < sizeof order / sizeof order[0]; k++)
        for (size_t i = 0; i < found->count && shown < SHOWN_MOST; i++)
            if (found->items[i].level == order[k]) {
                add_problem(&found->items[i], out);
                shown++;
            }
    text_add(out, "]}");
}
