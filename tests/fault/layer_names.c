/* layer_names.c -- the calls on names in place of the C library's, and its clock and dice. */
#include "layer.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <time.h>

/* ---- names ------------------------------------------------------------------------------------------------- */

/* A change of names: begins the call, and says whether it is to be made. */
static struct Call begin_name(char what, const char* from, const char* to) {
  struct Call call = begin_call((struct Record){.call = CALL_NAME, .made = what});
  call.record.file = file_named(from);
  call.from = from;
  call.to = to;
  return call;
}

static int end_name(struct Call* call, int done) {
  end_call(call, done != 0);
  return done;
}

#define ONE_NAME(what, made_really)                \
  char full[PATH_MAX];                             \
  if (!below(path, full)) return made_really;      \
  struct Call call = begin_name(what, full, NULL); \
  if (call.struck) return failed(&call);           \
  return end_name(&call, made_really)

#define TWO_NAMES(what, made_really)                       \
  char full_from[PATH_MAX];                                \
  char full_to[PATH_MAX];                                  \
  const int touched = below(from, full_from);              \
  if (!below(to, full_to) && !touched) return made_really; \
  struct Call call = begin_name(what, full_from, full_to); \
  if (call.struck) return failed(&call);                   \
  return end_name(&call, made_really)

int unlink(const char* path) {
  typedef int (*Unlink)(const char*);
  ONE_NAME('u', REAL("unlink", Unlink)(path));
}
int remove(const char* path) {
  typedef int (*Remove)(const char*);
  ONE_NAME('u', REAL("remove", Remove)(path));
}
int rmdir(const char* path) {
  typedef int (*Remove)(const char*);
  ONE_NAME('u', REAL("rmdir", Remove)(path));
}
int mkdir(const char* path, mode_t mode) {
  typedef int (*Make)(const char*, mode_t);
  ONE_NAME('m', REAL("mkdir", Make)(path, mode));
}
int rename(const char* from, const char* to) {
  typedef int (*Rename)(const char*, const char*);
  TWO_NAMES('r', REAL("rename", Rename)(from, to));
}
int renameat2(int at, const char* from, int into, const char* to, unsigned flags) {
  typedef int (*Rename)(int, const char*, int, const char*, unsigned);
  TWO_NAMES('r', REAL("renameat2", Rename)(at, from, into, to, flags));
}
int link(const char* from, const char* to) {
  typedef int (*Link)(const char*, const char*);
  TWO_NAMES('l', REAL("link", Link)(from, to));
}
/* Of a file without a name: `from` is its handle in /proc. */
int linkat(int at, const char* from, int into, const char* to, int flags) {
  typedef int (*Link)(int, const char*, int, const char*, int);
  char full_from[PATH_MAX];
  char full_to[PATH_MAX];
  struct stat now;
  const Link real = REAL("linkat", Link);
  below(from, full_from);
  if (!below(to, full_to)) return real(at, from, into, to, flags);
  struct Call call = begin_name('l', full_from, full_to);
  if (stat(full_from, &now) == 0) call.record.file = now.st_ino;
  if (call.struck) return failed(&call);
  return end_name(&call, real(at, from, into, to, flags));
}

/* ---- the clock and the dice -------------------------------------------------------------------------------- */

/* The same in every run, so that what is posted, or a key, is the same to the byte. */
ssize_t getrandom(void* bytes, size_t length, unsigned flags) {
  (void)flags;
  memset(bytes, '7', length);
  return (ssize_t)length;
}

time_t time(time_t* into) {
  const char* said = getenv("KERFBOOK_FAULT_TIME");
  struct timespec now;
  clock_gettime(CLOCK_REALTIME, &now);
  const time_t seconds = said == NULL ? now.tv_sec : (time_t)atoll(said);
  if (into != NULL) *into = seconds;
  return seconds;
}
