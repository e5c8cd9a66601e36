/* crumbnote preview: the site in the browser while it is being written. */
#include "commands/command.h"

#include "base/files.h"
#include "base/number.h"
#include "preview/preview.h"
#include "preview/request.h"
#include "site/phrase.h"

enum { OPTION_PORT, OPTION_LISTEN, OPTION_WORKERS };
enum { PORT_USUAL = 4060, PORT_MOST = 65535 };

typedef struct {
    arena *a;
    const char *folder;
    bool json;
    char *last; /* the problems as last printed */
} screen;

static void say_listening(const char *url, void *state) {
    const screen *to = state;
    view *put = view_object(to->a);
    view_put_text(to->a, put, "address", url);
    view_put_text(to->a, put, "folder", to->folder);
    if (to->json)
        (void)command_print(put, EXIT_FINE);
    else
        (void)command_say(arena_format(to->a, "%s shows %s; Ctrl-C ends it\n", url, to->folder),
                          EXIT_FINE);
}

/* Problems are printed when they are others than before, not at each save. */
static void say_built(const build_report *report, problems *found, double ms, void *state) {
    screen *to = state;
    text t = TEXT_EMPTY;
    problems_sort(found);
    for (size_t i = 0; i < found->count; i++)
        problem_print(&found->items[i], &t);
    if (!to->last || strcmp(to->last, t.bytes) != 0)
        fputs(t.bytes, stderr);
    free(to->last);
    to->last = strdup(t.bytes);
    text_free(&t);
    arena *a = arena_new();
    fprintf(stderr, "built in %.0f ms: %zu of %s, %s, %s\n", ms, report->written,
            phrase_count(a, report->recipes, "recipe"), phrase_count(a, found->errors, "error"),
            phrase_count(a, found->warnings, "warning"));
    arena_free(a);
}

static bool port_of(const arguments *given, unsigned *port) {
    const char *asked = argument_option(given, OPTION_PORT);
    *port = PORT_USUAL;
    if (asked && strcmp(asked, "0") == 0)
        *port = 0;
    return *port == 0 || option_count(given, OPTION_PORT, PORT_MOST, port);
}

static exit_code run(arena *a, const arguments *given) {
    screen to = {.a = a, .folder = given->count ? given->words[0] : ".", .json = given->json};
    const char *listen = argument_option(given, OPTION_LISTEN);
    preview_request asked = {.folder = to.folder,
                             .listen = listen ? listen : "127.0.0.1",
                             .listening = say_listening,
                             .built = say_built,
                             .state = &to};
    problems found = problems_in(a);
    if (!port_of(given, &asked.port))
        return command_misused("--port wants a whole number from 0 to %d", PORT_MOST);
    if (!option_count(given, OPTION_WORKERS, WORKERS_MOST, &asked.workers))
        return command_misused("--workers wants a whole number from 1 to %d", WORKERS_MOST);
    if (!file_exists(path_join(a, to.folder, "site.yaml")))
        return command_misused("there is no site.yaml in \"%s\"; crumbnote start begins a site",
                               to.folder);
    if (!address_is_loopback(asked.listen))
        fputs("crumbnote: other machines can see this preview\n", stderr);
    bool good = preview_run(&asked, &found);
    command_report(&found);
    free(to.last);
    return good ? EXIT_FINE : EXIT_MACHINE;
}

const command command_preview = {
    .name = "preview",
    .usage = "preview [FOLDER] [--port N] [--listen ADDRESS]",
    .summary = "see the site while you write it",
    .help =
        "Builds the site of FOLDER (the current one when left out) into a folder of its own and\n"
        "shows it to the browsers of this machine. When a file of the site is saved, what it\n"
        "touches is built again and the pages that changed load anew. Problems stand on top of\n"
        "the page and on standard error; a recipe with errors keeps its last good page. Ctrl-C\n"
        "ends it and leaves nothing behind.",
    .options = {{"--port", "N", "where it listens (4060 when left out; 0: any free one)"},
                {"--listen", "ADDRESS", "an address other than 127.0.0.1, for other machines too"},
                {"--workers", "N", "recipes worked on at a time"}},
    .most = 1,
    .run = run,
};
