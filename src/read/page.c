#include "read/page.h"

#include "base/files.h"
#include "base/words.h"
#include "read/fields.h"
#include "read/frontmatter.h"

static const char *const keys[] = {"title", "summary", "date", "order", "menu"};

char *page_slug(arena *a, const char *file) {
    span name = span_of(path_name(file));
    if (span_ends(name, ".md"))
        name.length -= strlen(".md");
    return words_slug(a, name);
}

plain_page *page_read(arena *a, const char *file, span bytes, problems *found) {
    front_matter cut;
    if (!front_matter_cut(file, bytes, &cut, found))
        return NULL;
    const yaml_node *front = fields_read_keys(a, front_matter_located(file, &cut), "a page", found);
    if (!front)
        return NULL;
    plain_page *page = ARENA_NEW(a, plain_page);
    *page = (plain_page){.file = file,
                         .slug = page_slug(a, file),
                         .order = PAGE_ORDER_LAST,
                         .in_menu = true,
                         .source = bytes,
                         .body = cut.body,
                         .body_line = cut.body_line};
    fields_known(front, keys, COUNT(keys), "a page", found);
    (void)field_text(front, "summary", &page->summary, found);
    (void)field_date(front, "date", &page->date, found);
    (void)field_number(front, "order", &page->order, found);
    (void)field_answer(front, "menu", &page->in_menu, found);
    bool titled = fields_need(front, "title", "a page", found) &&
                  field_text(front, "title", &page->title, found);
    return titled ? page : NULL;
}
