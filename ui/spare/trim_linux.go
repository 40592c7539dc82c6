package spare

/*
#include <malloc.h>

// Of the C libraries of Linux the GNU one keeps what was freed between what is in use.
static void trim(void) {
#ifdef __GLIBC__
	malloc_trim(0);
#endif
}
*/
import "C"

func trim() { C.trim() }
