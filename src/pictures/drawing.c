#include "pictures/drawing.h"

#include "base/files.h"
#include "base/memory.h"
#include "base/number.h"

#include <errno.h>
#include <expat.h>
#include <strings.h>

enum { SIDE_MOST = 20000, DEPTH_MOST = 200 };

/* What is known of the drawing while it is read. */
typedef struct {
    XML_Parser by;
    double box[4]; /* of the root's viewBox; width and height stand in its last two */
    int depth;
    const char *wrong; /* the first thing that is; null so far */
} drawing;

static void refuse(drawing *of, const char *why) {
    if (!of->wrong)
        of->wrong = why;
    XML_StopParser(of->by, XML_FALSE);
}

/* Reads up to `count` numbers of an attribute such as viewBox; how many there were. Units behind a
 * number ("800px") are passed over. */
static int numbers_of(const char *value, double out[], int count) {
    span rest = span_of(value);
    int found = 0;
    while (found < count && rest.length) {
        size_t took = number_read(rest, &out[found]);
        if (!took)
            break;
        found++;
        rest = span_from(rest, took);
        while (rest.length && strchr(" ,\t\n", rest.at[0]))
            rest = span_from(rest, 1);
    }
    return found;
}

/* The size by the root's viewBox, else its width and height. */
static bool measure(drawing *of, const char **attributes) {
    bool boxed = false;
    double size[2] = {0};
    for (const char **at = attributes; at[0]; at += 2) {
        if (strcmp(at[0], "viewBox") == 0)
            boxed = numbers_of(at[1], of->box, 4) == 4;
        else if (strcmp(at[0], "width") == 0)
            (void)numbers_of(at[1], &size[0], 1);
        else if (strcmp(at[0], "height") == 0)
            (void)numbers_of(at[1], &size[1], 1);
    }
    if (!boxed)
        memcpy(&of->box[2], size, sizeof size);
    return of->box[2] >= 1 && of->box[2] <= SIDE_MOST && of->box[3] >= 1 && of->box[3] <= SIDE_MOST;
}

/* The name without its prefix. */
static const char *local(const char *name) {
    const char *colon = strchr(name, ':');
    return colon ? colon + 1 : name;
}

/* True when an attribute handles events or leads to script. */
static bool is_active(const char **attributes) {
    for (const char **at = attributes; at[0]; at += 2)
        if (strncasecmp(at[0], "on", 2) == 0 || strcasestr(at[1], "javascript:"))
            return true;
    return false;
}

static void on_element(void *user, const char *name, const char **attributes) {
    drawing *of = user;
    if (of->depth++ == 0 && strcmp(local(name), "svg") != 0)
        refuse(of, "it is no SVG drawing");
    else if (of->depth == 1 && !measure(of, attributes))
        refuse(of, "its viewBox, or width and height, is missing");
    else if (strcasecmp(local(name), "script") == 0 ||
             strcasecmp(local(name), "foreignObject") == 0)
        refuse(of, "it holds script or foreign content; save it as a plain drawing");
    else if (is_active(attributes))
        refuse(of, "it holds script; save it as a plain drawing");
    else if (of->depth > DEPTH_MOST)
        refuse(of, "it is nested too deep");
}

static void on_end(void *user, const char *name) {
    (void)name;
    ((drawing *)user)->depth--;
}

/* Entities come from there: a small file could grow without end. */
static void on_doctype(void *user, const char *name, const char *system, const char *public,
                       int internal) {
    (void)name, (void)system, (void)public, (void)internal;
    refuse(user, "it declares a document type; take that out");
}

static const char *look_into(span bytes, drawing *of) {
    const XML_Memory_Handling_Suite memory = {memory_get, memory_resize, free};
    *of = (drawing){.by = XML_ParserCreate_MM(NULL, &memory, NULL)};
    XML_SetUserData(of->by, of);
    XML_SetElementHandler(of->by, on_element, on_end);
    XML_SetStartDoctypeDeclHandler(of->by, on_doctype);
    bool whole = XML_Parse(of->by, bytes.at, (int)bytes.length, XML_TRUE) == XML_STATUS_OK;
    XML_ParserFree(of->by);
    return whole || of->wrong ? of->wrong : "it is no well-formed XML";
}

static picture_outcome fail(text *told, const char *why, picture_outcome as) {
    text_clear(told);
    text_add(told, why);
    return as;
}

static picture_outcome make(arena *a, const char *folder, const char *from, const char *stem,
                            text *told) {
    span bytes;
    drawing of;
    int why = 0;
    if (!file_read(a, from, &bytes, &why))
        return why == EFBIG ? fail(told, "it is larger than 16 MB", PICTURE_REFUSED)
                            : fail(told, strerror(why), PICTURE_MACHINE_FAILED);
    const char *wrong = look_into(bytes, &of);
    if (wrong)
        return fail(told, wrong, PICTURE_REFUSED);
    int width = (int)(of.box[2] + 0.5), height = (int)(of.box[3] + 0.5);
    if (!file_write(arena_format(a, "%s/%s-%dx%d.svg", folder, stem, width, height), bytes, &why))
        return fail(told, strerror(why), PICTURE_MACHINE_FAILED);
    text_format(told, " %dx%d", width, height);
    return PICTURE_MADE;
}

picture_outcome drawing_make(const char *folder, const char *from, const char *stem, text *told) {
    arena *a = arena_new();
    picture_outcome outcome = make(a, folder, from, stem, told);
    arena_free(a);
    return outcome;
}
