#include "site/json_text.h"

#include "base/number.h"

#include <math.h>

void json_put_key(text *t, const char *key) {
    char before = t->bytes[t->length - 1];
    if (before != '{' && before != '[')
        text_add_char(t, ',');
    if (!key)
        return;
    text_add_json(t, span_of(key));
    text_add_char(t, ':');
}

void json_put_words(text *t, const char *key, const char *words) {
    json_put_key(t, key);
    if (words)
        text_add_json(t, span_of(words));
    else
        text_add(t, "null");
}

void json_put_number(text *t, const char *key, double value, int decimals) {
    json_put_key(t, key);
    if (isfinite(value))
        number_add(t, value, decimals);
    else
        text_add(t, "null");
}

void json_put_list(text *t, const char *key) {
    json_put_key(t, key);
    text_add_char(t, '[');
}

void json_put_list_end(text *t) {
    text_add_char(t, ']');
}

void json_put_object(text *t, const char *key) {
    json_put_key(t, key);
    text_add_char(t, '{');
}

void json_put_object_end(text *t) {
    text_add_char(t, '}');
}
