#include "preview/answer.h"

#include "base/folders.h"
#include "base/list.h"
#include "base/percent.h"
#include "preview/notices.h"
#include "preview/request.h"
#include "publish/address.h"
#include "reference/reference.h"

#include <fcntl.h>
#include <inttypes.h>
#include <sys/stat.h>
#include <unistd.h>
#include <xxhash.h>

/* What every answer bears: as strict as a careful host, and nothing is kept. */
static const char *const headers[][2] = {
    {"Content-Security-Policy",
     "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
     "media-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; "
     "frame-ancestors 'none'"},
    {"X-Content-Type-Options", "nosniff"},
    {"Cross-Origin-Resource-Policy", "same-origin"},
    {"Referrer-Policy", "no-referrer"},
    {"Cache-Control", "no-store"},
};

/* -- answers
 * --------------------------------------------------------------------------------------------- */

static enum MHD_Result queue(const request *r, unsigned status, const char *type,
                             struct MHD_Response *response, const char *location) {
    const http_library *http = r->by->http;
    if (!response)
        return MHD_NO;
    for (size_t i = 0; i < COUNT(headers); i++)
        http->add_response_header(response, headers[i][0], headers[i][1]);
    http->add_response_header(response, "Content-Type", type);
    if (status == MHD_HTTP_METHOD_NOT_ALLOWED)
        http->add_response_header(response, "Allow", "GET, HEAD");
    if (location)
        http->add_response_header(response, "Location", location);
    enum MHD_Result queued = http->queue_response(r->connection, status, response);
    http->destroy_response(response);
    return queued;
}

static enum MHD_Result send_bytes(const request *r, unsigned status, const char *type, span bytes) {
    return queue(r, status, type,
                 r->by->http->create_response_from_buffer(bytes.length, (void *)(uintptr_t)bytes.at,
                                                          MHD_RESPMEM_MUST_COPY),
                 NULL);
}

enum MHD_Result answer_refusing(const request *r, unsigned status, const char *words) {
    return send_bytes(r, status, "text/plain; charset=utf-8", span_of(words));
}

static enum MHD_Result redirect(const request *r, const char *path) {
    const char *to = arena_format(r->a, "/%s/", percent_encode(r->a, path));
    struct MHD_Response *response =
        r->by->http->create_response_from_buffer(0, (void *)"", MHD_RESPMEM_PERSISTENT);
    return queue(r, MHD_HTTP_FOUND, "text/plain; charset=utf-8", response, to);
}

/* -- what a page is now
 * ---------------------------------------------------------------------------------- */

/* A file that is written again is another one, with another time. */
static uint64_t file_mark(const char *path) {
    struct stat about;
    if (lstat(path, &about) != 0)
        return 0;
    uint64_t parts[] = {about.st_ino, (uint64_t)about.st_size, (uint64_t)about.st_mtim.tv_sec,
                        (uint64_t)about.st_mtim.tv_nsec};
    return XXH3_64bits(parts, sizeof parts);
}

uint64_t answer_assets_mark(const char *site) {
    static const char *const folders[] = {"theme", "pictures", "search", "cupboard"};
    uint64_t mark = 0;
    arena *a = arena_new();
    for (size_t k = 0; k < COUNT(folders); k++) {
        file_list files;
        int why;
        const char *folder = path_join(a, site, folders[k]);
        if (!folder_walk(a, folder, &files, &why))
            continue;
        for (size_t i = 0; i < files.count; i++)
            if (!span_ends(span_of(files.items[i].name), ".html"))
                mark = mark * 31 + file_mark(path_join(a, folder, files.items[i].name));
    }
    arena_free(a);
    return mark;
}

/* The file for `path`: a folder stands for its index.html. */
static const char *file_for(const request *r, const char *path) {
    bool folder = !path[0] || span_ends(span_of(path), "/");
    return path_join(r->a, r->by->site, folder ? arena_format(r->a, "%sindex.html", path) : path);
}

static const char *token_of(const request *r, const char *path) {
    pthread_mutex_lock(&r->by->guard);
    uint64_t assets = r->by->assets;
    pthread_mutex_unlock(&r->by->guard);
    return arena_format(r->a, "%016" PRIx64, file_mark(file_for(r, path)) ^ assets);
}

/* -- files
 * ------------------------------------------------------------------------------------------- */

static enum MHD_Result send_page(const request *r, unsigned status, span page, const char *path) {
    text with = TEXT_EMPTY;
    notices_add_script(page, token_of(r, path), &with);
    enum MHD_Result sent = send_bytes(r, status, "text/html; charset=utf-8", text_span(&with));
    text_free(&with);
    return sent;
}

