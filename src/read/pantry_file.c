#include "read/pantry_file.h"

#include "base/words.h"
#include "measure/units.h"
#include "nutrition/energy.h"
#include "read/composition.h"
#include "read/fields.h"
#include "read/source.h"
#include "read/yaml_digest.h"

static const char *const keys[] = {"name",
                                   "also",
                                   "plural",
                                   "family",
                                   "kind",
                                   "origin",
                                   "about",
                                   "per-100-g",
                                   "label",
                                   "measures",
                                   "water-uptake",
                                   "heat-set",
                                   "sweetness",
                                   "sweetness-source",
                                   "allergens",
                                   "may-contain",
                                   "gluten",
                                   "amino-acids",
                                   "amino-acids-source",
                                   "digestibility",
                                   "digestibility-source",
                                   "raw",
                                   "price"};

static const char *const family_words[] = {
#define FAMILY(constant, word) word,
    FAMILY_LIST(FAMILY)
#undef FAMILY
};
static const char *const allergen_words[] = {
#define ALLERGEN(constant, word, us, eu) word,
    ALLERGEN_LIST(ALLERGEN)
#undef ALLERGEN
};
/* In the order of gluten and raw_state. */
static const char *const gluten_words[] = {"no", "oats", "yes"};
static const char *const raw_words[] = {"egg", "flour"};

/* An entry being read. */
typedef struct {
    arena *home;
    const yaml_node *node;
    bool hers;
    ingredient *out;
    problems *found;
} entry;

/* -- what it is
 * ------------------------------------------------------------------------------------- */

static void read_family(const entry *e) {
    size_t chosen;
    if (fields_need(e->node, "family", "an ingredient", e->found) &&
        field_choice(e->node, "family", FIELD_CHOICES(family_words), &chosen, e->found))
        e->out->in = (family)chosen;
}

static void read_origin(const entry *e) {
    const char *words[ORIGIN_COUNT];
    size_t chosen;
    for (size_t i = 0; i < ORIGIN_COUNT; i++)
        words[i] = origin_word((origin)i);
    if (fields_need(e->node, "origin", "an ingredient", e->found) &&
        field_choice(e->node, "origin", FIELD_CHOICES(words), &chosen, e->found))
        e->out->from = (origin)chosen;
}

static void read_aliases(const entry *e) {
    field_list list;
    if (!field_words(e->node, "also", &list, e->found) || list.count == 0)
        return;
    e->out->also = ARENA_ARRAY(e->home, const char *, list.count);
    e->out->also_count = list.count;
    for (size_t i = 0; i < list.count; i++)
        e->out->also[i] = list.items[i]->scalar.at;
}

static void read_identity(const entry *e) {
    fields_known(e->node, keys, COUNT(keys), "an ingredient", e->found);
    if (fields_need(e->node, "name", "an ingredient", e->found))
        (void)field_text(e->node, "name", &e->out->name, e->found);
    read_aliases(e);
    (void)field_text(e->node, "plural", &e->out->plural, e->found);
    read_family(e);
    (void)field_text(e->node, "kind", &e->out->kind, e->found);
    read_origin(e);
    (void)field_text(e->node, "about", &e->out->about, e->found);
}

/* -- household weights
 * -------------------------------------------------------------------------------- */

/* Units of volume that an ingredient's own weight may be stated for; all others follow from them.
 */
static const char *const volumes[] = {"cup", "tbsp", "tsp", "drop"};

/* The name that measures go by: "cup" for "cups"; a word for a count stays as it is. Null, with a
 * problem, for units that need no measure or lead to none. */
static const char *measure_name(const yaml_pair *pair, problems *found) {
    size_t used = 0, which;
    if (field_word_index(pair->key, FIELD_CHOICES(volumes), &which, found->home))
        return volumes[which];
    const unit *known = unit_read(pair->key, &used);
    if (!known || used != pair->key.length || known->sort == UNIT_COUNT)
        return pair->key.at;
    for (size_t i = 0; i < COUNT(volumes); i++)
        if (known->sort == UNIT_PINCH || strcmp(known->name, volumes[i]) == 0)
            return known->name;
    problem_add(found, pair->key_at, "state what a cup, a tbsp, a tsp or a piece weighs",
                "\"%.*s\" can't be a household measure", SPAN(pair->key));
    return NULL;
}

