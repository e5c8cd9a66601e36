#include "site/view_figures.h"

#include "base/number.h"
#include "nutrition/energy.h"
#include "nutrition/remarks.h"
#include "site/say.h"
#include "site/view_verdict.h"

#include <math.h>

recipe_figures figures_of(arena *a, const recipe *of, const site_settings *by) {
    recipe_figures all = {.of = of, .by = by, .macros = macros_of(of)};
    all.label = label_of(a, &all.macros, by->label, by->energy);
    all.quality = quality_of(a, of);
    all.claims = claims_of(a, of, &all.macros, &all.quality, by->law);
    all.allergens = allergens_of(of);
    all.may_contain = allergens_may_contain(of);
    all.diets = diets_of(of);
    all.cost = cost_of(of, &all.cost_lacking);
    return all;
}

const char *claim_word(const language *in, label_law law, size_t which) {
    return law == LAW_US ? in->claims_us[which] : in->claims_eu[which];
}

const char *claim_word_named(const language *in, label_law law, const char *name) {
    size_t which = 0;
    while (strcmp(claim_name(law, which), name) != 0)
        which++;
    return claim_word(in, law, which);
}

const char *label_line_name(const language *in, label_rule rule, const label_line *of) {
    const char *const *const panels[] = {
        [LABEL_US] = in->label_us, [LABEL_EU] = in->label_eu, [LABEL_NONE] = in->label_plain};
    return panels[rule][of->row];
}

/* A rounded figure of the panel: "12 g", "less than 1 g". */
static const char *label_text(arena *a, const language *in, const char *plain) {
    const size_t start = strlen(LABEL_LESS_THAN);
    if (plain && strncmp(plain, LABEL_LESS_THAN, start) == 0)
        return SAY(a, in, LESS_THAN, say_figures(a, in, plain + start));
    return say_figures(a, in, plain);
}

static void put_label(arena *a, const language *in, view *page, const nutrition_label *of) {
    static const char *const rules[] = {"us", "eu", "none"};
    bool daily = false;
    view *label = view_put_object(a, page, "label");
    view_put_text(a, label, "rule", rules[of->rule]);
    view_put_bool(a, label, "is_us", of->rule == LABEL_US);
    view_put_bool(a, label, "is_eu", of->rule == LABEL_EU);
    view *lines = view_put_list(a, label, "lines");
    for (size_t i = 0; i < of->count; i++) {
        const label_line *from = &of->lines[i];
        if (!from->known)
            continue;
        view *line = view_put_object(a, lines, NULL);
        view_put_text(a, line, "name", label_line_name(in, of->rule, from));
        view_put_text(a, line, "key", from->key);
        view_put_bool(a, line, "part", from->part);
        view_put_text(a, line, "portion", label_text(a, in, from->portion_text));
        view_put_text(a, line, "hundred", label_text(a, in, from->per_100_g_text));
        view_put_text(a, line, "daily_value", from->daily_value_text);
        view_put_bool(a, line, "lacking", from->at_least);
        daily = daily || from->daily_value_text;
    }
    view_put_bool(a, label, "has_daily_value", daily);
}

/* The numbers a reader looks for first, per portion. */
static void put_facts(arena *a, view *page, const recipe_figures *of) {
    const language *in = of->by->in;
    const struct {
        const char *name;
        nutrient which;
        int decimals;
    } rows[] = {{in->facts[FACT_PROTEIN], NUTRIENT_PROTEIN, 0},
                {in->facts[FACT_ENERGY], energy_nutrient(of->by->energy), 0},
                {in->facts[FACT_FAT], NUTRIENT_FAT, 0},
                {in->facts[FACT_CARBOHYDRATE], NUTRIENT_CARBOHYDRATE, 0},
                {in->facts[FACT_FIBRE], NUTRIENT_FIBRE, 0}};
    view *facts = view_put_list(a, page, "facts");
    const macros *portion = &of->macros.portion;
    for (size_t i = 0; i < COUNT(rows); i++) {
        if (!nutrient_known(&portion->of, rows[i].which))
            continue;
        view *fact = view_put_object(a, facts, NULL);
        view_put_text(a, fact, "name", rows[i].name);
        view_put_text(a, fact, "key", nutrient_json(rows[i].which));
        view_put_text(
            a, fact, "text",
            arena_format(a, "%s %s",
                         say_figure(a, in, portion->of.of[rows[i].which], rows[i].decimals),
                         nutrient_unit(rows[i].which)));
        view_put_bool(a, fact, "lacking", portion->lacking >> rows[i].which & 1u);
    }
}

