package spare

/*
#define _GNU_SOURCE
#include <link.h>
#include <malloc.h>
#include <string.h>
#include <sys/mman.h>
#include <unistd.h>

// The screen's driver has its compiler with it where there is no graphics processor, and it
// has compiled what a window is drawn with by the time that the window rests: some 50 MB of
// code, which is read from its file again where it is needed.
static int forget_compiler(struct dl_phdr_info *lib, size_t size, void *none) {
	if (!strstr(lib->dlpi_name, "libLLVM"))
		return 0;
	uintptr_t page = sysconf(_SC_PAGESIZE);
	for (int i = 0; i < lib->dlpi_phnum; i++) {
		const ElfW(Phdr) *p = &lib->dlpi_phdr[i];
		if (p->p_type != PT_LOAD || !(p->p_flags & PF_X) || p->p_flags & PF_W)
			continue;
		uintptr_t from = lib->dlpi_addr + p->p_vaddr;
		uintptr_t to = (from + p->p_memsz) & ~(page - 1);
		from = (from + page - 1) & ~(page - 1);
		madvise((void *)from, to - from, MADV_DONTNEED);
	}
	return 0;
}

// Of the C libraries of Linux the GNU one keeps what was freed between what is in use.
static void trim(void) {
#ifdef __GLIBC__
	malloc_trim(0);
#endif
	dl_iterate_phdr(forget_compiler, 0);
}
*/
import "C"

func trim() { C.trim() }
