/* Any bytes as a file of the log, and any text as a remark: a bake put behind them leaves every
 * byte of the file where it was, and its remark is read back as it was. */
#include "fuzz/fuzz_shelf.h"

#include "base/words.h"
#include "publish/trial_log.h"
#include "read/trials.h"

#include <stdlib.h>

static view *entry_with(arena *a, span remark) {
    view *entry = view_object(a);
    view_put_text(a, entry, "recipe", "x");
    view_put_text(a, entry, "replace", "oat flour");
    view_put_text(a, entry, "with", "rice flour");
    view_put_text(a, entry, "date", "2026-03-01");
    view_put_text(a, entry, "verdict", "works");
    view_put_span(a, entry, "remarks", remark);
    return entry;
}

/* The first line is the remark, the rest the file. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    span whole = {(const char *)data, size};
    size_t line_end = span_find(whole, "\n");
    span remark = arena_copy_span(a, span_first(whole, line_end));
    located file = {span_from(whole, line_end + 1), {"fuzz.yaml", 1, 1}};
    trial_addition add = {.entry = entry_with(a, remark), .whole = TEXT_EMPTY};
    if (words_are_utf8(remark, NULL) && span_trim(remark).length &&
        trial_log_compose(a, file, fuzz_shelf(), &add, &found)) {
        trials log = {0};
        trials_read(a, "fuzz.yaml", text_span(&add.whole), fuzz_shelf(), &log, &found);
        if (!span_equal(span_first(text_span(&add.whole), file.bytes.length), file.bytes) ||
            !span_equal(span_of(log.items[log.count - 1].remarks), remark))
            abort();
    }
    text_free(&add.whole);
    arena_free(a);
    return 0;
}
