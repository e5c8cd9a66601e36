/* Cuts a Markdown file into its YAML front matter and its body. */
#ifndef READ_FRONTMATTER_H
#define READ_FRONTMATTER_H

#include "base/problems.h"

typedef struct {
    span front;          /* between the lines of three hyphens */
    unsigned front_line; /* line of the file where it begins */
    span body;           /* after the closing line; may be empty */
    unsigned body_line;
} front_matter;

/* Cuts `bytes` (a byte-order mark is passed over, lines may end in CRLF, the closing line is ---
 * or ...). False with a problem when there is no front matter, it is not closed, or the bytes are
 * not UTF-8 (place of the first bad byte). */
bool front_matter_cut(const char *file, span bytes, front_matter *out, problems *found);

/* The front matter with its place in `file` (borrowed). */
static inline located front_matter_located(const char *file, const front_matter *cut) {
    return (located){cut->front, {file, cut->front_line, 1}};
}

#endif
