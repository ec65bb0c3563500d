/* layer.h -- what the files of the fault layer have in common: a call is begun, made or not, and ended. */
#pragma once

#include <dlfcn.h>
#include <limits.h>
#include <stddef.h>

#include "record.h"

/* The C library's own functions stand in this program's tables under other signatures: they are called as what they are. */
#define REAL(name, type) ((type)(uintptr_t)dlsym(RTLD_NEXT, name))

/* A call in hand: it is counted when it begins, and written down when it has ended. */
struct Call {
  struct Record record;
  const char* from;
  const char* to;
  const void* bytes;
  int struck; /* errno of its failure; 0 = it goes well */
  int halved; /* only half of the bytes go through */
  int killed; /* the program ends with it */
};

/* For these files alone: no name of the program's is to be taken for one of them. */
#pragma GCC visibility push(hidden)

/* Whether anything is counted at all. */
int is_on(void);
/* The full path of what is named, in `full`; 1 when it is the folder or lies below it. */
int below(const char* path, char full[PATH_MAX]);
/* Of a file below the folder, or the folder. */
int is_watched(int handle);
void watch(int handle, char yes);
void path_of(int handle, char full[PATH_MAX]);
uint64_t file_of(int handle, char* folder);
uint64_t file_named(const char* path); /* 0: there is none */

struct Call begin_call(struct Record record);
void end_call(struct Call* call, int failed);
/* Ends a call that is to fail without being made. */
int failed(struct Call* call);

#pragma GCC visibility pop
