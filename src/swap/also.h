/* What a rule asks for besides, in words: "Add one egg for each 1/4 cup." Figures do not count it,
 * and a reader should know. */
#ifndef SWAP_ALSO_H
#define SWAP_ALSO_H

#include <stdbool.h>

/* True where `also` (English; null: nothing) asks for an ingredient more or less. */
bool also_asks_amounts(const char *also);

#endif
