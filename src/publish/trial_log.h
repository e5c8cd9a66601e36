/* Adding a bake to a file of the log, which somebody keeps by hand: its bytes stay, comments and
 * order with them, and the new entry is put behind them.
 *
 *     trials/2026-winter.yaml  =  what was there  +  an empty line  +  "- recipe: rounds" ...
 */
#ifndef PUBLISH_TRIAL_LOG_H
#define PUBLISH_TRIAL_LOG_H

#include "read/site_folder.h"
#include "site/view.h"

/* Adds `entry`, the keys and texts of a trial, to the end of `existing`, the bytes of `file` (a
 * name for problems), and puts the whole in `*out` and the line of the entry in `*line`. False,
 * with problems, when `existing` has an error, or when the whole, read again, is not the old
 * entries, unchanged, and the new one with just these texts. */
bool trial_log_compose(arena *a, located existing, const view *entry, const pantry *shelf,
                       text *out, unsigned *line, problems *found);

/* The file of the log that a bake of `date` (YYYY-MM-DD) goes to when none is named: year and
 * season of the north, "2026-winter.yaml"; December goes with January and February of its year. */
char *trial_log_name(arena *a, const char *date);

/* What became of trial_log_append. */
typedef enum { TRIAL_ADDED, TRIAL_REFUSED, TRIAL_MACHINE_FAILED } trial_outcome;

/* Adds `entry` to trials/`name` of the site, making folder and file where they are missing.
 * Programs that add at one time wait for each other. `*line`: where the entry begins. */
trial_outcome trial_log_append(arena *a, const site_folder *site, const char *name,
                               const view *entry, unsigned *line, problems *found);

#endif
