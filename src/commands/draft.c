/* crumbnote draft: a Markdown recipe from JSON-LD, a page or plain text. */
#include "commands/command.h"

#include "base/fresh_folder.h"
#include "base/number.h"
#include "commands/setting.h"
#include "draft/draft.h"
#include "site/phrase.h"

#include <errno.h>
#include <unistd.h>

enum { OPTION_TO, OPTION_NUMBER };

/* -- reading ----------------------------------------------------------------------------------- */

/* Standard input whole; more than a file may have is cut, which the reader then refuses. */
static bool read_input(arena *a, span *bytes, int *why) {
    text all = TEXT_EMPTY;
    char chunk[16 * 1024];
    ssize_t got = 1;
    while (got != 0 && all.length <= FILE_BYTES_MOST) {
        got = read(STDIN_FILENO, chunk, sizeof chunk);
        if (got < 0 && errno != EINTR)
            break;
        if (got > 0)
            text_add_span(&all, (span){chunk, (size_t)got});
    }
    *why = errno;
    *bytes = arena_copy_span(a, text_span(&all));
    text_free(&all);
    return got >= 0;
}

static bool read_source(arena *a, const char *path, draft_request *asked, int *why) {
    bool is_input = strcmp(path, "-") == 0;
    asked->file = is_input ? "standard input" : path;
    if (!is_input)
        return file_read(a, path, &asked->bytes, why);
    return read_input(a, &asked->bytes, why);
}

static exit_code unreadable(const char *path, int why) {
    command_complain("%s: can't be read: %s", strcmp(path, "-") == 0 ? "standard input" : path,
                     why == EINVAL ? "it is no plain file" : strerror(why));
    bool slip = why == ENOENT || why == EINVAL || why == EFBIG || why == ENOTDIR;
    return slip ? EXIT_USAGE : EXIT_MACHINE;
}

/* -- writing ----------------------------------------------------------------------------------- */

/* A folder takes the file under its own name, a site folder in its recipes. */
static const char *target_of(arena *a, const char *to, const draft *made) {
    const char *name = arena_format(a, "%s.md", made->slug);
    if (!folder_exists(to) && !span_ends(span_of(to), "/"))
        return to;
    if (file_exists(path_join(a, to, "site.yaml")))
        to = path_join(a, to, "recipes");
    return path_join(a, to, name);
}

static view *document_of(arena *a, const draft *made, const char *written) {
    const struct {
        const char *key;
        const word_list *words;
    } lists[] = {
        {"remarks", &made->remarks}, {"unknown", &made->unknown}, {"recipes", &made->others}};
    view *put = view_object(a);
    view_put_text(a, put, "title", made->title);
    view_put_text(a, put, "name", arena_format(a, "%s.md", made->slug));
    view_put_text(a, put, "file", written);
    view_put_text(a, put, "recipe", made->recipe);
    for (size_t i = 0; i < COUNT(lists); i++) {
        view *list = view_put_list(a, put, lists[i].key);
        for (size_t k = 0; k < lists[i].words->count; k++)
            view_put_text(a, list, NULL, lists[i].words->items[k]);
    }
    return put;
}

/* What is left to do; to standard error where standard output holds the recipe. */
static void say(arena *a, const draft *made, const char *written, FILE *out) {
    fprintf(out, "\"%s\" drafted%s%s, %s left for you in it\n", made->title, written ? ": " : "",
            written ? written : "",
            made->remarks.count ? phrase_count(a, made->remarks.count, "remark") : "nothing");
    if (!written)
        fprintf(out, "  hint: a name that fits is recipes/%s.md\n", made->slug);
}

/* The first name beside `taken` that is free: rounds-2.md, rounds-3.md. */
static const char *free_name(arena *a, const char *taken) {
    span stem = span_of(taken);
    const char *ending = span_ends(stem, ".md") ? ".md" : "";
    const char *name = taken;
    stem.length -= strlen(ending);
    for (unsigned i = 2; i < 1000 && file_exists(name); i++)
        name = arena_format(a, "%.*s-%u%s", SPAN(stem), i, ending);
    return name;
}

static exit_code not_written(arena *a, const char *to, int why) {
    if (why == EEXIST)
        return command_refuse(arena_format(a, "--to %s keeps both; or take the old file away first",
                                           free_name(a, to)),
                              "%s: there is a file already; nothing was written", to);
    command_complain("%s: %s; nothing was written", to, strerror(why));
    return why == ENOTDIR ? EXIT_USAGE : EXIT_MACHINE;
}

static exit_code finish(arena *a, const arguments *given, const draft *made) {
    const char *to = argument_option(given, OPTION_TO);
    const char *written = to ? target_of(a, to, made) : NULL;
    int why = 0;
    if (written && !file_write_new(written, span_of(made->recipe), &why))
        return not_written(a, written, why);
    if (given->json)
        return command_print(document_of(a, made, written), EXIT_FINE);
    say(a, made, written, written ? stdout : stderr);
    return written ? command_say("", EXIT_FINE) : command_say(made->recipe, EXIT_FINE);
}

static bool read_number(const arguments *given, size_t *which) {
    const char *asked = argument_option(given, OPTION_NUMBER);
    double number = 1;
    if (asked && (!number_is(span_of(asked), &number) || number < 1 || number > 1000 ||
                  number > (double)(size_t)number))
        return false;
    *which = (size_t)number;
    return true;
}

static exit_code run(arena *a, const arguments *given) {
    problems found = problems_in(a);
    command_setting at;
    draft_request asked = {0};
    draft made;
    int why = 0;
    const char *to = argument_option(given, OPTION_TO);
    if (!read_number(given, &asked.which))
        return command_misused("--number wants a whole number from 1");
    if (!read_source(a, given->words[0], &asked, &why))
        return unreadable(given->words[0], why);
    if (!setting_read(a, to ? to : ".", &at, &found))
        return setting_failed(&at, &found);
    asked.shelf = &at.site.shelf;
    asked.cups = at.site.settings.cups;
    problems of_draft = problems_in(a);
    if (draft_make(a, &asked, &made, &of_draft))
        return finish(a, given, &made);
    command_report(&of_draft);
    return EXIT_CONTENT;
}

const command command_draft = {
    .name = "draft",
    .usage = "draft FILE [--to PLACE] [--number N]",
    .summary = "a recipe to finish, from JSON-LD, a web page or plain text",
    .help =
        "Turns FILE (- for standard input) into a Markdown recipe on standard output. FILE may be\n"
        "a schema.org Recipe as JSON-LD, a page that holds one (as JSON-LD, as microdata or by\n"
        "the classes of h-recipe), or plain text: the title first, one ingredient a line, the\n"
        "method under its heading. Nothing is invented: what could not be read or is not stated\n"
        "stays as a remark in it, with the reason. A file that is there is never written over.",
    .options = {{"--to", "PLACE", "a file to write, a folder to write into, or a site folder"},
                {"--number", "N", "which one, where FILE holds several recipes"}},
    .least = 1,
    .most = 1,
    .run = run,
};
