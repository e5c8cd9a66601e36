/* YAML with positions: trees, limits, faults in plain words. */
#include "reading.h"

#include "read/yaml.h"

/* The tree as one line: scalars in <>, quoted in "", a place before each where `places`. */
static void add_tree(text *t, const yaml_node *node, bool places) {
    if (places)
        text_format(t, "%u:%u", node->at.line, node->at.column);
    if (node->sort == YAML_SCALAR) {
        text_format(t, node->quoted ? "\"%s\"" : "<%s>", node->scalar.at);
        return;
    }
    text_add(t, node->sort == YAML_SEQUENCE ? "[" : "{");
    for (size_t i = 0; i < node->count; i++) {
        text_add(t, i ? " " : "");
        if (node->sort == YAML_MAPPING && places)
            text_format(t, "%u:%u", node->pairs[i].key_at.line, node->pairs[i].key_at.column);
        if (node->sort == YAML_MAPPING)
            text_format(t, "%s=", node->pairs[i].key.at);
        add_tree(t, node->sort == YAML_MAPPING ? node->pairs[i].value : node->items[i], places);
    }
    text_add(t, node->sort == YAML_SEQUENCE ? "]" : "}");
}

static const char *tree_of(arena *a, span bytes, unsigned first_line, bool places) {
    problems found = problems_in(a);
    const yaml_node *root = yaml_read(a, "f", bytes, first_line, &found);
    text t = TEXT_EMPTY;
    if (found.count)
        text_add(&t, printed(a, &found));
    else if (root)
        add_tree(&t, root, places);
    const char *copy = arena_copy(a, text_span(&t));
    text_free(&t);
    return copy;
}

static const struct {
    const char *name, *yaml, *tree;
} trees[] = {
    {"nothing", "", ""},
    {"a comment alone", "# nothing yet\n", ""},
    {"a null document", "---\n...\n", ""},
    {"a mapping", "a: 1\nb: two words\n", "{a=<1> b=<two words>}"},
    {"no line end at the end", "a: 1", "{a=<1>}"},
    {"nested", "a: {b: [1, 2]}\n", "{a={b=[<1> <2>]}}"},
    {"quoted", "a: \"1\"\nb: 'it''s'\n", "{a=\"1\" b=\"it's\"}"},
    {"nulls", "a:\nb: ~\nc: null\nd: ''\n", "{a=<> b=<> c=<> d=\"\"}"},
    {"a folded block loses its last line end", "a: >\n  one\n  two\n\n", "{a=\"one two\"}"},
    {"a literal block keeps inner line ends", "a: |\n  one\n  two\n", "{a=\"one\ntwo\"}"},
    {"byte-order mark",
     "\xEF\xBB\xBF"
     "a: 1\n",
     "{a=<1>}"},
    {"CRLF", "a: 1\r\nb: [x,\r\n  y]\r\n", "{a=<1> b=[<x> <y>]}"},
    {"document marks", "---\na: 1\n...\n", "{a=<1>}"},
    {"an alias shares", "a: &n [1]\nb: *n\n", "{a=[<1>] b=[<1>]}"},
    {"a later anchor of the same name wins", "a: &n 1\nb: &n 2\nc: *n\n", "{a=<1> b=<2> c=<2>}"},
    {"an alias as a key", "a: &n x\n*n : 1\n", "{a=<x> x=<1>}"},
    {"core tags", "a: !!str 1\nb: !!seq [x]\nc: !!map {y: 1}\n", "{a=\"1\" b=[<x>] c={y=<1>}}"},
    {"a value with a colon and no space", "a: 12:30\nb: http://x/\n", "{a=<12:30> b=<http://x/>}"},
    {"UTF-8", "a: pur\u00e9e\n", "{a=<pur\u00e9e>}"},
};

static void test_trees(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(trees); i++) {
        arena *a = arena_new();
        expect_words(trees[i].name, tree_of(a, span_of(trees[i].yaml), 1, false), trees[i].tree);
        arena_free(a);
    }
}

