/* site/view_balance.h: a swap's balance in words, bars and tables. */
#include "unit/support/cmocka_rows.h"

#include "site/balance_table.h"
#include "site/balance_words.h"
#include "site/view_balance.h"
#include "unit/support/build_swaps.h"

#include <stdint.h>

enum { LINES = 6 };

static const portion_of rounds[LINES] = {
    {"pea protein isolate", 60}, {"egg white", 140}, {"water", 120}, {"baking powder", 4}};
static const portion_of whey_rounds[LINES] = {
    {"whey protein isolate", 60}, {"egg white", 140}, {"oat flour", 60}, {"water", 60}};
static const portion_of muffins[LINES] = {{"oat flour", 150},    {"egg", 100},
                                          {"oat milk", 200},     {"sugar", 60},
                                          {"almond butter", 60}, {"baking powder", 6}};

typedef struct {
    larder *l;
    const recipe *of;
    recipe_facts about;
    swap_note note;
} answered;

/* The answer on `to` for `from`; with a rule for everything of verdict `says`, or nobody's. */
static void answered_of(answered *s, const char *kind, const portion_of lines[], const char *from,
                        const char *to, verdict says) {
    s->l->book.rules.count = 0;
    if (says != VERDICT_UNTRIED)
        larder_rule(s->l, "all", (selector){0}, (selector){0}, says);
    s->of = larder_recipe(s->l, kind, lines, LINES);
    s->about = larder_facts(s->l, s->of);
    s->note = note_of(s->l->a, &s->l->book, &s->about, larder_line(s->l, s->of, from),
                      larder_find(s->l, to));
}

static const char *text_at(const view *of, const char *key) {
    const view *found = view_get(of, view_key_named(key));
    return found && found->sort == VIEW_TEXT ? found->bytes.at : NULL;
}

static const view *list_at(const view *of, const char *key) {
    return view_get(of, view_key_named(key));
}

/* "a. b." of all texts under `key` of the list's children. */
static const char *joined(larder *l, const view *list, const char *key) {
    text t = TEXT_EMPTY;
    for (const view *one = list ? list->first : NULL; one; one = one->next)
        text_format(&t, "%s. ", text_at(one, key));
    const char *all = arena_copy(l->a, text_span(&t));
    text_free(&t);
    return all;
}

static void what_is_noticed_is_said(void **state) {
    (void)state;
    static const struct {
        const char *row, *kind;
        const portion_of *lines;
        const char *from, *to, *says, *not_a_word; /* of what must be there, and what not */
    } rows[] = {
        {"runs", "griddle cake", rounds, "pea protein isolate", "whey protein isolate",
         "runnier in the bowl: about 50 g more free water", "stiffer"},
        {"dries", "griddle cake", rounds, "pea protein isolate", "whey protein isolate",
         "drier once baked: about 65 g less free water", "moister"},
        {"sets", "griddle cake", rounds, "pea protein isolate", "whey protein isolate",
         "sets firmer: about 51 g more firm-setting protein for 48 g soft-setting", "softer"},
        {"stiffens", "griddle cake", whey_rounds, "whey protein isolate", "pea protein isolate",
         "in the bowl: about 50 g less free water", "runnier"},
        {"sets softer", "griddle cake", whey_rounds, "whey protein isolate", "brown rice protein",
         "sets softer: about 51 g less firm-setting protein", "for"},
        {"unbaked", "no-bake", rounds, "pea protein isolate", "whey protein isolate",
         "runnier in the bowl", "once baked"},
        {"leaner", "muffin", muffins, "almond butter", "apple purée", "leaner: about 33 g less fat",
         "richer"},
        {"sweetness", "muffin", muffins, "sugar", "erythritol",
         "less sweet: about 21 g less sugar's sweetness", "sweeter"},
    };
    answered s = {.l = larder_new()};
    for (size_t i = 0; i < COUNT(rows); i++) {
        answered_of(&s, rows[i].kind, rows[i].lines, rows[i].from, rows[i].to, VERDICT_AVOID);
        view *page = view_object(s.l->a);
        view_put_balance_changes(s.l->a, s.l->in, page, "changes", &s.note);
        const char *all = joined(s.l, list_at(page, "changes"), "text");
        expect_holds_text(rows[i].row, all, rows[i].says);
        if (strstr(all, rows[i].not_a_word))
            fail_msg("%s: \"%s\"", rows[i].row, all);
    }
    larder_free(s.l);
}

