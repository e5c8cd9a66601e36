#include "swap/note.h"

#include "swap/answer.h"

#include <stdint.h>

/* The note with what was tried in recipes like this one. */
static swap_note answer_with_evidence(arena *a, const rule_book *book, const leaving *what,
                                      const decided *said) {
    swap_note note = answer_of(a, what, said);
    if (!decided_is_combined(said))
        note.tried = evidence_of(a, book, what->part, said);
    return note;
}

swap_note note_of(arena *a, const rule_book *book, const recipe_facts *about, size_t from,
                  const ingredient *to) {
    leaving what = leaving_of(about, from, SIZE_MAX);
    const decided said = {from, SIZE_MAX, to, NULL, decide(book, about, from, to, NULL)};
    return answer_with_evidence(a, book, &what, &said);
}

static decision decide_combined(const rule_book *book, const recipe_facts *about,
                                const decided *asked, const swap_rule **tied) {
    if (asked->also)
        return decide_split(book, about, asked->first,
                            (const ingredient *const[2]){asked->to, asked->also}, tied);
    return decide_two(book, about, asked->first, asked->second, asked->to, tied);
}

/* In the order of the rule's selectors, by which its shares go. */
static void order_lines(const recipe_facts *about, decided *said) {
    const swap_rule *rule = said->by.rule;
    if (said->second == SIZE_MAX || !rule)
        return;
    const ingredient *first = about->of->lines.items[said->first].what;
    const ingredient *second = about->of->lines.items[said->second].what;
    if (selector_fits(&rule->replace.items[0], first, about->shelf) &&
        selector_fits(&rule->replace.items[1], second, about->shelf))
        return;
    size_t line = said->first;
    said->first = said->second;
    said->second = line;
}

swap_note note_of_combined(arena *a, const rule_book *book, const recipe_facts *about,
                           const decided *asked) {
    decided said = *asked;
    said.by = decide_combined(book, about, asked, NULL);
    order_lines(about, &said);
    leaving what = leaving_of(about, said.first, said.second);
    return answer_with_evidence(a, book, &what, &said);
}

/* -- all of a recipe ------------------------------------------------------------------------- */

/* What readers ask for first: smaller goes before. */
static int asked_for(family in) {
    static const int order[FAMILY_COUNT] = {[FAMILY_PROTEIN_POWDER] = -4,
                                            [FAMILY_FLOUR] = -3,
                                            [FAMILY_MEAL] = -3,
                                            [FAMILY_NUT_BUTTER] = -2,
                                            [FAMILY_EGG] = -1};
    return order[in];
}

/* A decision with what the list is sorted by, compared from left to right. */
typedef struct {
    size_t key[5]; /* combined, how far from asked for, lines, verdict */
    decided said;
} entry;

static entry entry_of(const recipe_facts *about, const decided *said) {
    family in = about->of->lines.items[said->first].what->in;
    return (entry){{decided_is_combined(said), (size_t)(asked_for(in) + 4), said->first,
                    said->second, decision_says(said->by)},
                   *said};
}

static int compare_entries(const void *left, const void *right) {
    const entry *a = left, *b = right;
    for (size_t i = 0; i < COUNT(a->key); i++)
        if (a->key[i] != b->key[i])
            return a->key[i] < b->key[i] ? -1 : 1;
    int order = strcmp(a->said.to->name, b->said.to->name);
    if (order || !a->said.also || !b->said.also)
        return order;
    return strcmp(a->said.also->name, b->said.also->name);
}

static bool has_weight(const recipe_facts *about, size_t line) {
    if (!facts_first_of(about, line))
        return false;
    for (size_t i = line; i < about->of->lines.count; i++)
        if (about->of->lines.items[i].what == about->of->lines.items[line].what &&
            about->of->weights[i].grams > 0)
            return true;
    return false;
}

static bool is_among(const decided_list *all, size_t first, const ingredient *to) {
    for (size_t i = first; i < all->count; i++)
        if (all->items[i].to == to && !decided_is_combined(&all->items[i]))
            return true;
    return false;
}

/* Adds what nobody decides on here, of whatever family, but was tried in recipes like this one.
 * The line's own decisions stand from `first` on. */
