/* crumbnote trial: one bake added to the log. */
#include "commands/command.h"

#include "base/number.h"
#include "base/words.h"
#include "commands/setting.h"
#include "nutrition/lines.h"
#include "publish/trial_log.h"
#include "read/trials.h"

#include <time.h>

enum {
    OPTION_VERDICT,
    OPTION_DATE,
    OPTION_LIQUID,
    OPTION_TEXTURE,
    OPTION_HEIGHT,
    OPTION_SPREAD,
    OPTION_WEIGHT,
    OPTION_WRITTEN_HEIGHT,
    OPTION_WRITTEN_SPREAD,
    OPTION_WRITTEN_WEIGHT,
    OPTION_PICTURE,
    OPTION_WRITTEN_PICTURE,
    OPTION_REMARKS,
    OPTION_BY,
    OPTION_FILE
};

/* A bake being added. */
typedef struct {
    command_setting at;
    const recipe *of;
    const arguments *given;
    const char *date, *file; /* the file's name inside trials/ */
    view *entry;
    trial read; /* the entry, as the program reads it */
} adding;

/* What is wrong with a value given, as the reader of the log says it. */
static exit_code refuse(const char *message, const char *hint) {
    return command_refuse(hint, "%s", message);
}

/* -- the date -------------------------------------------------------------------------------- */

/* The day of `seconds` after 1970, by universal time, so that it does not hang on the machine. */
static char *day_of(arena *a, time_t seconds) {
    struct tm day;
    if (!gmtime_r(&seconds, &day))
        return NULL;
    return arena_format(a, "%04d-%02d-%02d", day.tm_year + 1900, day.tm_mon + 1, day.tm_mday);
}

/* Today; SOURCE_DATE_EPOCH (reproducible-builds.org) stands for the clock where it is set. */
static char *today(arena *a) {
    const char *fixed = getenv("SOURCE_DATE_EPOCH");
    double seconds;
    if (!fixed)
        return day_of(a, time(NULL));
    return number_is(span_of(fixed), &seconds) ? day_of(a, (time_t)seconds) : NULL;
}

/* -- the entry ------------------------------------------------------------------------------- */

static void put_option(arena *a, view *to, const char *key, const arguments *given, size_t which) {
    const char *value = argument_option(given, which);
    if (value && value[0])
        view_put_text(a, to, key, value);
}

/* A bare number gets the unit that the key has. */
static void put_quantity(arena *a, view *to, const char *key, const char *value, const char *in) {
    double number;
    if (value && value[0])
        view_put_text(a, to, key,
                      number_is(span_of(value), &number) ? arena_format(a, "%s %s", value, in)
                                                         : value);
}

static void put_texture(arena *a, view *to, const char *words) {
    view *list = NULL;
    for (span rest = span_of(words); rest.length;) {
        size_t comma = span_find(rest, ",");
        span word = span_trim(span_first(rest, comma));
        rest = span_from(rest, comma + 1);
        if (!word.length)
            continue;
        list = list ? list : view_put_list(a, to, "texture");
        view_put_span(a, list, NULL, word);
    }
}

/* Height, spread and weight, from option `first` on; nothing where none is given. */
static view *measures_of(arena *a, const arguments *given, size_t first) {
    view *measures = view_object(a);
    put_quantity(a, measures, "height", argument_option(given, first), "mm");
    put_quantity(a, measures, "spread", argument_option(given, first + 1), "mm");
    put_quantity(a, measures, "weight", argument_option(given, first + 2), "g");
    return measures;
}

static void put_measured(arena *a, view *to, const arguments *given) {
    view *measured = measures_of(a, given, OPTION_HEIGHT);
    view *written = measures_of(a, given, OPTION_WRITTEN_HEIGHT);
    if (written->count)
        view_put(measured, "as-written", written);
    if (measured->count)
        view_put(to, "measured", measured);
}

static void put_pictures(arena *a, view *to, const arguments *given) {
    view *pictures = view_object(a);
    put_option(a, pictures, "as-written", given, OPTION_WRITTEN_PICTURE);
    put_option(a, pictures, "swapped", given, OPTION_PICTURE);
    if (pictures->count)
        view_put(to, "pictures", pictures);
}

