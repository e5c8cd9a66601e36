/* publish/compress.h: compressed bytes depend on the bytes alone and are only kept when smaller. */
#include "support/cmocka_rows.h"

#include "base/files.h"
#include "publish/compress.h"

#include <brotli/decode.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>
#include <zlib.h>

enum { PAGE_BYTES = 20000 };

static span page(arena *a) {
    char *bytes = arena_alloc(a, PAGE_BYTES);
    for (size_t i = 0; i < PAGE_BYTES; i++)
        bytes[i] = "<p>oats and whey</p>\n"[i % 21];
    return (span){bytes, PAGE_BYTES};
}

static void gzip_comes_back_and_says_nothing_else(void **state) {
    (void)state;
    arena *a = arena_new();
    span squeezed, again;
    assert_true(compression_gzip.squeeze(a, page(a), &squeezed));
    assert_true(compression_gzip.squeeze(a, page(a), &again));
    assert_true(span_equal(squeezed, again));
    /* RFC 1952, section 2.3: ID1 ID2 CM FLG MTIME(4) XFL OS. No name, no time, OS 255 (unknown). */
    static const unsigned char head[] = {0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 2, 255};
    assert_memory_equal(squeezed.at, head, sizeof head);
    char *back = arena_alloc(a, PAGE_BYTES);
    z_stream stream = {.next_in = (Bytef *)(uintptr_t)squeezed.at,
                       .avail_in = (uInt)squeezed.length,
                       .next_out = (Bytef *)back,
                       .avail_out = PAGE_BYTES};
    assert_int_equal(inflateInit2(&stream, 15 + 16), Z_OK);
    assert_int_equal(inflate(&stream, Z_FINISH), Z_STREAM_END);
    inflateEnd(&stream);
    assert_memory_equal(back, page(a).at, PAGE_BYTES);
    arena_free(a);
}

static void brotli_comes_back(void **state) {
    (void)state;
    arena *a = arena_new();
    span squeezed;
    assert_true(compression_brotli.squeeze(a, page(a), &squeezed));
    size_t length = PAGE_BYTES;
    uint8_t *back = arena_alloc(a, PAGE_BYTES);
    assert_int_equal(
        BrotliDecoderDecompress(squeezed.length, (const uint8_t *)squeezed.at, &length, back),
        BROTLI_DECODER_RESULT_SUCCESS);
    assert_int_equal(length, PAGE_BYTES);
    assert_memory_equal(back, page(a).at, PAGE_BYTES);
    arena_free(a);
}

static void only_what_is_worth_it(void **state) {
    static const struct {
        const char *path;
        size_t bytes;
        bool worth;
    } rows[] = {
        {"a/index.html", 5000, true}, {"theme/style.css", 5000, true}, {"x.json", 5000, true},
        {"p.svg", 5000, true},        {"feed.xml", 5000, true},        {"robots.txt", 40, false},
        {"p.jpg", 500000, false},     {"p.webp", 500000, false},       {"x.html.gz", 5000, false},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_bool(rows[i].path, compress_is_worth(rows[i].path, rows[i].bytes), rows[i].worth);
}

/* Noise does not get smaller: no file is written. */
static void nothing_larger_is_kept(void **state) {
    (void)state;
    arena *a = arena_new();
    char path[] = "/tmp/crumbnote-compress-XXXXXX.html", noise[1000];
    int fd = mkstemps(path, 5), why = 0;
    unsigned seed = 7;
    for (size_t i = 0; i < sizeof noise; i++)
        noise[i] = (char)((seed = seed * 1103515245 + 12345) >> 16);
    assert_true(fd >= 0 && write(fd, noise, sizeof noise) == (ssize_t)sizeof noise);
    close(fd);
    bool written = true;
    assert_true(compress_file(path, &compression_gzip, &written, &why));
    expect_bool("written", written, false);
    expect_bool("there", file_exists(arena_format(a, "%s.gz", path)), false);
    unlink(path);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(gzip_comes_back_and_says_nothing_else),
        cmocka_unit_test(brotli_comes_back),
        cmocka_unit_test(only_what_is_worth_it),
        cmocka_unit_test(nothing_larger_is_kept),
    };
    return cmocka_run_group_tests_name("compress", tests, NULL, NULL);
}