static void read_measure(const entry *e, const yaml_node *group, const yaml_pair *pair) {
    range grams;
    const char *name = measure_name(pair, e->found);
    if (!name || !field_range(group, pair->key.at, &grams, e->found))
        return;
    if (grams.low <= 0)
        problem_add(e->found, pair->value->at, "for example: cup: 104",
                    "a \"%.*s\" weighs more than nothing", SPAN(pair->key));
    else
        LIST_ADD(e->home, &e->out->measures, (household_measure){name, grams});
}

static void read_measures(const entry *e) {
    static const source_keys from = {"measures", "source", "certainty"};
    const yaml_node *group = field_node(e->node, "measures", YAML_MAPPING, e->found);
    if (!group)
        return;
    for (size_t i = 0; i < group->count; i++)
        if (!span_is(group->pairs[i].key, "source") && !span_is(group->pairs[i].key, "certainty"))
            read_measure(e, group, &group->pairs[i]);
    source_read(group, &from, e->hers, &e->out->measures_source, e->found);
}

/* -- water, heat, sweetness
 * ------------------------------------------------------------------------------ */

/* {like: pea protein isolate}: another's figures, nothing beside them. */
static void read_uptake_like(const entry *e, const yaml_node *group) {
    located name;
    if (!field_located(group, "like", &name, e->found))
        return;
    e->out->uptake_like = name.bytes.at;
    e->out->uptake_like_at = name.at;
    if (yaml_get(group, "cold") || yaml_get(group, "heated"))
        problem_add(e->found, name.at, "leave `like` out where you know the figures",
                    "water uptake is either like another's or in figures");
}

static void read_uptake(const entry *e) {
    static const char *const known[] = {"cold", "heated", "like", "source", "certainty"};
    static const source_keys from = {"figures of water uptake", "source", "certainty"};
    const yaml_node *group = field_node(e->node, "water-uptake", YAML_MAPPING, e->found);
    if (!group)
        return;
    fields_known(group, known, COUNT(known), "water-uptake", e->found);
    if (yaml_get(group, "like") && e->hers) {
        read_uptake_like(e, group);
        return;
    }
    bool cold = fields_need(group, "cold", "water-uptake", e->found) &&
                field_range(group, "cold", &e->out->cold_uptake, e->found);
    bool heated = fields_need(group, "heated", "water-uptake", e->found) &&
                  field_range(group, "heated", &e->out->heated_uptake, e->found);
    e->out->has_uptake = cold && heated;
    source_read(group, &from, e->hers, &e->out->uptake_source, e->found);
}

static void read_heat_set(const entry *e) {
    const char *words[HEAT_SET_COUNT];
    size_t chosen;
    for (size_t i = 0; i < HEAT_SET_COUNT; i++)
        words[i] = heat_set_word((heat_set)i);
    e->out->sets_stated =
        field_choice(e->node, "heat-set", FIELD_CHOICES(words), &chosen, e->found);
    if (e->out->sets_stated)
        e->out->sets = (heat_set)chosen;
}

static void read_sweetness(const entry *e) {
    static const source_keys from = {"figures of sweetness", "sweetness-source", NULL};
    if (!field_number(e->node, "sweetness", &e->out->sweetness, e->found))
        return;
    if (e->out->sweetness < 0) /* the strongest sweeteners are some 20,000 times as sweet */
        problem_add(e->found, yaml_get(e->node, "sweetness")->at, "sugar is 1",
                    "\"sweetness\" can't be below 0");
    source_read(e->node, &from, e->hers, &e->out->sweetness_source, e->found);
}

/* -- what must be known of it
 * ------------------------------------------------------------------------------ */

static allergen_set read_allergens(const entry *e, const char *key) {
    field_list list;
    allergen_set set = 0;
    if (!field_words(e->node, key, &list, e->found))
        return 0;
    for (size_t i = 0; i < list.count; i++) {
        size_t which;
        if (field_word_index(list.items[i]->scalar, FIELD_CHOICES(allergen_words), &which,
                             e->found->home))
            set |= 1u << which;
        else
            field_add_unknown(yaml_located(list.items[i]), "an allergen of the list",
                              FIELD_CHOICES(allergen_words), e->found);
    }
    return set;
}

