#include "base/problems.h"

#include "base/words.h"

#include "base/list.h"

#include <stdarg.h>

problems problems_in(arena *home) {
    return (problems){.home = home};
}

const char *problem_level_word(problem_level level) {
    return level == PROBLEM_ERROR ? "error" : "warning";
}

static char *copied(arena *home, const char *words) {
    return words ? arena_copy(home, span_of(words)) : NULL;
}

/* File names are kept with the problems: what they are borrowed from may be gone by then. */
static const char *kept_file(const problems *found, const char *file) {
    const problem *last = found->count ? &found->items[found->count - 1] : NULL;
    if (last && last->at.file && file && strcmp(last->at.file, file) == 0)
        return last->at.file;
    return copied(found->home, file);
}

static void add(problems *found, problem p) {
    p.at.file = kept_file(found, p.at.file);
    LIST_ADD(found->home, found, p);
    if (p.level == PROBLEM_ERROR)
        found->errors++;
    else
        found->warnings++;
}

static char *formatted(arena *home, const char *format, va_list values) {
    va_list again;
    va_copy(again, values);
    int length = vsnprintf(NULL, 0, format, again);
    va_end(again);
    size_t size = length < 0 ? 1 : (size_t)length + 1;
    char *message = arena_alloc(home, size);
    vsnprintf(message, size, format, values);
    return message;
}

void problem_add(problems *found, place at, const char *hint, const char *format, ...) {
    va_list values;
    va_start(values, format);
    char *message = formatted(found->home, format, values);
    va_end(values);
    add(found, (problem){at, PROBLEM_ERROR, message, copied(found->home, hint), NULL});
}

void problem_warn(problems *found, place at, const char *hint, const char *format, ...) {
    va_list values;
    va_start(values, format);
    char *message = formatted(found->home, format, values);
    va_end(values);
    add(found, (problem){at, PROBLEM_WARNING, message, copied(found->home, hint), NULL});
}

void problem_note(problems *found, const char *check, problem_level level, place at,
                  const char *hint, const char *format, ...) {
    va_list values;
    va_start(values, format);
    char *message = formatted(found->home, format, values);
    va_end(values);
    add(found, (problem){at, level, message, copied(found->home, hint), check});
}

void problems_drop(problems *found, bool (*drop)(const problem *p, void *state), void *state) {
    size_t kept = 0;
    found->errors = found->warnings = 0;
    for (size_t i = 0; i < found->count; i++) {
        if (drop(&found->items[i], state))
            continue;
        found->items[kept] = found->items[i];
        if (found->items[kept++].level == PROBLEM_ERROR)
            found->errors++;
        else
            found->warnings++;
    }
    found->count = kept;
}

void problems_join(problems *into, const problems *from) {
    for (size_t i = 0; i < from->count; i++) {
        problem p = from->items[i];
        p.message = copied(into->home, p.message);
        p.hint = copied(into->home, p.hint);
        add(into, p);
    }
}

static int compare_numbers(unsigned a, unsigned b) {
    return a < b ? -1 : a > b;
}

static int compare_problems(const void *left, const void *right) {
    const problem *a = left, *b = right;
    int order = span_compare(span_of(a->at.file), span_of(b->at.file));
    if (!order)
        order = compare_numbers(a->at.line, b->at.line);
    if (!order)
        order = compare_numbers(a->at.column, b->at.column);
    return order ? order : strcmp(a->message, b->message);
}

void problems_sort(problems *found) {
    if (found->count > 1)
        qsort(found->items, found->count, sizeof found->items[0], compare_problems);
}

void problem_add_visible(text *t, const char *words) {
    while (*words) {
        size_t unseen = words_unseen(words);
        text_add_char(t, unseen ? ' ' : *words);
        words += unseen ? unseen : 1;
    }
}

static void add_level(text *t, problem_level level, const problem_colours *with) {
    if (with)
        text_add(t, level == PROBLEM_ERROR ? with->error : with->warning);
    text_format(t, "%s:", problem_level_word(level));
    if (with)
        text_add(t, with->end);
}

void problem_print(const problem *p, text *t) {
    problem_print_coloured(p, NULL, t);
}

void problem_print_coloured(const problem *p, const problem_colours *with, text *t) {
    problem_add_visible(t, p->at.file ? p->at.file : "crumbnote");
    if (p->at.line)
        text_format(t, ":%u", p->at.line);
    if (p->at.line && p->at.column)
        text_format(t, ":%u", p->at.column);
    text_add(t, ": ");
    add_level(t, p->level, with);
    text_add_char(t, ' ');
    problem_add_visible(t, p->message);
    if (p->check)
        text_format(t, " [%s]", p->check);
    if (p->hint) {
        text_add(t, "\n  hint: ");
        problem_add_visible(t, p->hint);
    }
    text_add_char(t, '\n');
}
