/* SPDX-License-Identifier: MIT */
/* Where the profiles of an installed library are. `make install` compiles this file again for the
 * library it installs and gives the folder; in every other build there is none. */
#include "profile.h"

#ifndef INSTALLED_PROFILES
#define INSTALLED_PROFILES ""
#endif

const char sheet_installed_profiles[] = INSTALLED_PROFILES;
