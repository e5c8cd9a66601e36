/* SVG drawings: measured and copied as they are. */
#ifndef PICTURES_DRAWING_H
#define PICTURES_DRAWING_H

#include "base/text.h"
#include "pictures/outcome.h"

/* Copies the SVG file `from` to FOLDER/STEM-<width>x<height>.svg, by its viewBox, else its width
 * and height, and adds " <width>x<height>" to `told`. Where it can't, the reason is added: it is no
 * SVG, states no size, holds script or entities, or can't be read or written. */
picture_outcome drawing_make(const char *folder, const char *from, const char *stem, text *told);

#endif