static const reference_file *own_file(const char *name) {
    for (size_t i = 0; i < reference_preview_count; i++)
        if (strcmp(reference_preview[i].name, name) == 0)
            return &reference_preview[i];
    return NULL;
}

/* The site's own page for what is not there; before there is a site, one of the preview's. */
static enum MHD_Result send_missing(const request *r, const char *path) {
    span page;
    int why;
    if (!file_read(r->a, path_join(r->a, r->by->site, "404.html"), &page, &why))
        return send_page(r, MHD_HTTP_SERVICE_UNAVAILABLE, own_file("waiting.html")->bytes, path);
    text local = TEXT_EMPTY;
    pthread_mutex_lock(&r->by->guard);
    notices_make_local(page, r->by->address.bytes, &local);
    pthread_mutex_unlock(&r->by->guard);
    enum MHD_Result sent = send_page(r, MHD_HTTP_NOT_FOUND, text_span(&local), path);
    text_free(&local);
    return sent;
}

/* The site's folder holds ordinary files alone; a link in it is not followed all the same. */
static enum MHD_Result send_file(const request *r, const char *path) {
    struct stat about;
    int fd = open(file_for(r, path), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (fd < 0 || fstat(fd, &about) != 0 || !S_ISREG(about.st_mode)) {
        if (fd >= 0)
            close(fd);
        return send_missing(r, path);
    }
    return queue(r, MHD_HTTP_OK, media_type_of(path),
                 r->by->http->create_response_from_fd((size_t)about.st_size, fd), NULL);
}

static enum MHD_Result answer_path(const request *r, const char *path) {
    span page;
    int why;
    const char *file = file_for(r, path);
    if (path[0] && !span_ends(span_of(path), "/") && folder_exists(file))
        return redirect(r, path);
    if (!span_ends(span_of(file), ".html"))
        return send_file(r, path);
    if (!file_read(r->a, file, &page, &why))
        return send_missing(r, path);
    return send_page(r, MHD_HTTP_OK, page, path);
}

/* -- news
 * --------------------------------------------------------------------------------------------- */

/* The value of `?name=`, decoded; "" when it is not given or broken. */
static const char *query(const request *r, const char *name) {
    span value =
        span_of(r->by->http->lookup_connection_value(r->connection, MHD_GET_ARGUMENT_KIND, name));
    return value.at && percent_decode(r->a, value, &value) ? value.at : "";
}

/* Tells what is new, or waits until something is. `woken`: it has waited. */
static enum MHD_Result answer_changes(const request *r, bool woken) {
    const char *path, *asked = query(r, "page");
    if (request_path(r->a, span_of(asked), &path) != ASKS_PATH)
        path = "404.html";
    const char *token = token_of(r, path);
    bool same = strcmp(token, query(r, "token")) == 0;
    text news = TEXT_EMPTY;
    pthread_mutex_lock(&r->by->guard);
    const char *number = arena_format(r->a, "%u", r->by->notices_number);
    same = same && strcmp(number, query(r, "notices")) == 0;
    text_format(&news, "{\"token\":\"%s\",\"notices\":%s,\"found\":%s}\n", token, number,
                r->by->notices.bytes);
    pthread_mutex_unlock(&r->by->guard);
    enum MHD_Result sent = MHD_YES;
    if (!same || woken || !client_wait(r->by->all, r->from, r->connection))
        sent = send_bytes(r, MHD_HTTP_OK, "application/json", text_span(&news));
    text_free(&news);
    return sent;
}

static enum MHD_Result answer_own(const request *r, const char *name, bool woken) {
    if (strcmp(name, "changes") == 0)
        return answer_changes(r, woken);
    const reference_file *file = own_file(name);
    if (!file)
        return send_missing(r, "404.html");
    return send_bytes(r, MHD_HTTP_OK, media_type_of(name), file->bytes);
}

/* -- the whole
 * ------------------------------------------------------------------------------------------- */

enum MHD_Result answer(const request *r, const char *target, bool woken) {
    const char *path;
    if (span_begins(span_of(target), "/.preview/"))
        return answer_own(r, target + strlen("/.preview/"), woken);
    switch (request_path(r->a, span_of(target), &path)) {
    case ASKS_NONSENSE:
        return answer_refusing(r, MHD_HTTP_BAD_REQUEST, "This is no address of a page.\n");
    case ASKS_NOTHING_THERE:
        return send_missing(r, "404.html");
    default:
        return answer_path(r, path);
    }
}
