/* What may be shown on a terminal and nowhere else: colours, and a line that says how far long
 * work has come. */
#ifndef COMMANDS_TERMINAL_H
#define COMMANDS_TERMINAL_H

#include "base/problems.h"
#include "base/progress.h"

/* The colours of standard error; null when it is no terminal, or a dumb one (TERM is unset or
 * "dumb"), or NO_COLOR is set and not empty (the convention of no-color.org). */
const problem_colours *terminal_colours(void);

typedef struct progress_line progress_line;

/* Watches `of` and, after half a second, shows on standard error "DOING 350 of 1,000 recipes",
 * rewritten in place; nothing where standard error is no terminal. `of` and `doing` are borrowed
 * until progress_hide. Never null. */
progress_line *progress_show(const progress *of, const char *doing);

/* Ends the watching and takes the line off the terminal. */
void progress_hide(progress_line *line);

#endif