static const struct {
    const char *name, *yaml;
    unsigned first_line;
    const char *tree;
} places[] = {
    {"lines count on from the first", "a: 1\nb:\n  - x\n", 2, "2:1{2:1a=2:4<1> 3:1b=4:3[4:5<x>]}"},
    {"columns count characters", "\u00e9\u00e9: \u00e9 # \u00e9\n", 1,
     "1:1{1:1\u00e9\u00e9=1:5<\u00e9>}"},
    {"a byte-order mark takes no column",
     "\xEF\xBB\xBF"
     "a: 1\n",
     1, "1:1{1:1a=1:4<1>}"},
    {"flow", "a: {b: [c, d]}\n", 1, "1:1{1:1a=1:4{1:5b=1:8[1:9<c> 1:12<d>]}}"},
    {"CRLF lines", "a: 1\r\nb: 2\r\n", 1, "1:1{1:1a=1:4<1> 2:1b=2:4<2>}"},
};

static void test_places(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(places); i++) {
        arena *a = arena_new();
        expect_words(places[i].name,
                     tree_of(a, span_of(places[i].yaml), places[i].first_line, true),
                     places[i].tree);
        arena_free(a);
    }
}

static const struct {
    const char *name, *yaml, *report;
} faults[] = {
    {"a key twice", "a: 1\nb: 2\na: 3\n",
     "f:3:1: error: the key \"a\" is there twice\n"
     "  hint: it stands on line 1 already: keep one of them\n"},
    {"two keys twice are two problems", "a: 1\na: 2\na: 3\n",
     "f:2:1: error: the key \"a\" is there twice\n"
     "  hint: it stands on line 1 already: keep one of them\n"
     "f:3:1: error: the key \"a\" is there twice\n"
     "  hint: it stands on line 1 already: keep one of them\n"},
    {"a tab indents", "a:\n\tb: 1\n",
     "f:2:1: error: this line is indented with a tab\n"
     "  hint: use spaces: YAML takes no tabs there\n"},
    {"a tab after spaces", "a:\n  b: 1\n \tc: 2\n",
     "f:3:2: error: this line is indented with a tab\n"
     "  hint: use spaces: YAML takes no tabs there\n"},
    {"no space after the colon", "title:Rounds\nmakes: 8\n",
     "f:1:6: error: there is no space after the colon\n"
     "  hint: write \"key: value\", with a space after the colon\n"},
    {"no space after a later colon", "title: Rounds\nmakes:8\nkind: bar\n",
     "f:2:6: error: there is no space after the colon\n"
     "  hint: write \"key: value\", with a space after the colon\n"},
    {"a colon inside a value", "title: Rounds: thin ones\n",
     "f:1:14: error: a colon and a space inside a value: it reads as a second key\n"
     "  hint: put the whole value in double quotes\n"},
    {"a quote never closed", "a: 1\nb: \"two\nc: 3\n",
     "f:2:4: error: this quote is never closed\n  hint: close it with the same quote mark\n"},
    {"text after a closing double quote", "a: \"two\" three\n",
     "f:1:10: error: there is more text after the closing quote\n"
     "  hint: write \\\" for a double quote inside double quotes\n"},
    {"an apostrophe in single quotes", "a: 'Maren's rounds'\n",
     "f:1:11: error: there is more text after the closing quote\n"
     "  hint: write '' for an apostrophe inside single quotes\n"},
    {"a backslash in double quotes", "a: \"C:\\data\"\n",
     "f:1:7: error: a backslash in double quotes means something else\n"
     "  hint: use single quotes, or write two backslashes\n"},
    {"a list on its key's line", "a: - 1\n",
     "f:1:4: error: a list can't begin on the line of its key\n"
     "  hint: put each item on a line of its own that begins with \"- \", or use [brackets, and "
     "commas]\n"},
    {"a list not closed", "a: [x, y\nb: 1\n",
     "f:1:4: error: this list is not closed, or a comma is missing in it\n"
     "  hint: write it as [one, two]\n"},
    {"braces not closed", "a: {x: 1\nb: 1\n",
     "f:1:4: error: these braces are not closed, or a comma is missing in them\n"
     "  hint: write it as {key: value, key: value}\n"},
    {"a line out of line", "a: 1\n b: 2\n",
     "f:2:2: error: this key is indented deeper than the line above it, which has a value\n"
     "  hint: keys that belong together stand at the same indentation\n"},
    {"a key too far left in a list", "a:\n  - x: 1\n y: 2\n",
     "f:3:2: error: this line does not fit the lines above it\n"
     "  hint: keys that belong together stand at the same indentation\n"},
    {"a value that begins with @", "a: @home\n",
     "f:1:4: error: a value can't begin with this sign\n"
     "  hint: put the value in double quotes\n"},
    {"a value that begins with a star", "a: *\n",
     "f:1:5: error: a value that begins with * or & means something else\n"
     "  hint: put the value in double quotes\n"},
    {"an alias for nothing", "a: *gone\n",
     "f:1:4: error: the alias *gone stands for nothing above it\n"
     "  hint: put the value in double quotes if no alias is meant\n"},
    {"an alias inside itself", "a: &n [*n]\n",
     "f:1:8: error: the alias *n stands inside what it stands for\n"
     "  hint: put the value in double quotes if no alias is meant\n"},
    {"a tag", "a: !thing 1\n",
     "f:1:4: error: the tag !thing means nothing here\n"
     "  hint: take it out, or put the value in double quotes\n"},
    {"a core tag on the wrong thing", "a: !!map 1\n",
     "f:1:4: error: the tag tag:yaml.org,2002:map means nothing here\n"
     "  hint: take it out, or put the value in double quotes\n"},
    {"braces as a key", "{a: 1}: 2\n",
     "f:1:1: error: a list or braces stand where a key is expected\n"
     "  hint: put the value in double quotes\n"},
    {"a second document", "a: 1\n---\nb: 2\n",
     "f:2:1: error: a second document begins here\n"
     "  hint: keep one document in a file, without lines of three hyphens\n"},
    {"Latin-1",
     "a: 1\nb: pur\xE9"
     "e\n",
     "f:2:7: error: byte E9 is not UTF-8\n"
     "  hint: save the file as UTF-8 (some editors call it Unicode)\n"},
    {"a control character", "a: 1\nb: \x01\n",
     "f:2:4: error: there is a control character (code 01) here\n"
     "  hint: delete it and write the line again\n"},
    {"text after a block sign", "a: | text\n  b\n",
     "f:1:6: error: nothing may follow the sign | or > on its line\n"
     "  hint: begin the text on the next line, indented; or put the value in double quotes\n"},
    {"a bracket too many", "a: ]\n",
     "f:1:4: error: something is missing before this sign\n"
     "  hint: take out the comma or bracket too many, or put the value in double quotes\n"},
    {"a word alone among keys", "a: 1\nword\nb: 2\n",
     "f:2:1: error: this line is no key with a value\n"
     "  hint: write it as \"key: value\", or indent it to go on with the line above\n"},
    {"a directive in the wrong place", "a: 1\n%FOO\n",
     "f:2:1: error: a line that begins with % means something else\n"
     "  hint: put the value in double quotes\n"},
    {"a directive of another version", "%YAML 9.9\n---\na: 1\n",
     "f:1:1: error: this is not YAML (found incompatible YAML document)\n"
     "  hint: put the value in double quotes\n"},
    {"a broken key", "a: 1\n*gone : 2\n",
     "f:2:1: error: the alias *gone stands for nothing above it\n"
     "  hint: put the value in double quotes if no alias is meant\n"},
    {"an item out of line", "- a\nb: 1\n",
     "f:2:1: error: this line does not fit the list above it\n"
     "  hint: each item of a list begins with \"- \" at the same indentation\n"},
};