/* Where the energy comes from, laid end to end in a bar of 100 units. */
static void put_energy_shares(arena *a, view *page, const recipe_figures *of) {
    const language *in = of->by->in;
    energy_shares shares = energy_shares_of(&of->macros.batch.of);
    const struct {
        const char *name, *key;
        double share;
    } rows[] = {{in->nutrients[NUTRIENT_PROTEIN], "protein", shares.protein},
                {in->nutrients[NUTRIENT_FAT], "fat", shares.fat},
                {in->nutrients[NUTRIENT_CARBOHYDRATE], "carbohydrate", shares.carbohydrate},
                {in->nutrients[NUTRIENT_FIBRE], "fibre", shares.fibre},
                {in->nutrients[NUTRIENT_POLYOLS], "polyols", shares.polyols},
                {in->nutrients[NUTRIENT_ALCOHOL], "alcohol", shares.alcohol}};
    view *list = view_put_list(a, page, "energy_shares");
    double x = 0;
    for (size_t i = 0; i < COUNT(rows); i++) {
        double percent = number_round(rows[i].share * 100, 1);
        if (percent < 1)
            continue;
        view *put = view_put_object(a, list, NULL);
        view_put_text(a, put, "name", rows[i].name);
        view_put_text(a, put, "key", rows[i].key);
        view_put_text(a, put, "percent", say_percent(a, in, percent / 100, 0));
        view_put_number(a, put, "x", x * 100, 2);
        view_put_number(a, put, "width", rows[i].share * 100, 2);
        x += rows[i].share;
    }
    view_put_bool(a, page, "has_energy_shares", list->count > 0);
}

static void put_lacking(arena *a, view *page, const recipe_figures *of) {
    static const nutrient asked[] = {NUTRIENT_ENERGY,    NUTRIENT_PROTEIN,      NUTRIENT_FAT,
                                     NUTRIENT_SATURATES, NUTRIENT_CARBOHYDRATE, NUTRIENT_FIBRE,
                                     NUTRIENT_SUGARS,    NUTRIENT_SODIUM};
    view *list = view_put_list(a, page, "lacking");
    for (size_t i = 0; i < COUNT(asked); i++) {
        if (!(of->macros.batch.lacking >> asked[i] & 1u))
            continue;
        word_list without = macros_lacking(a, of->of, asked[i]);
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "figure", of->by->in->nutrients[asked[i]]);
        view_put_text(a, one, "ingredients", say_list(a, of->by->in, without.items, without.count));
    }
    view_put_bool(a, page, "has_lacking", list->count > 0);
}

static view *claim_view(arena *a, const recipe_figures *by, view *list, size_t which) {
    const language *in = by->by->in;
    const claim *of = &by->claims.items[which];
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "claim", claim_word(in, by->by->law, which));
    view_put_text(a, put, "rule", by->by->law == LAW_US ? of->rule : SAID(in, CLAIM_RULE_EU));
    view_put_bool(a, put, "holds", of->holds);
    view_put_bool(a, put, "tested", of->tested);
    view_put_text(a, put, "because", say_message(a, in, of->because));
    return put;
}

static view *put_claims(arena *a, view *page, const recipe_figures *of) {
    view *all = view_put_list(a, page, "claims");
    for (size_t i = 0; i < of->claims.count; i++)
        claim_view(a, of, all, i);
    return all;
}

static void put_claims_held(arena *a, view *page, const recipe_figures *of) {
    view *held = view_put_list(a, page, "claims_held");
    for (size_t i = 0; i < of->claims.count; i++)
        if (of->claims.items[i].holds)
            claim_view(a, of, held, i);
    view_put_bool(a, page, "has_claims_held", held->count > 0);
    view *others = view_put_list(a, page, "claims_other");
    for (size_t i = 0; i < of->claims.count; i++)
        if (!of->claims.items[i].holds)
            claim_view(a, of, others, i);
    view_put_bool(a, page, "has_claims_other", others->count > 0);
}

