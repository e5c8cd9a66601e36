#include "site/search_shards.h"

#include "site/json_text.h"
#include "site/posting.h"
#include "site/search_index.h"
#include "site/search_words.h"

enum { SHARDS_VERSION = 1 };

/* A word whose places take more bytes than this has a piece of its own. */
enum { WORD_BYTES_MOST = 2048 };

/* Ingredients gathered in one walk over the recipes: more take more memory, fewer more walks. */
enum { OWN_AT_ONCE = 64 };

/* What the steps share; `a` is emptied after each piece, `lasting` is not. */
typedef struct {
    const page_maker *by;
    const recipe_rows *rows;
    const uint16_t *numbers; /* of ingredients in the index */
    shard_taker *take;
    void *state;
    arena *a, *lasting;
    text json;
} sharding;

static void hand_over(sharding *s, const char *path) {
    s->take(path, text_span(&s->json), s->state);
    text_clear(&s->json);
    arena_reset(s->a);
}

/* -- kinds, diets, allergens ----------------------------------------------------------------- */

/* Kinds in the order in which recipes name them first. */
static const char **kinds_of(sharding *s, uint16_t *kind_of_row, size_t *count) {
    names known = names_in(s->lasting);
    const char **kinds = ARENA_ARRAY(s->lasting, const char *, s->rows->count + 1);
    *count = 0;
    for (size_t i = 0; i < s->rows->count; i++) {
        const char *kind = s->rows->items[i].kind;
        size_t at = *count;
        if (kind && names_add(&known, span_of(kind), at, &at))
            kinds[(*count)++] = kind;
        kind_of_row[i] = (uint16_t)(kind ? at + 1 : 0); /* 0: of no kind */
    }
    return kinds;
}

static void add_names(text *t, const char *key, const char *const words[], size_t count) {
    json_put_list(t, key);
    for (size_t i = 0; i < count; i++)
        json_put_words(t, NULL, words[i]);
    json_put_list_end(t);
}

/* -- columns --------------------------------------------------------------------------------- */

/* A figure of a recipe, as a whole number. */
typedef uint64_t figure_of_row(const sharding *s, const recipe_row *row);

static uint64_t protein_of(const sharding *s, const recipe_row *row) {
    (void)s;
    return (uint64_t)row->protein_g; /* 20 and more is "at least 20" */
}

static uint64_t energy_of(const sharding *s, const recipe_row *row) {
    (void)s;
    return (uint64_t)(row->energy_kcal + 0.5);
}

static uint64_t minutes_of_row(const sharding *s, const recipe_row *row) {
    (void)s;
    return (uint64_t)(row->minutes + 0.5);
}

static uint64_t diets_of_row(const sharding *s, const recipe_row *row) {
    (void)s;
    return row->diets;
}

static uint64_t allergens_of_row(const sharding *s, const recipe_row *row) {
    (void)s;
    return row->allergens;
}

static const ingredient *used(const sharding *s, const row_use *use) {
    return s->by->folder->shelf.items[use->what];
}

/* Ingredients that have to be there: not optional, and no tap water. */
static uint64_t needs_of(const sharding *s, const recipe_row *row) {
    uint64_t count = 0;
    for (size_t i = 0; i < row->use_count; i++)
        count += !row->uses[i].optional && !ingredient_is_water(used(s, &row->uses[i]));
    return count;
}

static uint64_t staples_of(const sharding *s, const recipe_row *row) {
    uint64_t count = 0;
    for (size_t i = 0; i < row->use_count; i++)
        count += !row->uses[i].optional && ingredient_is_staple(used(s, &row->uses[i]));
    return count;
}

static void make_column(sharding *s, const char *name, const uint64_t figures[]) {
    uint64_t most = 0;
    for (size_t i = 0; i < s->rows->count; i++)
        most = figures[i] > most ? figures[i] : most;
    unsigned width = posting_digits_for(most);
    text_format(&s->json, "{\"width\":%u,\"of\":\"", width);
    for (size_t i = 0; i < s->rows->count; i++)
        posting_add_digits(&s->json, figures[i], width);
    text_add(&s->json, "\"}");
    hand_over(s, arena_format(s->a, "search/columns/%s.json", name));
}

