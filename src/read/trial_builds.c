#include "read/trial_builds.h"

#include "swap/recipe_build.h"

/* Bits of the lines that hold `what`. */
static unsigned long long lines_of(const recipe *of, const ingredient *what) {
    unsigned long long lines = 0;
    for (size_t i = 0; i < of->lines.count && i < FACTS_LINES_MOST; i++)
        if (of->lines.items[i].what == what)
            lines |= 1ull << i;
    return lines;
}

static void keep_build(arena *home, const recipe_facts *about, trial *bake) {
    recipe_build *kept = ARENA_NEW(home, recipe_build);
    *kept = build_of(facts_for(about, lines_of(about->of, bake->replaced.what)));
    kept->kind = arena_copy(home, span_of(kept->kind));
    bake->build = kept;
    bake->title = arena_copy(home, span_of(about->of->title));
    bake->published = about->of->publish;
}

/* Works out the builds of the trials `first` to `end`, which are of one recipe. False when the
 * machine failed. */
static bool read_builds(arena *a, site_folder *site, trial *const *first, trial *const *end,
                        problems *found) {
    bool failed = false;
    problems unsaid = problems_in(a);
    const char *file = (*first)->recipe_file;
    const recipe *of = file ? site_folder_recipe(a, site, file, &unsaid, &failed) : NULL;
    if (failed)
        problems_join(found, &unsaid);
    if (!of || unsaid.errors)
        return !failed;
    recipe_facts about = facts_of(a, of, &site->shelf);
    for (trial *const *bake = first; bake < end; bake++)
        keep_build(site->home, &about, *bake);
    return true;
}

static int compare_trials(const void *left, const void *right) {
    return trial_compare(*(const trial *const *)left, *(const trial *const *)right);
}

bool trial_builds_read(site_folder *site, problems *found) {
    bool good = true;
    trials *log = &site->book.log;
    arena *a = arena_new(), *lasting = arena_new();
    trial **sorted = ARENA_ARRAY(lasting, trial *, log->count + 1);
    for (size_t i = 0; i < log->count; i++)
        sorted[i] = &log->items[i];
    qsort(sorted, log->count, sizeof *sorted, compare_trials);
    for (size_t i = 0, end; i < log->count; i = end) {
        for (end = i + 1; end < log->count; end++)
            if (strcmp(sorted[end]->recipe, sorted[i]->recipe) != 0)
                break;
        good = read_builds(a, site, sorted + i, sorted + end, found) && good;
        arena_reset(a);
    }
    arena_free(lasting);
    arena_free(a);
    return good;
}