static view *entry_of(arena *a, const adding *one) {
    const arguments *given = one->given;
    view *entry = view_object(a);
    view_put_text(a, entry, "recipe", one->of->slug);
    view_put_text(a, entry, "replace", given->words[1]);
    view_put_text(a, entry, "with", given->words[2]);
    put_quantity(a, entry, "liquid", argument_option(given, OPTION_LIQUID), "g");
    view_put_text(a, entry, "date", one->date);
    view_put_text(a, entry, "verdict", argument_option(given, OPTION_VERDICT));
    put_texture(a, entry, argument_option(given, OPTION_TEXTURE));
    put_measured(a, entry, given);
    put_pictures(a, entry, given);
    put_option(a, entry, "remarks", given, OPTION_REMARKS);
    put_option(a, entry, "by", given, OPTION_BY);
    return entry;
}

/* -- checks ---------------------------------------------------------------------------------- */

static bool are_texts(const arguments *given) {
    for (size_t i = 0; i < given->count; i++)
        if (!words_are_utf8(span_of(given->words[i]), NULL))
            return false;
    for (size_t i = 0; i < OPTIONS_MOST; i++)
        if (!words_are_utf8(span_of(given->option_values[i]), NULL))
            return false;
    return true;
}

static exit_code check_recipe(arena *a, adding *one) {
    const site_folder *site = &one->at.site;
    const char *name = path_name(one->given->words[0]);
    if (!site->settings.folder)
        return command_misused("%s is in no site folder: none above it holds site.yaml",
                               one->given->words[0]);
    for (size_t i = 0; i < site->recipe_files.count; i++)
        if (strcmp(site->recipe_files.items[i].name, name) == 0)
            return EXIT_FINE;
    return command_misused("the site has no recipe %s", path_join(a, "recipes", name));
}

/* What the reader of the log finds wrong with it, or in doubt. */
static exit_code check_entry(arena *a, adding *one) {
    problems found = problems_in(a), unsaid = problems_in(a);
    trial_addition alone = {.entry = one->entry, .whole = TEXT_EMPTY};
    trials read = {0};
    located nothing = {{"", 0}, {"the bake", 1, 1}};
    bool composed = trial_log_compose(a, nothing, &one->at.site.shelf, &alone, &unsaid);
    span bytes = arena_copy_span(a, text_span(&alone.whole));
    text_free(&alone.whole);
    trials_read(a, "the bake", bytes, &one->at.site.shelf, &read, &found);
    if (found.count)
        return refuse(found.items[0].message, found.items[0].hint);
    if (!composed || read.count != 1)
        return refuse("one of the texts can't be kept", "leave out what is not plain text");
    one->read = read.items[0];
    return EXIT_FINE;
}

/* The names of the recipe's ingredients of the family `in`, for a hint; null when none. */
static const char *family_of_recipe(arena *a, const recipe *of, family in) {
    word_list have = {0};
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what && of->lines.items[i].what->in == in)
            LIST_ADD(a, &have, of->lines.items[i].what->name);
    return have.count ? arena_format(a, "it has %s", words_joined(a, &have)) : NULL;
}

static exit_code check_sides(arena *a, const adding *one) {
    const ingredient *from = one->read.replaced.what, *to = one->read.with.what;
    if (from == to)
        return refuse(arena_format(a, "both sides are %s", from->name),
                      "name what came in its place");
    for (size_t i = 0; i < one->of->lines.count; i++)
        if (one->of->lines.items[i].what == from)
            return EXIT_FINE;
    return refuse(arena_format(a, "%s has no %s", one->of->title, from->name),
                  family_of_recipe(a, one->of, from->in));
}

static exit_code check_picture(arena *a, const adding *one, const char *name) {
    const file_list *pictures = &one->at.site.pictures;
    for (size_t i = 0; name && i < pictures->count; i++)
        if (strcmp(pictures->items[i].name, name) == 0)
            return EXIT_FINE;
    return name ? refuse(arena_format(a, "there is no picture \"%s\" in pictures/", name),
                         "put the file there first, or mend the name")
                : EXIT_FINE;
}

static exit_code check_file(arena *a, adding *one) {
    const char *name = argument_option(one->given, OPTION_FILE);
    if (!name) {
        one->file = trial_log_name(a, one->date);
        return EXIT_FINE;
    }
    one->file = span_begins(span_of(name), "trials/") ? name + strlen("trials/") : name;
    span plain = span_of(one->file);
    if (path_is_plain(plain) && !strchr(one->file, '/') && span_ends(plain, ".yaml"))
        return EXIT_FINE;
    return refuse(arena_format(a, "\"%s\" can't be a file of the log", name),
                  "for example: --file 2026-autumn.yaml, a file in trials/");
}

