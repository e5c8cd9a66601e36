#include "read/site_folder.h"

#include "base/list.h"
#include "base/names.h"
#include "pantry/borrowed.h"
#include "read/fields.h"
#include "read/language.h"
#include "read/pantry_file.h"
#include "read/rules.h"
#include "read/trials.h"
#include "read/yaml_packed.h"
#include "reference/reference.h"

#include <errno.h>

/* A site folder being read. */
typedef struct {
    arena *home;
    const char *folder;
    site_folder *out;
    problems *found;
    bool *machine_failed;
} folder_reader;

/* -- files
 * ------------------------------------------------------------------------------------------- */

/* True when `why` is the fault of the machine, not of the file. What was listed and is gone is that
 * too: the next time all is well. */
static bool is_machine_fault(int why) {
    return why != ENOTDIR && why != EINVAL && why != EFBIG && why != EISDIR;
}

static void add_unreadable(const char *file, int why, problems *found, bool *machine_failed) {
    const char *because = why == EFBIG    ? "the file is larger than 16 MB"
                          : why == EINVAL ? "this is no ordinary file"
                                          : strerror(why);
    problem_add(found, (place){.file = file}, why == EACCES ? "check its permissions" : NULL,
                "can't read it: %s", because);
    *machine_failed = *machine_failed || is_machine_fault(why);
}

/* Reads `file` (relative to the site folder). */
static bool read_bytes(const folder_reader *r, const char *file, span *bytes) {
    int why;
    if (file_read(r->home, path_join(r->home, r->folder, file), bytes, &why))
        return true;
    add_unreadable(file, why, r->found, r->machine_failed);
    return false;
}

/* A folder of the site that is a link to elsewhere would publish what lies there. */
static bool leads_out(const folder_reader *r, const char *name) {
    const char *path = path_join(r->home, r->folder, name);
    bool out = folder_exists(path) && !path_leads_inside(r->folder, path);
    if (out)
        problem_add(r->found, (place){.file = name}, "move the files here, or link the other way",
                    "this folder is a link that leads out of the site");
    return out;
}

/* The files of the folder `name` whose names end in `suffix`; a warning for each other one, since
 * a table that is silently not read is worse than a strange file. */
static file_list list_files(const folder_reader *r, const char *name, const char *suffix) {
    file_list all = {0}, wanted = {0};
    int why;
    if (leads_out(r, name))
        return wanted;
    if (!file_list_folder(r->home, path_join(r->home, r->folder, name), NULL, &all, &why))
        add_unreadable(name, why, r->found, r->machine_failed);
    for (size_t i = 0; i < all.count; i++) {
        if (span_ends(span_of(all.items[i].name), suffix))
            LIST_ADD(r->home, &wanted, all.items[i]);
        else
            problem_warn(r->found, (place){.file = path_join(r->home, name, all.items[i].name)},
                         "rename it or move it elsewhere", "not read: its name does not end in %s",
                         suffix);
    }
    return wanted;
}

/* -- what the site holds
 * ------------------------------------------------------------------------------ */

/* What is done with each file of a folder. */
typedef void file_taker(const folder_reader *r, const char *file, span bytes);

/* Reads `file` and joins what it says to `*all`. */
static bool read_digested(const folder_reader *r, const char *file, span *bytes, digest *all) {
    if (!read_bytes(r, file, bytes))
        return false;
    *all = digest_join(digest_join_words(*all, file), digest_of(*bytes));
    return true;
}

static void each_file(const folder_reader *r, const char *folder, file_taker *take, digest *all) {
    file_list files = list_files(r, folder, ".yaml");
    for (size_t i = 0; i < files.count; i++) {
        span bytes;
        const char *file = path_join(r->home, folder, files.items[i].name);
        if (read_digested(r, file, &bytes, all))
            take(r, file, bytes);
    }
}

static void take_pantry(const folder_reader *r, const char *file, span bytes) {
    pantry_file_read(&r->out->shelf, file, bytes, true, r->found);
}

static void take_rules(const folder_reader *r, const char *file, span bytes) {
    rules_read(r->home, file, bytes, SAID_BY_OWN_RULE, &r->out->shelf, &r->out->book.rules,
               r->found);
}

static void take_trials(const folder_reader *r, const char *file, span bytes) {
    trials_read(r->home, file, bytes, &r->out->shelf, &r->out->book.log, r->found);
}

static int compare_pages(const void *left, const void *right) {
    const plain_page *a = *(plain_page *const *)left, *b = *(plain_page *const *)right;
    if (a->order != b->order)
        return a->order < b->order ? -1 : 1;
    int titles = strcmp(a->title, b->title);
    return titles ? titles : strcmp(a->file, b->file);
}

