#include "publish/swapped_pages.h"

#include "site/view_swapped.h"

void swapped_pages_make(recipe_maker *with, const whole_recipe *of) {
    for (size_t i = 0; i < of->words.pages.count; i++) {
        const swap_note *note = of->words.pages.items[i];
        arena_mark before = arena_here(with->a);
        recipe_write_page(with, path_of_swapped(with->a, of->of, note), "swapped",
                          view_of_swapped_page(with->a, of, note));
        arena_back(with->a, before);
    }
}
