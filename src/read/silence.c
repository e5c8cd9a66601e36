#include "read/silence.h"

#include "base/list.h"
#include "base/words.h"

static const char marker[] = "crumbnote: allow ";

/* One allowed name: a comment with two names makes two. */
typedef struct {
    place at;      /* of the name */
    unsigned line; /* the line it is for */
    span name;
    bool used;
} allowance;

typedef struct {
    allowance *items;
    size_t count, capacity;
} allowances;

/* A file being searched. */
typedef struct {
    arena *a;
    const char *file;
    problems *found;
    allowances all;
    const silence_known *known; /* null: nobody asks whether the comments are right */
} silencer;

/* -- reading ----------------------------------------------------------------------------------- */

/* Bytes of `line` before the comment mark that `at`, the marker, stands behind; the length of the
 * line when it stands in no comment. */
static size_t comment_start(span line, size_t at) {
    static const char *const marks[] = {"#", "<!--"};
    span before = span_trim(span_first(line, at));
    for (size_t i = 0; i < COUNT(marks); i++)
        if (span_ends(before, marks[i]))
            return (size_t)(before.at - line.at) + before.length - strlen(marks[i]);
    return line.length;
}

/* The names and the reason, in `words`; the reason is empty when there is none. */
static span cut_reason(span words, span *names_given) {
    static const char because[] = "because";
    size_t end = span_find(words, "-->");
    words = span_trim(span_first(words, end));
    size_t at = span_find(words, because);
    *names_given = span_trim(span_first(words, at));
    return span_trim(span_from(words, at + strlen(because)));
}

static void complain(const silencer *s, place at, const char *hint, const char *what) {
    if (s->known)
        problem_note(s->found, "allow", PROBLEM_WARNING, at, hint, "%s", what);
}

static void take_name(silencer *s, span name, place at, unsigned line) {
    const silence_known *known = s->known;
    if (!known || words_index(name, known->names, known->count) < known->count) {
        LIST_ADD(s->a, &s->all, (allowance){at, line, name, false});
        return;
    }
    const char *near = words_nearest(name, known->names, known->count);
    complain(s, at,
             near ? arena_format(s->a, "did you mean \"%s\"?", near)
                  : "crumbnote check --help lists the checks",
             arena_format(s->a, "there is no check \"%.*s\"", SPAN(name)));
}

static void take_comment(silencer *s, span line, size_t at, unsigned number, unsigned target) {
    span given, words = span_from(line, at + strlen(marker));
    place stands = {s->file, number, words_columns(line.at, at) + 1};
    if (cut_reason(words, &given).length == 0) {
        complain(s, stands, "for example: crumbnote: allow portion because the cook eats two",
                 "an allowance needs a reason, behind \"because\"");
        return;
    }
    while (given.length) {
        size_t comma = span_find(given, ",");
        span name = span_trim(span_first(given, comma));
        given = span_from(given, comma + 1);
        if (name.length)
            take_name(
                s, name,
                (place){s->file, number, words_columns(line.at, (size_t)(name.at - line.at)) + 1},
                target);
    }
}

/* The line number `number` of those in `rest` that is no comment of ours alone. */
static unsigned next_target(span rest, unsigned number) {
    span line;
    while (span_next_line(&rest, &line)) {
        size_t at = span_find(line, marker);
        if (at == line.length || span_trim(span_first(line, comment_start(line, at))).length)
            break;
        number++;
    }
    return number;
}

static void read_all(silencer *s, span bytes) {
    span line, rest = bytes;
    unsigned target = 0; /* of the comments right above it, one for all */
    for (unsigned number = 1; span_next_line(&rest, &line); number++) {
        size_t at = span_find(line, marker);
        size_t start = at < line.length ? comment_start(line, at) : line.length;
        if (start == line.length)
            continue;
        bool alone = span_trim(span_first(line, start)).length == 0;
        if (alone && target <= number)
            target = next_target(rest, number + 1);
        take_comment(s, line, at, number, alone ? target : number);
    }
}

/* -- applying ---------------------------------------------------------------------------------- */

static bool is_allowed(const problem *p, void *state) {
    silencer *s = state;
    bool allowed = false;
    if (!p->check || !p->at.file || strcmp(p->at.file, s->file) != 0)
        return false;
    for (size_t i = 0; i < s->all.count; i++) {
        allowance *one = &s->all.items[i];
        if (one->line == p->at.line && span_is(one->name, p->check))
            allowed = one->used = true;
    }
    return allowed;
}

void silence_apply(arena *a, const char *file, span bytes, const silence_known *known,
                   problems *found) {
    if (span_find(bytes, marker) == bytes.length)
        return;
    silencer s = {.a = a, .file = file, .found = found, .known = known};
    read_all(&s, bytes);
    problems_drop(found, is_allowed, &s);
    for (size_t i = 0; known && known->all_run && i < s.all.count; i++)
        if (!s.all.items[i].used)
            complain(&s, s.all.items[i].at, "take it out, or put it on the line it is for",
                     arena_format(a, "nothing is found that \"%.*s\" would allow",
                                  SPAN(s.all.items[i].name)));
}

/* -- a site ----------------------------------------------------------------------------------- */

static void silence_file(arena *a, const site_folder *site, const char *file,
                         const silence_known *known, problems *found) {
    span bytes;
    int why;
    if (file_read(a, path_join(a, site->settings.folder, file), &bytes, &why))
        silence_apply(a, file, bytes, known, found);
}

static bool any_named(const problems *found) {
    for (size_t i = 0; i < found->count; i++)
        if (found->items[i].check)
            return true;
    return false;
}

void silence_site(const site_folder *site, const silence_known *known, problems *found) {
    static const char *const tables[] = {"pantry", "rules", "trials"};
    if (!known && !any_named(found))
        return;
    arena *a = arena_new();
    silence_file(a, site, "site.yaml", known, found);
    for (size_t i = 0; i < COUNT(tables); i++) {
        file_list files = {0};
        int why;
        (void)file_list_folder(a, path_join(a, site->settings.folder, tables[i]), ".yaml", &files,
                               &why);
        for (size_t k = 0; k < files.count; k++)
            silence_file(a, site, path_join(a, tables[i], files.items[k].name), known, found);
    }
    for (size_t i = 0; i < site->page_count; i++)
        silence_apply(a, site->pages[i]->file, site->pages[i]->source, known, found);
    arena_free(a);
}
