/* A tool of the build: prints C that holds the given files, sorted into the reference pantry, the
 * reference rules, the languages, the themes, the files of a new site folder and those of the
 * preview. Its output is compiled in (reference/reference.h). The reference is read here and held
 * as a packed tree too, so that the program need not scan its YAML at each start; broken YAML ends
 * the build.
 */
#include "base/files.h"
#include "read/yaml_packed.h"

#include <stdio.h>
#include <stdlib.h>

static const struct {
    const char *start, *array, *shown;
    bool packed;
} groups[] = {{"src/reference/pantry-", "reference_pantry", "reference/pantry-", true},
              {"src/reference/rules-", "reference_rules", "reference/rules-", true},
              {"src/reference/language-", "reference_languages", "reference/language-", true},
              {"themes/", "reference_themes", "", false},
              {"src/commands/start/", "reference_start", "", false},
              {"src/commands/hook/", "reference_hook", "", false},
              {"src/preview/page/", "reference_preview", "", false}};

static bool is_packed(const char *path) {
    for (size_t g = 0; g < sizeof groups / sizeof groups[0]; g++)
        if (span_begins(span_of(path), groups[g].start))
            return groups[g].packed;
    return false;
}

static void print_array(const char *name, int number, span bytes) {
    printf("static const unsigned char %s_%d[] = {", name, number);
    for (size_t i = 0; i < bytes.length; i++)
        printf("%s%d,", i % 24 ? "" : "\n", (unsigned char)bytes.at[i]);
    /* A last zero, not counted in the length, so that no array is empty. */
    printf("0};\nenum { %s_length_%d = %zu };\n", name, number, bytes.length);
}

static void die(const problems *found) {
    text all = TEXT_EMPTY;
    for (size_t i = 0; i < found->count; i++)
        problem_print(&found->items[i], &all);
    fputs(all.bytes, stderr);
    exit(1);
}

/* The list or mapping in the YAML `bytes`, packed. */
static void pack(arena *a, const char *path, span bytes, text *out) {
    problems found = problems_in(a);
    const yaml_node *root = yaml_read(a, path, bytes, 1, &found);
    if (found.count == 0 && (!root || root->sort == YAML_SCALAR))
        problem_add(&found, (place){path, 1, 1}, NULL, "this must be a list or keys and values");
    if (found.count)
        die(&found);
    yaml_pack(root, out);
}

static void print_file(const char *path, int number) {
    arena *a = arena_new();
    text tree = TEXT_EMPTY;
    span bytes;
    int why;
    if (!file_read(a, path, &bytes, &why)) {
        fprintf(stderr, "%s: %s\n", path, strerror(why));
        exit(1);
    }
    if (is_packed(path))
        pack(a, path, bytes, &tree);
    print_array("bytes", number, bytes);
    print_array("tree", number, text_span(&tree));
    text_free(&tree);
    arena_free(a);
}

static void print_group(size_t g, int count, char **paths) {
    int held = 0;
    printf("const reference_file %s[] = {\n", groups[g].array);
    for (int i = 1; i < count; i++) {
        if (!span_begins(span_of(paths[i]), groups[g].start))
            continue;
        printf("    {\"%s%s\", {(const char *)bytes_%d, bytes_length_%d},\n"
               "     {(const char *)tree_%d, tree_length_%d}},\n",
               groups[g].shown, paths[i] + strlen(groups[g].start), i, i, i, i);
        held++;
    }
    printf("    {0, {0, 0}, {0, 0}}};\nconst size_t %s_count = %d;\n", groups[g].array, held);
}

int main(int count, char **paths) {
    puts("/* Made by reference/embed.c: do not edit. */\n#include \"reference/reference.h\"\n");
    for (int i = 1; i < count; i++)
        print_file(paths[i], i);
    for (size_t g = 0; g < sizeof groups / sizeof groups[0]; g++)
        print_group(g, count, paths);
    return 0;
}
