/* Reads a JSON array of Markdown texts from standard input and prints the array of their HTML, by
 * the path that pages take: what the CommonMark examples are put through. */
#include "site/markdown.h"
#include "site/view.h"

#include <jansson.h>
#include <stdio.h>

int main(void) {
    json_error_t error;
    json_t *texts = json_loadf(stdin, 0, &error);
    if (!texts) {
        fprintf(stderr, "%s\n", error.text);
        return 1;
    }
    arena *a = arena_new();
    view *list = view_list(a);
    text html = TEXT_EMPTY;
    for (size_t i = 0; i < json_array_size(texts); i++) {
        const json_t *one = json_array_get(texts, i);
        text_clear(&html);
        markdown_html((span){json_string_value(one), json_string_length(one)}, NULL, &html);
        view_put_span(a, list, NULL, arena_copy_span(a, text_span(&html)));
    }
    text_clear(&html);
    view_write_json(list, false, &html);
    fwrite(html.bytes, 1, html.length, stdout);
    text_free(&html);
    json_decref(texts);
    arena_free(a);
    return 0;
}
