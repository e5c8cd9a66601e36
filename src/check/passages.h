/* The prose of a file as the checks read it: plain words without mark-up, each of which knows
 * where it stands in the file; and its links and pictures.
 *
 * Markdown is cut by cmark into paragraphs, headings and items; a passage is one of these. What
 * stands in the front matter (title, summary, a tag) is a passage too. Code, raw HTML and HTML
 * comments are no prose. */
#ifndef CHECK_PASSAGES_H
#define CHECK_PASSAGES_H

#include "base/list.h"
#include "base/problems.h"

/* From byte `at` of a passage on, its words are those of the source from byte `source` on. */
typedef struct {
    size_t at, source;
} passage_bit;

typedef struct {
    passage_bit *items;
    size_t count, capacity;
} passage_bits;

typedef enum {
    PASSAGE_TITLE,
    PASSAGE_SUMMARY,
    PASSAGE_TAG,
    PASSAGE_METHOD, /* a step; without numbered steps, what stands before the notes */
    PASSAGE_NOTE,   /* any other paragraph */
    PASSAGE_HEADING
} passage_sort;

typedef struct {
    passage_sort sort;
    span words; /* terminated */
    passage_bits bits;
} passage;

/* A link or a picture of the body. */
typedef struct {
    bool picture;
    span target; /* its address, as written */
    span text;   /* of a picture: what is said instead of it */
    size_t at;   /* byte of the source where it stands */
} prose_link;

typedef struct {
    prose_link *items;
    size_t count, capacity;
} prose_links;

typedef struct {
    arena *home;
    const char *file;
    span source;                 /* the whole file, borrowed */
    struct passage_lines *lines; /* where its lines begin, and how many characters stand before */
    passage *items;
    size_t count, capacity;
    prose_links links;
} passages;

/* No passages yet, of the file `file` with the bytes `source`. */
passages passages_in(arena *a, const char *file, span source);

/* Adds the passages, links and pictures of the Markdown `body`, a part of the source. */
void passages_add_markdown(passages *to, span body);

/* Adds one passage of front matter: `words`, whose value stands at `at`. Does nothing for null. */
void passages_add_value(passages *to, passage_sort sort, const char *words, place at);

/* Where byte `offset` of the passage stands in the file. */
place passage_place(const passages *of, const passage *in, size_t offset);

/* Where byte `offset` of the source stands. */
place passages_place(const passages *of, size_t offset);

/* The byte of the source at `at`; its length when the place is past the end. */
size_t passages_offset(const passages *of, place at);

/* The sentence of `words` around byte `offset`: from behind the stop before it to the stop after
 * it. A colon or a semicolon is a stop too. */
span sentence_around(span words, size_t offset);

#endif