static void like_for_like_says_nothing(void **state) {
    (void)state;
    answered s = {.l = larder_new()};
    answered_of(&s, "muffin", muffins, "almond butter", "cashew butter", VERDICT_WORKS);
    view *page = view_object(s.l->a);
    view_put_balance_changes(s.l->a, s.l->in, page, "changes", &s.note);
    assert_null(list_at(page, "changes"));
    assert_null(balance_changes_text(s.l->a, s.l->in, &s.note));
    assert_null(balance_faces_text(s.l->a, s.l->in, s.of, &s.note));
    larder_free(s.l);
}

/* Both bars begin at zero, the longer fills the box, and a negative one lies left of zero. */
static void bars_keep_their_proportion(void **state) {
    (void)state;
    answered s = {.l = larder_new()};
    answered_of(&s, "griddle cake", rounds, "pea protein isolate", "whey protein isolate",
                VERDICT_AVOID);
    view *page = view_object(s.l->a);
    view_put_balance_changes(s.l->a, s.l->in, page, "changes", &s.note);
    double free_g[] = {balance_free_cold_g(&s.note.before).typical,
                       balance_free_cold_g(&s.note.after).typical};
    const view *bowl = list_at(page, "changes")->first;
    double was = list_at(bowl, "was")->number, is = list_at(bowl, "is")->number;
    expect_near("is", is, 90, 1e-9);
    expect_near("was", was / is, free_g[0] / free_g[1], 1e-9);
    expect_near("zero", list_at(bowl, "zero")->number, 0, 1e-9);
    larder_free(s.l);
}

static void the_two_faces_are_told_in_figures(void **state) {
    (void)state;
    answered s = {.l = larder_new()};
    answered_of(&s, "griddle cake", rounds, "pea protein isolate", "whey protein isolate",
                VERDICT_AVOID);
    const char *runs = balance_faces_text(s.l->a, s.l->in, s.of, &s.note);
    expect_holds_text("runs", runs, "It runs in the bowl and yet bakes dry");
    expect_holds_text("figures", runs,
                      "0.8 times its weight of water cold and holds 6.1 times its weight");
    answered_of(&s, "griddle cake", whey_rounds, "whey protein isolate", "pea protein isolate",
                VERDICT_ADJUST);
    expect_holds_text("stiff", balance_faces_text(s.l->a, s.l->in, s.of, &s.note),
                      "It stays stiff or crumbly in the bowl");
    answered_of(&s, "no-bake", rounds, "pea protein isolate", "whey protein isolate",
                VERDICT_ADJUST);
    assert_null(balance_faces_text(s.l->a, s.l->in, s.of, &s.note)); /* nothing is heated */
    larder_free(s.l);
}

static void the_whole_has_as_many_points_as_there_are(void **state) {
    (void)state;
    static const struct {
        verdict says;
        const char *points;
        bool no_promise;
    } rows[] = {{VERDICT_ADJUST, "before. equal_weight. as_ruled. best. ", false},
                {VERDICT_AVOID, "before. equal_weight. best. ", true},
                {VERDICT_UNTRIED, "before. equal_weight. best. ", true}};
    answered s = {.l = larder_new()};
    for (size_t i = 0; i < COUNT(rows); i++) {
        answered_of(&s, "griddle cake", rounds, "pea protein isolate", "brown rice protein",
                    rows[i].says);
        const note_words words = {.in = s.l->in, .of = s.of, .book = &s.l->book};
        view *page = view_object(s.l->a);
        view_put_balance(s.l->a, page, "balance", &words, &s.about, &s.note);
        const view *put = list_at(page, "balance");
        expect_text("points", joined(s.l, list_at(put, "points"), "key"), rows[i].points);
        expect_bool("no promise", list_at(put, "no_promise")->sort == VIEW_TRUE,
                    rows[i].no_promise);
        for (const view *q = list_at(put, "quantities")->first; q; q = q->next)
            expect_text(text_at(q, "name"), joined(s.l, list_at(q, "rows"), "key"), rows[i].points);
        /* nothing here is sweet */
        if (strstr(joined(s.l, list_at(put, "quantities"), "key"), "sweetness"))
            fail_msg("sweetness is shown");
    }
    larder_free(s.l);
}

