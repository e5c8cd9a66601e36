#include "publish/record.h"

#include "base/list.h"
#include "publish/record_row.h"

/* The file:
 *
 *     format (16 bytes), body, digest of all before it (8 bytes)
 *
 * It ends with its digest, so that a file cut short anywhere is seen to be. Another form of the
 * body takes another number in the format; another program, which may keep other things in a row,
 * is told by its own digest. */
static const char format[16] = "crumbnote rec 1";

enum { RECORD_BYTES_MOST = 2000 * 1000 * 1000 };

/* -- finding --------------------------------------------------------------------------------- */

static int compare_made(const void *left, const void *right) {
    return strcmp(((const made *)left)->name, ((const made *)right)->name);
}

const made *made_find(const made_list *list, const char *name) {
    if (list->count == 0)
        return NULL;
    return bsearch(&(made){.name = name}, list->items, list->count, sizeof list->items[0],
                   compare_made);
}

bool made_equal(const made *now, const made *was) {
    if (!was || now->files.count != was->files.count ||
        !file_stamps_equal(&now->stamp, &was->stamp))
        return false;
    for (size_t i = 0; i < now->files.count; i++)
        if (!file_stamps_equal(&now->files.items[i].stamp, &was->files.items[i].stamp))
            return false;
    return true;
}

/* -- writing --------------------------------------------------------------------------------- */

static void add_stamp(text *to, const file_stamp *stamp) {
    packed_add_number(to, (uint64_t)stamp->bytes);
    packed_add_number(to, (uint64_t)stamp->written_ns);
    packed_add_number(to, (uint64_t)stamp->changed_ns);
    packed_add_number(to, stamp->number);
}

static void add_files(text *to, const written_files *files) {
    packed_add_number(to, files->count);
    for (size_t i = 0; i < files->count; i++) {
        packed_add_text(to, files->items[i].path);
        add_stamp(to, &files->items[i].stamp);
        packed_add_number(to, files->items[i].content);
    }
}

/* The row's length stands before it, for programs that can't read it. */
static void add_row(text *to, const made *of) {
    packed_add_number(to, of->listed);
    size_t at = to->length;
    packed_add_number(to, 0);
    if (!of->row)
        return;
    record_add_row(to, of->row);
    uint64_t length = to->length - at - sizeof length;
    memcpy(to->bytes + at, &length, sizeof length);
}

static void add_made(text *to, const made_list *list) {
    packed_add_number(to, list->count);
    for (size_t i = 0; i < list->count; i++) {
        const made *of = &list->items[i];
        packed_add_text(to, of->name);
        add_stamp(to, &of->stamp);
        packed_add_number(to, of->content);
        packed_add_number(to, (uint64_t)of->troubled << 1 | of->asks_all);
        add_files(to, &of->files);
        packed_add_array(to, NULL, 0);
        add_row(to, of);
    }
}

static void add_body(text *to, const record *of) {
    packed_add_number(to, of->program);
    packed_add_number(to, of->common);
    packed_add_number(to, of->whole);
    packed_add_number(to, (uint64_t)of->started_ns);
    packed_add_number(to, (uint64_t)of->settled_ns);
    packed_add_number(to, of->ground_count);
    packed_add_array(to, of->ground, of->ground_count * sizeof *of->ground);
    add_files(to, &of->files);
    add_made(to, &of->recipes);
    add_made(to, &of->pictures);
}

bool record_write(const record *of, const char *folder, int *why) {
    arena *a = arena_new();
    text all = TEXT_EMPTY;
    text_add_span(&all, (span){format, sizeof format});
    add_body(&all, of);
    packed_add_number(&all, digest_of(text_span(&all)));
    bool good = file_write(path_join(a, folder, RECORD_NAME), text_span(&all), why);
    text_free(&all);
    arena_free(a);
    return good;
}

/* -- reading --------------------------------------------------------------------------------- */

typedef struct {
    arena *a;
    packed_reader from;
    bool with_rows;
} record_reader;

static file_stamp take_stamp(packed_reader *from) {
    file_stamp stamp;
    stamp.bytes = (int64_t)packed_number(from);
    stamp.written_ns = (int64_t)packed_number(from);
    stamp.changed_ns = (int64_t)packed_number(from);
    stamp.number = packed_number(from);
    return stamp;
}

static written_files take_files(record_reader *r) {
    enum { LEAST = 7 * sizeof(uint64_t) };
    written_files files = {.count = packed_count(&r->from, LEAST)};
    files.items = ARENA_ARRAY(r->a, written_file, files.count);
    files.capacity = files.count;
    for (size_t i = 0; i < files.count; i++) {
        written_file *one = &files.items[i];
        one->path = packed_text(&r->from);
        one->stamp = take_stamp(&r->from);
        one->content = packed_number(&r->from);
        r->from.broken = r->from.broken || !one->path;
    }
    return files;
}

static void take_row(record_reader *r, made *into) {
    into->listed = packed_number(&r->from);
    size_t length = packed_count(&r->from, 1), start = r->from.at;
    if (length && r->with_rows) {
        into->row = record_row(r->a, &r->from);
        r->from.broken = r->from.broken || r->from.at != start + length;
    }
    r->from.at = start + length;
}

static void take_one(record_reader *r, made *into) {
    into->name = packed_text(&r->from);
    into->stamp = take_stamp(&r->from);
    into->content = packed_number(&r->from);
    uint64_t flags = packed_number(&r->from);
    into->troubled = flags & 2;
    into->asks_all = flags & 1;
    into->files = take_files(r);
    (void)packed_array(&r->from, 0);
    take_row(r, into);
    r->from.broken = r->from.broken || !into->name;
}

static made_list take_made(record_reader *r) {
    enum { LEAST = 10 * sizeof(uint64_t) };
    made_list list = {.count = packed_count(&r->from, LEAST)};
    list.items = ARENA_ARRAY(r->a, made, list.count);
    list.capacity = list.count;
    for (size_t i = 0; i < list.count && !r->from.broken; i++)
        take_one(r, &list.items[i]);
    return list;
}

static void take_body(record_reader *r, digest program, record *out) {
    packed_reader *from = &r->from;
    out->program = packed_number(from);
    out->common = packed_number(from);
    out->whole = packed_number(from);
    out->started_ns = (int64_t)packed_number(from);
    out->settled_ns = (int64_t)packed_number(from);
    out->ground_count = packed_count(from, sizeof *out->ground);
    out->ground = packed_array(from, out->ground_count * sizeof *out->ground);
    r->with_rows = out->program == program;
    out->files = take_files(r);
    out->recipes = take_made(r);
    out->pictures = take_made(r);
}

/* True when `bytes` is a whole record of this format; `*body` is what is in it. */
static bool is_whole(span bytes, span *body) {
    digest stated;
    if (bytes.length < sizeof format + sizeof stated || memcmp(bytes.at, format, sizeof format))
        return false;
    size_t before = bytes.length - sizeof stated;
    memcpy(&stated, bytes.at + before, sizeof stated);
    *body = (span){bytes.at + sizeof format, before - sizeof format};
    return digest_of(span_first(bytes, before)) == stated;
}

bool record_read(arena *a, const char *folder, digest program, record *out) {
    record_reader r = {.a = a};
    span bytes;
    int why;
    *out = (record){0};
    if (!file_read_up_to(a, path_join(a, folder, RECORD_NAME), RECORD_BYTES_MOST, &bytes, &why) ||
        !is_whole(bytes, &r.from.all))
        return false;
    take_body(&r, program, out);
    return !r.from.broken && r.from.at == r.from.all.length;
}
