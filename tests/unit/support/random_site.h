/* A small site folder that a seed fills and random edits change, for tests of incremental builds.
 *
 * What stands in the files is kept here as a few numbers, so that an edit is a change of one of
 * them and the file is written anew. */
#ifndef UNIT_SUPPORT_RANDOM_SITE_H
#define UNIT_SUPPORT_RANDOM_SITE_H

#include "base/files.h"
#include "base/list.h"
#include "base/text.h"
#include "reference/reference.h"

#include <assert.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

enum { RECIPES_MOST = 6, RULES_MOST = 4, PAGES_MOST = 2, PICTURES_MOST = 2, TRIALS_MOST = 3 };

typedef struct {
    bool there, broken, hidden, own_swap;
    unsigned title, powder, flour, butter, grams, method, kind, tag;
    unsigned picture, shown; /* its own, one in its words; 0: none */
} random_recipe;

typedef struct {
    bool there;
    unsigned a, b, words; /* what they mean differs: see the writers */
} random_entry;

typedef struct {
    uint64_t state; /* of the random numbers */
    const char *folder;
    arena *a;
    random_recipe recipes[RECIPES_MOST];
    random_entry rules[RULES_MOST], trials[TRIALS_MOST], pages[PAGES_MOST], pictures[PICTURES_MOST];
    random_entry powder, override; /* pantry: a powder of her own; the reference's almond butter */
    unsigned title, label, cups, look, theme_words;
} random_site;

static const char *const powders[] = {"pea protein powder", "whey protein isolate",
                                      "rice protein powder", "casein protein powder"};
static const char *const flours[] = {"oat flour", "almond flour", "spelt flour"};
static const char *const butters[] = {"almond butter", "peanut butter", "tahini"};
static const char *const kinds[] = {"cookie", "griddle cake"};
static const char *const verdicts[] = {"works", "adjust", "different", "avoid"};

/* xorshift64*: the same numbers on every machine. */
static inline unsigned below(random_site *s, unsigned count) {
    s->state ^= s->state >> 12;
    s->state ^= s->state << 25;
    s->state ^= s->state >> 27;
    return (unsigned)((s->state * 2685821657736338717u) >> 33) % count;
}

/* -- writing what it holds ------------------------------------------------------------------- */

static inline const char *site_path(const random_site *s, const char *name) {
    return path_join(s->a, s->folder, name);
}

/* Not as the program does it: in place, as some editors do. */
static inline void put_file(const random_site *s, const char *name, const text *bytes) {
    const char *path = site_path(s, name);
    int why;
    (void)folder_make(path_folder(s->a, path), &why);
    FILE *f = fopen(path, "w");
    assert(f);
    fwrite(bytes->bytes, 1, bytes->length, f);
    fclose(f);
}

static inline const char *recipe_file(const random_site *s, unsigned i) {
    return arena_format(s->a, "recipes/recipe-%u.md", i);
}

static inline void put_recipe(const random_site *s, unsigned i) {
    const random_recipe *of = &s->recipes[i];
    text t = TEXT_EMPTY;
    if (!of->there) {
        unlink(site_path(s, recipe_file(s, i)));
        return;
    }
    text_format(
        &t, "---\ntitle: Recipe %u of %03u\nsummary: One of a few.\nmakes: 8 pieces\nkind: %s\n", i,
        of->title, kinds[of->kind]);
    text_format(&t, "tags: [tag-%u]\ndate: 2026-0%u-01\n", of->tag, 1 + of->tag);
    if (of->picture)
        text_format(&t, "picture: picture-%u.svg\n", of->picture - 1);
    if (of->hidden)
        text_add(&t, "publish: no\n");
    if (of->own_swap)
        text_format(&t, "swaps:\n  - {replace: %s, with: honey, verdict: works, note: So it is.}\n",
                    powders[of->powder]);
    text_format(&t, "ingredients:\n  - %u g %s\n  - 1/2 cup %s\n  - 2 tbsp %s\n", of->grams,
                of->broken ? "nothing known" : powders[of->powder], flours[of->flour],
                butters[of->butter]);
    text_format(&t, "  - 1/2 cup milk\n---\n1. Stir number %03u.\n", of->method);
    if (of->shown)
        text_format(&t, "\n![Done](../../pictures/picture-%u.svg)\n", of->shown - 1);
    put_file(s, recipe_file(s, i), &t);
    text_free(&t);
}

static inline void put_rules(const random_site *s) {
    text t = TEXT_EMPTY;
    for (unsigned i = 0; i < RULES_MOST; i++) {
        const random_entry *of = &s->rules[i];
        if (!of->there)
            continue;
        text_format(&t, "- rule: rule-%u\n", i);
        if (i % 2)
            text_format(&t, "  replace: {name: %s}\n  with: {name: %s}\n", flours[of->a % 3],
                        flours[(of->a + 1) % 3]);
        else
            text_format(&t, "  replace: {name: %s}\n  with: {family: protein powder}\n",
                        powders[of->a % 4]);
        text_format(&t, "  verdict: %s\n  amount: {weight: 1}\n  liquid: keep\n",
                    verdicts[of->b % 4]);
        text_format(&t, "  expect: Words %u.\n  because: So.\n  basis: trial\n", of->words);
    }
    put_file(s, "rules/own.yaml", &t);
    text_free(&t);
}

