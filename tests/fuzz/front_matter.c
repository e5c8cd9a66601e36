/* Any bytes as a Markdown file: cut, and its front matter read as YAML. */
#include "read/frontmatter.h"
#include "read/yaml.h"

#include <stdint.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    front_matter cut;
    if (front_matter_cut("fuzz.md", (span){(const char *)data, size}, &cut, &found))
        (void)yaml_read(a, "fuzz.md", cut.front, cut.front_line, &found);
    (void)yaml_read(a, "fuzz.yaml", (span){(const char *)data, size}, 1, &found);
    text report = TEXT_EMPTY;
    problems_sort(&found);
    for (size_t i = 0; i < found.count; i++)
        problem_print(&found.items[i], &report);
    text_free(&report);
    arena_free(a);
    return 0;
}
