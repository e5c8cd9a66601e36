#include "read/recipe_files.h"

names recipe_slugs_of(arena *a, const site_folder *site) {
    names slugs = names_in(a);
    for (size_t i = 0; i < site->recipe_files.count; i++)
        (void)names_add(&slugs, span_of(page_slug(a, site->recipe_files.items[i].name)), i, NULL);
    return slugs;
}

static void check_picture(const site_folder *site, const recipe *of, problems *found) {
    if (!of->picture)
        return;
    for (size_t i = 0; i < site->pictures.count; i++)
        if (strcmp(site->pictures.items[i].name, of->picture) == 0)
            return;
    problem_add(found, of->picture_at, "put the file into pictures/, or mend the name",
                "there is no picture \"%s\" in pictures/", of->picture);
}

/* Two files whose names make one slug would write one page over the other. */
static void check_slug(const site_folder *site, const names *slugs, const recipe *of,
                       const char *name, problems *found) {
    size_t first;
    if (!names_find(slugs, span_of(of->slug), &first))
        return;
    const char *other = site->recipe_files.items[first].name;
    if (strcmp(other, name) != 0)
        problem_add(found, (place){of->file, 1, 1}, "rename one of the two files",
                    "recipes/%s has the same page, recipes/%s/", other, of->slug);
}

void recipe_files_check(const site_folder *site, const names *slugs, const recipe *of,
                        const char *name, problems *found) {
    check_picture(site, of, found);
    check_slug(site, slugs, of, name, found);
}
