/* site.yaml: what a site is called, where it is published, how it measures. */
#ifndef READ_SITE_SETTINGS_H
#define READ_SITE_SETTINGS_H

#include "base/problems.h"
#include "measure/units.h"
#include "nutrition/label.h"

typedef struct {
    const char *folder; /* the site folder as given */
    const char *title, *address, *language, *theme, *currency, *author, *summary;
    cup_standard cups;
    energy_rule energy;
    label_rule label;
    word_list cautions; /* her own, added to the program's */
} site_settings;

/* The settings where there is no site.yaml: the reference alone serves. */
site_settings site_settings_default(void);

/* Reads site.yaml (`bytes`). Address must be an absolute http or https URL; a missing final slash
 * is added. False when title or address is missing or wrong; what could be read is in `*out`. */
bool site_settings_read(arena *a, const char *file, span bytes, site_settings *out,
                        problems *found);

#endif
