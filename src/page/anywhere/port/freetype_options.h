/* SPDX-License-Identifier: MIT */
/* FreeType's own options, but for what needs other libraries, or an environment. */
#include <freetype/config/ftoption.h>

#undef FT_CONFIG_OPTION_USE_ZLIB
#undef FT_CONFIG_OPTION_USE_LZW
#undef TT_CONFIG_OPTION_EMBEDDED_BITMAPS
#undef FT_CONFIG_OPTION_ENVIRONMENT_PROPERTIES