static void read_cautions(const entry *e) {
    size_t chosen;
    e->out->allergens = read_allergens(e, "allergens");
    e->out->may_contain = read_allergens(e, "may-contain");
    if (field_choice(e->node, "gluten", FIELD_CHOICES(gluten_words), &chosen, e->found))
        e->out->has_gluten = (gluten)chosen;
    if (field_choice(e->node, "raw", FIELD_CHOICES(raw_words), &chosen, e->found))
        e->out->raw = chosen == 0 ? RAW_EGG : RAW_FLOUR;
}

/* -- protein, price
 * --------------------------------------------------------------------------------------- */

static void read_amino_acids(const entry *e) {
    static const source_keys from = {"amino acids", "amino-acids-source", NULL};
    const yaml_node *group = field_node(e->node, "amino-acids", YAML_MAPPING, e->found);
    const char *known[AMINO_COUNT];
    if (!group)
        return;
    for (amino_acid i = 0; i < AMINO_COUNT; i++) {
        double *grams = &e->out->amino_acids_g[i];
        known[i] = amino_acid_key(i);
        if (!field_quantity(group, known[i], "g", grams, e->found))
            continue;
        e->out->has_amino_acids[i] = *grams >= 0 && *grams <= 100;
        if (!e->out->has_amino_acids[i])
            problem_add(e->found, yaml_get(group, known[i])->at, "g per 100 g of protein",
                        "no protein has this much %s", known[i]);
    }
    fields_known(group, known, AMINO_COUNT, "amino-acids", e->found);
    source_read(e->node, &from, e->hers, &e->out->amino_acids_source, e->found);
}

static void read_digestibility(const entry *e) {
    static const source_keys from = {"figures of digestibility", "digestibility-source", NULL};
    if (field_share(e->node, "digestibility", &e->out->digestibility, e->found))
        source_read(e->node, &from, e->hers, &e->out->digestibility_source, e->found);
}

static void read_price(const entry *e) {
    static const char *const known[] = {"pack", "costs"};
    const yaml_node *group = field_node(e->node, "price", YAML_MAPPING, e->found);
    double pack_g, costs;
    if (!group)
        return;
    fields_known(group, known, COUNT(known), "a price", e->found);
    bool packed = fields_need(group, "pack", "a price", e->found) &&
                  field_quantity(group, "pack", "g", &pack_g, e->found);
    bool priced = fields_need(group, "costs", "a price", e->found) &&
                  field_number(group, "costs", &costs, e->found);
    if (!packed || !priced)
        return;
    if (pack_g <= 0 || costs < 0)
        problem_add(e->found, group->at, "for example: price: {pack: 500 g, costs: 3.20}",
                    "a pack weighs more than nothing and costs no less than nothing");
    else
        e->out->price_per_100_g = costs / pack_g * 100;
}

/* -- the file
 * ------------------------------------------------------------------------------------------------
 */

static void read_entry(const entry *e) {
    read_identity(e);
    composition_read(e->node, e->hers, e->out, e->found);
    read_measures(e);
    read_uptake(e);
    read_heat_set(e);
    read_sweetness(e);
    read_cautions(e);
    read_amino_acids(e);
    read_digestibility(e);
    read_price(e);
}

void pantry_entries_read(pantry *shelf, const yaml_node *list, bool hers, problems *found) {
    for (size_t i = 0; i < list->count; i++) {
        const yaml_node *node = list->items[i];
        ingredient one = {.name = "", .kind = "", .at = node->at, .hers = hers};
        size_t before = found->errors;
        if (fields_are_keys(node, "an ingredient", found))
            read_entry(&(entry){shelf->home, node, hers, &one, found});
        if (found->errors > before)
            continue;
        one.says = hers ? yaml_digest(node) : 0;
        energy_fill(&one);
        energy_check(&one, found);
        pantry_add(shelf, &one, found);
    }
}

void pantry_file_read(pantry *shelf, const char *file, span bytes, bool hers, problems *found) {
    const yaml_node *list = fields_read_list(shelf->home, file, bytes, "an ingredient", found);
    if (list)
        pantry_entries_read(shelf, list, hers, found);
}