/* Two files whose names make one slug would write one page over the other. */
static void add_page(const folder_reader *r, plain_page *page) {
    for (size_t i = 0; i < r->out->page_count; i++)
        if (strcmp(r->out->pages[i]->slug, page->slug) == 0) {
            problem_add(r->found, (place){page->file, 1, 1}, "rename one of the two files",
                        "%s has the same page, pages/%s/", r->out->pages[i]->file, page->slug);
            return;
        }
    r->out->pages[r->out->page_count++] = page;
}

static void read_pages(const folder_reader *r) {
    file_list files = list_files(r, "pages", ".md");
    r->out->pages = ARENA_ARRAY(r->home, plain_page *, files.count);
    for (size_t i = 0; i < files.count; i++) {
        span bytes;
        const char *file = path_join(r->home, "pages", files.items[i].name);
        plain_page *page = read_digested(r, file, &bytes, &r->out->digests.pages)
                               ? page_read(r->home, file, bytes, r->found)
                               : NULL;
        if (page)
            add_page(r, page);
    }
    if (r->out->page_count > 1)
        qsort(r->out->pages, r->out->page_count, sizeof r->out->pages[0], compare_pages);
}

static void read_pictures(const folder_reader *r) {
    int why;
    if (leads_out(r, "pictures"))
        return;
    if (!file_list_folder(r->home, path_join(r->home, r->folder, "pictures"), NULL,
                          &r->out->pictures, &why))
        add_unreadable("pictures", why, r->found, r->machine_failed);
}

/* Adds an error where the recipe of `bake` is not among the files. */
static void add_unknown_recipe(const folder_reader *r, const trial *bake) {
    const file_list *files = &r->out->recipe_files;
    const char **slugs = ARENA_ARRAY(r->home, const char *, files->count);
    for (size_t i = 0; i < files->count; i++)
        slugs[i] = page_slug(r->home, files->items[i].name);
    field_add_unknown((located){span_of(bake->recipe), bake->at}, "a recipe of this site",
                      (field_choices){slugs, files->count}, r->found);
}

/* Finds the file of each trial's recipe. A trial of a recipe that is not there would never be
 * seen. */
static void find_tried_recipes(const folder_reader *r) {
    const file_list *files = &r->out->recipe_files;
    trials *log = &r->out->book.log;
    names by_slug = names_in(r->home);
    for (size_t i = 0; log->count && i < files->count; i++)
        (void)names_add(&by_slug, span_of(page_slug(r->home, files->items[i].name)), i, NULL);
    for (size_t i = 0; i < log->count; i++) {
        size_t which;
        if (names_find(&by_slug, span_of(log->items[i].recipe), &which))
            /* The analyser does not see that where a name was found there are files.
             * NOLINTNEXTLINE(clang-analyzer-core.NullDereference) */
            log->items[i].recipe_file = files->items[which].name;
        else
            add_unknown_recipe(r, &log->items[i]);
    }
}

static void check_trial_picture(const folder_reader *r, const trial *bake, const char *name) {
    const file_list *pictures = &r->out->pictures;
    for (size_t i = 0; name && i < pictures->count; i++)
        if (strcmp(pictures->items[i].name, name) == 0)
            return;
    if (name)
        problem_add(r->found, bake->at, "put the file into pictures/, or mend the name",
                    "there is no picture \"%s\" in pictures/", name);
}

static void check_trial_pictures(const folder_reader *r) {
    for (size_t i = 0; i < r->out->book.log.count; i++) {
        const trial *bake = &r->out->book.log.items[i];
        check_trial_picture(r, bake, bake->picture_as_written);
        check_trial_picture(r, bake, bake->picture_swapped);
    }
}

static void read_site(const folder_reader *r) {
    site_digests *digests = &r->out->digests;
    each_file(r, "pantry", take_pantry, &digests->pantry);
    pantry_borrow(&r->out->shelf, r->found);
    pantry_need_water(&r->out->shelf, r->found);
    each_file(r, "rules", take_rules, &digests->rules);
    each_file(r, "trials", take_trials, &digests->trials);
    r->out->recipe_files = list_files(r, "recipes", ".md");
    find_tried_recipes(r);
    read_pages(r);
    read_pictures(r);
    check_trial_pictures(r);
}

/* -- the whole
 * ---------------------------------------------------------------------------------------------- */

