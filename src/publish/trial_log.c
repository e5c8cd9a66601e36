#include "publish/trial_log.h"

#include "base/number.h"
#include "read/trials.h"
#include "read/yaml.h"
#include "read/yaml_write.h"

#include <errno.h>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

/* -- the entry as YAML ----------------------------------------------------------------------- */

static void add_value(text *t, const view *of, bool in_list) {
    if (of->sort == VIEW_TEXT) {
        yaml_add_scalar(t, of->bytes, in_list);
        return;
    }
    bool keys = of->sort == VIEW_OBJECT;
    text_add_char(t, keys ? '{' : '[');
    for (const view *one = of->first; one; one = one->next) {
        if (keys)
            text_format(t, "%s: ", one->key.bytes);
        add_value(t, one, true);
        if (one->next)
            text_add(t, ", ");
    }
    text_add_char(t, keys ? '}' : ']');
}

/* How the file is laid out. */
typedef struct {
    size_t indent;        /* blanks before the hyphen of an entry */
    const char *line_end; /* as its first line ends */
    bool has_entries;
} layout;

static void add_entry(text *t, const view *entry, const layout *as) {
    for (const view *one = entry->first; one; one = one->next) {
        text_format(t, "%*s%s %s: ", (int)as->indent, "", one == entry->first ? "-" : " ",
                    one->key.bytes);
        add_value(t, one, false);
        text_add(t, as->line_end);
    }
}

/* Line number `which` of `bytes`, from 1. */
static span line_at(span bytes, unsigned which) {
    span rest = bytes, one = {0};
    for (unsigned i = 0; i < which && span_next_line(&rest, &one); i++)
        continue;
    return one;
}

/* The blanks before the hyphen of the entry at `line`; the hyphen may stand on a line above. */
static size_t indent_of(span bytes, unsigned line) {
    for (; line; line--) {
        span one = line_at(bytes, line);
        size_t blanks = 0;
        while (blanks < one.length && one.at[blanks] == ' ')
            blanks++;
        if (blanks < one.length && one.at[blanks] == '-')
            return blanks;
    }
    return 0;
}

static layout layout_of(span bytes, const yaml_node *list) {
    size_t first_end = span_find(bytes, "\n");
    bool returns = first_end > 0 && first_end < bytes.length && bytes.at[first_end - 1] == '\r';
    bool any = list && list->count;
    return (layout){any ? indent_of(bytes, list->items[list->count - 1]->at.line) : 0,
                    returns ? "\r\n" : "\n", any};
}

/* -- reading it again ------------------------------------------------------------------------ */

static bool same_nodes(const yaml_node *a, const yaml_node *b) {
    if (a->sort != b->sort || a->count != b->count || !span_equal(a->scalar, b->scalar) ||
        a->at.line != b->at.line || a->at.column != b->at.column)
        return false;
    for (size_t i = 0; i < a->count; i++) {
        bool keys = a->sort == YAML_MAPPING;
        if (keys && !span_equal(a->pairs[i].key, b->pairs[i].key))
            return false;
        if (!same_nodes(keys ? a->pairs[i].value : a->items[i],
                        keys ? b->pairs[i].value : b->items[i]))
            return false;
    }
    return true;
}

/* True when `node` says just what `of` does. */
static bool says(const yaml_node *node, const view *of) {
    static const view_sort sorts[] = {
        [YAML_SCALAR] = VIEW_TEXT, [YAML_SEQUENCE] = VIEW_LIST, [YAML_MAPPING] = VIEW_OBJECT};
    if (sorts[node->sort] != of->sort)
        return false;
    if (node->sort == YAML_SCALAR)
        return span_equal(node->scalar, of->bytes);
    const view *one = of->first;
    for (size_t i = 0; i < node->count; i++, one = one->next) {
        bool keys = node->sort == YAML_MAPPING;
        if (!one || (keys && !span_is(node->pairs[i].key, one->key.bytes)) ||
            !says(keys ? node->pairs[i].value : node->items[i], one))
            return false;
    }
    return !one;
}

