/* The reference pantry and rules, compiled in from the YAML files beside this header, and the
 * default theme. */
#ifndef REFERENCE_REFERENCE_H
#define REFERENCE_REFERENCE_H

#include "base/span.h"

typedef struct {
    const char *name; /* "reference/pantry-flours.yaml" */
    span bytes;
    span tree; /* the YAML read already (read/yaml_packed.h), a list; empty for a theme's files */
} reference_file;

/* The files src/reference/pantry-*.yaml and rules-*.yaml, in byte order of their names. */
extern const reference_file reference_pantry[];
extern const size_t reference_pantry_count;
extern const reference_file reference_rules[];
extern const size_t reference_rules_count;

/* The default theme, themes/plain: templates, style, script, words. Names are relative to the
 * theme's folder ("recipe.mustache"). */
extern const reference_file reference_theme[];
extern const size_t reference_theme_count;

#endif
