/* crumbnote start: writes a small site folder that builds as it is, or hooks that publish at each
 * push. */
#include "commands/command.h"

#include "base/fresh_folder.h"
#include "base/list.h"
#include "publish/hook.h"
#include "reference/reference.h"

#include <errno.h>

enum { OPTION_HOOK, OPTION_TO, OPTION_REFUSE };

/* "dot-gitignore" is written ".gitignore": in the sources it must not rule over them. */
static const char *name_to_write(arena *a, const char *name) {
    text t = TEXT_EMPTY;
    span rest = span_of(name);
    while (rest.length) {
        span part = span_first(rest, span_find(rest, "/"));
        rest = span_from(rest, part.length);
        bool dotted = span_begins(part, "dot-");
        text_add(&t, dotted ? "." : "");
        text_add_span(&t, span_from(part, dotted ? strlen("dot-") : 0));
        if (rest.length) {
            text_add_char(&t, '/');
            rest = span_from(rest, 1);
        }
    }
    const char *written = arena_copy(a, text_span(&t));
    text_free(&t);
    return written;
}

static bool write_all(arena *a, fresh_folder *made, int *why) {
    for (size_t i = 0; i < reference_start_count; i++)
        if (!fresh_folder_write(made, name_to_write(a, reference_start[i].name),
                                reference_start[i].bytes, why))
            return false;
    return true;
}

static bool write_folder(arena *a, const char *path, fresh_folder *made, int *why) {
    if (!fresh_folder_begin(a, path, made, why))
        return false;
    if (write_all(a, made, why) && fresh_folder_finish(made, why))
        return true;
    fresh_folder_abandon(made);
    return false;
}

static exit_code refused(const char *path, int why) {
    const char *reason = why == ENOTEMPTY ? "there is something in it already"
                         : why == EEXIST  ? "it is there already, and it is no folder"
                                          : strerror(why);
    bool taken = why == ENOTEMPTY || why == EEXIST;
    command_complain("no site begun in \"%s\": %s", path, reason);
    if (taken)
        fputs("  hint: name a folder that is empty or not there yet; nothing was written\n",
              stderr);
    return taken || why == ENOTDIR ? EXIT_USAGE : EXIT_MACHINE;
}

static view *document_of(arena *a, const fresh_folder *made) {
    view *put = view_object(a);
    view_put_text(a, put, "folder", made->path);
    view *files = view_put_list(a, put, "files");
    for (size_t i = 0; i < made->names.count; i++)
        view_put_text(a, files, NULL, made->names.items[i].name);
    return put;
}

