/* A Markdown recipe, for the author to finish, from what she has: a schema.org Recipe as JSON-LD,
 * an HTML page that holds one (as JSON-LD, as microdata or by the classes of h-recipe), or plain
 * text.
 *
 * Nothing is invented: what is not stated is left out or asked for, and what could not be read
 * stays as a comment with the reason. Pure of files: bytes in, a recipe's text out. What is read
 * may be anybody's: sizes and depths are limited (draft/html.h, draft/json_text.h). */
#ifndef DRAFT_DRAFT_H
#define DRAFT_DRAFT_H

#include "measure/recipe.h"

typedef struct {
    const char *file; /* what it was read from, for messages */
    span bytes;
    const pantry *shelf; /* where names are looked up */
    cup_standard cups;
    size_t which; /* which of several recipes, from 1 */
} draft_request;

typedef struct {
    const char *title;
    const char *slug;   /* a file name that fits, without .md */
    const char *recipe; /* the file's text */
    word_list remarks;  /* what its comments ask or say */
    word_list unknown;  /* names of ingredients that the pantry does not have */
    word_list others;   /* titles of the recipes it holds, this one included */
} draft;

/* Drafts as asked; strings in `a`. False when nothing like a recipe is in it: problems say why. */
bool draft_make(arena *a, const draft_request *asked, draft *out, problems *found);

#endif
