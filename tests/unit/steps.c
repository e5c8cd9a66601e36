/* The method of a recipe in schema.org's forms. */
#include "checks.h"

#include "draft/steps.h"

/* Steps and notes on one line: "Section/step|step||note". */
static const char *told(arena *a, const draft_parts *parts) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < parts->steps.count; i++) {
        const draft_item *step = &parts->steps.items[i];
        text_format(&t, "%s%s%s%s", i ? "|" : "", step->under ? step->under : "",
                    step->under ? "/" : "", step->words);
    }
    for (size_t i = 0; i < parts->notes.count; i++)
        text_format(&t, "||%s", parts->notes.items[i].words);
    const char *words = arena_copy(a, text_span(&t));
    text_free(&t);
    return words;
}

static void reads_all_forms(void **state) {
    (void)state;
    static const struct {
        const char *value, *told;
    } rows[] = {
        {"\"Mix.\"", "Mix."},
        {"\"Mix.\\nBake.\"", "Mix.|Bake."},
        {"\"Mix.\\n\\nBake.\"", "Mix.|Bake."},
        {"\"1. Mix. 2. Bake.\"", "Mix.|Bake."},
        {"\"1) Mix.\\n2) Bake.\"", "Mix.|Bake."},
        {"\"Step 1: Mix.\\nStep 2: Bake.\"", "Mix.|Bake."},
        {"\"STEP 1\\nMix.\\nSTEP 2\\nBake.\"", "Mix.|Bake."},
        {"\"2. Mix.\"", "2. Mix."}, /* no first: the number is its own */
        {"\"1 egg goes in.\"", "1 egg goes in."},
        {"\"Base:\\nMix.\\nTop:\\nBake.\"", "Base/Mix.|Top/Bake."},
        {"\"<p>Mix.</p><p>Bake.</p>\"", "Mix.|Bake."},
        {"\"<ol><li>Mix.<li>Bake.</ol>\"", "Mix.|Bake."},
        {"[\"Mix.\",\"Bake.\"]", "Mix.|Bake."},
        {"[\"Mix.\\nBake.\"]", "Mix.|Bake."}, /* one text in a list holds them all */
        {"[\"Mix\\nwell.\",\"Bake.\"]", "Mix well.|Bake."},
        {"[[\"Mix.\"],[\"Bake.\"]]", "Mix.|Bake."},
        {"{\"@type\":\"HowToStep\",\"text\":\"Mix.\"}", "Mix."},
        {"{\"@type\":\"HowToStep\",\"name\":\"Mix.\"}", "Mix."},
        {"{\"@type\":\"HowToStep\",\"name\":\"Mix\",\"text\":\"Mix well.\"}", "Mix well."},
        {"{\"@type\":\"HowToStep\",\"name\":\"First\",\"text\":\"Mix.\"}", "First: Mix."},
        {"{\"@type\":\"HowToStep\",\"name\":\"Step 1\",\"text\":\"Mix.\"}", "Mix."},
        {"{\"@type\":\"HowToTip\",\"text\":\"Cold.\"}", "||Cold."},
        {"{\"@type\":\"HowToSection\",\"name\":\"Base\",\"itemListElement\":[{\"text\":\"Mix.\"}]}",
         "Base/Mix."},
        {"[{\"@type\":\"HowToSection\",\"name\":\"Base\",\"itemListElement\":\"Mix.\"},\"Bake.\"]",
         "Base/Mix.|Bake."},
        {"{\"@type\":\"HowToStep\",\"itemListElement\":[{\"text\":\"Mix.\"},{\"text\":\"Wait.\"},"
         "{\"@type\":\"HowToTip\",\"text\":\"Cold.\"}]}",
         "Mix. Wait.||Cold."},
        {"{\"@type\":\"ListItem\",\"item\":{\"text\":\"Mix.\"}}", "Mix."},
        {"{\"@value\":\"Mix.\"}", "Mix."},
        {"[]", ""},
        {"null", ""},
        {"7", ""},
        {"{\"@type\":\"HowToStep\"}", ""},
        {"[\"\",\" \"]", ""},
        {"\":\\nMix.\"", "Mix."},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        draft_parts parts = {0};
        json_t *value = json_loads(rows[i].value, JSON_DECODE_ANY, NULL);
        steps_read(a, value, &parts);
        same_text(rows[i].value, told(a, &parts), rows[i].told);
        json_decref(value);
        arena_free(a);
    }
}

/* What is nested without end is said, not lost in silence. */
static void says_what_is_too_deep(void **state) {
    (void)state;
    arena *a = arena_new();
    draft_parts parts = {0};
    json_t *value = json_string("Mix.");
    for (int i = 0; i < 100; i++) {
        json_t *outer = json_array();
        json_array_append_new(outer, value);
        value = outer;
    }
    steps_read(a, value, &parts);
    assert_int_equal(parts.steps.count, 0);
    assert_int_equal(parts.remarks.count, 1);
    json_decref(value);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_all_forms),
        cmocka_unit_test(says_what_is_too_deep),
    };
    return cmocka_run_group_tests_name("steps", tests, NULL, NULL);
}
