#include "pantry/nutrients.h"

static const struct {
    const char *key, *unit, *json;
} rows[] = {
#define NUTRIENT(constant, key, unit, json) {key, unit, json},
    NUTRIENT_LIST(NUTRIENT)
#undef NUTRIENT
};

const char *nutrient_key(nutrient which) {
    return rows[which].key;
}

const char *nutrient_unit(nutrient which) {
    return rows[which].unit;
}

const char *nutrient_json(nutrient which) {
    return rows[which].json;
}
