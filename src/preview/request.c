#include "preview/request.h"

#include "base/files.h"
#include "base/list.h"
#include "base/percent.h"
#include "publish/address.h"

#include <arpa/inet.h>
#include <assert.h>
#include <strings.h>

enum { PORT_USUAL = 80 };

/* An IPv4 or IPv6 address in network order; `family` 0: none. */
typedef struct {
    int family;
    unsigned char bytes[sizeof(struct in6_addr)];
} numeric;

static numeric numeric_of(const char *address) {
    numeric out = {0};
    if (inet_pton(AF_INET, address, out.bytes) == 1)
        out.family = AF_INET;
    else if (inet_pton(AF_INET6, address, out.bytes) == 1)
        out.family = AF_INET6;
    return out;
}

static bool is_loopback(const numeric *of) {
    static const unsigned char six[sizeof of->bytes] = {[15] = 1};
    if (of->family == AF_INET)
        return of->bytes[0] == 127; /* RFC 1122, section 3.2.1.3 (g) */
    return of->family == AF_INET6 && memcmp(of->bytes, six, sizeof six) == 0;
}

static bool is_wildcard(const numeric *of) {
    static const unsigned char zero[sizeof of->bytes] = {0};
    return of->family && memcmp(of->bytes, zero, sizeof zero) == 0;
}

bool address_is_loopback(const char *address) {
    numeric of = numeric_of(address);
    return is_loopback(&of);
}

/* Cuts ":4060" off the end of `*host`; 80 when there is none, 0 when it is no port. */
static unsigned take_port(span *host) {
    size_t colon = host->length;
    while (colon > 0 && host->at[colon - 1] >= '0' && host->at[colon - 1] <= '9')
        colon--;
    if (colon == 0 || host->at[colon - 1] != ':')
        return PORT_USUAL;
    span digits = span_from(*host, colon);
    unsigned port = 0;
    for (size_t i = 0; i < digits.length && i < 6; i++)
        port = port * 10 + (unsigned)(digits.at[i] - '0');
    *host = span_first(*host, colon - 1);
    return digits.length < 6 ? port : 0;
}

bool host_is_served(span host, const char *listening, unsigned port) {
    char name[64];
    bool six = host.length > 0 && host.at[0] == '[';
    size_t close = span_find(host, "]");
    span port_part = six ? span_from(host, close + 1) : host;
    if ((six && close == host.length) || take_port(&port_part) != port)
        return false;
    host = six ? (span){host.at + 1, close - 1} : port_part;
    if ((six && port_part.length) || host.length >= sizeof name || memchr(host.at, 0, host.length))
        return false;
    memcpy(name, host.at, host.length);
    name[host.length] = '\0';
    if (!six && strcasecmp(name, "localhost") == 0)
        return true;
    numeric asked = numeric_of(name), own = numeric_of(listening);
    if (!asked.family || (asked.family == AF_INET6) != six)
        return false;
    return is_loopback(&asked) || is_wildcard(&own) ||
           (asked.family == own.family && memcmp(asked.bytes, own.bytes, sizeof own.bytes) == 0);
}

static bool holds_control(span of) {
    for (size_t i = 0; i < of.length; i++)
        if ((unsigned char)of.at[i] < 0x20 || of.at[i] == 0x7f)
            return true;
    return false;
}

asks request_path(arena *a, span target, const char **path) {
    span decoded;
    bool above;
    if (!span_begins(target, "/") || !percent_decode(a, target, &decoded) || holds_control(decoded))
        return ASKS_NONSENSE;
    *path = path_without_dots(a, decoded, &above);
    if (above)
        return ASKS_NONSENSE;
    assert(*path);
    span plain = span_of(*path);
    if (span_ends(plain, "/"))
        plain.length--;
    return (*path)[0] == '\0' || path_is_plain(plain) ? ASKS_PATH : ASKS_NOTHING_THERE;
}

const char *media_type_of(const char *path) {
    static const struct {
        const char *end, *type; /* IANA media types */
    } types[] = {
        {"feed.xml", "application/atom+xml"}, /* RFC 4287 */
        {".html", "text/html; charset=utf-8"},
        {".css", "text/css; charset=utf-8"},
        {".js", "text/javascript; charset=utf-8"}, /* RFC 9239 */
        {".json", "application/json"},
        {".xml", "application/xml"},
        {".txt", "text/plain; charset=utf-8"},
        {".svg", "image/svg+xml"},
        {".png", "image/png"},
        {".jpg", "image/jpeg"},
        {".jpeg", "image/jpeg"},
        {".webp", "image/webp"},
        {".avif", "image/avif"},
        {".gif", "image/gif"},
        {".ico", "image/vnd.microsoft.icon"},
        {".woff2", "font/woff2"},
        {".woff", "font/woff"},
        {".pdf", "application/pdf"},
    };
    for (size_t i = 0; i < COUNT(types); i++)
        if (span_ends(span_of(path), types[i].end))
            return types[i].type;
    return "application/octet-stream";
}
