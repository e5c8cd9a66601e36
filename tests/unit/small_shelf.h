/* A pantry of a few ingredients, for tests of what is read with one. Round figures of our own. */
#ifndef TESTS_SMALL_SHELF_H
#define TESTS_SMALL_SHELF_H

#include "read/pantry_file.h"

static const char small_shelf_yaml[] =
    "- name: pea protein powder\n"
    "  family: protein powder\n"
    "  kind: pea\n"
    "  origin: plant\n"
    "  per-100-g: {protein: 80, fat: 6, carbohydrate: 4, fibre: 2, source: from memory}\n"
    "  measures: {cup: 120, scoop: 30, source: from memory}\n"
    "- name: whey protein isolate\n"
    "  also: [whey isolate]\n"
    "  family: protein powder\n"
    "  kind: whey isolate\n"
    "  origin: dairy\n"
    "  per-100-g: {protein: 88, fat: 1, carbohydrate: 4, fibre: 0, source: from memory}\n"
    "  measures: {scoop: 30, source: from memory}\n"
    "- name: egg white\n"
    "  family: egg\n"
    "  kind: white\n"
    "  origin: egg\n"
    "  per-100-g: {protein: 11, fat: 0, carbohydrate: 1, fibre: 0, source: from memory}\n"
    "  measures: {cup: 240, large: 33, source: from memory}\n"
    "- name: coconut flour\n"
    "  family: flour\n"
    "  kind: coconut\n"
    "  origin: plant\n"
    "  per-100-g: {protein: 20, fat: 12, carbohydrate: 59, fibre: 38, source: from memory}\n"
    "  measures: {cup: 112, source: from memory}\n"
    "- name: apple pur\u00e9e\n"
    "  family: fruit pur\u00e9e\n"
    "  kind: apple\n"
    "  origin: plant\n"
    "  per-100-g: {protein: 0, fat: 0, carbohydrate: 11, fibre: 1, source: from memory}\n"
    "  measures: {cup: 244, source: from memory}\n"
    "- name: almond butter\n"
    "  family: nut butter\n"
    "  kind: almond\n"
    "  origin: plant\n"
    "  per-100-g: {protein: 21, fat: 55, carbohydrate: 19, fibre: 10, source: from memory}\n"
    "  measures: {cup: 256, source: from memory}\n";

static inline pantry small_shelf(arena *a) {
    problems found = problems_in(a);
    pantry shelf = pantry_in(a);
    pantry_file_read(&shelf, "shelf", (span){small_shelf_yaml, sizeof small_shelf_yaml - 1}, false,
                     &found);
    assert_int_equal(found.count, 0);
    return shelf;
}

#endif