static void make_columns(sharding *s, const uint16_t kind_of_row[]) {
    static const struct {
        const char *name;
        figure_of_row *figure;
    } columns[] = {{"protein", protein_of},         {"energy", energy_of},
                   {"minutes", minutes_of_row},     {"diets", diets_of_row},
                   {"allergens", allergens_of_row}, {"needs", needs_of},
                   {"staples", staples_of}};
    uint64_t *figures = ARENA_ARRAY(s->lasting, uint64_t, s->rows->count + 1);
    for (size_t c = 0; c < COUNT(columns); c++) {
        for (size_t i = 0; i < s->rows->count; i++)
            figures[i] = columns[c].figure(s, &s->rows->items[i]);
        make_column(s, columns[c].name, figures);
    }
    for (size_t i = 0; i < s->rows->count; i++)
        figures[i] = kind_of_row[i];
    make_column(s, "kind", figures);
}

static void make_head(sharding *s) {
    const char *diets[DIET_COUNT], *allergens[ALLERGEN_COUNT];
    uint16_t *kind_of_row = ARENA_ARRAY(s->lasting, uint16_t, s->rows->count + 1);
    size_t kind_count;
    const char **kinds = kinds_of(s, kind_of_row, &kind_count);
    for (size_t i = 0; i < DIET_COUNT; i++)
        diets[i] = page_language(s->by)->diets[i];
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        allergens[i] = page_language(s->by)->allergens[i];
    text_add_char(&s->json, '{');
    json_put_number(&s->json, "version", SHARDS_VERSION, 0);
    json_put_object(&s->json, "shards");
    json_put_number(&s->json, "recipes", (double)s->rows->count, 0);
    json_put_number(&s->json, "rows_each", SHARD_ROWS_EACH, 0);
    json_put_object_end(&s->json);
    add_names(&s->json, "kinds", kinds, kind_count);
    add_names(&s->json, "diets", diets, DIET_COUNT);
    add_names(&s->json, "allergens", allergens, ALLERGEN_COUNT);
    json_put_object_end(&s->json);
    hand_over(s, "search/index.json");
    make_columns(s, kind_of_row);
}

/* Other names are asked for only when a name is not known. */
static void make_shelf(sharding *s) {
    const pantry *shelf = &s->by->folder->shelf;
    text_add_char(&s->json, '{');
    index_add_ingredients(&s->json, s->by, s->numbers, false);
    json_put_object_end(&s->json);
    hand_over(s, "search/shelf.json");
    text_add_char(&s->json, '{');
    index_add_other_names(&s->json, s->numbers, shelf);
    json_put_object_end(&s->json);
    hand_over(s, "search/also.json");
}

/* -- words ----------------------------------------------------------------------------------- */

/* Letters and digits that can stand in any file's name stay; others by their number. */
static bool is_plain(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

/* Bytes of the UTF-8 character at the front of `word`. */
static size_t character_bytes(span word) {
    size_t length = 1;
    while (length < word.length && ((unsigned char)word.at[length] & 0xC0) == 0x80)
        length++;
    return length;
}

static void add_character(text *t, span character) {
    if (character.length == 1 && is_plain(character.at[0])) {
        text_add_char(t, character.at[0]);
        return;
    }
    text_add_char(t, '_');
    for (size_t i = 0; i < character.length; i++)
        text_format(t, "%02x", (unsigned char)character.at[i]);
}

/* The piece a word stands in: its first two characters; "_c3b8l" for "øl". */
static const char *key_of(arena *a, span word) {
    enum { CHARACTERS = 2 };
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < CHARACTERS && word.length; i++) {
        size_t length = character_bytes(word);
        add_character(&t, span_first(word, length));
        word = span_from(word, length);
    }
    const char *key = arena_copy(a, text_span(&t));
    text_free(&t);
    return key;
}

