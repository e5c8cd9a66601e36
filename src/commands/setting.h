/* Where a command works: the site folder around a path, or the reference alone. */
#ifndef COMMANDS_SETTING_H
#define COMMANDS_SETTING_H

#include "commands/command.h"
#include "read/site_folder.h"

typedef struct {
    site_folder site;
    bool machine_failed;
} command_setting;

/* Reads the site whose folder is the nearest parent of `path` with a site.yaml, or the reference
 * alone. False when it can't be read, or not all of it: no answer is worked out from a part.
 * Problems of the site that have nothing to do with the question are left out but for errors. */
bool setting_read(arena *a, const char *path, command_setting *out, problems *found);

/* Reports and gives the exit code after setting_read or setting_recipe failed. */
exit_code setting_failed(const command_setting *at, problems *found);

/* Reads the recipe file at `path` and the site around it. Null when it can't be used; problems
 * say why. */
const recipe *setting_recipe(arena *a, const char *path, command_setting *out, problems *found);

/* The ingredient called `name`. Null, after saying so as command_misused does, when the pantry has
 * none of that name. */
const ingredient *setting_ingredient(arena *a, const pantry *shelf, const char *name);

#endif
