/* Publishing at each push: puts a hook into a git repository that others push to. */
#ifndef PUBLISH_HOOK_H
#define PUBLISH_HOOK_H

#include "base/problems.h"

typedef struct {
    const char *repository; /* bare, or the .git folder of another */
    const char *to;         /* the folder of releases */
    bool refuse;            /* a push with errors in the content is refused */
} hook_request;

/* Writes hooks/pre-receive, hooks/post-receive and crumbnote.config, the settings of both. A hook
 * of somebody else is not replaced; settings of an earlier time are. False, with a problem,
 * when nothing was installed; `*machine_failed` is set where the disk or a permission was at
 * fault. */
bool hook_install(const hook_request *asked, bool *machine_failed, problems *found);

#endif
