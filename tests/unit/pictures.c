/* site/pictures.h and the names in publish/picture_files.h: which file is shown how. */
#include "support/cmocka_rows.h"

#include "publish/picture_files.h"

static void stems_are_slugs_of_their_own(void **state) {
    (void)state;
    arena *a = arena_new();
    static const struct {
        const char *name, *stem;
    } rows[] = {{"Rounds on a plate.JPG", "rounds-on-a-plate"},
                {"rounds-on-a-plate.png", "rounds-on-a-plate-png"},
                {"rounds.on.a.plate.png", "rounds-on-a-plate-png-2"},
                {"b.svg", "b"},
                {"c", "c"},
                {".hidden", "hidden"}};
    file_list files = {0};
    for (size_t i = 0; i < COUNT(rows); i++)
        LIST_ADD(a, &files, (file_entry){.name = rows[i].name});
    const char **stems = picture_stems(a, &files);
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_text(rows[i].name, stems[i], rows[i].stem);
    arena_free(a);
}

static void sizes_stand_in_the_names(void **state) {
    (void)state;
    written_file files[] = {{.path = "pictures/a-1600x1200.jpg", .stamp = {.bytes = 90210}},
                            {.path = "pictures/a-1600x1200.webp"},
                            {.path = "pictures/a-320x240.jpg"},
                            {.path = "pictures/a-800.jpg"},
                            {.path = "pictures/a-0x7.jpg"}};
    made kept = {.files = {files, COUNT(files), COUNT(files)}};
    site_picture of = {.stem = "a"};
    picture_sizes_of(&kept, "a", &of);
    assert_int_equal(of.count, 2);
    assert_true(of.sizes[0].width == 320 && of.sizes[0].height == 240 && !of.drawn);
    assert_true(of.sizes[1].width == 1600 && of.sizes[1].height == 1200);
    assert_int_equal(of.sizes[1].bytes, 90210);
    written_file drawn = {.path = "pictures/a-800x600.svg"};
    kept.files = (written_files){&drawn, 1, 1};
    picture_sizes_of(&kept, "a", &of);
    assert_true(of.count == 1 && of.drawn);
}

static const char *shown(arena *a, const site_pictures *all, const char *name) {
    view *put = view_object(a);
    text t = TEXT_EMPTY;
    picture_put(a, put, "p", all, name, NULL);
    view_write_json(put, false, &t);
    const char *json = arena_copy(a, text_span(&t));
    text_free(&t);
    return json;
}

static void a_page_shows_what_there_is(void **state) {
    (void)state;
    arena *a = arena_new();
    site_picture items[] = {
        {.name = "a.jpg", .stem = "a", .sizes = {{320, 240, 1}, {700, 525, 2}}, .count = 2},
        {.name = "b.svg", .stem = "b", .drawn = true, .sizes = {{80, 60, 3}}, .count = 1},
        {.name = "c.jpg", .stem = "c"}};
    site_pictures all = {items, COUNT(items), COUNT(items)};
    expect_text("photograph", shown(a, &all, "a.jpg"),
                "{\"p\":{\"src\":\"pictures/a-700x525.jpg\",\"alt\":\"\",\"width\":700,"
                "\"height\":525,\"is_photo\":true,\"files\":["
                "{\"jpeg\":\"pictures/a-320x240.jpg\",\"webp\":\"pictures/a-320x240.webp\","
                "\"width\":320,\"more\":true},"
                "{\"jpeg\":\"pictures/a-700x525.jpg\",\"webp\":\"pictures/a-700x525.webp\","
                "\"width\":700,\"more\":false}]}}");
    expect_text("drawing", shown(a, &all, "b.svg"),
                "{\"p\":{\"src\":\"pictures/b-80x60.svg\",\"alt\":\"\",\"width\":80,\"height\":60,"
                "\"is_photo\":false}}");
    expect_text("copied as it is", shown(a, &all, "c.jpg"),
                "{\"p\":{\"src\":\"pictures/c.jpg\",\"alt\":\"\",\"is_photo\":false}}");
    expect_text("not there", shown(a, &all, "d.jpg"), "{}");
    expect_text("none named", shown(a, &all, NULL), "{}");
    expect_text("largest", picture_path_largest(a, &items[0]), "pictures/a-700x525.jpg");
    expect_text("smallest", picture_path_smallest(a, &items[0]), "pictures/a-320x240.jpg");
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(stems_are_slugs_of_their_own),
        cmocka_unit_test(sizes_stand_in_the_names),
        cmocka_unit_test(a_page_shows_what_there_is),
    };
    return cmocka_run_group_tests_name("pictures", tests, NULL, NULL);
}
