/* Makes calls that this project never wants fail to compile. Included by every source file
 * through the compiler's -include, so that nobody has to remember it. */
#ifndef BASE_FORBIDDEN_H
#define BASE_FORBIDDEN_H

#include <ctype.h>
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

/* Unbounded or truncating copies: use text or arena_copy. */
#pragma GCC poison strcpy strcat sprintf vsprintf strncpy strtok gets
/* Numbers that change with the locale or fail in silence: use base/number.h. */
#pragma GCC poison atoi atof atol strtod setlocale
/* Local time: same input, same bytes out, wherever it is built. */
#pragma GCC poison localtime localtime_r ctime

#endif
