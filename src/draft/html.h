/* HTML read as browsers read it, through libgumbo; and the words in it.
 *
 * What is read is anybody's: the tree lives in an arena, with a limit on how much of it a page may
 * fill, and is walked without recursion, so that neither size nor depth can bring the program
 * down. */
#ifndef DRAFT_HTML_H
#define DRAFT_HTML_H

#include "base/arena.h"
#include "base/text.h"

enum {
    HTML_BYTES_MOST = 4 * 1024 * 1024,
    HTML_MEMORY_MOST = 64 * 1024 * 1024, /* of the tree */
    HTML_PIECES_MOST = 200 * 1000        /* allocations: some 40,000 elements */
};

/* A node of the tree: an element, words, or the whole page. */
typedef struct GumboInternalNode html_node;

/* Reads `bytes` (UTF-8, borrowed as long as the tree is used) into `a`. Null when they are past a
 * limit. */
const html_node *html_read(arena *a, span bytes);

/* The node after `at` in the order of the page, inside `root`; null at the end. */
const html_node *html_next(const html_node *at, const html_node *root);

/* The same, passing over what is inside `at`. */
const html_node *html_next_beside(const html_node *at, const html_node *root);

/* `at` is an element called `name` (lower case). */
bool html_is(const html_node *at, const char *name);

/* The value of an attribute, entities decoded; null when `at` is no element or has none. Borrowed
 * from the tree. */
const char *html_attribute(const html_node *at, const char *name);

/* `word` stands among the blank-separated words of an attribute. */
bool html_has_word(const html_node *at, const char *attribute, const char *word);

/* Adds the words in and below `root`: runs of blanks as one, a line end where a block (paragraph,
 * list item, heading …) begins or ends, a colon behind a heading, nothing of scripts and styles.
 * `keep_lines`: a line end in the source is one too. */
void html_add_words(const html_node *root, bool keep_lines, text *out);

/* The text of a script element as it is; empty when there is none. Borrowed from the tree. */
span html_script(const html_node *at);

#endif
