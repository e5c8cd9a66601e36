#include "publish/record_files.h"

#include "base/list.h"

static void add_files(arena *a, written_files *all, const written_files *more) {
    for (size_t i = 0; i < more->count; i++)
        LIST_ADD(a, all, more->items[i]);
}

written_files record_files(arena *a, const record *of) {
    written_files all = {0};
    add_files(a, &all, &of->files);
    for (size_t i = 0; i < of->recipes.count; i++)
        add_files(a, &all, &of->recipes.items[i].files);
    for (size_t i = 0; i < of->pictures.count; i++)
        add_files(a, &all, &of->pictures.items[i].files);
    return all;
}

static bool same_paths(const written_files *one, const written_files *other) {
    if (one->count != other->count)
        return false;
    for (size_t i = 0; i < one->count; i++)
        if (strcmp(one->items[i].path, other->items[i].path) != 0)
            return false;
    return true;
}

static void add_other_files(arena *a, written_files *all, const made_list *was,
                            const made_list *now) {
    for (size_t i = 0; i < was->count; i++) {
        const made *next = made_find(now, was->items[i].name);
        if (!next || !same_paths(&was->items[i].files, &next->files))
            add_files(a, all, &was->items[i].files);
    }
}

written_files record_doubtful_files(arena *a, const record *was, const record *now) {
    written_files all = {0};
    if (!same_paths(&was->files, &now->files))
        add_files(a, &all, &was->files);
    add_other_files(a, &all, &was->recipes, &now->recipes);
    add_other_files(a, &all, &was->pictures, &now->pictures);
    return all;
}

size_t record_file_count(const record *of) {
    size_t count = of->files.count;
    for (size_t i = 0; i < of->recipes.count; i++)
        count += of->recipes.items[i].files.count;
    for (size_t i = 0; i < of->pictures.count; i++)
        count += of->pictures.items[i].files.count;
    return count;
}
