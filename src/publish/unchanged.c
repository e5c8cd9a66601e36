#include "publish/unchanged.h"

comparison comparison_of(arena *a, const record *earlier, const ground *now,
                         const site_folder *folder, const names *slugs) {
    comparison with = {.earlier = earlier,
                       .folder = folder,
                       .slugs = slugs,
                       .redrawn = names_in(a),
                       .baked = names_in(a)};
    for (size_t i = 0; i < folder->book.log.count; i++)
        names_add(&with.baked, span_of(folder->book.log.items[i].recipe), i, NULL);
    with.common_changed = !earlier || !now->program || earlier->common != now->common ||
                          earlier->ground_count != now->count;
    if (!with.common_changed)
        with.change = ground_changes(a, now, earlier->ground, folder);
    return with;
}

/* A file may have been written again within the same tick of the clock after it was read, so an
 * equal stamp tells only when it is older than that build. */
static bool is_surely_same(const record *earlier, const made *was, const file_entry *file) {
    return file_stamps_equal(&was->stamp, &file->stamp) &&
           file->stamp.changed_ns < earlier->started_ns;
}

static bool has_same_bytes(const comparison *with, const char *folder, const made *was,
                           const file_entry *file) {
    if (is_surely_same(with->earlier, was, file))
        return true;
    arena *a = arena_new();
    span bytes;
    int why;
    const char *path =
        path_join(a, path_join(a, with->folder->settings.folder, folder), file->name);
    bool same = file_read(a, path, &bytes, &why) && digest_of(bytes) == was->content;
    arena_free(a);
    return same;
}

static bool is_touched(const ground_change *change, const made *was) {
    if (was->asks_all && change->any_figures)
        return true;
    for (size_t i = 0; was->row && i < was->row->use_count; i++)
        if (change->touched[was->row->uses[i].what])
            return true;
    return false;
}

/* True when its pictures are there and shown from the same files as before. Which ones its words
 * show is not kept: any may be the one. */
static bool has_pictures(const comparison *with, const made *was) {
    size_t at;
    if (was->shows && with->redrawn.count)
        return false;
    if (!was->row || !was->row->picture)
        return true;
    if (names_find(&with->redrawn, span_of(was->row->picture), &at))
        return false;
    const file_list *pictures = &with->folder->pictures;
    for (size_t i = 0; i < pictures->count; i++)
        if (strcmp(pictures->items[i].name, was->row->picture) == 0)
            return true;
    return false;
}

static bool same_paths(const made *was, const made *now) {
    if (!was || !now || was->files.count != now->files.count)
        return false;
    for (size_t i = 0; i < was->files.count; i++)
        if (strcmp(was->files.items[i].path, now->files.items[i].path) != 0)
            return false;
    return true;
}

static bool is_in_trials(const trials *log, const char *picture) {
    for (size_t i = 0; i < log->count; i++) {
        const trial *bake = &log->items[i];
        if ((bake->picture_as_written && strcmp(bake->picture_as_written, picture) == 0) ||
            (bake->picture_swapped && strcmp(bake->picture_swapped, picture) == 0))
            return true;
    }
    return false;
}

void comparison_note_picture(comparison *with, const made *was, const made *now) {
    const char *name = now ? now->name : was->name;
    if (same_paths(was, now))
        return;
    names_add(&with->redrawn, span_of(name), 0, NULL);
    with->common_changed = with->common_changed || is_in_trials(&with->folder->book.log, name);
}

/* Its own trials say what they said, those of what its list does not have included. */
static bool has_trials(const comparison *with, const made *was) {
    size_t at;
    if (!was->row)
        return true;
    bool baked = names_find(&with->baked, span_of(was->row->slug), &at);
    return was->bakes == (baked ? bakes_of_recipe(&with->folder->book.log, was->row->slug) : 0);
}

/* False when an earlier file in order has the same slug now: that is a problem to tell. */
static bool has_own_slug(const comparison *with, const made *was) {
    size_t first;
    return !was->row || (names_find(with->slugs, span_of(was->row->slug), &first) &&
                         strcmp(with->folder->recipe_files.items[first].name, was->name) == 0);
}

/* `was` with files of its own, whose stamps can be brought up to date. */
static made copy_of(arena *a, const made *was, const file_entry *file) {
    made copy = *was;
    copy.name = file->name;
    copy.stamp = file->stamp;
    copy.files.items = ARENA_ARRAY(a, written_file, was->files.count);
    if (was->files.count)
        memcpy(copy.files.items, was->files.items, was->files.count * sizeof *was->files.items);
    return copy;
}

bool recipe_stays(const comparison *with, const made *was, const file_entry *file,
                  const outputs *to, made *stays) {
    if (!was || with->common_changed || was->troubled || is_touched(&with->change, was) ||
        !has_pictures(with, was) || !has_trials(with, was) || !has_own_slug(with, was) ||
        !has_same_bytes(with, "recipes", was, file))
        return false;
    *stays = copy_of(to->home, was, file);
    return outputs_hold(to, &stays->files);
}

bool picture_stays(const comparison *with, const made *was, const file_entry *file,
                   const outputs *to, made *stays) {
    if (!was || was->files.count == 0 || !has_same_bytes(with, "pictures", was, file))
        return false;
    *stays = copy_of(to->home, was, file);
    return outputs_hold(to, &stays->files);
}
