#include "site/pictures.h"

/* What a page shows where a browser can't choose by itself. */
enum { USUAL_WIDTH = 800 };

const site_picture *picture_find(const site_pictures *all, const char *name) {
    for (size_t i = 0; all && name && i < all->count; i++)
        if (strcmp(all->items[i].name, name) == 0)
            return &all->items[i];
    return NULL;
}

char *picture_path(arena *a, const site_picture *of, picture_size size, const char *ending) {
    return arena_format(a, "pictures/%s-%ux%u.%s", of->stem, size.width, size.height, ending);
}

static char *path_of_size(arena *a, const site_picture *of, size_t which) {
    if (!of->count)
        return arena_format(a, "pictures/%s", of->name);
    return picture_path(a, of, of->sizes[which], of->drawn ? "svg" : "jpg");
}

char *picture_path_largest(arena *a, const site_picture *of) {
    return path_of_size(a, of, of->count ? of->count - 1 : 0);
}

const char *picture_type_largest(const site_picture *of) {
    static const struct {
        const char *ending, *type;
    } types[] = {{".jpg", "image/jpeg"},    {".jpeg", "image/jpeg"}, {".png", "image/png"},
                 {".svg", "image/svg+xml"}, {".webp", "image/webp"}, {".gif", "image/gif"},
                 {".avif", "image/avif"}};
    if (of->count)
        return of->drawn ? "image/svg+xml" : "image/jpeg";
    for (size_t i = 0; i < COUNT(types); i++)
        if (span_ends(span_of(of->name), types[i].ending))
            return types[i].type;
    return NULL;
}

const picture_size *picture_size_largest(const site_picture *of) {
    return of->count ? &of->sizes[of->count - 1] : NULL;
}

char *picture_path_smallest(arena *a, const site_picture *of) {
    return path_of_size(a, of, 0);
}

/* The first that is wide enough, else the widest. */
static size_t usual_size(const site_picture *of) {
    size_t i = 0;
    while (i + 1 < of->count && of->sizes[i].width < USUAL_WIDTH)
        i++;
    return i;
}

static void put_files(arena *a, view *to, const site_picture *of) {
    view *files = view_put_list(a, to, "files");
    for (size_t i = 0; i < of->count; i++) {
        view *file = view_put_object(a, files, NULL);
        view_put_text(a, file, "jpeg", picture_path(a, of, of->sizes[i], "jpg"));
        view_put_text(a, file, "webp", picture_path(a, of, of->sizes[i], "webp"));
        view_put_number(a, file, "width", of->sizes[i].width, 0);
        view_put_bool(a, file, "more", i + 1 < of->count);
    }
}

void picture_put(arena *a, view *to, const char *key, const site_pictures *all, const char *name,
                 const char *alt) {
    const site_picture *of = picture_find(all, name);
    if (!of)
        return;
    size_t usual = usual_size(of);
    view *put = view_put_object(a, to, key);
    view_put_text(a, put, "src", path_of_size(a, of, usual));
    view_put_text(a, put, "alt", alt ? alt : "");
    if (of->count) {
        view_put_number(a, put, "width", of->sizes[usual].width, 0);
        view_put_number(a, put, "height", of->sizes[usual].height, 0);
    }
    bool is_photo = of->count && !of->drawn;
    view_put_bool(a, put, "is_photo", is_photo);
    if (is_photo)
        put_files(a, put, of);
}
