/* crumbnote macros: the figures of one recipe. */
#include "commands/command.h"

#include "base/number.h"
#include "commands/setting.h"
#include "nutrition/cautions.h"
#include "nutrition/lines.h"
#include "nutrition/remarks.h"
#include "site/say.h"
#include "site/view_figures.h"

static void add_row(text *t, const char *name, const char *portion, const char *hundred) {
    text_format(t, "  %-28s %14s %14s\n", name, portion, hundred);
}

/* Baked, and how much it loses is not said: then nothing is known "as baked". */
static bool is_loss_unknown(const recipe *of) {
    return !of->bake_loss_stated && recipe_is_cooked(of);
}

static void add_panel(text *t, const recipe *from, const nutrition_label *of) {
    add_row(t, "", "a portion", is_loss_unknown(from) ? "100 g as mixed" : "100 g baked");
    for (size_t i = 0; i < of->count; i++) {
        const label_line *line = &of->lines[i];
        if (!line->known)
            continue;
        char name[64];
        snprintf(name, sizeof name, "%s%s%s", line->part ? "  " : "", line->name,
                 line->at_least ? " (at least)" : "");
        add_row(t, name, line->portion_text, line->per_100_g_text);
    }
}

/* Each line's weight and protein: where the figures come from. */
static void add_lines(arena *a, const language *in, text *t, const recipe *of) {
    text_add(t, "\n  Line by line (protein, energy as the source states it):\n");
    for (size_t i = 0; i < of->lines.count; i++) {
        const ingredient *what = of->lines.items[i].what;
        if (!what || of->weights[i].grams <= 0)
            continue;
        macros m = macros_of_ingredient(what, of->weights[i].grams);
        text_format(t, "  %9s  %-30s %8s %10s  %s\n", kitchen_weight(a, of->weights[i].grams),
                    what->name, say_amount(a, in, m.of.of[NUTRIENT_PROTEIN], "g"),
                    say_amount(a, in, m.of.of[NUTRIENT_ENERGY], "kcal"),
                    what->composition_source.text ? what->composition_source.text : "");
    }
}

static void add_lacking(arena *a, text *t, const recipe_figures *of) {
    static const nutrient asked[] = {NUTRIENT_ENERGY,    NUTRIENT_PROTEIN,      NUTRIENT_FAT,
                                     NUTRIENT_SATURATES, NUTRIENT_CARBOHYDRATE, NUTRIENT_FIBRE,
                                     NUTRIENT_SUGARS,    NUTRIENT_SODIUM};
    for (size_t i = 0; i < COUNT(asked); i++) {
        if (!(of->macros.batch.lacking >> asked[i] & 1u))
            continue;
        word_list without = macros_lacking(a, of->of, asked[i]);
        text_format(t, "  %s is a lower bound: no figure for %s\n", nutrient_key(asked[i]),
                    words_joined(a, &without));
    }
}

/* What the figures leave open, as the page says it. */
static void add_remarks(arena *a, text *t, const recipe_figures *of) {
    messages all = remarks_of(a, of->of, &of->macros, of->by->law);
    for (size_t i = 0; i < all.count; i++)
        text_format(t, "  %s\n", say_message(a, of->by->in, all.items[i]));
}

static exit_code tell(arena *a, const recipe_figures *of) {
    text t = TEXT_EMPTY;
    const recipe *from = of->of;
    text_format(&t, "%s: %s %s, %s portions, %s as mixed", from->title,
                number_copy(a, from->makes.count, 2), from->makes.noun,
                number_copy(a, from->portions, 2), kitchen_weight(a, from->batch_g));
    if (!is_loss_unknown(from))
        text_format(&t, ", %s as baked", kitchen_weight(a, from->baked_g));
    text_add(&t, "\n\n");
    add_panel(&t, from, &of->label);
    add_lacking(a, &t, of);
    add_lines(a, of->by->in, &t, from);
    const char *contains = allergen_statement(a, of->allergens, of->by->law);
    text_format(&t, "\n  Contains: %s\n",
                contains[0] ? contains
                            : "no listed allergen by its "
                              "ingredients; read every label");
    for (size_t i = 0; i < of->claims.count; i++)
        if (of->claims.items[i].holds)
            text_format(&t, "  Claim that holds: %s (%s)\n", of->claims.items[i].claim,
                        say_message(a, of->by->in, of->claims.items[i].because));
    add_remarks(a, &t, of);
    text_add(&t, "  Estimates from tables; the labels of your packs come first.\n");
    exit_code code = command_say(t.bytes, EXIT_FINE);
    text_free(&t);
    return code;
}

static exit_code run(arena *a, const arguments *given) {
    problems found = problems_in(a);
    command_setting at;
    const recipe *of = setting_recipe(a, given->words[0], &at, &found);
    if (!of)
        return setting_failed(&at, &found);
    command_report(&found);
    recipe_figures figures = figures_of(a, of, &at.site.settings);
    return given->json ? command_print(view_of_macros(a, &figures), EXIT_FINE) : tell(a, &figures);
}

const command command_macros = {
    .name = "macros",
    .usage = "macros RECIPE",
    .summary = "the figures of one recipe",
    .help = "RECIPE is a .md file. Shows macros for the batch, a portion and 100 g as baked,\n"
            "each line's part and source, allergens and the claims that hold.",
    .least = 1,
    .most = 1,
    .run = run,
};
