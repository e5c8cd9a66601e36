/* Reads pantry files: the reference and a site's own. */
#ifndef READ_PANTRY_FILE_H
#define READ_PANTRY_FILE_H

#include "pantry/pantry.h"
#include "read/yaml.h"

/* Adds every entry of `bytes` to `shelf` (in shelf->home; energies filled in, figures checked).
 * `hers`: a site's own, which may override the reference. An entry with an error is left out and
 * the others are read on. */
void pantry_file_read(pantry *shelf, const char *file, span bytes, bool hers, problems *found);

/* The same for the entries of `list`, read already; the tree must live as long as the shelf. */
void pantry_entries_read(pantry *shelf, const yaml_node *list, bool hers, problems *found);

#endif
