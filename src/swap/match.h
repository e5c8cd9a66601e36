/* Which rule decides a swap. */
#ifndef SWAP_MATCH_H
#define SWAP_MATCH_H

#include "swap/facts.h"

/* What was measured of a bake; 0: not measured. */
typedef struct {
    double height_mm, spread_mm, weight_g;
} bake_measures;

/* What was tried: one entry of the log in trials/. */
typedef struct {
    place at;
    digest words;            /* of all that its entry says */
    const char *recipe;      /* slug */
    const char *recipe_file; /* inside recipes/; null when there is none */
    recipe_line replaced, with;
    bool has_amounts;
    double liquid_g;          /* added (+) or held back (-) */
    const ingredient *liquid; /* what it was of; null: not named */
    const char *date, *remarks, *by;
    verdict outcome;
    word_list texture;
    bake_measures swapped, as_written;
    const char *picture_as_written, *picture_swapped;

    /* Worked out once the recipe is read (read/trial_builds.h); null where it can't be. */
    const struct recipe_build *build; /* of the part in which it was replaced */
    const char *title;                /* the recipe's */
    bool published;
} trial;

typedef struct {
    trial *items;
    size_t count, capacity;
} trials;

/* All that can answer, in one place: built once, constant, shared by workers. */
typedef struct rule_book {
    const pantry *shelf;
    swap_rules rules; /* the site's own first, then the reference */
    trials log;
    struct rule_index *index;        /* rules by replaced and new ingredient; see match.c */
    struct evidence_index *evidence; /* trials by the same; see evidence.c */
} rule_book;

/* The order of trials: by recipe, the latest first (dates are YYYY-MM-DD), of one day the more
 * cautious, then by place. */
int trial_compare(const trial *one, const trial *other);

/* Builds the index of a book whose shelf, rules and log are set. In the arena. */
void rule_book_index(arena *a, rule_book *book);

typedef struct {
    authority by;
    const swap_rule *rule; /* null for a trial or nobody */
    const trial *bake;     /* null unless by trial */
} decision;

/* The verdict of a decision; VERDICT_UNTRIED by nobody. */
verdict decision_says(decision by);

/* Who decides on replacing line `from` of the recipe by `to`: the recipe's own word, a trial on
 * this recipe, the site's rules, the reference; within one level the most specific matching rule
 * (selector ranks of both sides, then the number of facts). Where two of one rank differ, the more
 * cautious verdict stands, so that the order of files changes nothing, and `*tied`, where `tied`
 * is not null, is set to the other rule; to null otherwise. Of several trials the latest counts. */
decision decide(const rule_book *book, const recipe_facts *about, size_t from, const ingredient *to,
                const swap_rule **tied);

/* The same by the rules of the book alone: what would stand had the author not said a word on this
 * recipe, nor baked it. */
decision decide_by_rules(const rule_book *book, const recipe_facts *about, size_t from,
                         const ingredient *to, const swap_rule **tied);

/* The `*count` trials on this recipe, the latest first. Borrowed from the book. */
const trial *const *trials_on(const rule_book *book, const recipe_facts *about, size_t *count);

/* True when a later one of these, the trials on one recipe, is of the same pair as number
 * `which`. */
bool trial_is_overtaken(const trial *const *bakes, size_t which);

/* A replacement that something decides on: one by one, two by one, or one by two. */
typedef struct {
    size_t first, second;        /* lines; for a two-for-one in the order of the rule's selectors */
    const ingredient *to, *also; /* `also` null unless two come */
    decision by;
} decided;

typedef struct {
    arena *home; /* borrowed: where the list grows */
    decided *items;
    size_t count, capacity;
} decided_list;

/* Adds to `out` every replacement of line `from` that something decides on, each once, never the
 * ingredient itself, in no stated order: decide for all of them in one pass. `second` of each is
 * SIZE_MAX. The others of its family too, decided by nobody, when `untried`. */
void decide_all(const rule_book *book, const recipe_facts *about, size_t from, bool untried,
                decided_list *out);

#endif
