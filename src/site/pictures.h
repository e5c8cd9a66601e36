/* The pictures of a site as its pages show them: which sizes of each there are. */
#ifndef SITE_PICTURES_H
#define SITE_PICTURES_H

#include "base/list.h"
#include "base/span.h"
#include "site/view.h"

#include <stdint.h>

enum { PICTURE_SIZES_MOST = 3 };

typedef struct {
    unsigned width, height; /* pixels */
    uint64_t bytes;         /* of the file that everything can show */
} picture_size;

typedef struct {
    const char *name; /* of the file inside pictures/ of the site folder: "rounds.jpg" */
    const char *stem; /* its files are pictures/<stem>-<width>x<height>.jpg and .webp, or .svg */
    bool drawn;       /* an SVG */
    picture_size sizes[PICTURE_SIZES_MOST]; /* growing; none where it is copied as it is */
    size_t count;
} site_picture;

typedef struct {
    site_picture *items;
    size_t count, capacity;
} site_pictures;

/* The picture called `name`, or null: a page then shows none. */
const site_picture *picture_find(const site_pictures *all, const char *name);

/* "pictures/rounds-800x600.webp"; `ending` without its dot. */
char *picture_path(arena *a, const site_picture *of, picture_size size, const char *ending);

/* The path of its largest file that everything can show; of one copied as it is, that. */
char *picture_path_largest(arena *a, const site_picture *of);

/* The media type of that (IANA), by the ending of its name; null where it is none that we know. */
const char *picture_type_largest(const site_picture *of);

/* Its width, height and bytes; null where it is copied as it is. */
const picture_size *picture_size_largest(const site_picture *of);

/* That of its smallest. */
char *picture_path_smallest(arena *a, const site_picture *of);

/* {src, alt, width?, height?, is_photo, files: [{jpeg, webp, width, more}]} under `key`; nothing
 * when `all` has none called `name` (which may be null). `alt` null: empty. */
void picture_put(arena *a, view *to, const char *key, const site_pictures *all, const char *name,
                 const char *alt);

#endif
