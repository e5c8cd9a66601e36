/* crumbnote start: writes a small site folder that builds as it is. */
#include "commands/command.h"

#include "base/fresh_folder.h"
#include "reference/reference.h"

#include <errno.h>

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
    fprintf(stderr, "crumbnote: no site begun in \"%s\": %s\n", path, reason);
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

static exit_code say(const fresh_folder *made) {
    text t = TEXT_EMPTY;
    text_format(&t, "A small site is in %s:\n", made->path);
    for (size_t i = 0; i < made->names.count; i++)
        text_format(&t, "  %s\n", made->names.items[i].name);
    text_add(&t, "\nNext, type:\n");
    if (strcmp(made->path, ".") != 0) {
        text_add(&t, "  cd ");
        add_shell_word(&t, made->path);
        text_add_char(&t, '\n');
    }
    text_add(&t, "  crumbnote check     reads everything and says what is wrong\n"
                 "  crumbnote site      writes the pages: open build/site/index.html\n"
                 "\nThen put your title and address into site.yaml, and a recipe of yours into "
                 "recipes/.\n");
    exit_code code = command_say(t.bytes, EXIT_FINE);
    text_free(&t);
    return code;
}

static exit_code run(arena *a, const arguments *given) {
    fresh_folder made;
    int why = 0;
    if (!write_folder(a, given->words[0], &made, &why))
        return refused(given->words[0], why);
    return given->json ? command_print(document_of(a, &made), EXIT_FINE) : say(&made);
}

const command command_start = {
    .name = "start",
    .usage = "start DIR",
    .summary = "begin a site folder that builds as it is",
    .help = "Writes a small site to the folder DIR: a recipe, the settings with what each does, a\n"
            "trial bake, and examples of pantry entries and swap rules. DIR must be empty or not\n"
            "there yet: nothing is ever written over, and where something fails nothing is left.",
    .least = 1,
    .most = 1,
    .run = run,
};