static void programs_get_null_where_there_is_no_point(void **state) {
    (void)state;
    answered s = {.l = larder_new()};
    answered_of(&s, "griddle cake", rounds, "pea protein isolate", "whey protein isolate",
                VERDICT_AVOID);
    balance_comparison compared = balance_compare(&s.about, &s.note);
    const view *data = view_of_balance_data(s.l->a, &compared);
    assert_int_equal(list_at(data, "as_ruled")->sort, VIEW_NULL);
    assert_int_equal(list_at(data, "best")->sort, VIEW_OBJECT);
    const view *equal = list_at(data, "equal_weight");
    expect_near("equal weight", list_at(list_at(equal, "to_g"), "typical")->number, 60, 1e-9);
    expect_near("firm", list_at(equal, "firm_setting_protein_g")->number,
                compared.at[POINT_EQUAL_WEIGHT].after.firm_g, 1e-9);
    larder_free(s.l);
}

/* A difference is known far better than the two figures apart. */
static void the_range_of_a_change_is_narrower(void **state) {
    (void)state;
    answered s = {.l = larder_new()};
    answered_of(&s, "griddle cake", whey_rounds, "whey protein isolate", "pea protein isolate",
                VERDICT_ADJUST);
    balance_comparison compared = balance_compare(&s.about, &s.note);
    const balance_at *equal = &compared.at[POINT_EQUAL_WEIGHT];
    range whole = balance_free_cold_g(&equal->after);
    double change_g = balance_change_g(&compared.before, &equal->after, BALANCE_BOWL);
    expect_near("typical", equal->bowl_change_g.typical, change_g, 1e-9);
    assert_true(equal->bowl_change_g.high - equal->bowl_change_g.low < whole.high - whole.low);
    assert_true(equal->bowl_change_g.low < change_g && change_g < equal->bowl_change_g.high);
    larder_free(s.l);
}

static void the_untried_stand_by_what_they_would_do(void **state) {
    (void)state;
    answered s = {.l = larder_new()};
    static const char *const powders[] = {"whey protein isolate", "brown rice protein",
                                          "whey protein hydrolysate"};
    swap_note notes[COUNT(powders)];
    for (size_t i = 0; i < COUNT(powders); i++) {
        answered_of(&s, "griddle cake", rounds, "pea protein isolate", powders[i], VERDICT_UNTRIED);
        notes[i] = s.note;
    }
    view *page = view_object(s.l->a);
    view_put_untried_balance(s.l->a, s.l->in, page, notes, COUNT(notes));
    const view *list = list_at(list_at(page, "untried"), "groups");
    size_t named = 0;
    for (const view *one = list->first; one; one = one->next)
        for (size_t i = 0; i < COUNT(powders); i++)
            named += strstr(text_at(one, "names_text"), powders[i]) != NULL;
    assert_int_equal(named, COUNT(powders)); /* each once */
    expect_holds_text("whey", text_at(list->first, "balance_text"), "runnier in the bowl");
    larder_free(s.l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_noticed_is_said),
        cmocka_unit_test(like_for_like_says_nothing),
        cmocka_unit_test(bars_keep_their_proportion),
        cmocka_unit_test(the_two_faces_are_told_in_figures),
        cmocka_unit_test(the_whole_has_as_many_points_as_there_are),
        cmocka_unit_test(programs_get_null_where_there_is_no_point),
        cmocka_unit_test(the_range_of_a_change_is_narrower),
        cmocka_unit_test(the_untried_stand_by_what_they_would_do),
    };
    return cmocka_run_group_tests_name("view_balance", tests, NULL, NULL);
}
