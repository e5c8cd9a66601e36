/* What German pages call the lines of the label, allergens and claims: as the German text of the
 * law has it. Verordnung (EU) Nr. 1169/2011, Anhang XV (lines) and Anhang II (allergens);
 * Verordnung (EG) Nr. 1924/2006, Anhang (claims). All from memory. */
#include "unit/support/cmocka_rows.h"

#include "read/language.h"

typedef struct {
    const char *key, *german;
} law_row;

/* Anhang XV, in its order, with "davon" before the parts. */
static const law_row label_lines[] = {
    {"Energy", "Energie"},
    {"Fat", "Fett"},
    {"of which saturates", "davon gesättigte Fettsäuren"},
    {"Carbohydrate", "Kohlenhydrate"},
    {"of which sugars", "davon Zucker"},
    {"of which polyols", "davon mehrwertige Alkohole"},
    {"Fibre", "Ballaststoffe"},
    {"Protein", "Eiweiß"},
    {"Salt", "Salz"},
};

/* Anhang II, numbers 1 to 14. */
static const struct {
    allergen which;
    const char *german;
} allergen_groups[] = {
    {ALLERGEN_WHEAT, "Glutenhaltiges Getreide"},
    {ALLERGEN_SPELT, "Glutenhaltiges Getreide"},
    {ALLERGEN_RYE, "Glutenhaltiges Getreide"},
    {ALLERGEN_BARLEY, "Glutenhaltiges Getreide"},
    {ALLERGEN_OATS, "Glutenhaltiges Getreide"},
    {ALLERGEN_CRUSTACEAN, "Krebstiere"},
    {ALLERGEN_EGG, "Eier"},
    {ALLERGEN_FISH, "Fische"},
    {ALLERGEN_PEANUT, "Erdnüsse"},
    {ALLERGEN_SOY, "Sojabohnen"},
    {ALLERGEN_MILK, "Milch"},
    {ALLERGEN_ALMOND, "Schalenfrüchte"},
    {ALLERGEN_MACADAMIA, "Schalenfrüchte"},
    {ALLERGEN_CELERY, "Sellerie"},
    {ALLERGEN_MUSTARD, "Senf"},
    {ALLERGEN_SESAME, "Sesamsamen"},
    {ALLERGEN_SULPHITES, "Schwefeldioxid und Sulphite"},
    {ALLERGEN_LUPIN, "Lupinen"},
    {ALLERGEN_MOLLUSC, "Weichtiere"},
};

static const law_row claims_by_law[] = {
    {"source of protein", "Proteinquelle"},
    {"high protein", "hoher Proteingehalt"},
    {"source of fibre", "Ballaststoffquelle"},
    {"high fibre", "hoher Ballaststoffgehalt"},
    {"low fat", "fettarm"},
    {"fat-free", "fettfrei"},
    {"low saturated fat", "arm an gesättigten Fettsäuren"},
    {"low sugars", "zuckerarm"},
    {"sugars-free", "zuckerfrei"},
    {"no added sugars", "ohne Zuckerzusatz"},
    {"low salt", "kochsalzarm"},
    {"very low salt", "sehr kochsalzarm"},
    {"salt-free", "kochsalzfrei"},
};

typedef struct {
    arena *a;
    language in;
} german_spoken;

static int read_german(void **state) {
    arena *a = arena_new();
    german_spoken *german = ARENA_NEW(a, german_spoken);
    problems found = problems_in(a);
    german->a = a;
    *state = german;
    return language_read(a, NULL, "de", &german->in, &found) ? 0 : 1;
}

static int free_german(void **state) {
    arena_free(((german_spoken *)*state)->a);
    return 0;
}

static void the_label_has_its_legal_lines(void **state) {
    const language *german = &((german_spoken *)*state)->in;
    assert_int_equal(COUNT(label_lines), LABEL_EU_ROWS);
    for (size_t i = 0; i < COUNT(label_lines); i++) {
        expect_text("row", label_row_name(LABEL_EU, i), label_lines[i].key);
        expect_text(label_lines[i].key, german->label_eu[i], label_lines[i].german);
    }
}

static void allergens_have_their_legal_names(void **state) {
    const language *german = &((german_spoken *)*state)->in;
    for (size_t i = 0; i < COUNT(allergen_groups); i++)
        expect_text(allergen_word(allergen_groups[i].which),
                    german->allergens_eu[allergen_groups[i].which], allergen_groups[i].german);
}

static void claims_have_their_legal_words(void **state) {
    const language *german = &((german_spoken *)*state)->in;
    assert_int_equal(COUNT(claims_by_law), CLAIMS_EU);
    for (size_t i = 0; i < COUNT(claims_by_law); i++) {
        expect_text("claim", claim_name(LAW_EU, i), claims_by_law[i].key);
        expect_text(claims_by_law[i].key, german->claims_eu[i], claims_by_law[i].german);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_label_has_its_legal_lines),
        cmocka_unit_test(allergens_have_their_legal_names),
        cmocka_unit_test(claims_have_their_legal_words),
    };
    return cmocka_run_group_tests_name("german_law", tests, read_german, free_german);
}
