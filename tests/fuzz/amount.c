/* Reads any bytes as an amount and a unit. What is read keeps to its limits, and printed and read
 * again it is the same amount. */
#include "measure/amount.h"
#include "measure/units.h"

#include <math.h>
#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    span s = {(const char *)data, size};
    amount_range got, again;
    size_t used, took = amount_read(span_from(s, amount_about(s)), &got);
    (void)unit_read(span_from(s, took), &used);
    if (took == 0)
        return 0;
    if (took > size || !(got.low >= 0 && got.low <= got.high && got.high <= 100000))
        abort();
    text t = TEXT_EMPTY;
    amount_add(&t, got.low, 0.01);
    if (amount_read(text_span(&t), &again) != t.length || fabs(again.low - got.low) > 0.0101)
        abort();
    text_free(&t);
    return 0;
}
