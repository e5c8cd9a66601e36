/* XML read once through expat: is it well-formed, and what do its elements of one name say? */
#ifndef PUBLISH_XML_TEXT_H
#define PUBLISH_XML_TEXT_H

#include "base/problems.h"

typedef struct {
    span words;
    unsigned line, column; /* where the element ends */
} xml_text;

typedef struct {
    xml_text *items;
    size_t count, capacity;
} xml_texts;

/* Reads `bytes`; adds the text of each element called `name` to `out`, copied into `a`. False,
 * with a problem at its line and column, when it is not well-formed. Entities are never
 * declared: a document type declaration is a problem. */
bool xml_read(arena *a, const char *file, span bytes, const char *name, xml_texts *out,
              problems *found);

#endif
