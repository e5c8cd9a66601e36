/* An ingredient as a page states it, into a line of a recipe file: what the line grammar reads is
 * left as it is; what only stands in another order or behind odd marks is put right where it can't
 * be misread. */
#ifndef DRAFT_STATED_LINE_H
#define DRAFT_STATED_LINE_H

#include "draft/parts.h"

typedef enum {
    STATED_LINE,      /* a line, to be written as `words` */
    STATED_UNKNOWN,   /* the same, but its ingredient is not in the pantry */
    STATED_UNWEIGHED, /* the same, but its measure has no weight */
    STATED_HEADING,   /* "For the crust:" */
    STATED_UNREADABLE /* to be kept as a remark */
} stated_sort;

typedef struct {
    stated_sort sort;
    const char *words;
    word_list remarks; /* for the author, with the reasons */
} stated_line;

/* Reads what is stated. Strings are in `a`. */
stated_line line_stated(arena *a, const char *stated, const pantry *shelf, cup_standard cups);

#endif
