/* The floor: what the libraries alone cost on the same files. Reads every recipe of a folder, runs
 * libyaml's events over its front matter, cmark over its body, and makes and prints one small
 * jansson document a recipe.
 *
 *     floor FOLDER */
#include <cmark.h>
#include <dirent.h>
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <yaml.h>

static char *read_whole(const char *path, size_t *size) {
    FILE *f = fopen(path, "rb");
    if (!f) {
        perror(path);
        exit(1);
    }
    static char room[1 << 20];
    *size = fread(room, 1, sizeof room, f);
    fclose(f);
    return room;
}

static size_t events_of(const char *bytes, size_t size) {
    yaml_parser_t parser;
    yaml_event_t event;
    size_t count = 0;
    yaml_parser_initialize(&parser);
    yaml_parser_set_input_string(&parser, (const unsigned char *)bytes, size);
    for (int done = 0; !done; count++) {
        if (!yaml_parser_parse(&parser, &event))
            break;
        done = event.type == YAML_STREAM_END_EVENT;
        yaml_event_delete(&event);
    }
    yaml_parser_delete(&parser);
    return count;
}

static size_t document_of(const char *title) {
    json_t *document = json_pack("{s:s, s:i, s:f, s:[s,s,s], s:{s:f, s:f}}", "title", title,
                                 "portions", 4, "protein_g", 23.5, "tags", "a", "b", "c", "portion",
                                 "energy_kcal", 210.0, "fat_g", 7.5);
    char *printed = json_dumps(document, JSON_COMPACT);
    size_t length = strlen(printed);
    free(printed);
    json_decref(document);
    return length;
}

static size_t work_on(const char *path) {
    size_t size, total;
    char *bytes = read_whole(path, &size);
    char *end = size > 4 ? memmem(bytes + 4, size - 4, "\n---\n", 5) : NULL;
    size_t front = end ? (size_t)(end - bytes) : size;
    total = events_of(bytes + 4, front - 4);
    char *html = cmark_markdown_to_html(bytes + front, size - front, CMARK_OPT_DEFAULT);
    total += strlen(html);
    free(html);
    return total + document_of(path);
}

int main(int count, char **words) {
    char path[4096];
    size_t total = 0;
    DIR *folder = count > 1 ? opendir(words[1]) : NULL;
    if (!folder) {
        fputs("usage: floor FOLDER\n", stderr);
        return 2;
    }
    struct dirent *entry;
    while ((entry = readdir(folder)) != NULL) {
        if (entry->d_name[0] == '.')
            continue;
        snprintf(path, sizeof path, "%s/%s", words[1], entry->d_name);
        total += work_on(path);
    }
    closedir(folder);
    printf("%zu\n", total);
    return 0;
}
