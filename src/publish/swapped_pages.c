#include "publish/swapped_pages.h"

#include "site/view_swapped.h"

void swapped_pages_make(recipe_maker *with, const recipe_facts *about,
                        const recipe_figures *as_written, const swap_notes *notes) {
    note_words words = note_words_of(with->by, as_written, notes);
    words.about = about;
    for (size_t i = 0; i < words.pages.count; i++) {
        const swap_note *note = words.pages.items[i];
        recipe_write_page(with, path_of_swapped(with->a, as_written->of, note), "swapped",
                          view_of_swapped_page(with->a, with->by, &words, as_written, note));
    }
}