/* [[weight, recipes], …] */
static void add_places(text *t, const indexed_word *of, uint32_t rows[]) {
    static const unsigned weights[] = {
#define WEIGHT(constant, weight) weight,
        WEIGHT_LIST(WEIGHT)
#undef WEIGHT
    };
    bool any = false;
    text_add_char(t, '[');
    for (size_t w = 0; w < WEIGHT_COUNT; w++) {
        size_t count = search_word_rows(of, (word_weight)w, rows);
        if (!count)
            continue;
        text_format(t, "%s[%u,", any ? "," : "", weights[w]);
        posting_add(t, rows, count);
        text_add_char(t, ']');
        any = true;
    }
    text_add_char(t, ']');
}

/* Adds `word` to the piece being written; one that is too large becomes a piece of its own, which
 * stands as the number 1. */
static void add_word(sharding *s, text *piece, const char *key, const indexed_word *word,
                     uint32_t rows[]) {
    add_places(&s->json, word, rows);
    text_add_json(piece, word->word);
    text_add_char(piece, ':');
    if (s->json.length <= WORD_BYTES_MOST) {
        text_add_span(piece, text_span(&s->json));
        text_clear(&s->json);
        return;
    }
    text_add_char(piece, '1');
    text path = TEXT_EMPTY;
    text_format(&path, "search/words/%s-", key);
    for (span rest = word->word; rest.length; rest = span_from(rest, character_bytes(rest)))
        add_character(&path, span_first(rest, character_bytes(rest)));
    text_add(&path, ".json");
    hand_over(s, path.bytes);
    text_free(&path);
}

/* The words from `first` on that share its key are one piece; returns the first that does not. */
static size_t make_word_piece(sharding *s, const indexed_words *words, size_t first,
                              uint32_t rows[]) {
    const char *key = key_of(s->lasting, words->items[first].word);
    text piece = TEXT_EMPTY;
    size_t i = first;
    text_add_char(&piece, '{');
    for (; i < words->count && strcmp(key_of(s->a, words->items[i].word), key) == 0; i++) {
        if (!words->items[i].count)
            continue; /* of a name that no recipe here uses */
        if (piece.length > 1)
            text_add_char(&piece, ',');
        add_word(s, &piece, key, &words->items[i], rows);
    }
    text_add_char(&piece, '}');
    text_add_span(&s->json, text_span(&piece));
    hand_over(s, arena_format(s->a, "search/words/%s.json", key));
    text_free(&piece);
    return i;
}

static void make_words(sharding *s) {
    arena *home = arena_new();
    indexed_words words = search_words_of(home, s->rows, &s->by->folder->shelf);
    uint32_t *rows = ARENA_ARRAY(home, uint32_t, s->rows->count + 1);
    for (size_t i = 0; i < words.count;)
        i = make_word_piece(s, &words, i, rows);
    arena_free(home);
}

/* -- what can be made with what one owns ------------------------------------------------------- */

typedef struct {
    uint32_t *items;
    size_t count, capacity;
} row_numbers;

/* The recipes in which an ingredient stands in for `from` with a verdict, in the order of rows. */
typedef struct {
    uint16_t says, from;
    row_numbers rows;
} stand_in;

typedef struct {
    stand_in *items;
    size_t count, capacity;
} stand_ins;

typedef struct {
    row_numbers uses;
    stand_ins swaps;
} owned;

static bool needs(const recipe_row *row, uint16_t what) {
    for (size_t i = 0; i < row->use_count; i++)
        if (row->uses[i].what == what)
            return !row->uses[i].optional;
    return false;
}

/* Where recipes are noted in which `swap` is done; there are few of each ingredient. */
static row_numbers *rows_of_swap(arena *home, stand_ins *of, const row_swap *swap) {
    for (size_t i = 0; i < of->count; i++)
        if (of->items[i].from == swap->from && of->items[i].says == swap->says)
            return &of->items[i].rows;
    LIST_ADD(home, of, (stand_in){.says = swap->says, .from = swap->from});
    return &of->items[of->count - 1].rows;
}

