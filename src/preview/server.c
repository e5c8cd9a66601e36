#include "preview/server.h"

#include "preview/answer.h"
#include "preview/notices.h"
#include "preview/request.h"

#include <arpa/inet.h>
#include <errno.h>
#include <strings.h>

enum {
    CONNECTIONS_MOST = 400,
    HEADER_BYTES_MOST = 16 * 1024, /* of a request, with room for the answer's */
    IDLE_SECONDS = 15
};

struct server {
    arena *home;
    http_library http;
    struct MHD_Daemon *daemon;
    server_request asked;
    unsigned port;
    clients all;
    served pages;
};

/* -- requests
 * -------------------------------------------------------------------------------------------- */

typedef struct {
    span host;
    unsigned count;
} host_header;

static enum MHD_Result take_host(void *state, enum MHD_ValueKind kind, const char *key,
                                 const char *value) {
    host_header *out = state;
    (void)kind;
    if (strcasecmp(key, "Host") == 0) {
        out->host = span_of(value);
        out->count++;
    }
    return MHD_YES;
}

static bool is_for_us(const server *by, struct MHD_Connection *connection) {
    host_header found = {0};
    by->http.get_connection_values(connection, MHD_HEADER_KIND, take_host, &found);
    return found.count == 1 && host_is_served(found.host, by->asked.listen, by->port);
}

static client *client_of(const server *by, struct MHD_Connection *connection) {
    const union MHD_ConnectionInfo *about =
        by->http.get_connection_info(connection, MHD_CONNECTION_INFO_SOCKET_CONTEXT);
    return about ? about->socket_context : NULL;
}

/* Called when the headers are there, for each part of a body, when the request is complete, and
 * again after a wait: `*state` tells how far it is. */
static enum MHD_Result handle(void *by, struct MHD_Connection *connection, const char *target,
                              const char *method, const char *version, const char *body,
                              size_t *body_length, void **state) {
    static char complete, waited;
    server *of = by;
    request r = {.by = &of->pages, .connection = connection, .from = client_of(of, connection)};
    bool reads = strcmp(method, "GET") == 0 || strcmp(method, "HEAD") == 0;
    (void)version;
    (void)body;
    if (!r.from)
        return MHD_NO;
    if (reads && (!*state || *body_length)) {
        *state = &complete;
        *body_length = 0;
        return MHD_YES;
    }
    client_asked(&of->all, r.from);
    r.a = arena_new();
    enum MHD_Result done;
    if (!is_for_us(of, connection))
        done = answer_refusing(&r, MHD_HTTP_MISDIRECTED_REQUEST,
                               "This is not the host you asked for.\n");
    else if (!reads)
        done =
            answer_refusing(&r, MHD_HTTP_METHOD_NOT_ALLOWED, "Only GET and HEAD are answered.\n");
    else
        done = answer(&r, target, *state == &waited);
    *state = &waited;
    arena_free(r.a);
    return done;
}

static void completed(void *by, struct MHD_Connection *connection, void **state,
                      enum MHD_RequestTerminationCode why) {
    server *of = by;
    client *from = client_of(of, connection);
    (void)state;
    (void)why;
    if (from)
        client_answered(&of->all, from);
}

static void connected(void *by, struct MHD_Connection *connection, void **context,
                      enum MHD_ConnectionNotificationCode what) {
    server *of = by;
    if (what == MHD_CONNECTION_NOTIFY_STARTED) {
        const union MHD_ConnectionInfo *about =
            of->http.get_connection_info(connection, MHD_CONNECTION_INFO_CONNECTION_FD);
        *context = about ? client_new(&of->all, about->connect_fd) : NULL;
    } else if (*context) {
        client_gone(&of->all, *context);
        *context = NULL;
    }
}

/* Escapes are read by request_path and query, not before. */
static size_t leave_escapes(void *by, struct MHD_Connection *connection, char *words) {
    (void)by;
    (void)connection;
    return strlen(words);
}

/* -- starting and stopping
 * ------------------------------------------------------------------------------- */

/* The address to bind to; false when `asked` is no address. */
static bool socket_address(const server_request *asked, struct sockaddr_storage *out) {
    struct sockaddr_in *four = (struct sockaddr_in *)(void *)out;
    struct sockaddr_in6 *six = (struct sockaddr_in6 *)(void *)out;
    uint16_t port = htons((uint16_t)asked->port);
    *out = (struct sockaddr_storage){0};
    if (inet_pton(AF_INET, asked->listen, &four->sin_addr) == 1) {
        four->sin_family = AF_INET;
        four->sin_port = port;
        return true;
    }
    if (inet_pton(AF_INET6, asked->listen, &six->sin6_addr) != 1)
        return false;
    six->sin6_family = AF_INET6;
    six->sin6_port = port;
    return true;
}

