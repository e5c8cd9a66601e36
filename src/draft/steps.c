#include "draft/steps.h"

#include "base/number.h"
#include "base/words.h"
#include "draft/linked.h"
#include "draft/plain.h"

enum { DEPTH_MOST = 16, HEADING_BYTES_MOST = 60 };

/* A method being read. */
typedef struct {
    arena *home;
    draft_parts *out;
    const char *section;
    size_t in_section; /* steps so far */
} steps_reader;

static span heading_name(span line) {
    return span_trim(span_ends(line, ":") ? span_first(line, line.length - 1) : line);
}

static void set_section(steps_reader *r, const char *name) {
    span bare = heading_name(span_of(name));
    r->section = bare.length ? arena_copy(r->home, bare) : NULL;
    r->in_section = 0;
}

static void add_step(steps_reader *r, span words) {
    words = span_trim(words);
    if (words.length == 0)
        return;
    PARTS_ADD(r->home, r->out, steps, (draft_item){r->section, arena_copy(r->home, words)});
    r->in_section++;
}

/* -- numbers before steps ---------------------------------------------------------------------- */

/* The bytes of "3. ", "3) ", "Step 3: " at the front of `s`, when its number is `wanted`; all of
 * it when nothing follows; 0: none. */
static size_t number_length(span s, size_t wanted) {
    static const char *const words[] = {"Step ", "STEP ", "step "};
    double number;
    size_t at = 0;
    for (size_t i = 0; i < COUNT(words) && at == 0; i++)
        at = span_begins(s, words[i]) ? strlen(words[i]) : 0;
    size_t digits = 0;
    while (at + digits < s.length && s.at[at + digits] >= '0' && s.at[at + digits] <= '9')
        digits++;
    if (digits == 0 || !number_is(span_first(span_from(s, at), digits), &number) ||
        number > (double)wanted || number < (double)wanted)
        return 0;
    size_t end = at + digits;
    bool marked = end < s.length && strchr(".):", s.at[end]);
    end += marked;
    bool ends = end == s.length || s.at[end] == ' ';
    return ends && (marked || (at > 0 && end == s.length)) ? end : 0;
}

/* Numbers run on over the whole method or begin anew in each section. */
static span without_number(const steps_reader *r, span s) {
    size_t length = number_length(s, r->in_section + 1);
    if (length == 0)
        length = number_length(s, r->out->steps.count + 1);
    return span_trim(span_from(s, length));
}

/* Where " 2. " stands in `s`, the blank before it; its length when it does not. */
static size_t find_number(span s, size_t wanted) {
    for (size_t i = 0; i < s.length; i++)
        if (s.at[i] == ' ' && number_length(span_from(s, i + 1), wanted))
            return i;
    return s.length;
}

/* -- one text ---------------------------------------------------------------------------------- */

static bool is_heading(span line) {
    return line.length <= HEADING_BYTES_MOST && span_ends(line, ":") &&
           span_find(line, ". ") == line.length;
}

static void cut_lines(steps_reader *r, span words) {
    span line;
    while (span_next_line(&words, &line)) {
        if (is_heading(line))
            set_section(r, arena_copy(r->home, line));
        else
            add_step(r, without_number(r, line));
    }
}

/* "1. Mix. 2. Bake." */
static void cut_numbers(steps_reader *r, span words) {
    for (size_t number = 1; words.length; number++) {
        size_t used = number_length(words, number);
        words = span_trim(span_from(words, used));
        size_t end = used ? find_number(words, number + 1) : words.length;
        add_step(r, span_first(words, end));
        words = span_trim(span_from(words, end));
    }
}

static void cut(steps_reader *r, span words) {
    bool one_line = !words.length || !memchr(words.at, '\n', words.length);
    if (one_line && number_length(words, 1))
        cut_numbers(r, words);
    else
        cut_lines(r, words);
}

/* -- objects ----------------------------------------------------------------------------------- */

static span on_one_line(arena *a, const char *words) {
    return span_of(plain_line(a, span_of(words)));
}

/* A name that the text begins with, or that only counts ("Step 2"), says nothing more. */
static bool name_adds(const steps_reader *r, span name, span words) {
    while (span_ends(name, ".") || span_ends(name, "\u2026"))
        name.length -= span_ends(name, ".") ? 1 : strlen("\u2026");
    span plain = words_fold(r->home, name);
    double number;
    if (plain.length == 0 || number_is(plain, &number) ||
        (span_begins(plain, "step ") && number_is(span_from(plain, strlen("step ")), &number)))
        return false;
    return span_find(words_fold(r->home, words), plain.at) != 0;
}

