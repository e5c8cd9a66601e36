#include "nutrition/allergens.h"

#include "base/text.h"
#include "nutrition/lines.h"

typedef allergen_set (*allergens_wanted)(const ingredient *what);

static allergen_set contained(const ingredient *what) {
    return what->allergens;
}

static allergen_set may_be_contained(const ingredient *what) {
    return what->may_contain;
}

static allergen_set allergens_in(const recipe *of, allergens_wanted wanted) {
    allergen_set all = 0;
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what)
            all |= wanted(of->lines.items[i].what);
    return all;
}

allergen_set allergens_of(const recipe *of) {
    return allergens_in(of, contained);
}

allergen_set allergens_may_contain(const recipe *of) {
    return allergens_in(of, may_be_contained) & ~allergens_of(of);
}

bool allergens_complete(const recipe *of) {
    for (size_t i = 0; i < of->lines.count; i++)
        if (!of->lines.items[i].what)
            return false;
    return true;
}

static word_list names_behind(arena *a, const recipe *of, allergen which, allergens_wanted wanted) {
    word_list behind = {0};
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what && wanted(of->lines.items[i].what) >> which & 1u)
            word_add_once(a, &behind, line_name(of, i));
    return behind;
}

static allergen_causes causes_in(arena *a, const recipe *of, allergen_set set,
                                 allergens_wanted wanted) {
    allergen_causes causes = {0};
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (set >> i & 1u)
            LIST_ADD(a, &causes,
                     (allergen_cause){(allergen)i, names_behind(a, of, (allergen)i, wanted)});
    return causes;
}

allergen_causes allergen_causes_of(arena *a, const recipe *of) {
    return causes_in(a, of, allergens_of(of), contained);
}

allergen_causes allergen_may_contain_causes_of(arena *a, const recipe *of) {
    return causes_in(a, of, allergens_may_contain(of), may_be_contained);
}

static bool in_group(allergen which, const char *group, label_law law) {
    const char *its = allergen_group(which, law);
    return its && span_is(span_of(its), group);
}

/* All foods that `law` puts in `group`. */
static allergen_set group_members(const char *group, label_law law) {
    allergen_set members = 0;
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (in_group((allergen)i, group, law))
            members |= 1u << i;
    return members;
}

static bool is_one(allergen_set set) {
    return (set & (set - 1)) == 0;
}

/* "tree nuts (almond, cashew)"; a group of one food, or wheat as such, stands without brackets. */
static void add_group(text *t, allergen of, label_law law, allergen_set set,
                      const allergen_names *called) {
    const char *group = allergen_group(of, law);
    allergen_set members = group_members(group, law), present = members & set;
    text_add(t, called ? called->groups[of] : group);
    bool first = true;
    for (size_t i = 0; i < ALLERGEN_COUNT && !is_one(members); i++) {
        const char *word = allergen_word((allergen)i);
        if (!(present >> i & 1u) || (is_one(present) && span_is(span_of(word), group)))
            continue;
        text_add(t, first ? " (" : ", ");
        text_add(t, called ? called->foods[i] : word);
        first = false;
    }
    if (!first)
        text_add_char(t, ')');
}

const char *allergen_statement(arena *a, allergen_set set, label_law law) {
    return allergen_statement_called(a, set, law, NULL);
}

const char *allergen_statement_called(arena *a, allergen_set set, label_law law,
                                      const allergen_names *called) {
    text t = TEXT_EMPTY;
    allergen_set left = set;
    for (size_t i = 0; i < ALLERGEN_COUNT; i++) {
        const char *group = allergen_group((allergen)i, law);
        if (!(left >> i & 1u) || !group)
            continue;
        if (t.length)
            text_add(&t, "; ");
        add_group(&t, (allergen)i, law, set, called);
        left &= ~group_members(group, law);
    }
    const char *statement = arena_copy(a, text_span(&t));
    text_free(&t);
    return statement;
}