static bool read_settings(const folder_reader *r) {
    span bytes;
    int why;
    if (!file_read(r->home, path_join(r->home, r->folder, "site.yaml"), &bytes, &why)) {
        if (why == ENOENT || why == ENOTDIR)
            problem_add(r->found, (place){.file = r->folder},
                        "a site folder holds site.yaml with a title and an address",
                        folder_exists(r->folder) ? "there is no site.yaml in this folder"
                                                 : "there is no such folder");
        else
            add_unreadable("site.yaml", why, r->found, r->machine_failed);
        return false;
    }
    r->out->digests.settings = digest_of(bytes);
    (void)site_settings_read(r->home, "site.yaml", bytes, &r->out->settings, r->found);
    r->out->settings.folder = r->folder;
    return true;
}

static void read_reference_pantry(site_folder *out, problems *found) {
    for (size_t i = 0; i < reference_pantry_count; i++)
        pantry_entries_read(
            &out->shelf, yaml_unpack(out->home, reference_pantry[i].name, reference_pantry[i].tree),
            false, found);
}

/* The kinds of the reference rules are checked when the program is tested, not each time. */
static void read_reference_rules(site_folder *out, problems *found) {
    const rule_reader with = {out->home, &out->shelf, false, found};
    for (size_t i = 0; i < reference_rules_count; i++)
        rules_read_list(&with,
                        yaml_unpack(out->home, reference_rules[i].name, reference_rules[i].tree),
                        SAID_BY_REFERENCE, &out->book.rules);
}

bool site_folder_read(arena *home, const char *folder, site_folder *out, problems *found,
                      bool *machine_failed) {
    *out =
        (site_folder){.home = home, .settings = site_settings_default(), .shelf = pantry_in(home)};
    *machine_failed = false;
    folder_reader r = {home, folder, out, found, machine_failed};
    if (folder && !read_settings(&r))
        return false;
    out->settings.in = language_english(home);
    if (out->settings.reference)
        read_reference_pantry(out, found);
    if (folder)
        read_site(&r);
    if (out->settings.reference)
        read_reference_rules(out, found);
    out->book.shelf = &out->shelf;
    rule_book_index(home, &out->book);
    return true;
}

bool site_folder_speak(site_folder *of, problems *found) {
    language *spoken = ARENA_NEW(of->home, language);
    bool fine = language_read(of->home, of->settings.folder, of->settings.language, spoken, found);
    of->settings.in = spoken;
    of->digests.settings = digest_join(of->digests.settings, spoken->own);
    return fine;
}

static recipe *recipe_of(arena *a, const site_folder *site, const char *file, span bytes,
                         problems *found) {
    recipe *of = recipe_read(a, file, bytes, &site->shelf, site->settings.cups, found);
    if (of)
        of->content = digest_of(bytes);
    return of;
}

site_settings site_folder_settings(arena *a, const char *folder) {
    site_settings settings = site_settings_default();
    problems unsaid = problems_in(a);
    span bytes;
    int why;
    if (file_read(a, path_join(a, folder, "site.yaml"), &bytes, &why))
        (void)site_settings_read(a, "site.yaml", bytes, &settings, &unsaid);
    return settings;
}

recipe *site_folder_recipe(arena *a, const site_folder *site, const char *name, problems *found,
                           bool *machine_failed) {
    span bytes;
    int why;
    const char *file = path_join(a, "recipes", name);
    *machine_failed = false;
    if (file_read(a, path_join(a, site->settings.folder, file), &bytes, &why))
        return recipe_of(a, site, file, bytes, found);
    add_unreadable(file, why, found, machine_failed);
    return NULL;
}

char *site_folder_of(arena *a, const char *path) {
    char *real = path_real(path_folder(a, path));
    char *folder = real ? arena_copy(a, span_of(real)) : NULL;
    free(real);
    while (folder && !file_exists(path_join(a, folder, "site.yaml")))
        folder = strcmp(folder, "/") == 0 ? NULL : path_folder(a, folder);
    return folder;
}

/* `path` with links followed, as far as it is there. */
static const char *real_as_far(arena *a, const char *path) {
    char *real = path_real(path);
    if (!real && strcmp(path_folder(a, path), path) != 0)
        return path_join(a, real_as_far(a, path_folder(a, path)), path_name(path));
    const char *copy = arena_copy(a, span_of(real ? real : path));
    free(real);
    return copy;
}

bool site_folder_is_content(arena *a, const char *folder, const char *path) {
    static const char *const parts[] = {"recipes", "pages",  "pantry",
                                        "rules",   "trials", "pictures"};
    const char *real = real_as_far(a, path), *home = real_as_far(a, folder);
    if (strcmp(real, home) == 0)
        return true;
    for (size_t i = 0; i < COUNT(parts); i++) {
        const char *part = path_join(a, home, parts[i]);
        if (span_begins(span_of(real), part) &&
            (real[strlen(part)] == '/' || real[strlen(part)] == '\0'))
            return true;
    }
    return false;
}
