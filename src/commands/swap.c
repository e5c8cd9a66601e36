/* crumbnote swap: one swap answered, or every known one. */
#include "commands/command.h"

#include "base/words.h"
#include "commands/setting.h"
#include "nutrition/lines.h"
#include "read/trial_builds.h"
#include "site/balance_table.h"
#include "site/balance_words.h"
#include "site/view_balance.h"
#include "site/view_combined.h"
#include "site/view_evidence.h"
#include "site/view_figures.h"
#include "site/view_note.h"
#include "site/view_verdict.h"
#include "swap/meant.h"

#include <stdint.h>

/* One ingredient, or two joined by a plus. */
typedef struct {
    const ingredient *what[2];
    size_t count;
} side;

typedef struct {
    command_setting at;
    const recipe *of;
    recipe_facts about;
    note_words words;
    side from, to; /* `to` of none: every known one */
    size_t lines[2];
} question;

static void put_allergens(arena *a, view *to, const char *key, allergen_set set) {
    view *list = view_put_list(a, to, key);
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (set >> i & 1u)
            view_put_text(a, list, NULL, allergen_word((allergen)i));
}

static void put_diets(arena *a, view *to, const char *key, diet_set set) {
    view *list = view_put_list(a, to, key);
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (set >> i & 1u)
            view_put_text(a, list, NULL, diet_word((diet)i));
}

static const char *rule_name(const swap_note *note) {
    switch (note->by.by) {
    case SAID_BY_RECIPE:
        return "the recipe's own word";
    case SAID_BY_TRIAL:
        return "a trial on this recipe";
    case SAID_BY_OWN_RULE:
    case SAID_BY_REFERENCE:
        return note->by.rule->id;
    case SAID_BY_NOBODY:
        break;
    }
    return NULL;
}

static view *document_of(arena *a, const question *asked, const swap_note *note) {
    const recipe *of = asked->of;
    kitchen_measure by;
    view *put = view_object(a);
    view_put_text(a, put, "recipe", of->title);
    view_put_text(a, put, "from", of->lines.items[note->line].what->name);
    view_put_text(a, put, "to", note->to->name);
    view_put_text(a, put, "verdict", verdict_word(note->says));
    view_put_number(a, put, "from_g", note->from_g, 2);
    view_put_number(a, put, "to_g", note->to_g, 2);
    if (note->ruled_g > 0)
        view_put_number(a, put, "ruled_g", note->ruled_g, 2);
    bool measured =
        note->to_g > 0 && kitchen_measure_of(a, note->to, note->to_g, asked->words.cups, &by);
    view_put_text(a, put, "to_measure", measured ? by.text : NULL);
    view_put_number(a, put, "liquid_change_g", note->liquid_change_g, 2);
    view_put_text(a, put, "liquid", note_liquid_text(a, &asked->words, note));
    view_put_text(a, put, "rule", rule_name(note));
    view_put_text(a, put, "basis", note->basis);
    view_put_text(a, put, "expect", note->expect);
    view_put_text(a, put, "because", note->because);
    view_put_combined_data(a, asked->words.in, put, of, note, 2);
    view_put(put, "macros_change", view_of_nutrients(a, &note->change, asked->words.energy));
    balance_comparison compared = balance_compare(&asked->about, note);
    view_put(put, "balance", view_of_balance_data(a, &compared));
    put_allergens(a, put, "allergens_added", note->gained);
    put_allergens(a, put, "allergens_removed", note->lost);
    put_diets(a, put, "diets_lost", note->diets_lost);
    put_diets(a, put, "diets_gained", note->diets_gained);
    view_put_evidence(a, put, &note->tried);
    return put;
}

static void add_sentence(text *t, const char *words) {
    if (words)
        text_format(t, "  %s\n", words);
}