static inline void put_trials(const random_site *s) {
    text t = TEXT_EMPTY;
    for (unsigned i = 0; i < TRIALS_MOST; i++) {
        const random_entry *of = &s->trials[i];
        if (!of->there || !s->recipes[of->a % RECIPES_MOST].there)
            continue;
        text_format(&t, "- recipe: recipe-%u\n  replace: 30 g %s\n  with: 30 g %s\n",
                    of->a % RECIPES_MOST, powders[of->b / 4], powders[(of->b / 4 + 1) % 4]);
        text_format(&t, "  date: 2026-04-1%u\n  verdict: %s\n  remarks: Said %u.\n", i,
                    verdicts[of->b % 4], of->words);
    }
    put_file(s, "trials/log.yaml", &t);
    text_free(&t);
}

static inline void put_pantry(const random_site *s) {
    static const char entry[] = "- name: %s\n%s  family: %s\n  kind: %s\n  origin: plant\n"
                                "  label:\n    serving: 30 g\n    energy: 118\n    water: 1.5 g\n"
                                "    protein: %u g\n    fat: 3 g\n    saturates: 1.1 g\n"
                                "    available-carbohydrate: 2.4 g\n    sugars: 1 g\n"
                                "    fibre: 1 g\n    salt: 0.2 g\n"
                                "  measures: {cup: 240, source: label}\n"
                                "  price: {pack: 100 g, costs: %u}\n";
    text t = TEXT_EMPTY;
    if (s->powder.there)
        text_format(&t, entry, "house powder", s->powder.b % 2 ? "  also: [our powder]\n" : "",
                    "protein powder", "pea", 15 + s->powder.a % 5, 1 + s->powder.words);
    if (s->override.there)
        text_format(&t, entry, "almond butter", "", "nut butter", "almond", 10 + s->override.a % 5,
                    1 + s->override.words);
    put_file(s, "pantry/own.yaml", &t);
    text_free(&t);
}

static inline void put_page(const random_site *s, unsigned i) {
    const random_entry *of = &s->pages[i];
    const char *file = arena_format(s->a, "pages/page-%u.md", i);
    text t = TEXT_EMPTY;
    text_format(&t, "---\ntitle: Page %u\nmenu: %s\n---\nWords %u.\n", of->a,
                of->b % 2 ? "yes" : "no", of->words);
    if (of->there)
        put_file(s, file, &t);
    else
        unlink(site_path(s, file));
    text_free(&t);
}

static inline void put_picture(const random_site *s, unsigned i) {
    const char *file = arena_format(s->a, "pictures/picture-%u.svg", i);
    text t = TEXT_EMPTY;
    text_format(&t, "<svg>%03u</svg>", s->pictures[i].words);
    if (s->pictures[i].there)
        put_file(s, file, &t);
    else
        unlink(site_path(s, file));
    text_free(&t);
}

static inline void put_settings(const random_site *s) {
    static const char *const labels[] = {"eu", "us", "none"}, *const cups[] = {"us", "metric"};
    text t = TEXT_EMPTY;
    text_format(&t, "title: Site %u\naddress: https://site.example/\nlabel: %s\ncups: %s\n",
                s->title, labels[s->label], cups[s->cups]);
    if (s->look)
        text_add(&t, "theme: look\n");
    put_file(s, "site.yaml", &t);
    text_free(&t);
}

/* A theme of her own: the default with a word more in one template. */
static inline void put_theme(const random_site *s) {
    for (size_t i = 0; i < reference_themes_count; i++) {
        span name = span_of(reference_themes[i].name);
        if (!span_begins(name, "plain/"))
            continue;
        text t = TEXT_EMPTY;
        text_add_span(&t, reference_themes[i].bytes);
        if (span_is(name, "plain/recipe.mustache"))
            text_format(&t, "<!-- %u -->\n", s->theme_words);
        put_file(s, arena_format(s->a, "look/%s", name.at + strlen("plain/")), &t);
        text_free(&t);
    }
}

/* -- filling and changing -------------------------------------------------------------------- */

static inline void roll_recipe(random_site *s, unsigned i) {
    s->recipes[i] = (random_recipe){.there = true,
                                    .title = below(s, 1000),
                                    .powder = below(s, 4),
                                    .flour = below(s, 3),
                                    .butter = below(s, 3),
                                    .grams = 30 + below(s, 60),
                                    .method = below(s, 1000),
                                    .kind = below(s, 2),
                                    .tag = below(s, 3)};
}

static inline void roll_entry(random_site *s, random_entry *of) {
    *of = (random_entry){below(s, 3) > 0, below(s, 12), below(s, 12), below(s, 900)};
}