static void add_named_step(steps_reader *r, const char *name, const char *words) {
    span said = words ? without_number(r, on_one_line(r->home, words)) : (span){0};
    span named = name ? without_number(r, on_one_line(r->home, name)) : (span){0};
    if (said.length == 0)
        add_step(r, named);
    else if (!name_adds(r, named, said))
        add_step(r, said);
    else
        add_step(r, span_of(arena_format(r->home, "%.*s%s %.*s", SPAN(named),
                                         span_ends(named, ":") ? "" : ":", SPAN(said))));
}

/* The directions below a step, joined; tips go to the notes. */
static void gather(steps_reader *r, const json_t *value, unsigned depth, text *out) {
    for (size_t i = 0; i < json_array_size(value) && depth < DEPTH_MOST; i++)
        gather(r, json_array_get(value, i), depth + 1, out);
    if (json_is_array(value) || depth >= DEPTH_MOST)
        return;
    const json_t *list = linked_get(value, "itemListElement");
    if (list) {
        gather(r, list, depth + 1, out);
        return;
    }
    const char *words =
        linked_words(r->home, json_is_object(value) ? linked_get(value, "text") : value);
    if (!words)
        words = linked_words(r->home, linked_get(value, "name"));
    if (!words)
        return;
    span line = on_one_line(r->home, words);
    if (linked_is(value, "HowToTip")) {
        PARTS_ADD(r->home, r->out, notes, (draft_item){NULL, line.at});
        return;
    }
    if (out->length)
        text_add_char(out, ' ');
    text_add_span(out, line);
}

static void read_any(steps_reader *r, const json_t *value, unsigned depth);

static void read_section(steps_reader *r, const json_t *of, const json_t *list, unsigned depth) {
    const char *outer = r->section;
    const char *name = linked_words(r->home, linked_get(of, "name"));
    if (name)
        set_section(r, on_one_line(r->home, name).at);
    read_any(r, list, depth + 1);
    if (name)
        set_section(r, outer);
}

static void read_step(steps_reader *r, const json_t *of, const json_t *list) {
    text words = TEXT_EMPTY;
    if (list)
        gather(r, list, 0, &words);
    const char *own = linked_words(r->home, linked_get(of, "text"));
    if (words.length == 0 && own)
        text_add(&words, own);
    const char *name = linked_words(r->home, linked_get(of, "name"));
    if (linked_is(of, "HowToTip")) {
        const char *tip = words.length ? words.bytes : name;
        if (tip)
            PARTS_ADD(r->home, r->out, notes, (draft_item){NULL, on_one_line(r->home, tip).at});
    } else {
        add_named_step(r, name, words.length ? words.bytes : NULL);
    }
    text_free(&words);
}

static void read_object(steps_reader *r, const json_t *of, unsigned depth) {
    const json_t *list = linked_get(of, "itemListElement");
    const json_t *item = linked_get(of, "item");
    if (!list)
        list = linked_get(of, "steps");
    if (json_object_get(of, "@value"))
        cut(r, span_of(linked_words(r->home, of)));
    else if (json_is_object(item))
        read_any(r, item, depth + 1);
    else if (list && !linked_is(of, "HowToStep"))
        read_section(r, of, list, depth);
    else
        read_step(r, of, list);
}

/* A list of texts is a list of steps; a text alone may hold many. */
static void read_list(steps_reader *r, const json_t *list, unsigned depth) {
    for (size_t i = 0; i < json_array_size(list); i++) {
        const json_t *one = json_array_get(list, i);
        const char *words = json_is_string(one) ? linked_words(r->home, one) : NULL;
        bool many = json_array_size(list) == 1 || (words && is_heading(span_of(words)));
        if (words && !many)
            add_step(r, without_number(r, on_one_line(r->home, words)));
        else
            read_any(r, one, depth + 1);
    }
}

static void read_any(steps_reader *r, const json_t *value, unsigned depth) {
    if (depth >= DEPTH_MOST) {
        PARTS_ADD(r->home, r->out, remarks,
                  (draft_item){"method", "could not read: steps inside steps inside steps, because "
                                         "they are nested too deep"});
        return;
    }
    if (json_is_array(value))
        read_list(r, value, depth);
    else if (json_is_object(value))
        read_object(r, value, depth);
    else if (json_is_string(value))
        cut(r, span_of(linked_words(r->home, value)));
}

void steps_read(arena *a, const json_t *value, draft_parts *out) {
    steps_reader r = {.home = a, .out = out};
    read_any(&r, value, 0);
}
