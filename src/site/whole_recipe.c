#include "site/whole_recipe.h"

whole_recipe whole_recipe_of(arena *a, const page_maker *by, const recipe_facts *about,
                             const recipe_figures *figures, const swap_notes *notes) {
    const recipe *of = figures->of;
    whole_recipe all = {.by = by,
                        .of = of,
                        .about = about,
                        .figures = figures,
                        .notes = notes,
                        .words = note_words_of(by, figures, notes)};
    const pantry *shelf = &by->folder->shelf;
    claims_asked asked = {of, &figures->macros, &figures->claims, all.words.law,
                          pantry_find_folded(shelf, span_of("water"))};
    all.words.claims = note_claims_of(a, &asked, notes);
    all.called = mention_names_of(a, of, shelf, by->folder->settings.cups);
    method_words how = {&all.called,  NULL, by->look->words,  "",
                        by->pictures, NULL, page_language(by)};
    all.how = method_of(a, &how, of->body);
    return all;
}
