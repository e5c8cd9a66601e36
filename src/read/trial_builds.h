/* The builds of the recipes that were baked with a swap, so that a trial counts as evidence in
 * recipes like them. */
#ifndef READ_TRIAL_BUILDS_H
#define READ_TRIAL_BUILDS_H

#include "read/site_folder.h"

/* Reads each recipe that the log of `site` names, once, and keeps its build and title with its
 * trials, in site->home. What is wrong with a recipe is not said here: the worker whose recipe it
 * is says it; its trials stay without a build and count for no other recipe. False, and a problem
 * in `found`, where the machine can't read one. To be called before the site is shared. */
bool trial_builds_read(site_folder *site, problems *found);

#endif
