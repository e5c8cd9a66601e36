#include "site/view_trials.h"

#include "base/number.h"
#include "site/phrase.h"
#include "site/view_verdict.h"

char *trial_id(arena *a, const trial *bake) {
    return arena_format(a, "trial-%s-%s-%s", bake->date, bake->replaced.what->slug,
                        bake->with.what->slug);
}

/* -- what was measured ----------------------------------------------------------------------- */

/* One figure of both bakes; 0 where it was not measured. */
typedef struct {
    const char *name, *in;
    double as_written, swapped;
} compared;

enum { COMPARED = 3 };

static void compare(const trial *bake, compared rows[COMPARED]) {
    const bake_measures *was = &bake->as_written, *is = &bake->swapped;
    rows[0] = (compared){"height", "mm", was->height_mm, is->height_mm};
    rows[1] = (compared){"spread", "mm", was->spread_mm, is->spread_mm};
    rows[2] = (compared){"weight", "g", was->weight_g, is->weight_g};
}

static char *figure_text(arena *a, double value, const char *in) {
    return arena_format(a, "%s %s", number_copy(a, value, 1), in);
}

/* "\u22125 mm (\u221245 %)" */
static const char *change_text(arena *a, const compared *row) {
    double change = row->swapped - row->as_written;
    double percent = number_round(100 * change / row->as_written, 1);
    const char *by = phrase_change(a, change, 1, row->in);
    return percent == 0 ? by : arena_format(a, "%s, %s", by, phrase_change(a, percent, 0, "%"));
}

/* What was measured of the swapped bake alone, in words. */
static const char *measured_text(arena *a, const compared rows[COMPARED]) {
    const char *said[COMPARED];
    size_t count = 0;
    for (size_t i = 0; i < COMPARED; i++)
        if (rows[i].swapped > 0)
            said[count++] =
                arena_format(a, "%s %s", rows[i].name, figure_text(a, rows[i].swapped, rows[i].in));
    return count ? phrase_list(a, said, count) : NULL;
}

static void put_compared(arena *a, view *put, const compared rows[COMPARED]) {
    view *list = view_put_list(a, put, "compared");
    for (size_t i = 0; i < COMPARED; i++) {
        const compared *row = &rows[i];
        if (row->as_written <= 0 && row->swapped <= 0)
            continue;
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", row->name);
        if (row->as_written > 0)
            view_put_text(a, one, "as_written_text", figure_text(a, row->as_written, row->in));
        if (row->swapped > 0)
            view_put_text(a, one, "swapped_text", figure_text(a, row->swapped, row->in));
        if (row->as_written > 0 && row->swapped > 0)
            view_put_text(a, one, "change_text", change_text(a, row));
    }
}

static void put_measures(arena *a, view *put, const trial *bake) {
    compared rows[COMPARED];
    compare(bake, rows);
    bool both = false;
    for (size_t i = 0; i < COMPARED; i++)
        both = both || rows[i].as_written > 0;
    view_put_text(a, put, "measured_text", both ? NULL : measured_text(a, rows));
    view_put_bool(a, put, "has_compared", both);
    if (both)
        put_compared(a, put, rows);
}

/* -- one trial ------------------------------------------------------------------------------- */

/* "60 g whey protein isolate for 60 g pea protein powder, with 15 g less liquid". */
static const char *amounts_text(arena *a, const trial *bake) {
    if (!bake->has_amounts && bake->liquid_g == 0)
        return NULL;
    const char *amounts = arena_format(a, "%s for %s", bake->with.written, bake->replaced.written);
    if (bake->liquid_g == 0)
        return amounts;
    double grams = bake->liquid_g < 0 ? -bake->liquid_g : bake->liquid_g;
    return arena_format(a, "%s, with %s %s liquid", amounts, kitchen_weight(a, grams),
                        bake->liquid_g < 0 ? "less" : "more");
}

static void put_pictures(arena *a, view *put, const page_maker *by, const trial *bake) {
    if (!bake->picture_as_written && !bake->picture_swapped)
        return;
    view *pictures = view_put_object(a, put, "pictures");
    picture_put(a, pictures, "as_written", by->pictures, bake->picture_as_written, NULL);
    picture_put(a, pictures, "swapped", by->pictures, bake->picture_swapped, NULL);
}

/* A bake, its address in the page, and whether a later one of the pair says otherwise. */
typedef struct {
    const trial *bake;
    const char *id;
    bool overtaken;
} shown_trial;

static void put_trial(arena *a, view *list, const page_maker *by, const shown_trial *of) {
    const trial *bake = of->bake;
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "id", of->id);
    view_put_text(a, put, "from", bake->replaced.what->name);
    view_put_text(a, put, "to", bake->with.what->name);
    view_put_verdict(a, put, bake->outcome);
    view_put_bool(a, put, "overtaken", of->overtaken);
    view_put_text(a, put, "date_text", phrase_date(a, bake->date));
    view_put_text(a, put, "amounts_text", amounts_text(a, bake));
    view_put_text(a, put, "texture_text",
                  bake->texture.count ? phrase_list(a, bake->texture.items, bake->texture.count)
                                      : NULL);
    put_measures(a, put, bake);
    view_put_text(a, put, "remarks", bake->remarks);
    view_put_text(a, put, "by", bake->by);
    put_pictures(a, put, by, bake);
}

/* True when another bake of the same pair goes before this one. */
static bool is_overtaken(const trials *bakes, const trial *bake) {
    for (size_t i = 0; i < bakes->count; i++) {
        const trial *other = &bakes->items[i];
        if (other->replaced.what == bake->replaced.what && other->with.what == bake->with.what &&
            trial_compare(other, bake) < 0)
            return true;
    }
    return false;
}

/* The address of bake number `which`: the second of a pair on one day is numbered. */
static const char *id_among(arena *a, const trials *bakes, size_t which) {
    const char *id = trial_id(a, &bakes->items[which]);
    size_t earlier = 0;
    for (size_t i = 0; i < which; i++)
        earlier += strcmp(trial_id(a, &bakes->items[i]), id) == 0;
    return earlier ? arena_format(a, "%s-%zu", id, earlier + 1) : id;
}

static trials bakes_of(arena *a, const trials *log, const recipe *of) {
    trials ours = {0};
    for (size_t i = 0; i < log->count; i++) {
        const trial *bake = &log->items[i];
        if (strcmp(bake->recipe, of->slug) == 0 && bake->replaced.what && bake->with.what)
            LIST_ADD(a, &ours, *bake);
    }
    return ours;
}

static bool is_of_pair(const trial *bake, const recipe *of, const swap_note *note) {
    return !note ||
           (bake->replaced.what == of->lines.items[note->line].what && bake->with.what == note->to);
}

void view_put_trials_with(arena *a, view *to, const page_maker *by, const recipe *of,
                          const swap_note *note) {
    view *list = view_put_list(a, to, "trials");
    trials ours = bakes_of(a, &by->folder->book.log, of);
    for (size_t i = 0; i < ours.count; i++)
        if (is_of_pair(&ours.items[i], of, note))
            put_trial(a, list, by,
                      &(shown_trial){&ours.items[i], id_among(a, &ours, i),
                                     is_overtaken(&ours, &ours.items[i])});
    view_put_bool(a, to, "has_trials", list->count > 0);
}

void view_put_trials(arena *a, view *to, const page_maker *by, const recipe *of) {
    view_put_trials_with(a, to, by, of, NULL);
}
