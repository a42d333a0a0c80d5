/* base/version.h - the version, in one place. */
#ifndef BASE_VERSION_H
#define BASE_VERSION_H

#define BATTEN_VERSION "0.1.0"

#endif