static view *put_quality(arena *a, view *page, const char *key, const protein_quality *of) {
    view *put = view_put_object(a, page, key);
    view_put_bool(a, put, "known", of->known);
    view_put_number(a, put, "covered", of->covered, 3);
    if (of->known) {
        view_put_number(a, put, "pdcaas", of->pdcaas, 2);
        view_put_number(a, put, "score", of->score, 2);
        view_put_number(a, put, "score_2013", of->score_2013, 2);
        view_put_number(a, put, "digestibility", of->digestibility, 2);
        view_put_text(a, put, "limiting", amino_acid_key(of->limiting));
    }
    view *without = view_put_list(a, put, "without");
    for (size_t i = 0; i < of->without.count; i++)
        view_put_text(a, without, NULL, of->without.items[i]);
    return put;
}

static void put_quality_text(arena *a, const language *in, view *page, const protein_quality *of) {
    if (of->known) {
        view *put = put_quality(a, page, "quality", of);
        view_put_text(a, put, "text",
                      SAY(a, in, PROTEIN_QUALITY, say_figure(a, in, of->pdcaas, 2),
                          in->amino_acids[of->limiting]));
    } else if (of->without.count) {
        view_put_text(a, page, "quality_unknown",
                      SAY(a, in, PROTEIN_QUALITY_NOT_SCORED,
                          say_list(a, in, of->without.items, of->without.count)));
    }
}

static void put_allergens(arena *a, view *page, const recipe_figures *of) {
    const language *in = of->by->in;
    view *put = view_put_object(a, page, "allergens");
    view_put_bool(a, put, "has", of->allergens != 0);
    const char *contains = say_allergens(a, of->by->in, of->allergens, of->by->law);
    view_put_text(a, put, "contains_text", contains[0] ? contains : NULL);
    view *causes = view_put_list(a, put, "causes");
    allergen_causes by = allergen_causes_of(a, of->of);
    for (size_t i = 0; i < by.count; i++) {
        view *cause = view_put_object(a, causes, NULL);
        view_put_text(a, cause, "what", in->allergens[by.items[i].what]);
        view_put_text(a, cause, "because",
                      say_list(a, in, by.items[i].because.items, by.items[i].because.count));
        view_put_text(a, cause, "law_us", in->allergens_us[by.items[i].what]);
        view_put_text(a, cause, "law_eu", in->allergens_eu[by.items[i].what]);
    }
    const char *may = say_allergens(a, of->by->in, of->may_contain, of->by->law);
    view_put_text(a, put, "may_contain_text", may[0] ? may : NULL);
}

static void put_diets(arena *a, const language *in, view *page, diet_set set) {
    view *list = view_put_list(a, page, "diets");
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (set >> i & 1u)
            view_put_text(a, view_put_object(a, list, NULL), "word", in->diets[i]);
    view_put_bool(a, page, "has_diets", list->count > 0);
}

void view_put_cautions(arena *a, const language *in, view *to, caution_set given) {
    view *put = view_put_list(a, to, "cautions");
    for (size_t i = 0; i < CAUTION_COUNT; i++)
        if (given >> i & 1u)
            view_put_text(a, put, NULL, in->cautions[i]);
}

static void put_cautions(arena *a, view *page, const recipe_figures *of) {
    double protein_g = of->macros.portion.of.of[NUTRIENT_PROTEIN];
    caution_set given = cautions_of(of->of, protein_g);
    view_put_cautions(a, of->by->in, page, given);
    view_put_bool(a, page, "has_cautions", given != 0);
}

/* What the figures leave open or out. */
static void put_remarks(arena *a, view *page, const recipe_figures *of) {
    messages list = remarks_of(a, of->of, &of->macros, of->by->law);
    view *put = view_put_list(a, page, "remarks");
    for (size_t i = 0; i < list.count; i++)
        view_put_text(a, put, NULL, say_message(a, of->by->in, list.items[i]));
    view_put_bool(a, page, "has_remarks", list.count > 0);
}

char *money_text(arena *a, double amount, const char *currency) {
    text t = TEXT_EMPTY;
    number_add_fixed(&t, amount, 2);
    char *put = arena_format(a, "%s %s", t.bytes, currency ? currency : "");
    text_free(&t);
    return put;
}

static void put_cost(arena *a, view *page, const recipe_figures *of) {
    if (of->cost <= 0)
        return;
    view *put = view_put_object(a, page, "cost");
    view_put_text(a, put, "batch_text",
                  say_figures(a, of->by->in, money_text(a, of->cost, of->by->currency)));
    view_put_text(
        a, put, "portion_text",
        say_figures(a, of->by->in, money_text(a, of->cost / of->of->portions, of->by->currency)));
    if (of->cost_lacking)
        view_put_number(a, put, "lacking_count", (double)of->cost_lacking, 0);
}

