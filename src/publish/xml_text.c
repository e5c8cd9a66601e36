#include "publish/xml_text.h"

#include "base/list.h"
#include "base/memory.h"

#include <expat.h>

typedef struct {
    arena *home;
    XML_Parser parser;
    const char *name;
    xml_texts *out;
    text words;
    bool inside, declares;
} reader;

static void begin(void *state, const XML_Char *name, const XML_Char **attributes) {
    reader *r = state;
    (void)attributes;
    r->inside = strcmp(name, r->name) == 0;
    text_clear(&r->words);
}

static void end(void *state, const XML_Char *name) {
    reader *r = state;
    if (r->inside && strcmp(name, r->name) == 0)
        LIST_ADD(r->home, r->out,
                 (xml_text){arena_copy_span(r->home, text_span(&r->words)),
                            (unsigned)XML_GetCurrentLineNumber(r->parser),
                            (unsigned)XML_GetCurrentColumnNumber(r->parser) + 1});
    r->inside = false;
}

static void words(void *state, const XML_Char *bytes, int length) {
    reader *r = state;
    if (r->inside)
        text_add_span(&r->words, (span){bytes, (size_t)length});
}

static void declaration(void *state, const XML_Char *name, const XML_Char *system,
                        const XML_Char *public, int internal) {
    reader *r = state;
    (void)name;
    (void)system;
    (void)public;
    (void)internal;
    r->declares = true;
    XML_StopParser(r->parser, XML_FALSE);
}

bool xml_read(arena *a, const char *file, span bytes, const char *name, xml_texts *out,
              problems *found) {
    reader r = {.home = a, .name = name, .out = out, .words = TEXT_EMPTY};
    const XML_Memory_Handling_Suite memory = {memory_get, memory_resize, free};
    r.parser = XML_ParserCreate_MM("UTF-8", &memory, NULL);
    XML_SetUserData(r.parser, &r);
    XML_SetElementHandler(r.parser, begin, end);
    XML_SetCharacterDataHandler(r.parser, words);
    XML_SetStartDoctypeDeclHandler(r.parser, declaration);
    bool good = XML_Parse(r.parser, bytes.at, (int)bytes.length, 1) == XML_STATUS_OK;
    if (!good) {
        place at = {file, (unsigned)XML_GetCurrentLineNumber(r.parser),
                    (unsigned)XML_GetCurrentColumnNumber(r.parser) + 1};
        problem_add(found, at, NULL, "not well-formed: %s",
                    r.declares ? "a document type is declared"
                               : XML_ErrorString(XML_GetErrorCode(r.parser)));
    }
    XML_ParserFree(r.parser);
    text_free(&r.words);
    return good;
}