/* The trials of recipes like this one, a line each. */
static void add_evidence(arena *a, text *t, const question *asked, const swap_note *note) {
    add_sentence(t, evidence_text(a, asked->words.in, &note->tried, note->says));
    for (size_t i = 0; i < note->tried.count; i++) {
        const evidence_item *item = &note->tried.items[i];
        text_format(t, "    %s %s for %s in %s, %s: %s%s\n", verdict_sign(item->bake->outcome),
                    item->bake->with.what->name, item->bake->replaced.what->name,
                    item->bake->recipe, say_date(a, asked->words.in, item->bake->date),
                    verdict_word(item->bake->outcome),
                    item->counts ? "" : " (a later bake counts)");
    }
}

static void add_amounts(arena *a, text *t, const question *asked, const swap_note *note) {
    const ingredient *from = asked->of->lines.items[note->line].what;
    add_sentence(t, say_message(a, asked->words.in, note->in_the_way));
    if (note->to_g <= 0)
        return;
    if (note_is_combined(note))
        text_format(t, "  %s for %s\n", note_to_amounts(a, &asked->words, note),
                    note_from_amounts(a, &asked->words, note));
    else
        add_sentence(
            t, note_whose_amount_text(
                   a, asked->words.in, note,
                   arena_format(a, "%s for %s",
                                say_weighed(a, note_saying(&asked->words), note->to, note->to_g),
                                say_weighed(a, note_saying(&asked->words), from, note->from_g))));
}

static void add_verdict(arena *a, text *t, const question *asked, const swap_note *note) {
    text_format(t, "%s %s instead of %s: %s. %s\n", verdict_sign(note->says),
                note_to_names(a, note), note_from_names(a, asked->of, note),
                verdict_word(note->says), asked->words.in->verdict_sentences[note->says]);
}

static void add_allergens(arena *a, text *t, const question *asked, const swap_note *note) {
    if (note->gained)
        text_format(t, "  Allergen gained: %s\n", allergen_words(a, asked->words.in, note->gained));
}

/* What one reads of each of many. */
static void add_short(arena *a, text *t, const question *asked, const swap_note *note) {
    add_verdict(a, t, asked, note);
    add_amounts(a, t, asked, note);
    add_sentence(t, note_liquid_text(a, &asked->words, note));
    add_sentence(t, note->expect);
    add_allergens(a, t, asked, note);
}

/* What the figures alone come to, where nobody says how much. */
static const char *untried_text(arena *a, const question *asked, const swap_note *note) {
    bool unsaid = note->says == VERDICT_UNTRIED && !note->past_rescue;
    const char *best = unsaid ? balance_best_text(a, &asked->words, note) : NULL;
    const ingredient *from = asked->of->lines.items[note->line].what;
    if (!best)
        return NULL;
    return arena_format(a,
                        "By the figures alone it comes closest with %s for %s %s: a place to "
                        "begin, not a promise. Try a small batch.",
                        best, say_weighed(a, note_saying(&asked->words), from, note->from_g),
                        from->name);
}

static void add_note(arena *a, text *t, const question *asked, const swap_note *note) {
    add_verdict(a, t, asked, note);
    add_amounts(a, t, asked, note);
    add_sentence(t, note_liquid_text(a, &asked->words, note));
    add_sentence(t, untried_text(a, asked, note));
    add_sentence(t, note_past_rescue_text(a, &asked->words, note));
    add_sentence(t, note->also);
    add_sentence(t, note_uncounted_text(asked->words.in, note));
    add_sentence(t, note->expect);
    add_sentence(t, note->because);
    add_sentence(t, note_cost_text(a, &asked->words, note));
    add_sentence(t, balance_faces_text(a, asked->words.in, asked->of, note));
    balance_comparison compared = balance_compare(&asked->about, note);
    balance_table_add(t, a, asked->words.in, &compared);
    add_allergens(a, t, asked, note);
    bool of_a_rule = note->by.by == SAID_BY_OWN_RULE || note->by.by == SAID_BY_REFERENCE;
    text_format(t, "  Says who: %s%s%s\n", note_said_by(a, asked->words.in, note),
                of_a_rule ? ", " : "", of_a_rule ? note->basis : "");
    add_evidence(a, t, asked, note);
}