void view_put_figures(arena *a, view *page, const recipe_figures *of) {
    put_label(a, of->by->in, page, &of->label);
    put_facts(a, page, of);
    put_energy_shares(a, page, of);
    put_lacking(a, page, of);
    put_claims(a, page, of);
    put_claims_held(a, page, of);
    put_quality_text(a, of->by->in, page, &of->quality);
    put_allergens(a, page, of);
    put_diets(a, of->by->in, page, of->diets);
    put_cautions(a, page, of);
    put_remarks(a, page, of);
    put_cost(a, page, of);
}

view *view_of_nutrients(arena *a, const macros *of, energy_rule energy) {
    const struct {
        const char *key;
        nutrient which;
    } rows[] = {{"energy_kcal", energy_nutrient(energy)},
                {"protein_g", NUTRIENT_PROTEIN},
                {"fat_g", NUTRIENT_FAT},
                {"saturates_g", NUTRIENT_SATURATES},
                {"carbohydrate_g", NUTRIENT_CARBOHYDRATE},
                {"fibre_g", NUTRIENT_FIBRE},
                {"sugars_g", NUTRIENT_SUGARS},
                {"salt_g", NUTRIENT_SODIUM},
                {"water_g", NUTRIENT_WATER}};
    view *put = view_object(a);
    for (size_t i = 0; i < COUNT(rows); i++) {
        double value =
            rows[i].which == NUTRIENT_SODIUM ? macros_salt_g(of) : of->of.of[rows[i].which];
        bool known = nutrient_known(&of->of, rows[i].which);
        view_put_number(a, put, rows[i].key, known ? value : (double)NAN, 3);
    }
    return put;
}

static void put_unweighed(arena *a, view *to, const recipe *of) {
    view *list = view_put_list(a, to, "unweighed");
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->weights[i].way == WEIGHT_UNKNOWN)
            view_put_text(a, list, NULL, of->lines.items[i].written);
}

static void put_label_object(arena *a, view *to, const nutrition_label *of) {
    view *label = view_put_object(a, to, "label");
    for (size_t i = 0; i < of->count; i++) {
        if (!of->lines[i].known)
            continue;
        view *line = view_put_object(a, label, of->lines[i].key);
        view_put_text(a, line, "name", of->lines[i].name);
        view_put_text(a, line, "portion", of->lines[i].portion_text);
        view_put_text(a, line, "per_100_g", of->lines[i].per_100_g_text);
        view_put_text(a, line, "daily_value", of->lines[i].daily_value_text);
        view_put_bool(a, line, "at_least", of->lines[i].at_least);
    }
}

/* Names of the figures that some ingredient lacks, for a reader of the JSON. */
static void put_lower_bounds(arena *a, view *to, unsigned lacking) {
    view *list = view_put_list(a, to, "lower_bounds");
    for (size_t i = 0; i < NUTRIENT_COUNT; i++)
        if (lacking >> i & 1u)
            view_put_text(a, list, NULL, nutrient_json((nutrient)i));
}

view *view_of_macros(arena *a, const recipe_figures *of) {
    const recipe *from = of->of;
    view *put = view_object(a);
    view_put_text(a, put, "recipe", from->title);
    view_put_text(a, put, "makes", say_yield(a, of->by->in, &from->makes));
    view_put_number(a, put, "portions", from->portions, 3);
    view_put_number(a, put, "batch_g", from->batch_g, 2);
    view_put_number(a, put, "baked_g", from->baked_g, 2);
    put_unweighed(a, put, from);
    view_put(put, "batch", view_of_nutrients(a, &of->macros.batch, of->by->energy));
    view_put(put, "portion", view_of_nutrients(a, &of->macros.portion, of->by->energy));
    view_put(put, "per_100_g", view_of_nutrients(a, &of->macros.per_100_g, of->by->energy));
    put_lower_bounds(a, put, of->macros.batch.lacking);
    put_label_object(a, put, &of->label);
    put_claims(a, put, of);
    view *list = view_put_list(a, put, "allergens");
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (of->allergens >> i & 1u)
            view_put_text(a, list, NULL, allergen_word((allergen)i));
    list = view_put_list(a, put, "diets");
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (of->diets >> i & 1u)
            view_put_text(a, list, NULL, diet_word((diet)i));
    put_quality(a, put, "protein_quality", &of->quality);
    return put;
}
