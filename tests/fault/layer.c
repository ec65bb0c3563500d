/* layer.c -- the fault layer, preloaded into the program: it counts the calls that touch one folder, writes each down, and
   fails one of them, fails all from one on, or kills the program there. Nothing is really synced: what a power cut would
   leave is worked out from what was written down (disk.h).

   KERFBOOK_FAULT_FOLDER  the folder, as its full plain path
   KERFBOOK_FAULT_LOG     where each call is written down (record.h)
   KERFBOOK_FAULT_TIME    what the clock says, seconds since 1970
   KERFBOOK_FAULT_AT      number of the call that goes wrong, from 0
   KERFBOOK_FAULT_HOW     eio enospc eintr eagain short kill half, or eio-on enospc-on: that call and all after it

   A short write is one of half the bytes, after which the next fails for want of room; half is one of half the bytes, in
   which the program is killed. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <time.h>
#include <unistd.h>

#include "record.h"

/* The C library's own functions stand in this program's tables under other signatures: they are called as what they are. */
#define REAL(name, type) ((type)(uintptr_t)dlsym(RTLD_NEXT, name))

enum { kMostHandles = 1024 };

static struct {
  char folder[PATH_MAX];
  size_t folder_length;
  char how[16];
  int at;
  int from_on; /* all calls from `at` on go wrong */
  int log;
  int count;
  int next_write_fails;
  char watched[kMostHandles];
} layer = {.at = -1, .log = -1};

