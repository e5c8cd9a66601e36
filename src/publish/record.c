#include "publish/record.h"

#include "base/list.h"
#include "publish/record_row.h"

#include <errno.h>

/* The file:
 *
 *     format (16 bytes), body, digest of all before it (8 bytes)
 *
 * It ends with its digest, so that a file cut short anywhere is seen to be. It is written and its
 * digest taken in pieces of PIECE bytes, since the record of a large site is large. Another form of
 * the body takes another number in the format; another program, which may keep other things in a
 * row, is told by its own digest. */
static const char format[16] = "crumbnote rec 3";

enum { RECORD_BYTES_MOST = 2000 * 1000 * 1000, PIECE = 1024 * 1024 };

static digest join_piece(digest so_far, span piece) {
    return digest_join(so_far, digest_of(piece));
}

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

static void add_one(text *to, const made *of) {
    packed_add_text(to, of->name);
    add_stamp(to, &of->stamp);
    packed_add_number(to, of->content);
    packed_add_number(to, of->bakes);
    packed_add_number(to, (uint64_t)of->shows << 2 | (uint64_t)of->troubled << 1 | of->asks_all);
    add_files(to, &of->files);
    packed_add_array(to, NULL, 0);
    add_row(to, of);
}

/* A record being written. */
typedef struct {
    text room; /* not written yet; begins at a multiple of PIECE */
    digest so_far;
    int begun;
    bool good;
    int why;
} record_writer;

/* Writes what is whole pieces. A piece is a multiple of PACKED_UNIT, so what is left lies as it
 * would in the whole. */
static void write_pieces(record_writer *w) {
    size_t done = 0;
    for (; w->room.length - done >= PIECE; done += PIECE) {
        span piece = {w->room.bytes + done, PIECE};
        w->so_far = join_piece(w->so_far, piece);
        w->good = w->good && file_go_on(w->begun, piece, &w->why);
    }
    if (!done)
        return;
    memmove(w->room.bytes, w->room.bytes + done, w->room.length - done);
    text_cut(&w->room, w->room.length - done);
}

static void add_made(record_writer *w, const made_list *list) {
    packed_add_number(&w->room, list->count);
    for (size_t i = 0; i < list->count; i++) {
        add_one(&w->room, &list->items[i]);
        write_pieces(w);
    }
}

static void add_head(text *to, const record *of) {
    packed_add_number(to, of->program);
    packed_add_number(to, of->common);
    packed_add_number(to, of->whole);
    packed_add_number(to, (uint64_t)of->started_ns);
    packed_add_number(to, (uint64_t)of->settled_ns);
    packed_add_number(to, of->ground_count);
    packed_add_array(to, of->ground, of->ground_count * sizeof *of->ground);
    add_files(to, &of->files);
}

static void write_rest(record_writer *w) {
    write_pieces(w);
    w->so_far = join_piece(w->so_far, text_span(&w->room));
    packed_add_number(&w->room, w->so_far);
    w->good = w->good && file_go_on(w->begun, text_span(&w->room), &w->why);
}

bool record_write(const record *of, const char *folder, int *why) {
    arena *a = arena_new();
    const char *path = path_join(a, folder, RECORD_NAME);
    record_writer w = {.room = TEXT_EMPTY, .begun = file_begin(path, why), .good = true};
    bool good = w.begun >= 0;
    if (good) {
        text_add_span(&w.room, (span){format, sizeof format});
        add_head(&w.room, of);
        add_made(&w, &of->recipes);
        add_made(&w, &of->pictures);
        write_rest(&w);
        *why = w.why;
        good = file_finish(w.begun, path, w.good, why);
    }
    text_free(&w.room);
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
    into->bakes = packed_number(&r->from);
    uint64_t flags = packed_number(&r->from);
    into->shows = flags & 4;
    into->troubled = flags & 2;
    into->asks_all = flags & 1;
    into->files = take_files(r);
    (void)packed_array(&r->from, 0);
    take_row(r, into);
    r->from.broken = r->from.broken || !into->name;
}

static made_list take_made(record_reader *r) {
    enum { LEAST = 11 * sizeof(uint64_t) };
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
    if (bytes.length < sizeof format + sizeof stated ||
        memcmp(bytes.at, format, sizeof format) != 0)
        return false;
    size_t before = bytes.length - sizeof stated;
    memcpy(&stated, bytes.at + before, sizeof stated);
    *body = (span){bytes.at + sizeof format, before - sizeof format};
    digest all = 0;
    for (bytes = span_first(bytes, before); bytes.length >= PIECE; bytes = span_from(bytes, PIECE))
        all = join_piece(all, span_first(bytes, PIECE));
    return join_piece(all, bytes) == stated;
}

/* None is there, or something that is no record. */
static bool is_none(int why) {
    return why == ENOENT || why == ENOTDIR || why == EISDIR || why == EINVAL || why == EFBIG;
}

bool record_read(arena *a, const char *folder, digest program, record *out, int *why) {
    record_reader r = {.a = a};
    span bytes;
    int reason = 0;
    *out = (record){0};
    bool read =
        file_read_up_to(a, path_join(a, folder, RECORD_NAME), RECORD_BYTES_MOST, &bytes, &reason);
    if (why)
        *why = read || is_none(reason) ? 0 : reason;
    if (!read || !is_whole(bytes, &r.from.all))
        return false;
    take_body(&r, program, out);
    return !r.from.broken && r.from.at == r.from.all.length;
}
