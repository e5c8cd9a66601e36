/* crumbnote formulate: amounts for a new recipe, from a brief. */
#include "commands/command.h"

#include "base/words.h"
#include "commands/setting.h"
#include "read/formula_brief.h"
#include "site/formula_draft.h"
#include "site/view_formula.h"

#include <errno.h>

enum { OPTION_FOLDER, OPTION_RECIPE };

/* Reads the site of `--folder`, or the one around the brief. */
static bool read_setting(arena *a, const arguments *given, command_setting *at, problems *found) {
    const char *folder = argument_option(given, OPTION_FOLDER);
    if (!folder)
        return setting_read(a, given->words[0], at, found);
    *at = (command_setting){0};
    return site_folder_read(a, folder, &at->site, found, &at->machine_failed);
}

static const formula_brief *read_brief(arena *a, const char *path, command_setting *at,
                                       problems *found) {
    span bytes;
    int why = 0;
    const site_settings *by = &at->site.settings;
    const brief_setting with = {&at->site.shelf, by->cups, by->energy};
    if (file_read(a, path, &bytes, &why))
        return formula_brief_read(a, path, bytes, &with, found);
    at->machine_failed = why != ENOENT && why != EINVAL && why != EFBIG && why != ENOTDIR;
    problem_add(found, (place){path, 0, 0}, "name a brief, for example rounds.yaml",
                "can't be read: %s", why == EINVAL ? "it is no plain file" : strerror(why));
    return NULL;
}

/* What each recipe of the site teaches; those with errors teach nothing, and `check` says why. */
static build_samples learn(arena *a, const site_folder *site, const formula_brief *for_brief) {
    build_samples all = {0};
    for (size_t i = 0; i < site->recipe_files.count; i++) {
        problems unheard = problems_in(a);
        bool machine_failed;
        const recipe *of = site_folder_recipe(a, site, site->recipe_files.items[i].name, &unheard,
                                              &machine_failed);
        if (!of || unheard.errors || of->unweighed)
            continue;
        recipe_facts about = facts_of(a, of, &site->shelf);
        build_sample one = build_sample_of(&about);
        one.portion_g = build_portion_g(a, &about, &for_brief->makes, for_brief->portions);
        LIST_ADD(a, &all, one);
    }
    return all;
}

/* The draft read back, for its figures. */
static const recipe *read_back(arena *a, const site_folder *site, const char *draft) {
    problems unheard = problems_in(a);
    return recipe_read(a, "draft.md", span_of(draft), &site->shelf, site->settings.cups, &unheard);
}

static exit_code tell(arena *a, const formula_report *report, const arguments *given) {
    exit_code code = report->by->met ? EXIT_FINE : EXIT_CONTENT;
    if (given->json)
        return command_print(view_of_formula(a, report), code);
    text t = TEXT_EMPTY;
    bool recipe_only = argument_option(given, OPTION_RECIPE) && report->draft;
    if (recipe_only)
        text_add(&t, report->draft);
    else
        formula_add_words(a, &t, report);
    code = command_say(t.bytes, code);
    text_free(&t);
    return code;
}

static exit_code run(arena *a, const arguments *given) {
    problems found = problems_in(a);
    command_setting at;
    if (!read_setting(a, given, &at, &found))
        return setting_failed(&at, &found);
    const formula_brief *of = read_brief(a, given->words[0], &at, &found);
    if (!of)
        return setting_failed(&at, &found);
    build_samples samples = learn(a, &at.site, of);
    const char *kind = words_fold(a, span_of(of->kind)).at;
    build_norms norms = build_norms_of(a, &samples, kind, of->settings);
    if (!norms.count && of->batch_g <= 0) {
        problem_add(&found, (place){given->words[0], 0, 0}, "for example: batch: 330 g",
                    "no recipe tells how heavy this build is: the brief needs \"batch\"");
        return setting_failed(&at, &found);
    }
    command_report(&found);
    formula_answer by = formula_solve(a, of, &norms);
    formula_report report = {.of = of, .by = &by, .norms = &norms, .settings = &at.site.settings};
    recipe_figures figures;
    if (by.found) {
        report.draft =
            formula_draft(a, of, &by, &norms, (saying){at.site.settings.in, at.site.settings.cups});
        const recipe *draft = read_back(a, &at.site, report.draft);
        report.sets = facts_of(a, draft, &at.site.shelf).sets;
        figures = figures_of(a, draft, &at.site.settings);
        report.figures = &figures;
    }
    return tell(a, &report, given);
}

const command command_formulate = {
    .name = "formulate",
    .usage = "formulate BRIEF [--folder DIR] [--recipe]",
    .summary = "amounts for a new recipe, from targets and a build",
    .help =
        "BRIEF is a YAML file: title, kind, set-by, makes, portion, batch, bake-loss;\n"
        "ingredients, each a name, a line with a fixed amount, or {ingredient:, least:, most:,\n"
        "step:, note:}; targets a portion, such as protein: at least 24 g. The balance of the\n"
        "build is learned from the recipes of the site around the brief. Proposes whole kitchen\n"
        "steps, says how far each target is met and, where that can't be, what stands in the\n"
        "way (exit code 1).",
    .options = {{"--folder", "DIR", "the site folder to learn from"},
                {"--recipe", NULL, "a recipe file on standard output, not published yet"}},
    .least = 1,
    .most = 1,
    .run = run,
};
