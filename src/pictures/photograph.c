#include "pictures/photograph.h"

#include "base/files.h"
#include "base/list.h"

#include <vips/vips.h>

/* Quality by eye; WebP reaches that of the JPEG with a lower number. */
enum { JPEG_QUALITY = 82, WEBP_QUALITY = 78 };

static picture_outcome fail(text *told, const char *what, picture_outcome as) {
    text_clear(told);
    text_add(told, what);
    return as;
}

/* The first line of what libvips says. */
static picture_outcome fail_by_library(text *told) {
    const char *said = vips_error_buffer();
    size_t length = strcspn(said, "\n");
    text_clear(told);
    text_format(told, "it can't be decoded: %.*s", (int)length, said);
    return PICTURE_REFUSED;
}

/* Width as it will stand, and whether the size can be decoded: only the header is read. */
static picture_outcome measure(const char *from, int *width, text *told) {
    VipsImage *header = vips_image_new_from_file(from, NULL);
    if (!header)
        return fail_by_library(told);
    double pixels = (double)vips_image_get_width(header) * vips_image_get_height(header);
    bool lies = vips_image_get_orientation_swap(header); /* sideways: to be turned */
    *width = lies ? vips_image_get_height(header) : vips_image_get_width(header);
    g_object_unref(header);
    return pixels <= PHOTOGRAPH_PIXELS_MOST ? PICTURE_MADE
                                            : fail(told, "it has too many pixels", PICTURE_REFUSED);
}

/* Encodes it into `*bytes`, to be freed with g_free. */
typedef int writer(VipsImage *of, void **bytes, size_t *length);

static int write_jpeg(VipsImage *of, void **bytes, size_t *length) {
    return vips_jpegsave_buffer(of, bytes, length, "Q", JPEG_QUALITY, "strip", TRUE, "interlace",
                                TRUE, "optimize_coding", TRUE, NULL);
}

static int write_webp(VipsImage *of, void **bytes, size_t *length) {
    return vips_webpsave_buffer(of, bytes, length, "Q", WEBP_QUALITY, "strip", TRUE, NULL);
}

static picture_outcome put(VipsImage *of, writer *by, const char *stem, const char *ending,
                           text *told) {
    void *bytes = NULL;
    size_t length = 0;
    int why = 0;
    if (by(of, &bytes, &length) != 0)
        return fail_by_library(told);
    text to = TEXT_EMPTY;
    text_format(&to, "%s-%dx%d.%s", stem, vips_image_get_width(of), vips_image_get_height(of),
                ending);
    bool written = file_write(to.bytes, (span){bytes, length}, &why);
    text_free(&to);
    g_free(bytes);
    return written ? PICTURE_MADE : fail(told, strerror(why), PICTURE_MACHINE_FAILED);
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

/* `stem`: its path up to the sizes. */
static picture_outcome make_width(const char *from, const char *stem, int width, text *told) {
    VipsImage *held = scaled(from, width);
    if (!held)
        return fail_by_library(told);
    picture_outcome outcome = put(held, write_webp, stem, "webp", told);
    if (outcome == PICTURE_MADE)
        outcome = put(held, write_jpeg, stem, "jpg", told);
    if (outcome == PICTURE_MADE)
        text_format(told, " %dx%d", vips_image_get_width(held), vips_image_get_height(held));
    g_object_unref(held);
    return outcome;
}

static picture_outcome make_widths(const char *from, const char *stem, text *told) {
    static const int widths[] = PHOTOGRAPH_WIDTHS;
    int width;
    picture_outcome outcome = measure(from, &width, told);
    for (size_t i = 0; outcome == PICTURE_MADE && i < COUNT(widths); i++) {
        bool whole = width <= widths[i]; /* the last that it has pixels for */
        outcome = make_width(from, stem, whole ? width : widths[i], told);
        if (whole)
            break;
    }
    return outcome;
}

static void be_quiet(const gchar *domain, GLogLevelFlags level, const gchar *said, gpointer with) {
    (void)domain, (void)level, (void)said, (void)with;
}

picture_outcome photograph_make(const char *folder, const char *from, const char *stem,
                                text *told) {
    g_log_set_handler("VIPS", G_LOG_LEVEL_MASK, be_quiet, NULL); /* faults are told by the caller */
    if (VIPS_INIT("crumbnote-pictures") != 0)
        return fail_by_library(told);
    vips_block_untrusted_set(TRUE);
    vips_cache_set_max(0);
    vips_concurrency_set(1);
    text path = TEXT_EMPTY;
    text_format(&path, "%s/%s", folder, stem);
    picture_outcome outcome = make_widths(from, path.bytes, told);
    text_free(&path);
    return outcome;
}
