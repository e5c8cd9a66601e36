/* A swap rule: what is replaced by what, in which recipes, with which verdict, amounts and
 * reasons. Read from YAML (read/rules.c), constant after. */
#ifndef SWAP_RULE_H
#define SWAP_RULE_H

#include "base/digest.h"
#include "base/list.h"
#include "pantry/pantry.h"

/* VERDICT(constant, word, sign): a word and a sign, never colour alone; what each means is in the
 * languages' files */
#define VERDICT_LIST(VERDICT)                                                                      \
    VERDICT(WORKS, "works", "=")                                                                   \
    VERDICT(ADJUST, "adjust", "\u00b1")                                                            \
    VERDICT(DIFFERENT, "different", "\u2260")                                                      \
    VERDICT(AVOID, "avoid", "\u00d7")                                                              \
    VERDICT(UNTRIED, "untried", "?")

typedef enum {
#define VERDICT(constant, word, sign) VERDICT_##constant,
    VERDICT_LIST(VERDICT)
#undef VERDICT
        VERDICT_COUNT
} verdict;

const char *verdict_word(verdict which);
const char *verdict_sign(verdict which);
bool verdict_named(span word, verdict *out);

typedef struct {
    span *items;
    size_t count, capacity;
} word_span_list;

/* What a rule speaks of: any ingredient that fits every stated part; within a part, any of the
 * words. A part with no words fits all. */
typedef struct {
    word_span_list names, kinds; /* names are folded */
    unsigned families;           /* bit 1u << family; 0: any */
    unsigned origins;            /* bit 1u << origin; 0: any */
    bool same_kind; /* of what comes: of the family and kind of what it replaces (match.c) */
} selector;

typedef struct {
    selector *items;
    size_t count, capacity;
} selectors;

/* True when `what` fits `by`, `same_kind` apart. */
bool selector_fits(const selector *by, const ingredient *what, const pantry *shelf);

/* How specific: name or the same kind 8, kind 4 (+2 with origin), family 1 (+2 with origin); 0 fits
 * all. */
int selector_rank(const selector *by);

/* What sets a recipe, strongest first. SETTING(constant, word) */
#define SETTING_LIST(SETTING)                                                                      \
    SETTING(EGG_WHITE, "egg white")                                                                \
    SETTING(EGG, "egg")                                                                            \
    SETTING(WHEY, "whey")                                                                          \
    SETTING(GLUTEN, "gluten")                                                                      \
    SETTING(GEL, "gel")                                                                            \
    SETTING(STARCH, "starch")                                                                      \
    SETTING(NOTHING, "nothing")

typedef enum {
#define SETTING(constant, word) SETTING_##constant,
    SETTING_LIST(SETTING)
#undef SETTING
        SETTING_COUNT
} setting;

/* What brings most of a recipe's water. MOISTURE(constant, word) */
#define MOISTURE_LIST(MOISTURE)                                                                    \
    MOISTURE(EGG_WHITE, "egg white")                                                               \
    MOISTURE(EGG, "egg")                                                                           \
    MOISTURE(FRUIT_PUREE, "fruit pur\u00e9e")                                                      \
    MOISTURE(DAIRY, "dairy")                                                                       \
    MOISTURE(NUT_BUTTER, "nut butter")                                                             \
    MOISTURE(WATER, "water")                                                                       \
    MOISTURE(PLANT_MILK, "plant milk")                                                             \
    MOISTURE(SYRUP, "syrup")                                                                       \
    MOISTURE(FAT, "fat")                                                                           \
    MOISTURE(VEGETABLE, "vegetable")                                                               \
    MOISTURE(NOTHING, "nothing")

typedef enum {
#define MOISTURE(constant, word) MOISTURE_##constant,
    MOISTURE_LIST(MOISTURE)
#undef MOISTURE
        MOISTURE_COUNT
} moisture;

const char *setting_word(setting which);
const char *moisture_word(moisture which);
bool setting_named(span word, setting *out);
bool moisture_named(span word, moisture *out);

/* A share of the batch weight, of what the selector fits. over < share < under. */
typedef struct {
    selector of;
    double over, under; /* 0 and 1 when not stated; shares 0 to 1 */
} share_condition;

typedef struct {
    share_condition *items;
    size_t count, capacity;
} share_conditions;

typedef enum { ANSWER_ANY, ANSWER_YES, ANSWER_NO } answer;

/* Facts that must all hold. Empty: holds for every recipe. */
typedef struct {
    word_span_list kinds; /* the recipe's own kind: any of, folded */
    unsigned settings;    /* bit 1u << setting; 0: any */
    unsigned moistures;   /* bit 1u << moisture; 0: any */
    answer leavened, baked;
    selectors has, lacks; /* other ingredients than the replaced ones */
    share_conditions shares;
    bool has_replaced_share;
    double replaced_over, replaced_under;
    int count; /* how many facts are stated */
} conditions;

typedef enum {
    AMOUNT_UNSTATED, /* by weight 1:1 */
    AMOUNT_WEIGHT,   /* `ratio` g of the new for 1 g of the old */
    AMOUNT_VOLUME,   /* `ratio` cups of the new for 1 cup of the old */
    AMOUNT_MATCH_WATER_UPTAKE,
    AMOUNT_MATCH_PROTEIN,
    AMOUNT_MATCH_SWEETNESS,
    AMOUNT_MATCH_BALANCE /* combined swaps: keeps what `keeps` lists (swap/combined.h) */
} amount_rule;

/* What a combined swap may keep. KEPT(constant, word) */
#define KEPT_LIST(KEPT)                                                                            \
    KEPT(WEIGHT, "weight")                                                                         \
    KEPT(FREE_WATER, "free water") /* in the bowl */                                               \
    KEPT(BULK, "bulk")             /* dry solids other than fat */                                 \
    KEPT(FAT, "fat")                                                                               \
    KEPT(SETTING, "setting protein")                                                               \
    KEPT(SWEETNESS, "sweetness")

typedef enum {
#define KEPT(constant, word) KEPT_##constant,
    KEPT_LIST(KEPT)
#undef KEPT
        KEPT_COUNT
} kept_thing;

const char *kept_word(kept_thing which);

/* What `match: balance` keeps unless it says otherwise. */
#define KEPT_USUALLY (1u << KEPT_WEIGHT | 1u << KEPT_FREE_WATER)

/* Whose word it is, most authority first. */
typedef enum {
    SAID_BY_RECIPE,
    SAID_BY_TRIAL,
    SAID_BY_OWN_RULE,
    SAID_BY_REFERENCE,
    SAID_BY_NOBODY
} authority;

typedef struct {
    const char *id; /* "whey-where-egg-white-sets-a-plant-batter" */
    place at;
    digest words; /* of all that its entry says; 0 for the reference */
    authority by;
    selectors replace, with; /* one selector mostly; two where two are replaced, or come */
    conditions when;
    verdict says;
    amount_rule amount;
    double ratio;
    unsigned keeps;   /* AMOUNT_MATCH_BALANCE: bit 1u << kept_thing */
    double most[2];   /* the same: share of each replaced ingredient that may go; 0: as usual */
    bool keep_liquid; /* false: rebalance */
    const char *also, *expect, *because; /* may be null */
    bool also_asks;    /* `also` asks for more or less of something: swap/also.h */
    const char *basis; /* "common practice", "published: …", "trial", "from memory" */
} swap_rule;

typedef struct swap_rules {
    swap_rule *items;
    size_t count, capacity;
} swap_rules;

#endif