static exit_code answer_one(arena *a, const question *asked, const swap_note *note, bool json) {
    if (json)
        return command_print(document_of(a, asked, note), EXIT_FINE);
    text t = TEXT_EMPTY;
    add_note(a, &t, asked, note);
    exit_code code = command_say(t.bytes, EXIT_FINE);
    text_free(&t);
    return code;
}

/* True when the note replaces all that was asked for. */
static bool replaces_them(const question *asked, const swap_note *note) {
    const recipe_line *lines = asked->of->lines.items;
    for (size_t i = 0; i < asked->from.count; i++) {
        bool second =
            note->second_line != SIZE_MAX && lines[note->second_line].what == asked->from.what[i];
        if (lines[note->line].what != asked->from.what[i] && !second)
            return false;
    }
    return true;
}

static exit_code answer_all(arena *a, const question *asked, bool json) {
    swap_notes notes = notes_of(a, &asked->at.site.book, &asked->about, true);
    view *list = view_list(a);
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < notes.count; i++) {
        const swap_note *note = &notes.items[i];
        bool known = note->says != VERDICT_UNTRIED || note->tried.count;
        if (!known || !replaces_them(asked, note))
            continue;
        view_put(list, NULL, document_of(a, asked, note));
        add_short(a, &t, asked, note);
    }
    if (list->count)
        text_add(&t, "Why, and who says so: name one, crumbnote swap RECIPE FROM TO\n");
    else
        text_format(&t, "Nobody has tried to replace %s here, and no rule speaks of it.\n",
                    asked->from.what[0]->name);
    exit_code code = json ? command_print(list, EXIT_FINE) : command_say(t.bytes, EXIT_FINE);
    text_free(&t);
    return code;
}

/* The part of "egg white + butter" up to the plus, trimmed; `*rest` goes on behind it. */
static const char *next_part(arena *a, span *rest) {
    size_t plus = span_find(*rest, "+");
    const char *one = arena_copy(a, span_trim(span_first(*rest, plus)));
    *rest = span_from(*rest, plus + 1);
    return one;
}

/* "pea" in the place of a protein powder is pea protein powder; null, said, where it is nothing. */
static const ingredient *replacement(arena *a, const question *asked, const char *name) {
    const pantry *shelf = &asked->at.site.shelf;
    const char *whole = arena_format(a, "%s %s", name, family_word(asked->from.what[0]->in));
    const ingredient *what = pantry_find(shelf, span_of(name), a);
    what = what ? what : pantry_find(shelf, span_of(whole), a);
    return what ? what : setting_ingredient(a, shelf, name);
}

/* Reads what the reader has instead; false after saying what is wrong. */
static bool read_side(arena *a, const question *asked, const char *words, side *out) {
    span rest = span_of(words);
    for (out->count = 0; rest.length; out->count++) {
        if (out->count == COUNT(out->what)) {
            command_misused("\"%s\": two ingredients at the most", words);
            return false;
        }
        out->what[out->count] = replacement(a, asked, next_part(a, &rest));
        if (!out->what[out->count])
            return false;
    }
    return out->count > 0 || setting_ingredient(a, &asked->at.site.shelf, words);
}

/* "oat flour, egg and butter": those of `lines`. */
static const char *names_of(arena *a, const recipe *of, const meant_lines *lines) {
    const char **listed = ARENA_ARRAY(a, const char *, lines->count + 1);
    for (size_t i = 0; i < lines->count; i++)
        listed[i] = of->lines.items[lines->items[i]].what->name;
    return words_joined(a, &(word_list){listed, lines->count, lines->count});
}

/* Every ingredient of the recipe that has a weight. */
static const char *all_names(arena *a, const recipe *of) {
    meant_lines all = {0};
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what && of->weights[i].grams > 0)
            LIST_ADD(a, &all, i);
    return names_of(a, of, &all);
}

