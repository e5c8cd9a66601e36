/* JSON written as it comes, for documents whose tree (site/view.h) would be larger than all that
 * they are made from. Commas are put where they belong: before all that does not stand first.
 *
 *     json_put_object(t, NULL);
 *     json_put_words(t, "name", "oat flour");
 *     json_put_list(t, "cups");  json_put_number(t, NULL, 104, 0);  json_put_list_end(t);
 *     json_put_object_end(t);
 *
 * The names say put, as those that begin with json_ alone are the library's.
 *
 * `key` is null within a list. The text must not be empty before the first key or item. */
#ifndef SITE_JSON_TEXT_H
#define SITE_JSON_TEXT_H

#include "base/text.h"

/* Adds the key alone; its value is added next by the caller. */
void json_put_key(text *t, const char *key);

void json_put_words(text *t, const char *key, const char *words); /* null words: null */

/* Rounded to `decimals` places; null when not finite. */
void json_put_number(text *t, const char *key, double value, int decimals);

void json_put_list(text *t, const char *key);
void json_put_list_end(text *t);
void json_put_object(text *t, const char *key);
void json_put_object_end(text *t);

#endif
