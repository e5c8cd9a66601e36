/* A tool of the build: prints C that holds the given files, sorted into the reference pantry, the
 * reference rules and the default theme. Its output is compiled in (reference/reference.h). */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void die(const char *path) {
    perror(path);
    exit(1);
}

static void print_bytes(const char *path, int number) {
    FILE *file = fopen(path, "rb");
    if (!file)
        die(path);
    printf("static const unsigned char bytes_%d[] = {", number);
    size_t count = 0;
    for (int c; (c = fgetc(file)) != EOF; count++)
        printf("%s%d,", count % 24 ? "" : "\n", c);
    if (ferror(file))
        die(path);
    fclose(file);
    /* A last zero, not counted in the length, so that no array is empty. */
    printf("0};\nenum { length_%d = %zu };\n", number, count);
}

static const struct {
    const char *start, *array, *shown;
} groups[] = {{"src/reference/pantry-", "reference_pantry", "reference/pantry-"},
              {"src/reference/rules-", "reference_rules", "reference/rules-"},
              {"themes/plain/", "reference_theme", ""}};

static void print_group(size_t g, int count, char **paths) {
    int held = 0;
    printf("const reference_file %s[] = {\n", groups[g].array);
    for (int i = 1; i < count; i++) {
        size_t start = strlen(groups[g].start);
        if (strncmp(paths[i], groups[g].start, start) != 0)
            continue;
        printf("    {\"%s%s\", {(const char *)bytes_%d, length_%d}},\n", groups[g].shown,
               paths[i] + start, i, i);
        held++;
    }
    printf("    {0, {0, 0}}};\nconst size_t %s_count = %d;\n", groups[g].array, held);
}

int main(int count, char **paths) {
    puts("/* Made by reference/embed.c: do not edit. */\n#include \"reference/reference.h\"\n");
    for (int i = 1; i < count; i++)
        print_bytes(paths[i], i);
    for (size_t g = 0; g < sizeof groups / sizeof groups[0]; g++)
        print_group(g, count, paths);
    return 0;
}
