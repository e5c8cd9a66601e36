/* The reading of one ingredient line, handed from stage to stage: quantity, name, preparation.
 * Inside measure/ only; everybody else calls measure/line.h. */
#ifndef MEASURE_READING_H
#define MEASURE_READING_H

#include "measure/brackets.h"
#include "measure/line.h"

enum { LINE_BYTES_MOST = 1000 };

/* `rest` is cut from `plain`, whose bytes stand where those of the written line stand, so that
 * every part of it knows its column. */
typedef struct {
    arena *a;        /* borrowed */
    problems *found; /* borrowed */
    span plain;      /* the line without brackets and odd blanks */
    span rest;       /* what is not read yet */
    place at;        /* of the first byte of `plain` */
    brackets aside;
    recipe_line line;
    size_t unit_start; /* bytes; a bracket before it is of one */
    text preparation;  /* to be freed by whoever made the reading */
} reading;

/* Begins to read `written`: brackets taken out, blanks made plain. What was read of another part
 * of the line (its amount) is kept. False, with a problem, when it is no line (too long, a NUL) or
 * a bracket in it is wrong. */
bool reading_take_up(reading *r, located written);

/* Where `part`, cut from `plain`, stands in the file. */
place reading_place(const reading *r, span part);

/* Goes on behind `bytes` of the rest and the blanks after them. */
void reading_skip(reading *r, size_t bytes);

/* Adds `words`, trimmed, to the preparation, behind a comma where it is not the first. */
void reading_prepare(reading *r, span words);

#endif