static void test_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        arena *a = arena_new();
        expect_words(faults[i].name, tree_of(a, span_of(faults[i].yaml), 1, false),
                     faults[i].report);
        arena_free(a);
    }
}

static void test_nul(void **state) {
    (void)state;
    arena *a = arena_new();
    expect_words("a NUL", tree_of(a, (span){"a: 1\nb: \0\n", 10}, 1, false),
                 "f:2:4: error: there is a NUL byte here, which no text holds\n"
                 "  hint: is it a text file? write it with a text editor\n");
    arena_free(a);
}

/* -- limits: documents made to be too much ---------------------------------------------------- */

static void add_times(text *t, const char *bytes, size_t times) {
    for (size_t i = 0; i < times; i++)
        text_add(t, bytes);
}

static void make_deep(text *t) {
    add_times(t, "[", 40);
    add_times(t, "]", 40);
}

static void make_deepest_allowed(text *t) {
    add_times(t, "[", YAML_DEPTH_MOST);
    add_times(t, "]", YAML_DEPTH_MOST);
}

static void make_many(text *t) {
    text_add_char(t, '[');
    add_times(t, "a,", YAML_NODES_MOST + 1);
    text_add_char(t, ']');
}

/* Ten levels, each ten aliases of the one before: 10^10 values when followed. */
static void make_laughs(text *t) {
    text_add(t, "l0: &l0 [x]\n");
    for (int level = 1; level <= 10; level++) {
        text_format(t, "l%d: &l%d [", level, level);
        for (int i = 0; i < 10; i++)
            text_format(t, "%s*l%d", i ? ", " : "", level - 1);
        text_add(t, "]\n");
    }
}