static void add_tried(const rule_book *book, const recipe_facts *about, size_t line, size_t first,
                      decided_list *all) {
    const ingredient *from = about->of->lines.items[line].what;
    const recipe_facts *mixed = facts_for(about, facts_same_lines(about, line));
    tried_list tried = evidence_tried(all->home, book, mixed, from);
    for (size_t i = 0; i < tried.count; i++)
        if (tried.items[i] != from && !is_among(all, first, tried.items[i]))
            LIST_ADD(all->home, all,
                     (decided){line, SIZE_MAX, tried.items[i], NULL,
                               (decision){SAID_BY_NOBODY, NULL, NULL}});
}

/* Each combined swap takes a program to be solved, and a wide rule may name hundreds: past so many
 * of a recipe nobody reads them. */
enum { COMBINED_MOST = 60 };

/* One by two first, then two by one. */
static void add_combined(arena *a, const rule_book *book, const recipe_facts *about,
                         decided_list *all) {
    decided_list combined = {.home = a};
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (has_weight(about, i))
            decide_all_splits(book, about, i, &combined);
    decide_all_twos(book, about, &combined);
    for (size_t i = 0, added = 0; i < combined.count && added < COMBINED_MOST; i++) {
        const decided *one = &combined.items[i];
        if (one->second != SIZE_MAX &&
            !(has_weight(about, one->first) && has_weight(about, one->second)))
            continue;
        LIST_ADD(a, all, *one);
        added++;
    }
}

/* Everything that is decided on, lines without weight left out. */
static decided_list all_decided(arena *a, const rule_book *book, const recipe_facts *about,
                                bool untried) {
    decided_list all = {.home = a};
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (has_weight(about, i)) {
            size_t first = all.count;
            decide_all(book, about, i, untried, &all);
            if (untried && book->log.count)
                add_tried(book, about, i, first, &all);
        }
    add_combined(a, book, about, &all);
    return all;
}

static entry *sorted(arena *a, const recipe_facts *about, const decided_list *all) {
    entry *entries = ARENA_ARRAY(a, entry, all->count + 1);
    for (size_t i = 0; i < all->count; i++)
        entries[i] = entry_of(about, &all->items[i]);
    qsort(entries, all->count, sizeof *entries, compare_entries);
    return entries;
}

swap_notes notes_of(arena *a, const rule_book *book, const recipe_facts *about, bool untried) {
    decided_list all = all_decided(a, book, about, untried);
    const entry *entries = sorted(a, about, &all);
    swap_notes notes = {.items = ARENA_ARRAY(a, swap_note, all.count + 1),
                        .count = all.count,
                        .capacity = all.count + 1};
    leaving what = {.lines = {SIZE_MAX, SIZE_MAX}};
    for (size_t i = 0; i < all.count; i++) {
        const decided *said = &entries[i].said;
        if (what.lines[0] != said->first || what.lines[1] != said->second)
            what = leaving_of(about, said->first, said->second);
        notes.items[i] = answer_with_evidence(a, book, &what, said);
    }
    return notes;
}

/* -- ties ------------------------------------------------------------------------------------ */

typedef struct {
    const swap_rule *one, *other;
} tie;

typedef struct {
    tie *items;
    size_t count, capacity;
} tie_list;

static bool add_tie(arena *a, tie_list *seen, tie this) {
    for (size_t i = 0; i < seen->count; i++)
        if (seen->items[i].one == this.one && seen->items[i].other == this.other)
            return false;
    LIST_ADD(a, seen, this);
    return true;
}

static void report_tie(const recipe_facts *about, const decided *said, tie this, problems *found) {
    const recipe *of = about->of;
    problem_add(
        found, this.one->at, "make one of the two more specific, or take it out",
        "\"%s\" says %s and \"%s\" says %s of %s for %s in %s: neither goes before the other",
        this.one->id ? this.one->id : "a swap", verdict_word(this.one->says),
        this.other->id ? this.other->id : "a swap", verdict_word(this.other->says), said->to->name,
        of->lines.items[said->first].what->name, of->slug);
}

void notes_check(arena *a, const rule_book *book, const recipe_facts *about, problems *found) {
    decided_list all = all_decided(a, book, about, false);
    const entry *entries = sorted(a, about, &all);
    tie_list seen = {0};
    for (size_t i = 0; i < all.count; i++) {
        const decided *said = &entries[i].said;
        const swap_rule *other;
        decision by = decided_is_combined(said)
                          ? decide_combined(book, about, said, &other)
                          : decide(book, about, said->first, said->to, &other);
        if (other && add_tie(a, &seen, (tie){by.rule, other}))
            report_tie(about, said, (tie){by.rule, other}, found);
    }
}
