/* What is wrong with the content: collected as values, printed by the command, never in between.
 *
 * Each problem has a place (file, line, column), a level, a message and mostly a hint. All are
 * kept; none stops the work on other recipes. Printed as
 *
 *     recipes/rounds.md:14:5: error: can't read the amount "½½"
 *       hint: write 1/2, 0.5 or 0,5
 *
 * with the name of the check in square brackets behind the message where it has one.
 */
#ifndef BASE_PROBLEMS_H
#define BASE_PROBLEMS_H

#include "base/arena.h"
#include "base/text.h"

/* Where something stands. Lines and columns count from 1; columns count characters, not bytes;
 * 0 means unknown. `file` is relative to the site folder; a problem keeps a copy of it. */
typedef struct {
    const char *file;
    unsigned line, column;
} place;

/* A span and where it stands. */
typedef struct {
    span bytes;
    place at;
} located;

typedef enum { PROBLEM_ERROR, PROBLEM_WARNING } problem_level;

typedef struct {
    place at;
    problem_level level;
    const char *message;
    const char *hint;  /* may be null */
    const char *check; /* the name of the check that found it (check/checks.h), a constant; null:
                        * it was found in reading and has none */
} problem;

typedef struct {
    arena *home; /* where messages are kept; borrowed */
    problem *items;
    size_t count, capacity;
    size_t errors, warnings;
} problems;

/* An empty collection whose messages live in `home`, which must outlive it. */
problems problems_in(arena *home);

/* Adds an error at `at`. `hint` is copied and may be null; the message is printf-like (no %f). */
void problem_add(problems *found, place at, const char *hint, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

/* Adds a warning: the build goes on and the exit code stays 0. */
void problem_warn(problems *found, place at, const char *hint, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

/* Adds what a check with a name found: the name is printed behind the message, and a comment in
 * the file can allow it (read/silence.h). `check` is borrowed for good. */
void problem_note(problems *found, const char *check, problem_level level, place at,
                  const char *hint, const char *format, ...) __attribute__((format(printf, 6, 7)));

/* Takes out those that `drop` says true of; the others keep their order. */
void problems_drop(problems *found, bool (*drop)(const problem *p, void *state), void *state);

/* Copies all of `from` to the end of `into` (into its own arena): a worker's finds joined to the
 * whole. */
void problems_join(problems *into, const problems *from);

/* Sorts by file, line, column and message, so that the order of work does not show. */
void problems_sort(problems *found);

/* Adds `words` on one line: what drives a terminal or breaks lines (words_unseen) becomes blanks.
 */
void problem_add_visible(text *t, const char *words);

/* Adds the printed form of `p`, with its hint line, to `t`, both as problem_add_visible does. */
void problem_print(const problem *p, text *t);

/* What to write around the level's word on a terminal. */
typedef struct {
    const char *error, *warning, *end;
} problem_colours;

/* problem_print in colours; null: without. */
void problem_print_coloured(const problem *p, const problem_colours *with, text *t);

/* "error" or "warning". */
const char *problem_level_word(problem_level level);

#endif
