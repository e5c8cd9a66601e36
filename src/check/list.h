/* Every check that has a name, in one list: its name, what it finds, what runs it (NULL: it is
 * found in reading, or by another's work), and whether plain pages are checked for it too. The
 * table of checks and the help of the command are made from it. */
#ifndef CHECK_LIST_H
#define CHECK_LIST_H

/* CHECK(name, what it finds, work, on pages) */
#define CHECK_LIST(CHECK)                                                                          \
    /* what the words say against the figures */                                                   \
    CHECK("amounts", "an amount in the method that disagrees with the list", check_amounts, false) \
    CHECK("unused", "an ingredient that the method never uses", check_used, false)                 \
    CHECK("unlisted", "an ingredient that the method adds and the list has not", NULL, false)      \
    CHECK("claim-figure", "\"30 g protein\" where the figures have 22", check_claim_figures,       \
          false)                                                                                   \
    CHECK("claim-words", "\"high in fibre\" and the like that the figures do not bear out",        \
          check_claim_words, false)                                                                \
    CHECK("free-of", "\"vegan\", \"gluten-free\" and the like over an ingredient that is not",     \
          check_freedom, false)                                                                    \
    CHECK("swap-advice", "advice in the words against a rule, a trial or a swap",                  \
          check_swap_advice, false)                                                                \
    CHECK("link", "a link or picture that leads nowhere", check_links, true)                       \
    CHECK("picture-text", "a picture without words for those who can't see it", NULL, true)        \
    /* what becomes of rules over all recipes: publish/rule_report.h */                            \
    CHECK("rule-contradicted", "a rule or swap that trials contradict", NULL, false)               \
    CHECK("rule-never-holds", "a rule whose facts no recipe has", NULL, false)                     \
    CHECK("rule-hidden", "a rule that others always go before", NULL, false)                       \
    CHECK("swap-unanswered", "a swap that readers ask for and nothing answers", NULL, false)       \
    /* found in reading */                                                                         \
    CHECK("trial-works", "a trial that \"works\" with amounts changed", NULL, false)               \
    CHECK("portion", "a portion that does not divide what the recipe makes", NULL, false)          \
    CHECK("not-weighed", "a line that counts for nothing", NULL, false)                            \
    CHECK("heaped", "a heaped spoon, weighed as level", NULL, false)                               \
    CHECK("name-in-doubt", "words before a name that may make it another food", NULL, false)       \
    CHECK("kind", "a kind that is nearly one that rules know", NULL, false)                        \
    CHECK("missing", "no summary, no kind", NULL, false)                                           \
    CHECK("dates", "changed before it was written", NULL, false)                                   \
    CHECK("bake-loss", "no bake loss, or one that is hardly one", check_bake_loss, false)          \
    CHECK("swap-of-nothing", "a swap of what the recipe has not", NULL, false)                     \
    CHECK("pantry-figures", "figures that contradict each other or are not there", NULL, false)    \
    CHECK("source", "figures without a source", NULL, false)                                       \
    CHECK("water-uptake", "no water uptake of its own: a like one stands in", NULL, false)         \
    CHECK("rule-kind", "a rule for a kind that no ingredient is of", NULL, false)                  \
    CHECK("allow", "a comment that allows nothing, or gives no reason", NULL, false)

#endif
