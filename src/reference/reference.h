/* The reference pantry and rules and the languages, compiled in from the YAML files beside this
 * header, the themes, and what a new site folder begins with. */
#ifndef REFERENCE_REFERENCE_H
#define REFERENCE_REFERENCE_H

#include "base/span.h"

typedef struct {
    const char *name; /* "reference/pantry-flours.yaml" */
    span bytes;
    span tree; /* the YAML read already (read/yaml_packed.h); else empty */
} reference_file;

/* The files src/reference/pantry-*.yaml and rules-*.yaml, in byte order of their names. */
extern const reference_file reference_pantry[];
extern const size_t reference_pantry_count;
extern const reference_file reference_rules[];
extern const size_t reference_rules_count;

/* The languages, src/reference/language-*.yaml, each a mapping (read/language.h). */
extern const reference_file reference_languages[];
extern const size_t reference_languages_count;

/* The themes: templates, styles, scripts, words; in byte order of their names, which begin with the
 * theme's ("plain/recipe.mustache"). */
extern const reference_file reference_themes[];
extern const size_t reference_themes_count;

/* What `crumbnote start` writes: every file under src/commands/start, in byte order of its name
 * there ("recipes/rounds.md"). A part that begins with "dot-" stands for one that begins with a
 * dot. */
extern const reference_file reference_start[];
extern const size_t reference_start_count;

/* The hook of a git repository that publishes at each push: the one file in src/commands/hook. */
extern const reference_file reference_hook[];
extern const size_t reference_hook_count;

/* What the preview adds to pages: every file under src/preview/page. */
extern const reference_file reference_preview[];
extern const size_t reference_preview_count;

#endif
