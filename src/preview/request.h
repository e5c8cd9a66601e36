/* What a request to the preview asks for, judged before any file is touched. Pure.
 *
 * The preview listens on loopback, but every page in the browser can send requests there: the
 * name in Host must be one that means this machine, or a foreign name pointed at loopback could
 * read the drafts (DNS rebinding). */
#ifndef PREVIEW_REQUEST_H
#define PREVIEW_REQUEST_H

#include "base/arena.h"

/* True when the Host header `host` ("127.0.0.1:4060", "localhost", "[::1]:4060") names what
 * listens at `listening`:`port`: localhost, a loopback address, or `listening` itself; any
 * address, but no name, where `listening` is 0.0.0.0 or ::. */
bool host_is_served(span host, const char *listening, unsigned port);

/* True for an address that only this machine can reach. */
bool address_is_loopback(const char *address);

typedef enum { ASKS_PATH, ASKS_NONSENSE, ASKS_NOTHING_THERE } asks;

/* Reads the path of a request target as sent, escapes included, without its query. ASKS_PATH:
 * `*path` is relative, decoded and plain, perhaps with a slash at its end ("" is the top).
 * ASKS_NONSENSE: no path, a broken escape, a control character, a way above the top.
 * ASKS_NOTHING_THERE: a name that no site has, such as one led by a dot. */
asks request_path(arena *a, span target, const char **path);

/* The media type by the end of the name. */
const char *media_type_of(const char *path);

#endif
