/* Photographs: decoded, turned upright, made small, stripped. */
#ifndef PICTURES_PHOTOGRAPH_H
#define PICTURES_PHOTOGRAPH_H

#include "base/text.h"
#include "pictures/outcome.h"

/* Widths that are made, in pixels. */
#define PHOTOGRAPH_WIDTHS                                                                          \
    { 320, 800, 1600 }

/* Most pixels that are decoded: 100 million, more than any camera a baker owns. */
enum { PHOTOGRAPH_PIXELS_MOST = 100000000 };

/* Makes FOLDER/STEM-<width>x<height>.webp and .jpg of the file `from`, each written beside and
 * renamed, and adds each " <width>x<height>" to `told`; the reason alone where it can't be
 * decoded or written. */
picture_outcome photograph_make(const char *folder, const char *from, const char *stem, text *told);

#endif
