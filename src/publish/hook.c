#include "publish/hook.h"

#include "base/files.h"
#include "base/list.h"
#include "reference/reference.h"

#include <errno.h>
#include <limits.h>
#include <sys/stat.h>
#include <unistd.h>

static const char *const hook_names[] = {"hooks/pre-receive", "hooks/post-receive"};
static const char settings_name[] = "crumbnote.config";

/* How the hook begins: what begins so was put there by this program. */
static const char beginning[] = "#!/bin/sh\n# crumbnote: ";

static bool complain(const char *path, int why, bool *machine_failed, problems *found) {
    *machine_failed = true;
    problem_add(found, (place){path, 0, 0}, "mind space and permissions", "can't be written: %s",
                strerror(why));
    return false;
}

/* True unless another hook is at `path`. */
static bool is_free(arena *a, const char *path) {
    span bytes;
    int why;
    struct stat about;
    if (lstat(path, &about) != 0)
        return true;
    return file_read(a, path, &bytes, &why) && span_begins(bytes, beginning);
}

static bool may_install(arena *a, const hook_request *asked, problems *found) {
    const char *where = asked->repository;
    if (!file_exists(path_join(a, where, "HEAD")) ||
        !folder_exists(path_join(a, where, "objects"))) {
        problem_add(found, (place){where, 0, 0}, "git init --bare FOLDER makes one to push to",
                    "this is no git repository");
        return false;
    }
    for (size_t i = 0; i < COUNT(hook_names); i++) {
        const char *path = path_join(a, where, hook_names[i]);
        if (is_free(a, path))
            continue;
        problem_add(found, (place){path, 0, 0}, "let it call crumbnote release, or move it away",
                    "there is another hook already; it will not be replaced");
        return false;
    }
    return true;
}

/* A value as git's configuration files have it. */
static void add_value(text *t, const char *key, const char *value) {
    text_format(t, "\t%s = \"", key);
    for (const char *c = value; *c; c++) {
        if (*c == '"' || *c == '\\')
            text_add_char(t, '\\');
        if (*c == '\n')
            text_add(t, "\\n");
        else
            text_add_char(t, *c);
    }
    text_add(t, "\"\n");
}

/* `path` from the root on; the hook runs elsewhere. */
static const char *absolute(arena *a, const char *path) {
    char here[PATH_MAX];
    return path[0] != '/' && getcwd(here, sizeof here) ? path_join(a, here, path) : path;
}

static const char *own_program(char room[PATH_MAX]) {
    ssize_t length = readlink("/proc/self/exe", room, PATH_MAX - 1);
    room[length > 0 ? length : 0] = '\0';
    return length > 0 ? room : "crumbnote";
}

static bool write_settings(arena *a, const hook_request *asked, int *why) {
    char program[PATH_MAX];
    text t = TEXT_EMPTY;
    text_add(&t, "# What the hooks of crumbnote go by; they explain each key.\n[crumbnote]\n");
    add_value(&t, "to", absolute(a, asked->to));
    add_value(&t, "program", own_program(program));
    add_value(&t, "refuse", asked->refuse ? "yes" : "no");
    bool good = file_write(path_join(a, asked->repository, settings_name), text_span(&t), why);
    text_free(&t);
    return good;
}

static bool write_hook(const char *path, int *why) {
    if (!file_write(path, reference_hook[0].bytes, why))
        return false;
    *why = chmod(path, 0755) == 0 ? 0 : errno;
    return *why == 0;
}

bool hook_install(const hook_request *asked, bool *machine_failed, problems *found) {
    arena *a = arena_new();
    int why = 0;
    const char *at = path_join(a, asked->repository, settings_name);
    bool good = may_install(a, asked, found);
    if (good && !write_settings(a, asked, &why))
        good = complain(at, why, machine_failed, found);
    for (size_t i = 0; good && i < COUNT(hook_names); i++) {
        at = path_join(a, asked->repository, hook_names[i]);
        if (!write_hook(at, &why))
            good = complain(at, why, machine_failed, found);
    }
    arena_free(a);
    return good;
}
