#include "site/view_trials.h"

#include "base/number.h"
#include "site/say.h"
#include "site/view_verdict.h"

char *trial_id(arena *a, const trial *bake) {
    return arena_format(a, "trial-%s-%s-%s", bake->date, bake->replaced.what->slug,
                        bake->with.what->slug);
}

/* -- what was measured ----------------------------------------------------------------------- */

/* One figure of both bakes, in the order of the words for what is measured; 0 where it was not. */
typedef struct {
    const char *in;
    double as_written, swapped;
} compared;

enum { COMPARED = LANGUAGE_MEASURED };

static void compare(const trial *bake, compared rows[COMPARED]) {
    const bake_measures *was = &bake->as_written, *is = &bake->swapped;
    rows[0] = (compared){"mm", was->height_mm, is->height_mm};
    rows[1] = (compared){"mm", was->spread_mm, is->spread_mm};
    rows[2] = (compared){"g", was->weight_g, is->weight_g};
}

static char *figure_text(arena *a, const language *in, double value, const char *of) {
    return arena_format(a, "%s %s", say_figure(a, in, value, 1), of);
}

/* "\u22125 mm (\u221245 %)" */
static const char *change_text(arena *a, const language *in, const compared *row) {
    double change = row->swapped - row->as_written;
    double percent = number_round(100 * change / row->as_written, 1);
    const char *by = say_change(a, in, change, 1, row->in);
    return percent == 0 ? by : arena_format(a, "%s, %s", by, say_change(a, in, percent, 0, "%"));
}

/* What was measured of the swapped bake alone, in words. */
static const char *measured_text(arena *a, const language *in, const compared rows[COMPARED]) {
    const char *said[COMPARED];
    size_t count = 0;
    for (size_t i = 0; i < COMPARED; i++)
        if (rows[i].swapped > 0)
            said[count++] = arena_format(a, "%s %s", in->measured[i],
                                         figure_text(a, in, rows[i].swapped, rows[i].in));
    return count ? say_list(a, in, said, count) : NULL;
}

static void put_compared(arena *a, const language *in, view *put, const compared rows[COMPARED]) {
    view *list = view_put_list(a, put, "compared");
    for (size_t i = 0; i < COMPARED; i++) {
        const compared *row = &rows[i];
        if (row->as_written <= 0 && row->swapped <= 0)
            continue;
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", in->measured[i]);
        if (row->as_written > 0)
            view_put_text(a, one, "as_written_text", figure_text(a, in, row->as_written, row->in));
        if (row->swapped > 0)
            view_put_text(a, one, "swapped_text", figure_text(a, in, row->swapped, row->in));
        if (row->as_written > 0 && row->swapped > 0)
            view_put_text(a, one, "change_text", change_text(a, in, row));
    }
}

static void put_measures(arena *a, const language *in, view *put, const trial *bake) {
    compared rows[COMPARED];
    compare(bake, rows);
    bool both = false;
    for (size_t i = 0; i < COMPARED; i++)
        both = both || rows[i].as_written > 0;
    view_put_text(a, put, "measured_text", both ? NULL : measured_text(a, in, rows));
    view_put_bool(a, put, "has_compared", both);
    if (both)
        put_compared(a, in, put, rows);
}

/* -- one trial ------------------------------------------------------------------------------- */

/* "60 g whey protein isolate for 60 g pea protein powder, with 15 g less liquid". */
static const char *amounts_text(arena *a, const language *in, const trial *bake) {
    if (!bake->has_amounts && bake->liquid_g == 0)
        return NULL;
    const char *amounts = SAY(a, in, ONE_FOR_OTHER, bake->with.written, bake->replaced.written);
    if (bake->liquid_g == 0)
        return amounts;
    bool less = bake->liquid_g < 0;
    const char *liquid = say_weight(a, in, less ? -bake->liquid_g : bake->liquid_g);
    if (bake->liquid && less)
        return SAY(a, in, WITH_CHANGE, amounts, SAY(a, in, LESS_OF, liquid, bake->liquid->name));
    if (bake->liquid)
        return SAY(a, in, WITH_CHANGE, amounts, SAY(a, in, MORE_OF, liquid, bake->liquid->name));
    return less ? SAY(a, in, WITH_LESS_LIQUID, amounts, liquid)
                : SAY(a, in, WITH_MORE_LIQUID, amounts, liquid);
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
    const language *in = page_language(by);
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "id", of->id);
    view_put_text(a, put, "from", bake->replaced.what->name);
    view_put_text(a, put, "to", bake->with.what->name);
    view_put_verdict(a, in, put, bake->outcome);
    view_put_bool(a, put, "overtaken", of->overtaken);
    view_put_text(a, put, "date_text", say_date(a, in, bake->date));
    view_put_text(a, put, "amounts_text", amounts_text(a, in, bake));
    view_put_text(a, put, "texture_text",
                  bake->texture.count ? say_list(a, in, bake->texture.items, bake->texture.count)
                                      : NULL);
    put_measures(a, in, put, bake);
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
