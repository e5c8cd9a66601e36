/* Has the pictures of a site made by the program beside this one, crumbnote-pictures: decoding
 * what somebody else wrote is kept apart. */
#ifndef PUBLISH_PICTURE_FILES_H
#define PUBLISH_PICTURE_FILES_H

#include "publish/outputs.h"
#include "publish/record.h"
#include "site/pictures.h"

/* A picture to be made, or as an earlier build made it. */
typedef struct {
    site_picture shown;
    made kept;  /* what the record keeps of it */
    bool stays; /* nothing is to be done */
} picture_work;

/* The stem of each of `names`, in their order: the file's name as a slug without its ending, and
 * with it where an earlier one has that stem already. In `a`. */
const char **picture_stems(arena *a, const file_list *names);

/* Makes those of `work` that do not stay, `workers` at a time, from the folder `from` into the
 * pictures/ of to->folder; fills `shown.sizes` and `kept`. One that can't be decoded is an error
 * in `found` and has no files; `*machine_failed` is set where the machine is at fault. Where the
 * other program is not to be found, files are copied as they are, with a warning. */
void picture_files_make(picture_work work[], size_t count, const char *from, unsigned workers,
                        const outputs *to, problems *found, bool *machine_failed);

/* The sizes that the files of `kept`, of the picture whose stem is `stem`, have in their names. */
void picture_sizes_of(const made *kept, const char *stem, site_picture *out);

#endif