static inline void site_fill(random_site *s) {
    for (unsigned i = 0; i < RECIPES_MOST; i++) {
        roll_recipe(s, i);
        s->recipes[i].there = below(s, 4) > 0;
        put_recipe(s, i);
    }
    for (unsigned i = 0; i < RULES_MOST; i++)
        roll_entry(s, &s->rules[i]);
    for (unsigned i = 0; i < PAGES_MOST; i++) {
        roll_entry(s, &s->pages[i]);
        put_page(s, i);
    }
    for (unsigned i = 0; i < PICTURES_MOST; i++) {
        roll_entry(s, &s->pictures[i]);
        put_picture(s, i);
    }
    put_rules(s);
    put_pantry(s);
    put_settings(s);
}

static inline void edit_words(random_site *s, unsigned i) {
    s->recipes[i].method = below(s, 1000); /* three digits before and after: the size stays */
}
static inline void edit_title(random_site *s, unsigned i) {
    s->recipes[i].title = below(s, 1000);
}
static inline void edit_grams(random_site *s, unsigned i) {
    s->recipes[i].grams = 30 + below(s, 60);
}
static inline void edit_all(random_site *s, unsigned i) {
    roll_recipe(s, i);
}
static inline void edit_there(random_site *s, unsigned i) {
    s->recipes[i].there = !s->recipes[i].there;
}
static inline void edit_broken(random_site *s, unsigned i) {
    s->recipes[i].broken = !s->recipes[i].broken;
}
static inline void edit_hidden(random_site *s, unsigned i) {
    s->recipes[i].hidden = !s->recipes[i].hidden;
}
static inline void edit_own_swap(random_site *s, unsigned i) {
    s->recipes[i].own_swap = !s->recipes[i].own_swap;
}
static inline void edit_picture(random_site *s, unsigned i) {
    s->recipes[i].picture = below(s, 1 + PICTURES_MOST);
}
static inline void edit_shown(random_site *s, unsigned i) {
    s->recipes[i].shown = below(s, 1 + PICTURES_MOST);
}
static inline void edit_nothing(random_site *s, unsigned i) {
    (void)s, (void)i; /* it is written again as it was: touched */
}

/* Two recipes change files: each is renamed to the other's name. */
static inline void edit_swap_names(random_site *s, unsigned i) {
    unsigned other = (i + 1) % RECIPES_MOST;
    random_recipe was = s->recipes[i];
    s->recipes[i] = s->recipes[other];
    s->recipes[other] = was;
    put_recipe(s, other);
}

typedef void recipe_edit(random_site *s, unsigned i);
static recipe_edit *const recipe_edits[] = {
    edit_words,    edit_words,  edit_title,   edit_grams, edit_all,     edit_there,     edit_broken,
    edit_own_swap, edit_hidden, edit_picture, edit_shown, edit_nothing, edit_swap_names};

static inline void edit_recipe(random_site *s) {
    unsigned i = below(s, RECIPES_MOST);
    recipe_edits[below(s, COUNT(recipe_edits))](s, i);
    put_recipe(s, i);
    put_trials(s);
}

static inline void edit_rules(random_site *s) {
    random_entry *of = &s->rules[below(s, RULES_MOST)];
    if (below(s, 2))
        of->words = below(s, 900);
    else
        roll_entry(s, of);
    put_rules(s);
}

static inline void edit_trials(random_site *s) {
    roll_entry(s, &s->trials[below(s, TRIALS_MOST)]);
    put_trials(s);
}

static inline void edit_pantry(random_site *s) {
    random_entry *of = below(s, 2) ? &s->powder : &s->override;
    if (below(s, 2))
        of->a = below(s, 12); /* a figure */
    else
        roll_entry(s, of);
    put_pantry(s);
}

static inline void edit_pages(random_site *s) {
    unsigned i = below(s, PAGES_MOST);
    roll_entry(s, &s->pages[i]);
    put_page(s, i);
}

static inline void edit_pictures(random_site *s) {
    unsigned i = below(s, PICTURES_MOST);
    roll_entry(s, &s->pictures[i]);
    put_picture(s, i);
}

static inline void edit_settings(random_site *s) {
    unsigned *const fields[] = {&s->title, &s->label, &s->cups, &s->look};
    static const unsigned counts[] = {9, 3, 2, 2};
    unsigned i = below(s, COUNT(counts));
    *fields[i] = below(s, counts[i]);
    if (s->look)
        put_theme(s);
    put_settings(s);
}

static inline void edit_theme(random_site *s) {
    s->theme_words = below(s, 900);
    if (s->look)
        put_theme(s);
}

typedef void site_edit(random_site *s);
static site_edit *const site_edits[] = {edit_recipe, edit_recipe,   edit_recipe,  edit_recipe,
                                        edit_recipe, edit_recipe,   edit_recipe,  edit_rules,
                                        edit_rules,  edit_pantry,   edit_trials,  edit_pages,
                                        edit_theme,  edit_pictures, edit_settings};

#endif