__attribute__((constructor)) static void begin(void) {
  const char* folder = getenv("KERFBOOK_FAULT_FOLDER");
  const char* log = getenv("KERFBOOK_FAULT_LOG");
  const char* at = getenv("KERFBOOK_FAULT_AT");
  const char* how = getenv("KERFBOOK_FAULT_HOW");
  if (folder == NULL || log == NULL) return;
  snprintf(layer.folder, sizeof layer.folder, "%s", folder);
  layer.folder_length = strlen(layer.folder);
  if (at != NULL && how != NULL) {
    layer.at = atoi(at);
    snprintf(layer.how, sizeof layer.how, "%s", how);
    char* on = strstr(layer.how, "-on");
    layer.from_on = on != NULL;
    if (on != NULL) *on = '\0';
  }
  const long handle = syscall(SYS_openat, AT_FDCWD, log, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  layer.log = (int)syscall(SYS_fcntl, handle, F_DUPFD_CLOEXEC, 900);
  syscall(SYS_close, handle);
}

/* ---- what a call is about ---------------------------------------------------------------------------------- */

/* The full path of what is named, in `full`; 1 when it is the folder or lies below it. */
static int below(const char* path, char full[PATH_MAX]) {
  if (layer.log < 0 || path == NULL) return 0;
  if (path[0] == '/') {
    snprintf(full, PATH_MAX, "%s", path);
  } else {
    char here[PATH_MAX];
    if (syscall(SYS_getcwd, here, sizeof here) < 0) return 0;
    const int length = snprintf(full, PATH_MAX, "%s/%s", here, path);
    if (length < 0 || length >= PATH_MAX) return 0;
  }
  return strncmp(full, layer.folder, layer.folder_length) == 0 &&
         (full[layer.folder_length] == '/' || full[layer.folder_length] == '\0');
}

static int is_watched(int handle) {
  return layer.log >= 0 && handle >= 0 && handle < kMostHandles && layer.watched[handle];
}

static void watch(int handle, char yes) {
  if (handle >= 0 && handle < kMostHandles) layer.watched[handle] = yes;
}

static void path_of(int handle, char full[PATH_MAX]) {
  char link[64];
  snprintf(link, sizeof link, "/proc/self/fd/%d", handle);
  const long length = syscall(SYS_readlink, link, full, PATH_MAX - 1);
  full[length < 0 ? 0 : length] = '\0';
}

static uint64_t file_of(int handle, char* folder) {
  struct stat now;
  if (fstat(handle, &now) != 0) return 0;
  *folder = S_ISDIR(now.st_mode);
  return now.st_ino;
}

static uint64_t file_named(const char* path) {
  struct stat now;
  return lstat(path, &now) == 0 ? now.st_ino : 0;
}

/* ---- what happens to it ------------------------------------------------------------------------------------ */

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

static void write_all(const void* bytes, size_t length) {
  const char* at = bytes;
  while (length > 0) {
    const long some = syscall(SYS_write, layer.log, at, length);
    if (some <= 0) return;
    at += some;
    length -= (size_t)some;
  }
}

static void die(void) {
  syscall(SYS_kill, syscall(SYS_getpid), SIGKILL);
  for (;;) pause();
}

static int takes_room(const struct Record* record) {
  return record->call == CALL_WRITE || record->call == CALL_TRUNCATE ||
         (record->call == CALL_OPEN && record->made) || (record->call == CALL_NAME && record->made != 'u');
}

static int error_of(const char* how) {
  if (strcmp(how, "eio") == 0) return EIO;
  if (strcmp(how, "enospc") == 0) return ENOSPC;
  if (strcmp(how, "eintr") == 0) return EINTR;
  if (strcmp(how, "eagain") == 0) return EAGAIN;
  return 0;
}

static struct Call begin_call(struct Record record) {
  struct Call call = {.record = record};
  call.record.number = layer.count++;
  const int error = error_of(layer.how);
  if (call.record.number == layer.at) {
    call.struck = error;
    call.killed = strcmp(layer.how, "kill") == 0 || strcmp(layer.how, "half") == 0;
    call.halved = strcmp(layer.how, "short") == 0 || strcmp(layer.how, "half") == 0;
  } else if (layer.from_on && call.record.number > layer.at && record.call != CALL_SAY) {
    if (error != ENOSPC || takes_room(&record)) call.struck = error;
  }
  if (record.call == CALL_WRITE && layer.next_write_fails) {
    layer.next_write_fails = 0;
    call.struck = ENOSPC;
  }
  if (call.halved && record.call == CALL_WRITE) layer.next_write_fails = 1;
  return call;
}

static void end_call(struct Call* call, int failed) {
  const int error = errno;
  struct Record* record = &call->record;
  record->failed = (char)failed;
  record->from_bytes = call->from == NULL ? 0 : (uint32_t)strlen(call->from);
  record->to_bytes = call->to == NULL ? 0 : (uint32_t)strlen(call->to);
  record->bytes = call->bytes == NULL || failed ? 0 : (uint32_t)record->length;
  write_all(record, sizeof *record);
  write_all(call->from, record->from_bytes);
  write_all(call->to, record->to_bytes);
  write_all(call->bytes, record->bytes);
  if (call->killed) die();
  errno = error;
}

/* Ends a call that is to fail without being made. */
static int failed(struct Call* call) {
  end_call(call, 1);
  errno = call->struck;
  return -1;
}

/* ---- opening and closing ----------------------------------------------------------------------------------- */

typedef int (*OpenAt)(int, const char*, int, ...);

static int open_at(int where, const char* path, int flags, mode_t mode) {
  char full[PATH_MAX];
  const OpenAt real = REAL("openat", OpenAt);
  if ((where != AT_FDCWD && path[0] != '/') || !below(path, full)) return real(where, path, flags, mode);
  const int nameless = (flags & O_TMPFILE) == O_TMPFILE;
  const int makes = nameless || ((flags & O_CREAT) != 0 && file_named(full) == 0);
  struct Call call = begin_call((struct Record){.call = CALL_OPEN, .made = (char)makes});
  call.from = full;
  if (call.struck) return failed(&call);
  const int handle = real(where, path, flags, mode);
  watch(handle, handle >= 0);
  if (handle >= 0) {
    call.record.file = file_of(handle, &call.record.folder);
    if (nameless) full[0] = '\0';
    if ((flags & O_TRUNC) != 0 && !makes) call.record.made = 'x';
  }
  end_call(&call, handle < 0);
  return handle;
}

#define OPEN_WITH_MODE(handle_of)                        \
  va_list more;                                          \
  va_start(more, flags);                                 \
  const int asks = (flags & (O_CREAT | O_TMPFILE)) != 0; \
  const mode_t mode = asks ? va_arg(more, mode_t) : 0;   \
  va_end(more);                                          \
  return handle_of

int open(const char* path, int flags, ...) {
  OPEN_WITH_MODE(open_at(AT_FDCWD, path, flags, mode));
}
int open64(const char* path, int flags, ...) {
  OPEN_WITH_MODE(open_at(AT_FDCWD, path, flags, mode));
}
int openat(int where, const char* path, int flags, ...) {
  OPEN_WITH_MODE(open_at(where, path, flags, mode));
}
int openat64(int where, const char* path, int flags, ...) {
  OPEN_WITH_MODE(open_at(where, path, flags, mode));
}
/* As programs call them that were compiled with the C library's own checks. */
int __open_2(const char* path, int flags) {
  return open_at(AT_FDCWD, path, flags, 0);
}
int __open64_2(const char* path, int flags) {
  return open_at(AT_FDCWD, path, flags, 0);
}
int __openat_2(int where, const char* path, int flags) {
  return open_at(where, path, flags, 0);
}

/* Streams of C++ open so, and then read and write by handle. */
FILE* fopen64(const char* path, const char* mode) {
  const int plus = strchr(mode, '+') != NULL;
  const int reads = mode[0] == 'r';
  const int flags = (plus    ? O_RDWR
                     : reads ? O_RDONLY
                             : O_WRONLY) |
                    (reads ? 0 : O_CREAT) | (mode[0] == 'w' ? O_TRUNC : 0) | (mode[0] == 'a' ? O_APPEND : 0);
  char full[PATH_MAX];
  typedef FILE* (*Open)(const char*, const char*);
  if (!below(path, full)) return REAL("fopen64", Open)(path, mode);
  const int handle = open_at(AT_FDCWD, path, flags, 0666);
  return handle < 0 ? NULL : fdopen(handle, mode);
}
FILE* fopen(const char* path, const char* mode) {
  return fopen64(path, mode);
}

static struct Call begin_close(int handle) {
  struct Call call = begin_call((struct Record){.call = CALL_CLOSE});
  call.record.file = file_of(handle, &call.record.folder);
  watch(handle, 0);
  return call;
}

int close(int handle) {
  typedef int (*Close)(int);
  const Close real = REAL("close", Close);
  if (!is_watched(handle)) return real(handle);
  struct Call call = begin_close(handle);
  const int done = real(handle);
  if (call.struck) return failed(&call);
  end_call(&call, done != 0);
  return done;
}

int fclose(FILE* stream) {
  typedef int (*Close)(FILE*);
  const Close real = REAL("fclose", Close);
  const int handle = fileno(stream);
  if (!is_watched(handle)) return real(stream);
  struct Call call = begin_close(handle);
  const int done = real(stream);
  if (call.struck) return failed(&call);
  end_call(&call, done != 0);
  return done;
}

/* ---- reading and writing ----------------------------------------------------------------------------------- */

static struct Call begin_move(int handle, char kind, off_t at, size_t* length) {
  struct Call call = begin_call((struct Record){.call = kind});
  call.record.file = file_of(handle, &call.record.folder);
  call.record.at = at;
  if (call.halved && *length > 1) *length /= 2;
  return call;
}

static ssize_t end_move(struct Call* call, ssize_t done) {
  call->record.length = done;
  end_call(call, done < 0);
  return done;
}

ssize_t read(int handle, void* bytes, size_t length) {
  typedef ssize_t (*Read)(int, void*, size_t);
  const Read real = REAL("read", Read);
  if (!is_watched(handle)) return real(handle, bytes, length);
  struct Call call = begin_move(handle, CALL_READ, lseek(handle, 0, SEEK_CUR), &length);
  return call.struck ? failed(&call) : end_move(&call, real(handle, bytes, length));
}
ssize_t __read_chk(int handle, void* bytes, size_t length, size_t room) {
  return length > room ? -1 : read(handle, bytes, length);
}

ssize_t pread64(int handle, void* bytes, size_t length, off64_t at) {
  typedef ssize_t (*Read)(int, void*, size_t, off64_t);
  const Read real = REAL("pread64", Read);
  if (!is_watched(handle)) return real(handle, bytes, length, at);
  struct Call call = begin_move(handle, CALL_READ, at, &length);
  return call.struck ? failed(&call) : end_move(&call, real(handle, bytes, length, at));
}
ssize_t pread(int handle, void* bytes, size_t length, off_t at) {
  return pread64(handle, bytes, length, at);
}
ssize_t __pread_chk(int handle, void* bytes, size_t length, off_t at, size_t room) {
  return length > room ? -1 : pread64(handle, bytes, length, at);
}
ssize_t __pread64_chk(int handle, void* bytes, size_t length, off64_t at, size_t room) {
  return length > room ? -1 : pread64(handle, bytes, length, at);
}

/* What was said on standard output can fail too; what could not be said on standard error cannot be told. */
static ssize_t say(int handle, const void* bytes, size_t length) {
  typedef ssize_t (*Write)(int, const void*, size_t);
  const Write real = REAL("write", Write);
  struct Call call;
  if (handle == STDOUT_FILENO) {
    call = begin_call((struct Record){.call = CALL_SAY});
    if (call.halved && length > 1) length /= 2;
    if (call.struck) return failed(&call);
  } else {
    call = (struct Call){.record = {.number = -1, .call = CALL_SAY}};
  }
  call.record.at = handle;
  return end_move(&call, real(handle, bytes, length));
}

ssize_t write(int handle, const void* bytes, size_t length) {
  typedef ssize_t (*Write)(int, const void*, size_t);
  const Write real = REAL("write", Write);
  if (layer.log >= 0 && (handle == STDOUT_FILENO || handle == STDERR_FILENO))
    return say(handle, bytes, length);
  if (!is_watched(handle)) return real(handle, bytes, length);
  struct Call call = begin_move(handle, CALL_WRITE, lseek(handle, 0, SEEK_CUR), &length);
  call.bytes = bytes;
  return call.struck ? failed(&call) : end_move(&call, real(handle, bytes, length));
}

ssize_t writev(int handle, const struct iovec* parts, int many) {
  typedef ssize_t (*Write)(int, const struct iovec*, int);
  const int told = layer.log >= 0 && (handle == STDOUT_FILENO || handle == STDERR_FILENO);
  if (!told && !is_watched(handle)) return REAL("writev", Write)(handle, parts, many);
  ssize_t done = 0; /* one after the other: as one of them could be cut short */
  for (int i = 0; i < many; ++i) {
    const ssize_t some = write(handle, parts[i].iov_base, parts[i].iov_len);
    if (some < 0) return done > 0 ? done : -1;
    done += some;
    if ((size_t)some < parts[i].iov_len) break;
  }
  return done;
}

ssize_t pwrite64(int handle, const void* bytes, size_t length, off64_t at) {
  typedef ssize_t (*Write)(int, const void*, size_t, off64_t);
  const Write real = REAL("pwrite64", Write);
  if (!is_watched(handle)) return real(handle, bytes, length, at);
  struct Call call = begin_move(handle, CALL_WRITE, at, &length);
  call.bytes = bytes;
  return call.struck ? failed(&call) : end_move(&call, real(handle, bytes, length, at));
}
ssize_t pwrite(int handle, const void* bytes, size_t length, off_t at) {
  return pwrite64(handle, bytes, length, at);
}

/* ---- lengths, syncs and locks ------------------------------------------------------------------------------ */

int ftruncate64(int handle, off64_t length) {
  typedef int (*Truncate)(int, off64_t);
  const Truncate real = REAL("ftruncate64", Truncate);
  if (!is_watched(handle)) return real(handle, length);
  struct Call call = begin_call((struct Record){.call = CALL_TRUNCATE, .length = length});
  call.record.file = file_of(handle, &call.record.folder);
  if (call.struck) return failed(&call);
  const int done = real(handle, length);
  end_call(&call, done != 0);
  return done;
}
int ftruncate(int handle, off_t length) {
  return ftruncate64(handle, length);
}

int posix_fallocate(int handle, off_t at, off_t length) {
  typedef int (*Allocate)(int, off_t, off_t);
  const Allocate real = REAL("posix_fallocate", Allocate);
  struct stat now;
  if (!is_watched(handle) || fstat(handle, &now) != 0) return real(handle, at, length);
  const off_t end = at + length > now.st_size ? at + length : now.st_size;
  struct Call call = begin_call((struct Record){.call = CALL_TRUNCATE, .length = end});
  call.record.file = now.st_ino;
  if (call.struck) {
    failed(&call);
    return call.struck;
  }
  const int done = real(handle, at, length);
  end_call(&call, done != 0);
  return done;
}
int posix_fallocate64(int handle, off64_t at, off64_t length) {
  return posix_fallocate(handle, at, length);
}

static int synced(int handle, const char* name) {
  typedef int (*Sync)(int);
  if (!is_watched(handle)) return REAL(name, Sync)(handle);
  char full[PATH_MAX];
  struct Call call = begin_call((struct Record){.call = CALL_SYNC});
  call.record.file = file_of(handle, &call.record.folder);
  path_of(handle, full);
  call.from = full;
  if (call.struck) return failed(&call);
  end_call(&call, 0);
  return 0;
}
int fsync(int handle) {
  return synced(handle, "fsync");
}
int fdatasync(int handle) {
  return synced(handle, "fdatasync");
}

int fcntl64(int handle, int command, ...) {
  typedef int (*Control)(int, int, ...);
  va_list more;
  va_start(more, command);
  void* const argument = va_arg(more, void*);
  va_end(more);
  const Control real = REAL("fcntl64", Control);
  if (!is_watched(handle) || command != F_SETLK) return real(handle, command, argument);
  const int lets_go = ((const struct flock*)argument)->l_type == F_UNLCK;
  struct Call call = begin_call((struct Record){.call = lets_go ? CALL_UNLOCK : CALL_LOCK});
  call.record.file = file_of(handle, &call.record.folder);
  if (call.struck) return failed(&call);
  const int done = real(handle, command, argument);
  end_call(&call, done != 0);
  return done;
}
int fcntl(int handle, int command, ...) {
  va_list more;
  va_start(more, command);
  void* const argument = va_arg(more, void*);
  va_end(more);
  return fcntl64(handle, command, argument);
}

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
