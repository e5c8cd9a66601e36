#include "preview/http_library.h"

#include <dlfcn.h>
#include <string.h>

/* The version of its binary interface, which the header's is too. */
static const char library_name[] = "libmicrohttpd.so.12";

/* A function's address is copied, since C has no cast from an object's pointer to it. */
static bool load(void *handle, const char *name, void *into) {
    void *at = dlsym(handle, name);
    memcpy(into, &at, sizeof at);
    return at != NULL;
}

bool http_library_open(http_library *out, const char **why) {
    *out = (http_library){.handle = dlopen(library_name, RTLD_NOW | RTLD_LOCAL)};
    bool good = out->handle != NULL;
#define HTTP_LOAD(name) good = good && load(out->handle, "MHD_" #name, &out->name);
    HTTP_FUNCTIONS(HTTP_LOAD)
#undef HTTP_LOAD
    if (good)
        return true;
    *why = dlerror();
    http_library_close(out);
    return false;
}

void http_library_close(http_library *of) {
    if (of->handle)
        dlclose(of->handle);
    of->handle = NULL;
}