/* Adds `path` as a shell takes it for one word. */
static void add_shell_word(text *t, const char *path) {
    static const char plain[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
                                "_./-";
    if (path[strspn(path, plain)] == '\0') {
        text_add(t, path);
        return;
    }
    text_add_char(t, '\'');
    for (const char *c = path; *c; c++) {
        if (*c == '\'')
            text_add(t, "'\\'");
        text_add_char(t, *c);
    }
    text_add_char(t, '\'');
}

/* What to type next, and what it does. `named`: the folder is named even where one stands in it. */
static const struct {
    const char *words, *does;
    bool named, has_out;
} next[] = {
    {"check", "reads everything and says what is wrong", false, false},
    {"site", "writes the pages: open index.html there", false, true},
    {"draft FILE --to", "makes a recipe to finish from your notes or a web page you saved", true,
     false},
};

/* The command by the name this program was called by, for whoever stands where it was called. */
static void add_next(arena *a, text *t, const char *folder, size_t which) {
    bool here = strcmp(folder, ".") == 0;
    text_add(t, "  ");
    add_shell_word(t, program_invocation_name);
    text_format(t, " %s", next[which].words);
    if (!here || next[which].named) {
        text_add_char(t, ' ');
        add_shell_word(t, folder);
    }
    if (!here && next[which].has_out) {
        text_add(t, " --out ");
        add_shell_word(t, path_join(a, folder, "build/site"));
    }
    text_format(t, "\n      %s\n", next[which].does);
}

static exit_code say(arena *a, const fresh_folder *made) {
    text t = TEXT_EMPTY;
    text_format(&t, "A small site is in %s:\n", made->path);
    for (size_t i = 0; i < made->names.count; i++)
        text_format(&t, "  %s\n", made->names.items[i].name);
    text_add(&t, "\nNext, type:\n");
    for (size_t i = 0; i < COUNT(next); i++)
        add_next(a, &t, made->path, i);
    text_add(&t, "\nYour title and address go into site.yaml.\n");
    exit_code code = command_say(t.bytes, EXIT_FINE);
    text_free(&t);
    return code;
}

static exit_code begin_folder(arena *a, const char *path, bool json) {
    fresh_folder made;
    int why = 0;
    if (!write_folder(a, path, &made, &why))
        return refused(path, why);
    return json ? command_print(document_of(a, &made), EXIT_FINE) : say(a, &made);
}

static exit_code begin_hook(arena *a, const hook_request *asked, bool json) {
    problems found = problems_in(a);
    bool machine_failed = false;
    bool good = hook_install(asked, &machine_failed, &found);
    command_report(&found);
    if (!good)
        return machine_failed ? EXIT_MACHINE : EXIT_USAGE;
    if (json) {
        view *put = view_object(a);
        view_put_text(a, put, "hook", asked->repository);
        view_put_text(a, put, "to", asked->to);
        view_put_bool(a, put, "refuse", asked->refuse);
        return command_print(put, EXIT_FINE);
    }
    return command_say(
        arena_format(a,
                     "Each push to %s goes live in %s/live.\n"
                     "A push with errors in the content %s.\n",
                     asked->repository, asked->to,
                     asked->refuse ? "is refused" : "is taken, but the live site stays as it was"),
        EXIT_FINE);
}

static exit_code run(arena *a, const arguments *given) {
    hook_request hook = {.repository = argument_option(given, OPTION_HOOK),
                         .to = argument_option(given, OPTION_TO),
                         .refuse = argument_option(given, OPTION_REFUSE) != NULL};
    if (!hook.repository && (hook.to || hook.refuse))
        return command_misused("--to and --refuse go with --hook REPOSITORY");
    if (hook.repository && !hook.to)
        return command_misused("--hook wants --to DIR, the folder of releases");
    if ((given->count == 1) == (hook.repository != NULL))
        return command_misused("start wants DIR, the folder to write, or --hook REPOSITORY");
    if (hook.repository)
        return begin_hook(a, &hook, given->json);
    return begin_folder(a, given->words[0], given->json);
}

const command command_start = {
    .name = "start",
    .usage = "start DIR | --hook REPOSITORY --to DIR",
    .summary = "begin a site folder that builds as it is",
    .help =
        "Writes a small site to the folder DIR: a recipe, the settings with what each does, a\n"
        "trial bake, examples of pantry entries and swap rules, and a workflow file for a hosted\n"
        "runner. DIR must be empty or not there yet: nothing is ever written over, and where\n"
        "something fails nothing is left.\n"
        "\n"
        "With --hook it writes no site but hooks into the bare git repository REPOSITORY: from\n"
        "then on each push to its main branch is released (see crumbnote release --help) to the\n"
        "folder given with --to. A push with errors leaves the live site as it was and tells the\n"
        "pusher why, with file, line and column; with --refuse it is not even taken. Other hooks\n"
        "are never replaced. REPOSITORY/crumbnote.config holds what the hooks go by.",
    .options = {{"--hook", "REPOSITORY", "a bare git repository: publish at each push to it"},
                {"--to", "DIR", "the folder of releases; DIR/live is the site"},
                {"--refuse", NULL, "a push with errors in the content is refused"}},
    .most = 1,
    .run = run,
};
