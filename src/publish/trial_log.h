/* Adding a bake to a file of the log, which somebody keeps by hand: its bytes stay, comments and
 * order with them, and the new entry is put behind them.
 *
 *     trials/2026-winter.yaml  =  what was there  +  an empty line  +  "- recipe: rounds" ...
 */
#ifndef PUBLISH_TRIAL_LOG_H
#define PUBLISH_TRIAL_LOG_H

#include "read/site_folder.h"
#include "site/view.h"

/* A bake to be added. */
typedef struct {
    const view *entry; /* borrowed: the keys and texts of the trial */
    text whole;        /* the file with it; empty before, freed by the caller */
    unsigned line;     /* of the file, where the entry begins */
} trial_addition;

/* Puts `existing`, the bytes of a file of the log, with the entry behind them in `add->whole`.
 * False, with problems, when `existing` has an error, or when the whole, read again, is not the
 * old entries, unchanged, and the new one with just its texts. */
bool trial_log_compose(arena *a, located existing, const pantry *shelf, trial_addition *add,
                       problems *found);

/* The file of the log that a bake of `date` (YYYY-MM-DD) goes to when none is named: year and
 * season of the north, "2026-winter.yaml"; December goes with January and February of its year. */
char *trial_log_name(arena *a, const char *date);

/* What became of trial_log_append. */
typedef enum { TRIAL_ADDED, TRIAL_REFUSED, TRIAL_MACHINE_FAILED } trial_outcome;

/* Adds the entry to trials/`name` of the site, making folder and file where they are missing.
 * Programs that add at one time wait for each other. */
trial_outcome trial_log_append(arena *a, const site_folder *site, const char *name,
                               trial_addition *add, problems *found);

#endif
