#include "pictures/photograph.h"

#include <stdio.h>
#include <string.h>
#include <vips/vips.h>

/* Quality by eye; WebP reaches that of the JPEG with a lower number. */
enum { JPEG_QUALITY = 82, WEBP_QUALITY = 78 };

enum { PATH_MOST = 4096 };

static bool fail(text *told, const char *what) {
    text_clear(told);
    text_add(told, what);
    return false;
}

/* The first line of what libvips says. */
static bool fail_by_library(text *told) {
    const char *said = vips_error_buffer();
    size_t length = strcspn(said, "\n");
    text_clear(told);
    text_format(told, "it can't be decoded: %.*s", (int)length, said);
    return false;
}

/* Width as it will stand, and whether the size can be decoded: only the header is read. */
static bool measure(const char *from, int *width, text *told) {
    VipsImage *header = vips_image_new_from_file(from, NULL);
    if (!header)
        return fail_by_library(told);
    double pixels = (double)vips_image_get_width(header) * vips_image_get_height(header);
    bool lies = vips_image_get_orientation_swap(header); /* sideways: to be turned */
    *width = lies ? vips_image_get_height(header) : vips_image_get_width(header);
    g_object_unref(header);
    return pixels <= PHOTOGRAPH_PIXELS_MOST || fail(told, "it has too many pixels");
}

typedef int writer(VipsImage *of, const char *to);

static int write_jpeg(VipsImage *of, const char *to) {
    return vips_jpegsave(of, to, "Q", JPEG_QUALITY, "strip", TRUE, "interlace", TRUE,
                         "optimize_coding", TRUE, NULL);
}

static int write_webp(VipsImage *of, const char *to) {
    return vips_webpsave(of, to, "Q", WEBP_QUALITY, "strip", TRUE, NULL);
}

/* Written beside under a name of its own, then renamed: no half file is ever seen. */
static bool put(VipsImage *of, writer *by, const char *folder, const char *stem, const char *ending,
                text *told) {
    char to[PATH_MOST], beside[PATH_MOST];
    int width = vips_image_get_width(of), height = vips_image_get_height(of);
    int whole = snprintf(to, sizeof to, "%s/%s-%dx%d.%s", folder, stem, width, height, ending);
    int other = snprintf(beside, sizeof beside, "%s/.%s-%d.%s.part", folder, stem, width, ending);
    if (whole >= PATH_MOST || other >= PATH_MOST)
        return fail(told, "its name is too long");
    if (by(of, beside) != 0) {
        (void)remove(beside);
        return fail_by_library(told);
    }
    return rename(beside, to) == 0 || fail(told, "it can't be written");
}

/* Takes out all that a camera or a program noted: place, time, camera, preview, profile. (WebP
 * files get an Exif block all the same, in which libvips says that they are upright.) */
static void strip(VipsImage *of) {
    gchar **fields = vips_image_get_fields(of);
    for (gchar **field = fields; *field; field++)
        if (strncmp(*field, "exif", 4) == 0 || strncmp(*field, "xmp", 3) == 0 ||
            strncmp(*field, "iptc", 4) == 0 || strncmp(*field, "icc", 3) == 0 ||
            strcmp(*field, VIPS_META_ORIENTATION) == 0)
            (void)vips_image_remove(of, *field);
    g_strfreev(fields);
}

/* Upright, in sRGB, on white where it was transparent, all in memory; null when it can't be. */
static VipsImage *scaled(const char *from, int width) {
    VipsImage *small = NULL, *flat = NULL, *held = NULL;
    VipsArrayDouble *white = vips_array_double_newv(1, 255.0);
    /* vips_thumbnail turns it by its orientation */
    if (vips_thumbnail(from, &small, width, "height", VIPS_MAX_COORD, "size", VIPS_SIZE_DOWN,
                       "export_profile", "srgb", "fail_on", VIPS_FAIL_ON_TRUNCATED, NULL) == 0) {
        if (!vips_image_hasalpha(small))
            held = vips_image_copy_memory(small);
        else if (vips_flatten(small, &flat, "background", white, NULL) == 0)
            held = vips_image_copy_memory(flat);
    }
    vips_area_unref(VIPS_AREA(white));
    VIPS_UNREF(flat);
    VIPS_UNREF(small);
    if (held)
        strip(held);
    return held;
}

static bool make_width(const char *folder, const char *from, const char *stem, int width,
                       text *told) {
    VipsImage *held = scaled(from, width);
    if (!held)
        return fail_by_library(told);
    bool made = put(held, write_webp, folder, stem, "webp", told) &&
                put(held, write_jpeg, folder, stem, "jpg", told);
    if (made)
        text_format(told, " %dx%d", vips_image_get_width(held), vips_image_get_height(held));
    g_object_unref(held);
    return made;
}

static void be_quiet(const gchar *domain, GLogLevelFlags level, const gchar *said, gpointer with) {
    (void)domain, (void)level, (void)said, (void)with;
}

bool photograph_make(const char *folder, const char *from, const char *stem, text *told) {
    static const int widths[] = PHOTOGRAPH_WIDTHS;
    int width;
    g_log_set_handler("VIPS", G_LOG_LEVEL_MASK, be_quiet, NULL); /* faults are told by the caller */
    if (VIPS_INIT("crumbnote-pictures") != 0)
        return fail_by_library(told);
    vips_block_untrusted_set(TRUE);
    vips_cache_set_max(0);
    vips_concurrency_set(1);
    if (!measure(from, &width, told))
        return false;
    for (size_t i = 0; i < sizeof widths / sizeof widths[0]; i++) {
        bool whole = width <= widths[i]; /* the last that it has pixels for */
        if (!make_width(folder, from, stem, whole ? width : widths[i], told))
            return false;
        if (whole)
            break;
    }
    return true;
}
