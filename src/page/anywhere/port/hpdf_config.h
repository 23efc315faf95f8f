/* SPDX-License-Identifier: MIT */
/* libharu with zlib and without pictures. */
#define LIBHPDF_HAVE_LIBZ 1
#define LIBHPDF_HAVE_NOPNGLIB 1