/* Finds the line that `name` means; false after saying which there are to choose from. */
static bool find_line(arena *a, question *asked, const char *name) {
    const recipe *of = asked->of;
    meant_lines lines = meant_in(a, of, &asked->at.site.shelf, name);
    if (lines.count == 0) {
        command_refuse(arena_format(a, "it has %s", all_names(a, of)),
                       "%s has no \"%s\" with a weight", of->title, name);
        return false;
    }
    if (lines.count > 1) {
        command_refuse(arena_format(a, "name one of them: %s", names_of(a, of, &lines)),
                       "\"%s\" fits more than one ingredient of %s", name, of->title);
        return false;
    }
    asked->lines[asked->from.count] = lines.items[0];
    asked->from.what[asked->from.count++] = of->lines.items[lines.items[0]].what;
    return true;
}

/* Reads what is replaced; false after saying what is wrong. */
static bool find_lines(arena *a, question *asked, const char *words) {
    span rest = span_of(words);
    do {
        if (asked->from.count == COUNT(asked->from.what)) {
            command_misused("\"%s\": two ingredients at the most", words);
            return false;
        }
        if (!find_line(a, asked, next_part(a, &rest)))
            return false;
    } while (rest.length);
    return true;
}

static bool is_sensible(const question *asked) {
    const side *from = &asked->from, *to = &asked->to;
    if (from->count == 2 && to->count == 2) {
        command_misused("two are replaced by one, or one by two");
        return false;
    }
    for (size_t i = 0; i < from->count; i++)
        for (size_t k = 0; k < to->count; k++)
            if (from->what[i] == to->what[k]) {
                command_misused("that is the same ingredient: %s", to->what[k]->name);
                return false;
            }
    return true;
}

static exit_code answer_asked(arena *a, question *asked, bool json) {
    const rule_book *book = &asked->at.site.book;
    const decided both = {.first = asked->lines[0],
                          .second = asked->from.count == 2 ? asked->lines[1] : SIZE_MAX,
                          .to = asked->to.what[0],
                          .also = asked->to.count == 2 ? asked->to.what[1] : NULL};
    if (!asked->to.count)
        return answer_all(a, asked, json);
    swap_note note = decided_is_combined(&both)
                         ? note_of_combined(a, book, &asked->about, &both)
                         : note_of(a, book, &asked->about, both.first, both.to);
    return answer_one(a, asked, &note, json);
}

static exit_code run(arena *a, const arguments *given) {
    problems found = problems_in(a);
    question asked = {0};
    asked.of = setting_recipe(a, given->words[0], &asked.at, &found);
    if (!asked.of)
        return setting_failed(&asked.at, &found);
    command_report(&found);
    const pantry *shelf = &asked.at.site.shelf;
    const site_settings *settings = &asked.at.site.settings;
    if (!find_lines(a, &asked, given->words[1]) ||
        (given->count > 2 && !read_side(a, &asked, given->words[2], &asked.to)) ||
        !is_sensible(&asked))
        return EXIT_USAGE;
    problems unread = problems_in(a);
    if (!trial_builds_read(&asked.at.site, &unread)) {
        command_report(&unread);
        return EXIT_MACHINE;
    }
    asked.about = facts_of(a, asked.of, shelf);
    asked.words = (note_words){.in = asked.at.site.settings.in,
                               .of = asked.of,
                               .book = &asked.at.site.book,
                               .cups = settings->cups,
                               .energy = settings->energy,
                               .law = settings->law,
                               .currency = settings->currency};
    return answer_asked(a, &asked, given->json);
}

const command command_swap = {
    .name = "swap",
    .usage = "swap RECIPE FROM [TO]",
    .summary = "one swap answered; without TO every known one",
    .help =
        "RECIPE is a .md file, FROM an ingredient of it, TO what the reader has instead. Where\n"
        "FROM (\"flour\") fits several, it says which. Two are joined by a plus: \"oat flour +\n"
        "butter\" by \"almond meal\", \"egg\" by \"egg white + butter\". Says the verdict, how\n"
        "much, what liquid to add or hold back, what to expect, why, and who says so; without\n"
        "TO the amounts and what to expect of every known swap.",
    .least = 2,
    .most = 3,
    .run = run,
};