static bool listen_at(server *of, struct sockaddr_storage *at) {
    unsigned flags = MHD_USE_EPOLL_INTERNAL_THREAD | MHD_ALLOW_SUSPEND_RESUME |
                     (at->ss_family == AF_INET6 ? MHD_USE_IPv6 : 0u);
    errno = 0;
    of->daemon = of->http.start_daemon(
        flags, (uint16_t)of->asked.port, NULL, NULL, handle, of, MHD_OPTION_SOCK_ADDR,
        (struct sockaddr *)at, MHD_OPTION_CONNECTION_LIMIT, (unsigned)CONNECTIONS_MOST,
        MHD_OPTION_CONNECTION_MEMORY_LIMIT, (size_t)HEADER_BYTES_MOST,
        MHD_OPTION_CONNECTION_TIMEOUT, (unsigned)IDLE_SECONDS, MHD_OPTION_STRICT_FOR_CLIENT, 1,
        MHD_OPTION_UNESCAPE_CALLBACK, leave_escapes, of, MHD_OPTION_NOTIFY_COMPLETED, completed, of,
        MHD_OPTION_NOTIFY_CONNECTION, connected, of, MHD_OPTION_END);
    if (!of->daemon)
        return false;
    const union MHD_DaemonInfo *about =
        of->http.get_daemon_info(of->daemon, MHD_DAEMON_INFO_BIND_PORT);
    of->port = about ? about->port : of->asked.port;
    return true;
}

static server *server_new(const server_request *asked) {
    arena *home = arena_new();
    server *of = ARENA_NEW(home, server);
    *of = (server){.home = home};
    of->asked = (server_request){arena_copy(home, span_of(asked->site)),
                                 arena_copy(home, span_of(asked->listen)), asked->port};
    problems none = problems_in(home);
    of->pages =
        (served){&of->http, &of->all, of->asked.site, .notices = TEXT_EMPTY, .address = TEXT_EMPTY};
    notices_add_problems(&none, &of->pages.notices);
    pthread_mutex_init(&of->pages.guard, NULL);
    clients_begin(&of->all, &of->http);
    return of;
}

server *server_start(const server_request *asked, problems *found) {
    server *of = server_new(asked);
    struct sockaddr_storage at;
    place nowhere = {asked->listen, 0, 0};
    const char *why = NULL;
    if (!http_library_open(&of->http, &why))
        problem_add(found, nowhere, "install libmicrohttpd12", "the preview can't serve: %s", why);
    else if (!socket_address(asked, &at))
        problem_add(found, nowhere, "write an address such as 127.0.0.1 or ::1",
                    "this is no address to listen at");
    else if (!listen_at(of, &at))
        problem_add(found, nowhere,
                    errno == EADDRINUSE ? "name another one: --port N; 0 takes any that is free"
                                        : NULL,
                    "can't listen at port %u: %s", asked->port,
                    errno == EADDRINUSE ? "another program does already" : strerror(errno));
    else
        return of;
    server_stop(of);
    return NULL;
}

unsigned server_port(const server *of) {
    return of->port;
}

void server_publish(server *of, const char *address, const problems *found) {
    served *pages = &of->pages;
    text list = TEXT_EMPTY;
    notices_add_problems(found, &list);
    uint64_t assets = answer_assets_mark(pages->site);
    pthread_mutex_lock(&pages->guard);
    if (!span_equal(text_span(&list), text_span(&pages->notices))) {
        text_clear(&pages->notices);
        text_add_span(&pages->notices, text_span(&list));
        pages->notices_number++;
    }
    text_clear(&pages->address);
    text_add(&pages->address, address);
    pages->assets = assets;
    pthread_mutex_unlock(&pages->guard);
    text_free(&list);
    clients_wake(&of->all, false);
}

void server_tick(server *of) {
    clients_tick(&of->all);
}

void server_stop(server *of) {
    clients_wake(&of->all, true);
    if (of->daemon)
        of->http.stop_daemon(of->daemon);
    clients_end(&of->all);
    http_library_close(&of->http);
    pthread_mutex_destroy(&of->pages.guard);
    text_free(&of->pages.notices);
    text_free(&of->pages.address);
    arena_free(of->home);
}
