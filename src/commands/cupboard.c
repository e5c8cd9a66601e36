/* crumbnote cupboard: which recipes the named ingredients can make, swaps included. */
#include "commands/command.h"

#include "base/number.h"
#include "commands/setting.h"
#include "nutrition/lines.h"
#include "site/phrase.h"
#include "swap/cupboard.h"

#include <stdint.h>

enum { OPTION_SHORT_OF, OPTION_STAPLES };

/* One recipe of the answer. */
typedef struct {
    const recipe *of;
    cupboard_plan plan;
} answered;

typedef struct {
    answered *items;
    size_t count, capacity;
} answers;

static int compare_answers(const void *left, const void *right) {
    const answered *one = left, *other = right;
    int order = cupboard_compare(&one->plan, &other->plan);
    return order ? order : strcmp(one->of->slug, other->of->slug);
}

/* Reads one recipe after the other; those with errors are left out and reported. */
static answers answer_all(arena *a, const site_folder *site, const cupboard *own, size_t short_of,
                          problems *found, bool *machine_failed) {
    answers all = {0};
    for (size_t i = 0; i < site->recipe_files.count; i++) {
        problems its = problems_in(a);
        const recipe *of =
            site_folder_recipe(a, site, site->recipe_files.items[i].name, &its, machine_failed);
        if (its.errors)
            problems_join(found, &its);
        if (!of || its.errors || !of->publish)
            continue;
        recipe_facts about = facts_of(a, of, &site->shelf);
        answered one = {of, cupboard_plan_of(a, &site->book, &about, own)};
        if (!cupboard_plan_is_empty(&one.plan) && one.plan.missing_count <= short_of)
            LIST_ADD(a, &all, one);
    }
    if (all.count > 1)
        qsort(all.items, all.count, sizeof all.items[0], compare_answers);
    return all;
}

static view *document_of(arena *a, const answers *all) {
    view *list = view_list(a);
    for (size_t i = 0; i < all->count; i++) {
        const cupboard_plan *plan = &all->items[i].plan;
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "recipe", all->items[i].of->title);
        view_put_text(a, one, "file", all->items[i].of->file);
        view *missing = view_put_list(a, one, "missing");
        for (size_t k = 0; k < plan->missing_count; k++)
            view_put_text(a, missing, NULL, plan->missing[k]);
        view *swaps = view_put_list(a, one, "swaps");
        for (size_t k = 0; k < plan->swap_count; k++) {
            view *swap = view_put_object(a, swaps, NULL);
            view_put_text(a, swap, "from", plan->swaps[k].from->name);
            view_put_text(a, swap, "to", plan->swaps[k].to->name);
            view_put_text(a, swap, "verdict", verdict_word(plan->swaps[k].says));
        }
    }
    return list;
}

/* "Nothing is missing", "1 thing is missing": the heading over the recipes that lack so many. */
static void add_heading(arena *a, text *t, size_t missing) {
    if (missing == 0)
        text_add(t, "Nothing is missing\n");
    else
        text_format(t, "%s missing\n", phrase_count(a, missing, "thing"));
}

static void add_answer(arena *a, text *t, const answered *one) {
    const cupboard_plan *plan = &one->plan;
    text_format(t, "  %s (%s)\n", one->of->title, one->of->file);
    for (size_t k = 0; k < plan->swap_count; k++)
        text_format(t, "    %s %s instead of %s: %s\n", verdict_sign(plan->swaps[k].says),
                    plan->swaps[k].to->name, plan->swaps[k].from->name,
                    verdict_word(plan->swaps[k].says));
    if (plan->missing_count)
        text_format(
            t, "    missing: %s\n",
            words_joined(a, &(word_list){plan->missing, plan->missing_count, plan->missing_count}));
}

static exit_code say(arena *a, const answers *all, const cupboard *own, exit_code code) {
    text t = TEXT_EMPTY;
    if (!all->count)
        text_add(&t, "No recipe uses any of these, as written or swapped.\n");
    for (size_t i = 0; i < all->count; i++) {
        size_t missing = all->items[i].plan.missing_count;
        if (i == 0 || missing != all->items[i - 1].plan.missing_count)
            add_heading(a, &t, missing);
        add_answer(a, &t, &all->items[i]);
    }
    if (all->count && !own->has_staples)
        text_add(&t, "With --staples salt, leaveners and flavourings count as at hand.\n");
    if (all->count)
        text_add(&t,
                 "Each swap is judged by itself: several at once are a new recipe, to be tried.\n"
                 "How much, and what to expect: crumbnote swap RECIPE FROM TO\n");
    code = command_say(t.bytes, code);
    text_free(&t);
    return code;
}

/* Finds the named ingredients; false after saying which is unknown. */
static bool stock(arena *a, const pantry *shelf, const arguments *given, cupboard *own) {
    for (size_t i = 1; i < given->count; i++) {
        const ingredient *what = setting_ingredient(a, shelf, given->words[i]);
        if (!what)
            return false;
        LIST_ADD(a, own, what);
    }
    own->has_staples = argument_option(given, OPTION_STAPLES) != NULL;
    return true;
}

static bool read_short_of(const arguments *given, size_t *out) {
    const char *word = argument_option(given, OPTION_SHORT_OF);
    double most = 0;
    *out = SIZE_MAX;
    if (!word)
        return true;
    if (!number_is(span_of(word), &most) || most < 0 || most > UINT16_MAX)
        return false;
    *out = (size_t)most;
    return true;
}

static exit_code run(arena *a, const arguments *given) {
    problems found = problems_in(a);
    command_setting at = {0};
    cupboard own = {0};
    size_t short_of;
    if (!read_short_of(given, &short_of))
        return command_misused("--short-of wants a count, such as 2");
    if (!site_folder_read(a, given->words[0], &at.site, &found, &at.machine_failed))
        return setting_failed(&at, &found);
    if (!stock(a, &at.site.shelf, given, &own))
        return EXIT_USAGE;
    answers all = answer_all(a, &at.site, &own, short_of, &found, &at.machine_failed);
    command_report(&found);
    exit_code code = at.machine_failed ? EXIT_MACHINE : found.errors ? EXIT_CONTENT : EXIT_FINE;
    return given->json ? command_print(document_of(a, &all), code) : say(a, &all, &own, code);
}

const command command_cupboard = {
    .name = "cupboard",
    .usage = "cupboard FOLDER ITEM…",
    .summary = "which recipes these ingredients can make",
    .help = "FOLDER is a site folder, each ITEM an ingredient at hand, the one to use first named\n"
            "first. Lists the recipes that use any of them, as written or with a swap that\n"
            "works, works adjusted or makes another texture, by how much is missing. Tap water\n"
            "is always at hand.",
    .options = {{"--short-of", "N", "recipes that lack N things at the most"},
                {"--staples", NULL, "salt, leaveners and flavourings are at hand too"}},
    .least = 2,
    .most = ARGUMENTS_MOST,
    .run = run,
};