/* Gathers what ingredients `first` to `first` + OWN_AT_ONCE - 1 are good for. */
static void gather_row(arena *home, const recipe_row *row, uint32_t number, size_t first,
                       owned own[]) {
    for (size_t i = 0; i < row->use_count; i++)
        if ((size_t)row->uses[i].what - first < OWN_AT_ONCE && !row->uses[i].optional)
            LIST_ADD(home, &own[row->uses[i].what - first].uses, number);
    for (size_t i = 0; i < row->swap_count; i++) {
        const row_swap *swap = &row->swaps[i];
        if ((size_t)swap->to - first >= OWN_AT_ONCE || swap->says >= VERDICT_AVOID ||
            !needs(row, swap->from))
            continue;
        row_numbers *rows = rows_of_swap(home, &own[swap->to - first].swaps, swap);
        LIST_ADD(home, rows, number);
    }
}

static int compare_stand_ins(const void *left, const void *right) {
    const stand_in *a = left, *b = right;
    if (a->says != b->says)
        return a->says < b->says ? -1 : 1;
    return a->from < b->from ? -1 : a->from > b->from;
}

/* [["works", 12, recipes], …]: for ingredient 12 of the index. */
static void add_swaps(sharding *s, const stand_ins *of) {
    text_add(&s->json, ",\"swaps\":[");
    for (size_t i = 0; i < of->count; i++) {
        const stand_in *one = &of->items[i];
        text_format(&s->json, "%s[\"%s\",%u,", i ? "," : "", verdict_word((verdict)one->says),
                    s->numbers[one->from]);
        posting_add(&s->json, one->rows.items, one->rows.count);
        text_add_char(&s->json, ']');
    }
    text_add(&s->json, "]}");
}

/* The pieces of ingredients `first` to `first` + OWN_AT_ONCE - 1. */
static void make_own_of(sharding *s, size_t first) {
    const pantry *shelf = &s->by->folder->shelf;
    arena *home = arena_new();
    owned *own = ARENA_ARRAY(home, owned, OWN_AT_ONCE);
    for (size_t i = 0; i < s->rows->count; i++)
        gather_row(home, &s->rows->items[i], (uint32_t)i, first, own);
    for (size_t i = first; i < first + OWN_AT_ONCE && i < shelf->count; i++) {
        owned *of = &own[i - first];
        if (s->numbers[i] == INDEX_NOT_NAMED)
            continue;
        if (of->swaps.count > 1)
            qsort(of->swaps.items, of->swaps.count, sizeof of->swaps.items[0], compare_stand_ins);
        text_add(&s->json, "{\"uses\":");
        posting_add(&s->json, of->uses.items, of->uses.count);
        add_swaps(s, &of->swaps);
        hand_over(s, arena_format(home, "search/own/%s.json", shelf->items[i]->slug));
    }
    arena_free(home);
}

static void make_own(sharding *s) {
    for (size_t first = 0; first < s->by->folder->shelf.count; first += OWN_AT_ONCE)
        make_own_of(s, first);
}

/* -- rows ------------------------------------------------------------------------------------- */

static void make_rows(sharding *s) {
    for (size_t first = 0; first < s->rows->count; first += SHARD_ROWS_EACH) {
        text_add(&s->json, "{\"rows\":[");
        for (size_t i = first; i < first + SHARD_ROWS_EACH && i < s->rows->count; i++) {
            json_put_object(&s->json, NULL);
            index_add_shown(s->a, &s->json, s->by, &s->rows->items[i]);
            index_add_needed(&s->json, &s->rows->items[i], s->numbers);
            json_put_object_end(&s->json);
        }
        text_add(&s->json, "]}");
        char path[64];
        snprintf(path, sizeof path, "search/rows/%zu.json", first / SHARD_ROWS_EACH);
        hand_over(s, path);
    }
}

static void make_the_rest(sharding *s) {
    make_head(s);
    make_shelf(s);
    make_rows(s);
}

void search_shards_make(const page_maker *by, const recipe_rows *rows, size_t which,
                        shard_taker *take, void *state) {
    static void (*const parts[SHARD_PARTS])(sharding * s) = {make_own, make_words, make_the_rest};
    sharding s = {.by = by,
                  .rows = rows,
                  .take = take,
                  .state = state,
                  .a = arena_new(),
                  .lasting = arena_new(),
                  .json = TEXT_EMPTY};
    s.numbers = index_numbers_of(s.lasting, rows, &by->folder->shelf);
    parts[which](&s);
    text_free(&s.json);
    arena_free(s.a);
    arena_free(s.lasting);
}
