#include "site/json_ld.h"

#include "base/number.h"
#include "site/phrase.h"
#include "site/say.h"

static void put_optional(arena *a, view *to, const char *key, const char *words) {
    if (words)
        view_put_text(a, to, key, words);
}

static void put_type(arena *a, view *to, const char *type) {
    view_put_text(a, to, "@type", type);
}

static void put_person(arena *a, view *to, const page_maker *by, const recipe *of) {
    const char *name = of->author ? of->author : by->folder->settings.author;
    if (!name)
        return;
    view *author = view_put_object(a, to, "author");
    put_type(a, author, "Person");
    view_put_text(a, author, "name", name);
}

static void put_time(arena *a, view *to, const char *key, double minutes) {
    if (minutes > 0)
        view_put_text(a, to, key, phrase_minutes_iso(a, minutes));
}

static void put_times(arena *a, view *to, const minutes_of *times) {
    put_time(a, to, "prepTime", times->prepare + times->rest);
    put_time(a, to, "cookTime", times->bake + times->cool);
    put_time(a, to, "totalTime", times->prepare + times->rest + times->bake + times->cool);
}

static void put_lines(arena *a, view *to, const recipe *of) {
    view *list = view_put_list(a, to, "recipeIngredient");
    for (size_t i = 0; i < of->lines.count; i++)
        view_put_text(a, list, NULL, of->lines.items[i].written);
}

/* A step in short is its first sentence, where that is short and not all of it; else null. */
static const char *step_name(arena *a, span step) {
    enum { SHORT_BYTES = 70 };
    size_t stop = span_find(step, ". ");
    return stop < step.length && stop <= SHORT_BYTES ? arena_copy(a, span_first(step, stop)) : NULL;
}

static void put_steps(arena *a, view *to, const char *address, const method *how) {
    view *list = view_put_list(a, to, "recipeInstructions");
    for (size_t i = 0; i < how->step_count; i++) {
        view *step = view_put_object(a, list, NULL);
        put_type(a, step, "HowToStep");
        view_put_number(a, step, "position", (double)(i + 1), 0);
        put_optional(a, step, "name", step_name(a, span_of(how->steps[i])));
        view_put_text(a, step, "text", how->steps[i]);
        view_put_text(a, step, "url", arena_format(a, "%s#method", address));
    }
}

static void put_figure(arena *a, view *to, const char *key, const macros *of, nutrient which,
                       const char *in) {
    if (nutrient_known(&of->of, which))
        view_put_text(a, to, key,
                      arena_format(a, "%s %s", number_copy(a, of->of.of[which], 1), in));
}

static void put_nutrition(arena *a, view *to, const recipe_figures *of) {
    const struct {
        const char *key;
        nutrient which;
        const char *unit;
    } rows[] = {{"calories", energy_nutrient(of->by->energy), "calories"},
                {"proteinContent", NUTRIENT_PROTEIN, "g"},
                {"fatContent", NUTRIENT_FAT, "g"},
                {"saturatedFatContent", NUTRIENT_SATURATES, "g"},
                {"carbohydrateContent", NUTRIENT_CARBOHYDRATE, "g"},
                {"fiberContent", NUTRIENT_FIBRE, "g"},
                {"sugarContent", NUTRIENT_SUGARS, "g"},
                {"sodiumContent", NUTRIENT_SODIUM, "mg"},
                {"cholesterolContent", NUTRIENT_CHOLESTEROL, "mg"}};
    const language *in = of->by->in;
    view *put = view_put_object(a, to, "nutrition");
    put_type(a, put, "NutritionInformation");
    view_put_text(a, put, "servingSize",
                  SAY(a, in, WITH_MEASURE, say_yield(a, in, &of->of->portion),
                      say_weight(a, in, of->of->baked_g / of->of->portions)));
    for (size_t i = 0; i < COUNT(rows); i++)
        put_figure(a, put, rows[i].key, &of->macros.portion, rows[i].which, rows[i].unit);
}

static void put_diets(arena *a, view *to, diet_set set) {
    view *list = NULL;
    for (size_t i = 0; i < DIET_COUNT; i++) {
        const char *name = diet_schema((diet)i);
        if (!(set >> i & 1u) || !name)
            continue;
        if (!list)
            list = view_put_list(a, to, "suitableForDiet");
        view_put_text(a, list, NULL, arena_format(a, "https://schema.org/%s", name));
    }
}

static void put_keywords(arena *a, view *to, const recipe *of) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < of->tags.count; i++) {
        text_add(&t, i ? ", " : "");
        text_add(&t, of->tags.items[i]);
    }
    if (t.length)
        view_put_text(a, to, "keywords", arena_copy(a, text_span(&t)));
    text_free(&t);
}

static view *recipe_at(arena *a, const page_maker *by, const recipe_figures *of, const method *how,
                       const char *address) {
    const recipe *from = of->of;
    view *put = view_object(a);
    view_put_text(a, put, "@context", "https://schema.org");
    put_type(a, put, "Recipe");
    view_put_text(a, put, "name", from->title);
    put_optional(a, put, "description", from->summary);
    view_put_text(a, put, "url", address);
    view_put_text(a, put, "inLanguage", by->folder->settings.language);
    const site_picture *picture = picture_find(by->pictures, from->picture);
    if (picture)
        view_put_text(a, view_put_list(a, put, "image"), NULL,
                      page_address(a, by->folder, picture_path_largest(a, picture)));
    put_person(a, put, by, from);
    put_optional(a, put, "datePublished", from->date);
    put_optional(a, put, "dateModified", from->changed);
    put_times(a, put, &from->minutes);
    view_put_text(a, put, "recipeYield", say_yield(a, page_language(by), &from->makes));
    put_optional(a, put, "recipeCategory", language_kind(page_language(by), from->kind));
    put_keywords(a, put, from);
    put_lines(a, put, from);
    put_steps(a, put, address, how);
    put_nutrition(a, put, of);
    put_diets(a, put, of->diets);
    return put;
}

static const char *written(arena *a, const view *of) {
    text t = TEXT_EMPTY;
    view_write_json(of, false, &t);
    const char *words = arena_copy(a, text_span(&t));
    text_free(&t);
    return words;
}

const char *json_ld_of(arena *a, const page_maker *by, const recipe_figures *of,
                       const method *how) {
    const char *address = page_address(a, by->folder, path_of_recipe(a, of->of->slug));
    return written(a, recipe_at(a, by, of, how, address));
}

const char *json_ld_of_swapped(arena *a, const page_maker *by, const recipe_figures *of,
                               const method *how, const char *path) {
    view *put = recipe_at(a, by, of, how, page_address(a, by->folder, path));
    view_put_text(a, put, "isBasedOn",
                  page_address(a, by->folder, path_of_recipe(a, of->of->slug)));
    return written(a, put);
}
