/* libmicrohttpd, loaded when the preview starts.
 *
 * Linked as usual it would cost every other command: with what it needs for TLS, which is not
 * used here, it took 1.0 of the 8.7 ms that `crumbnote weigh` then ran. */
#ifndef PREVIEW_HTTP_LIBRARY_H
#define PREVIEW_HTTP_LIBRARY_H

#include <microhttpd.h>
#include <stdbool.h>

/* The functions used, by their names after MHD_. */
#define HTTP_FUNCTIONS(each)                                                                       \
    each(start_daemon) each(stop_daemon) each(get_daemon_info) each(get_connection_info)           \
        each(get_connection_values) each(lookup_connection_value)                                  \
            each(create_response_from_buffer) each(create_response_from_fd)                        \
                each(add_response_header) each(queue_response) each(destroy_response)              \
                    each(suspend_connection) each(resume_connection)

/* A member's name can't stand in parentheses. NOLINTNEXTLINE(bugprone-macro-parentheses) */
#define HTTP_MEMBER(name) __typeof__(&MHD_##name) name;
typedef struct {
    void *handle;
    HTTP_FUNCTIONS(HTTP_MEMBER)
} http_library;
#undef HTTP_MEMBER

/* Loads the library. False when it is not installed or lacks a function; `*why` then says so in
 * the loader's words (static, good until the next call). */
bool http_library_open(http_library *out, const char **why);

void http_library_close(http_library *of);

#endif
