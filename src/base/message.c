#include "base/message.h"

#include <assert.h>

const message *message_new(arena *a, sentence_key says, const message_value values[],
                           size_t count) {
    message *made = ARENA_NEW(a, message);
    assert(count <= MESSAGE_VALUES_MOST);
    made->says = says;
    if (count)
        memcpy(made->values, values, count * sizeof values[0]);
    return made;
}
