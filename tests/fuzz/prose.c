/* Any bytes as a recipe whose prose is checked. Mentions lie inside the words they are found in,
 * in order; what is found stands inside the file. */
#include "check/checks.h"
#include "read/silence.h"

#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require(bool kept) {
    if (!kept)
        abort();
}

/* The reference alone, as a site. */
static const check_site *fuzz_site(void) {
    static site_folder folder;
    static check_site site;
    bool failed;
    if (!site.folder) {
        arena *home = arena_new(); /* lives as long as the fuzzer */
        problems found = problems_in(home);
        require(site_folder_read(home, NULL, &folder, &found, &failed));
        site = check_site_of(home, &folder);
    }
    return &site;
}

static void check_mentions(arena *a, const recipe *of) {
    const pantry *shelf = &fuzz_site()->folder->shelf;
    mention_names called = mention_names_of(a, of, shelf, CUPS_US);
    mentions all = mentions_in(a, &called, of->body);
    size_t end = 0;
    for (size_t i = 0; i < all.count; i++) {
        const mention *m = &all.items[i];
        require(m->at >= end && m->length > 0 && m->name_at >= m->at);
        end = m->at + m->length;
        require(end <= of->body.length && m->name_at + m->name_length == end);
        require(!m->amount_length ||
                (m->amount_at >= m->at && m->amount_at + m->amount_length <= m->name_at &&
                 m->number_length <= m->amount_length));
        require(!m->changeable || (m->line != MENTION_NO_LINE && m->number_length > 0));
    }
}

static void check_places(span bytes, const problems *found) {
    unsigned lines = 1;
    for (size_t i = 0; i < bytes.length; i++)
        lines += bytes.at[i] == '\n';
    for (size_t i = 0; i < found->count; i++)
        require(found->items[i].at.line <= lines && found->items[i].at.column <= bytes.length + 1);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    span bytes = {(const char *)data, size};
    const pantry *shelf = &fuzz_site()->folder->shelf;
    const recipe *of = recipe_read(a, "recipes/fuzz.md", bytes, shelf, CUPS_US, &found);
    if (of) {
        recipe_facts about = facts_of(a, of, shelf);
        check_mentions(a, of);
        check_recipe(fuzz_site(), a, of, &about, &found);
        silence_known known = {fuzz_site()->names, checks_count, true};
        silence_apply(a, "recipes/fuzz.md", bytes, &known, &found);
        check_places(bytes, &found);
    }
    arena_free(a);
    return 0;
}
