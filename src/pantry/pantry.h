/* The pantry: all known ingredients and how a written name finds one.
 *
 * Names are found folded (case, accents, hyphens), through aliases, singular or plural. The
 * site's own entries replace reference entries of the same name; `overrides` keeps nothing of the
 * old figures. Built once, constant after. */
#ifndef PANTRY_PANTRY_H
#define PANTRY_PANTRY_H

#include "base/list.h"
#include "base/names.h"
#include "pantry/ingredient.h"

typedef struct {
    arena *home;        /* borrowed */
    ingredient **items; /* pointers stay good while the pantry grows */
    size_t count, capacity;
    names by_name;        /* folded names, aliases and stated plurals to indexes */
    names by_form;        /* made plurals and singulars, asked after by_name: a stated name wins */
    size_t longest_words; /* most words in any name: how far a line is searched */
} pantry;

/* An empty pantry in `home`, which must outlive it. */
pantry pantry_in(arena *home);

/* Adds `entry` (its strings already in `home`), or puts it in the place of the entry of that name
 * when the new one is the site's own (`hers`) and the old one is not: pointers to the old one see
 * the new, and the old one's aliases lead to it. Fills name's plural where missing and the slug.
 * A name that another entry has is an error in `found` and the entry is left out; an alias or
 * stated plural that another has is an error too, and the entry keeps the rest of its names. */
void pantry_add(pantry *shelf, const ingredient *entry, problems *found);

/* Sees to it that "water" is found, which swaps add where a recipe has no liquid to change: the
 * first liquid of kind water answers to it whatever its name is; where there is none, plain water
 * is added. For a pantry that is complete. */
void pantry_need_water(pantry *shelf, problems *found);

/* The ingredient called `name` in any case, number or alias; null when there is none. `scratch`
 * is used for folding. */
const ingredient *pantry_find(const pantry *shelf, span name, arena *scratch);

/* Like pantry_find, for a name that is folded already. */
const ingredient *pantry_find_folded(const pantry *shelf, span folded);

/* The longest run of words at the start of `folded` that names an ingredient. Where no leading
 * run does ("ripe mashed banana"), or a run of more words stands further on ("vanilla whey protein
 * isolate", where vanilla is known too), the longest run anywhere is taken; but what follows a
 * joining word (for, with, or ...) is not looked at once a name is found ("butter for the peanut
 * butter layer"). `*before` and `*after` are what stands ahead of and behind it, parts of
 * `folded`, trimmed. Null when nothing in it is a name. */
const ingredient *pantry_find_longest(const pantry *shelf, span folded, span *before, span *after);

/* The nearest known name to `name`, or to what is left of it without its leading words, or one
 * that begins with it ("lemon juice" for "lemon"), for a hint; null when none is near. */
const char *pantry_nearest(const pantry *shelf, span name, arena *scratch);

/* The name that `folded`, which names nothing as a whole, is a slip of the finger from ("almnd
 * butter"); null when none is. */
const char *pantry_slip(const pantry *shelf, span folded, arena *scratch);

/* Its place in the list, 0 to count - 1: stable for the program's run. */
size_t pantry_index(const pantry *shelf, const ingredient *entry);

/* The plural of an ingredient name by the English rule (last word: s, es, ies), in `home`. What
 * ends in a single s ("rolled oats") is taken for a plural already. */
const char *pantry_plural(arena *home, const char *name);

#endif
