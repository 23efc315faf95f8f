/* SPDX-License-Identifier: MIT */
/* The page as one file, where it was built or installed along with this program. */
#ifndef SILLET_SERVE_FILE_H
#define SILLET_SERVE_FILE_H

#include "../web.h"

/* file_load: puts the file's bytes into a site, as they are now; none if it is not there.
 * file_free: takes them out again. */
void file_load(web_site *site);
void file_free(web_site *site);

#endif
