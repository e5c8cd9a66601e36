/* A site folder read whole: settings, pantry, rules, trials, the names of its recipes and pages.
 * The recipes themselves are read one by one by the workers. */
#ifndef READ_SITE_FOLDER_H
#define READ_SITE_FOLDER_H

#include "base/files.h"
#include "read/page.h"
#include "read/recipe.h"
#include "swap/match.h"

/* What the files say, as digests: whoever kept those of an earlier time sees what changed. */
typedef struct {
    digest settings, pantry, rules, trials,
        pages; /* of all bytes of these files, and their names */
} site_digests;

typedef struct {
    arena *home; /* borrowed: all below lives here */
    site_settings settings;
    pantry shelf;
    rule_book book;
    file_list recipe_files; /* names inside recipes/ */
    plain_page **pages;
    size_t page_count;
    file_list pictures; /* names inside pictures/ */
    site_digests digests;
} site_folder;

/* Reads the reference, where the site wants it, and, where `folder` is not null, the site in it.
 * False when the folder or its site.yaml can't be read at all (problems say why; `*machine_failed`
 * is set where the disk or a permission was at fault). */
bool site_folder_read(arena *home, const char *folder, site_folder *out, problems *found,
                      bool *machine_failed);

/* Reads the language that the settings name (read/language.h), in which the pages are to be said
 * from here on: until then, and for who never asks, all is said in English. False with problems
 * when that can't be done. */
bool site_folder_speak(site_folder *of, problems *found);

/* The settings of the site in `folder` alone; the defaults where they can't be read, without a
 * word: site_folder_read says why. */
site_settings site_folder_settings(arena *a, const char *folder);

/* Reads recipe `name` (inside recipes/) of the site into `a`. Only its file's name is kept where
 * the problems are, in found->home, since their places borrow it: `a` may be freed before. */
recipe *site_folder_recipe(arena *a, const site_folder *site, const char *name, problems *found,
                           bool *machine_failed);

/* The nearest parent folder of `path` that holds site.yaml, in the arena; null when none does. */
char *site_folder_of(arena *a, const char *path);

/* True when `path`, there or not, is the site folder `folder` itself or stands in one of its
 * folders of content: no place to write a site to. */
bool site_folder_is_content(arena *a, const char *folder, const char *path);

#endif
