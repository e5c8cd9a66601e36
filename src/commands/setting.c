#include "commands/setting.h"

#include <errno.h>

bool setting_read(arena *a, const char *path, command_setting *out, problems *found) {
    *out = (command_setting){0};
    bool read =
        site_folder_read(a, site_folder_of(a, path), &out->site, found, &out->machine_failed);
    return read && !out->machine_failed;
}

exit_code setting_failed(const command_setting *at, problems *found) {
    command_report(found);
    return at->machine_failed ? EXIT_MACHINE : EXIT_CONTENT;
}

const recipe *setting_recipe(arena *a, const char *path, command_setting *out, problems *found) {
    if (!setting_read(a, path, out, found))
        return NULL;
    span bytes;
    int why = 0;
    if (!file_read(a, path, &bytes, &why)) {
        /* A missing or odd file is the caller's slip; anything else is the machine's. */
        out->machine_failed = why != ENOENT && why != EINVAL && why != EFBIG && why != ENOTDIR;
        problem_add(found, (place){path, 0, 0}, "name a recipe file, for example recipes/rounds.md",
                    "can't be read: %s", why == EINVAL ? "it is no plain file" : strerror(why));
        return NULL;
    }
    size_t errors = found->errors;
    const recipe *of =
        recipe_read(a, path, bytes, &out->site.shelf, out->site.settings.cups, found);
    return found->errors > errors ? NULL : of;
}

const ingredient *setting_ingredient(arena *a, const pantry *shelf, const char *name) {
    const ingredient *what = pantry_find(shelf, span_of(name), a);
    if (what)
        return what;
    const char *nearest = pantry_nearest(shelf, span_of(name), a);
    command_refuse(nearest ? arena_format(a, "did you mean \"%s\"?", nearest)
                           : "add it to a file in pantry/, or write a name the pantry has",
                   "the pantry has no \"%s\"", name);
    return NULL;
}