static exit_code check_all(arena *a, adding *one) {
    exit_code code = check_recipe(a, one);
    if (!code)
        code = check_entry(a, one);
    if (!code)
        code = check_sides(a, one);
    if (!code)
        code = check_picture(a, one, one->read.picture_as_written);
    if (!code)
        code = check_picture(a, one, one->read.picture_swapped);
    return code ? code : check_file(a, one);
}

/* -- the whole ------------------------------------------------------------------------------- */

static exit_code add_bake(arena *a, const adding *one) {
    static const exit_code codes[] = {[TRIAL_ADDED] = EXIT_FINE,
                                      [TRIAL_REFUSED] = EXIT_CONTENT,
                                      [TRIAL_MACHINE_FAILED] = EXIT_MACHINE};
    problems found = problems_in(a);
    trial_addition add = {.entry = one->entry, .whole = TEXT_EMPTY};
    trial_outcome outcome = trial_log_append(a, &one->at.site, one->file, &add, &found);
    text_free(&add.whole);
    command_report(&found);
    if (outcome != TRIAL_ADDED)
        return codes[outcome];
    const char *file = path_join(a, "trials", one->file);
    if (!one->given->json)
        return command_say(arena_format(a, "%s:%u: %s for %s in %s, %s: %s\n", file, add.line,
                                        one->read.with.what->name, one->read.replaced.what->name,
                                        one->of->slug, one->date, verdict_word(one->read.outcome)),
                           EXIT_FINE);
    view *document = view_object(a);
    view_put_text(a, document, "file", file);
    view_put_number(a, document, "line", add.line, 0);
    view_put(document, "trial", one->entry);
    return command_print(document, EXIT_FINE);
}

static exit_code run(arena *a, const arguments *given) {
    problems found = problems_in(a);
    adding one = {.given = given, .date = argument_option(given, OPTION_DATE)};
    const char *verdict_given = argument_option(given, OPTION_VERDICT);
    if (!verdict_given || !verdict_given[0])
        return refuse("how did it come out? --verdict is missing",
                      "--verdict works, adjust, different or avoid");
    if (!are_texts(given))
        return command_misused("what is given must be text in UTF-8");
    if (!one.date && !(one.date = today(a)))
        return command_misused("SOURCE_DATE_EPOCH must be a number of seconds");
    one.of = setting_recipe(a, given->words[0], &one.at, &found);
    if (!one.of)
        return setting_failed(&one.at, &found);
    one.entry = entry_of(a, &one);
    exit_code code = check_all(a, &one);
    return code ? code : add_bake(a, &one);
}

const command command_trial = {
    .name = "trial",
    .usage = "trial RECIPE FROM TO --verdict WORD",
    .summary = "add a bake with a swap to the log",
    .help = "RECIPE is a .md file of a site, FROM an ingredient of it, TO what came in its place;\n"
            "both may be lines with amounts: \"60 g pea protein powder\". WORD is works, adjust,\n"
            "different or avoid. The bake is put behind what its file in trials/ holds, which\n"
            "keeps its comments and order; a file with an error in it is left alone.",
    .options = {{"--verdict", "WORD", "works, adjust, different or avoid"},
                {"--date", "DATE", "year-month-day; today when left out"},
                {"--liquid", "AMOUNT", "liquid added or held back: +30 g milk, -15 g"},
                {"--texture", "WORDS", "for example \"rubbery, dry\""},
                {"--height", "LENGTH", "of the swapped bake: 9 mm"},
                {"--spread", "LENGTH", "of the swapped bake: 92 mm"},
                {"--weight", "WEIGHT", "of the swapped bake: 210 g"},
                {"--as-written-height", "LENGTH", "of the bake as written"},
                {"--as-written-spread", "LENGTH", "of the bake as written"},
                {"--as-written-weight", "WEIGHT", "of the bake as written"},
                {"--picture", "FILE", "of the swapped bake, in pictures/"},
                {"--as-written-picture", "FILE", "of the bake as written, in pictures/"},
                {"--remarks", "TEXT", "what you saw and tasted"},
                {"--by", "NAME", "who baked or tasted it"},
                {"--file", "FILE", "in trials/; by year and season when left out"}},
    .least = 3,
    .most = 3,
    .run = run,
};
