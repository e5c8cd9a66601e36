/* site.yaml: what a site is called, where it is published, how it measures. */
#ifndef READ_SITE_SETTINGS_H
#define READ_SITE_SETTINGS_H

#include "base/problems.h"
#include "measure/units.h"
#include "nutrition/label.h"

struct language;

typedef struct {
    const struct language *in; /* what is said is said in it; English until a site is built */
    const char *folder;        /* the site folder as given; null when there is none */
    const char *title, *address, *language, *theme;
    const char *currency, *author, *summary; /* null where not stated */
    cup_standard cups;
    energy_rule energy;
    label_rule label;
    label_law law;      /* whose names for allergens, whose claims */
    word_list cautions; /* her own, added to the program's */
    size_t swap_pages;  /* so many main swaps of a recipe have pages of their own */
    bool reference;     /* the reference pantry and rules serve beside the site's own */
} site_settings;

/* The settings where there is no site.yaml: the reference alone serves. */
site_settings site_settings_default(void);

/* Reads site.yaml (`bytes`). Address must be an absolute http or https URL; a missing final slash
 * is added. False when title or address is missing or wrong; what could be read is in `*out`,
 * the defaults in the rest. */
bool site_settings_read(arena *a, const char *file, span bytes, site_settings *out,
                        problems *found);

#endif