/* Each level is one deeper than the one it refers to. */
static void make_deep_by_aliases(text *t) {
    text_add(t, "- &l0 [x]\n");
    for (int level = 1; level <= 40; level++)
        text_format(t, "- &l%d [*l%d]\n", level, level - 1);
}

static void make_many_keys(text *t) {
    for (int i = 0; i < 300; i++)
        text_format(t, "k%d: 1\n", i);
}

static void make_many_anchors(text *t) {
    for (int i = 0; i < 101; i++)
        text_format(t, "- &a%d x\n", i);
}

static void make_large(text *t) {
    add_times(t, "# a comment to fill the file\n", YAML_BYTES_MOST / 29 + 1);
}

static const struct {
    const char *name;
    void (*make)(text *t);
    const char *message; /* null: fine */
} limits[] = {
    {"40 levels", make_deep, "this is nested more than 32 levels deep"},
    {"32 levels are fine", make_deepest_allowed, NULL},
    {"200,001 values", make_many,
     "the file holds more than 200000 values, those repeated by aliases counted"},
    {"aliases of aliases", make_laughs,
     "the file holds more than 200000 values, those repeated by aliases counted"},
    {"depth through aliases", make_deep_by_aliases, "this is nested more than 32 levels deep"},
    {"300 keys", make_many_keys, "more than 256 keys stand together here"},
    {"101 anchors", make_many_anchors, "the file has more than 100 anchors (&name)"},
    {"more than 4 MB", make_large, "this is longer than 4 MB"},
};

static void test_limits(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(limits); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        text t = TEXT_EMPTY;
        limits[i].make(&t);
        const yaml_node *root = yaml_read(a, "f", text_span(&t), 1, &found);
        if (!limits[i].message && (!root || found.count))
            fail_msg("%s: should be fine", limits[i].name);
        if (limits[i].message && (root || found.count != 1))
            fail_msg("%s: should be one problem", limits[i].name);
        if (limits[i].message)
            expect_words(limits[i].name, found.items[0].message, limits[i].message);
        text_free(&t);
        arena_free(a);
    }
}

static void test_get(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    const yaml_node *root = yaml_read(a, "f", span_of("a: 1\nb: 2\n"), 1, &found);
    assert_string_equal(yaml_get(root, "b")->scalar.at, "2");
    assert_null(yaml_get(root, "c"));
    assert_null(yaml_get(yaml_get(root, "a"), "c"));
    assert_null(yaml_get(NULL, "c"));
    located b = yaml_located(yaml_get(root, "b"));
    assert_int_equal(b.at.line, 2);
    assert_int_equal(b.at.column, 4);
    assert_string_equal(b.at.file, "f");
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_trees), cmocka_unit_test(test_places), cmocka_unit_test(test_faults),
        cmocka_unit_test(test_nul),   cmocka_unit_test(test_limits), cmocka_unit_test(test_get),
    };
    return cmocka_run_group_tests_name("yaml", tests, NULL, NULL);
}
