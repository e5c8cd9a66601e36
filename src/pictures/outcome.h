/* What became of a picture: told as the exit code of the process that made it. */
#ifndef PICTURES_OUTCOME_H
#define PICTURES_OUTCOME_H

typedef enum {
    PICTURE_MADE = 0,
    PICTURE_REFUSED = 1,       /* the file is at fault */
    PICTURE_MACHINE_FAILED = 3 /* the disk is, or memory: base/memory.h ends with this too */
} picture_outcome;

#endif
