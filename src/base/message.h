/* What a pure room has to say, without words: which sentence, and what stands in its places.
 * Whoever shows it fills the sentence in a language (site/say.h). */
#ifndef BASE_MESSAGE_H
#define BASE_MESSAGE_H

#include "base/arena.h"
#include "base/sentences.h"

typedef struct message message;

typedef enum {
    VALUE_TEXT,    /* a name as it is */
    VALUE_FIGURES, /* figures as the program writes them: "1.25 kg" */
    VALUE_NUMBER,  /* with its unit, if it has one */
    VALUE_LIST,    /* "a, b and c" */
    VALUE_WORD,    /* a word of an enumeration */
    VALUE_INNER,   /* another message */
    VALUE_INNERS   /* a list of them */
} message_sort;

/* The enumerations whose words stand in messages. */
typedef enum { WORD_NUTRIENT, WORD_KEPT } message_word;

typedef struct {
    message_sort sort;
    union {
        const char *text;
        struct {
            double number;
            int decimals;
            const char *unit; /* null: none */
        };
        struct {
            const char *const *names;
            size_t count;
        };
        struct {
            message_word of;
            unsigned which;
        };
        const message *inner;
        struct {
            const message *const *inners;
            size_t inner_count;
        };
    };
} message_value;

enum { MESSAGE_VALUES_MOST = 4 };

struct message {
    sentence_key says;
    message_value values[MESSAGE_VALUES_MOST];
};

/* A message in `a`; the values are copied, what they point at is borrowed. */
const message *message_new(arena *a, sentence_key says, const message_value values[], size_t count);

/* The message `which` (a sentence's name without SAY_) with values in its places: as many as it
 * has, which the compiler checks. */
#define MESSAGE(a, which, ...)                                                                     \
    message_new((a), SAY_##which + 0 * sizeof(struct {                                             \
                                       _Static_assert(                                             \
                                           PLACES_FILLED(__VA_ARGS__) == SENTENCE_PLACES_##which,  \
                                           "as many values as the sentence has places");           \
                                       char unused;                                                \
                                   }),                                                             \
                (const message_value[]){__VA_ARGS__}, SENTENCE_PLACES_##which)

/* A sentence without places. */
#define MESSAGE_PLAIN(a, which) message_new((a), SAY_##which, NULL, 0)

static inline message_value value_text(const char *name) {
    return (message_value){.sort = VALUE_TEXT, .text = name};
}

static inline message_value value_figures(const char *plain) {
    return (message_value){.sort = VALUE_FIGURES, .text = plain};
}

/* Up to so many decimals; `in` null: no unit. */
static inline message_value value_number(double number, int decimals, const char *in) {
    message_value of = {.sort = VALUE_NUMBER};
    of.number = number;
    of.decimals = decimals;
    of.unit = in;
    return of;
}

static inline message_value value_list(const char *const *list, size_t count) {
    message_value of = {.sort = VALUE_LIST};
    of.names = list;
    of.count = count;
    return of;
}

static inline message_value value_word(message_word of_what, unsigned which) {
    message_value of = {.sort = VALUE_WORD};
    of.of = of_what;
    of.which = which;
    return of;
}

static inline message_value value_inner(const message *inner) {
    return (message_value){.sort = VALUE_INNER, .inner = inner};
}

static inline message_value value_inners(const message *const *inners, size_t count) {
    message_value of = {.sort = VALUE_INNERS};
    of.inners = inners;
    of.inner_count = count;
    return of;
}

#endif