/* True when the whole is the old entries, unchanged, and the new one. */
static bool is_as_meant(const yaml_node *was, const yaml_node *is, const view *entry) {
    size_t before = was ? was->count : 0;
    if (!is || is->sort != YAML_SEQUENCE || is->count != before + 1)
        return false;
    for (size_t i = 0; i < before; i++)
        if (!same_nodes(was->items[i], is->items[i]))
            return false;
    return says(is->items[before], entry);
}

/* The tree of a file of the log; false when something in it is wrong. */
static bool read_log(arena *a, located bytes, const pantry *shelf, const yaml_node **list,
                     problems *found) {
    size_t errors = found->errors;
    trials unused = {0};
    trials_read(a, bytes.at.file, bytes.bytes, shelf, &unused, found);
    if (found->errors > errors)
        return false;
    *list = yaml_read(a, bytes.at.file, bytes.bytes, 1, found);
    return found->errors == errors;
}

static void compose(text *out, span bytes, const view *entry, const layout *as) {
    text_add_span(out, bytes);
    if (bytes.length && bytes.at[bytes.length - 1] != '\n')
        text_add(out, as->line_end);
    if (as->has_entries)
        text_add(out, as->line_end);
    add_entry(out, entry, as);
}

bool trial_log_compose(arena *a, located existing, const pantry *shelf, trial_addition *add,
                       problems *found) {
    const yaml_node *was = NULL, *is = NULL;
    if (!read_log(a, existing, shelf, &was, found))
        return false;
    layout as = layout_of(existing.bytes, was);
    compose(&add->whole, existing.bytes, add->entry, &as);
    problems unsaid = problems_in(a);
    located whole = {text_span(&add->whole), existing.at};
    if (!read_log(a, whole, shelf, &is, &unsaid) || !is_as_meant(was, is, add->entry)) {
        problem_add(found, existing.at, "name another file with --file",
                    "nothing can be put behind what this file ends with; it was left as it is");
        return false;
    }
    add->line = is->items[is->count - 1]->at.line;
    return true;
}

/* -- files ----------------------------------------------------------------------------------- */

char *trial_log_name(arena *a, const char *date) {
    static const char *const seasons[] = {"winter", "spring", "summer", "autumn"};
    double month = 1;
    (void)number_read(span_of(date + strlen("2026-")), &month);
    return arena_format(a, "%.4s-%s.yaml", date, seasons[(int)month % 12 / 3]);
}

/* The folder, locked until it is closed; -1 when it can't be. */
static int lock_folder(const char *path, int *why) {
    if (!folder_make(path, why))
        return -1;
    int fd = open(path, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (fd >= 0 && flock(fd, LOCK_EX) == 0)
        return fd;
    *why = errno;
    if (fd >= 0)
        close(fd);
    return -1;
}

static trial_outcome machine_failed(const char *file, int why, problems *found) {
    if (why == ESTALE)
        problem_add(found, (place){file, 0, 0}, "try again",
                    "somebody changed it meanwhile; it was left as they made it");
    else
        problem_add(found, (place){file, 0, 0}, "mind space and permissions of trials/",
                    "can't be written: %s", strerror(why));
    return TRIAL_MACHINE_FAILED;
}

static trial_outcome append_locked(arena *a, const site_folder *site, const char *file,
                                   trial_addition *add, problems *found) {
    const char *path = path_join(a, site->settings.folder, file);
    located was = {{"", 0}, {file, 1, 1}};
    int why = 0;
    if (!file_read(a, path, &was.bytes, &why) && why != ENOENT)
        return machine_failed(file, why, found);
    if (!trial_log_compose(a, was, &site->shelf, add, found))
        return TRIAL_REFUSED;
    file_clear_unfinished(path);
    return file_replace(path, was.bytes, text_span(&add->whole), &why)
               ? TRIAL_ADDED
               : machine_failed(file, why, found);
}

trial_outcome trial_log_append(arena *a, const site_folder *site, const char *name,
                               trial_addition *add, problems *found) {
    int why = 0, lock = lock_folder(path_join(a, site->settings.folder, "trials"), &why);
    const char *file = path_join(a, "trials", name);
    if (lock < 0)
        return machine_failed(file, why, found);
    trial_outcome outcome = append_locked(a, site, file, add, found);
    close(lock);
    return outcome;
}
