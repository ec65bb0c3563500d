/* layer_files.c -- the calls on files in place of the C library's: opening, reading, writing, lengths, syncs, locks. */
#include "layer.h"

#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/uio.h>
#include <unistd.h>

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
  if (is_on() && (handle == STDOUT_FILENO || handle == STDERR_FILENO)) return say(handle, bytes, length);
  if (!is_watched(handle)) return real(handle, bytes, length);
  struct Call call = begin_move(handle, CALL_WRITE, lseek(handle, 0, SEEK_CUR), &length);
  call.bytes = bytes;
  return call.struck ? failed(&call) : end_move(&call, real(handle, bytes, length));
}

ssize_t writev(int handle, const struct iovec* parts, int many) {
  typedef ssize_t (*Write)(int, const struct iovec*, int);
  const int told = is_on() && (handle == STDOUT_FILENO || handle == STDERR_FILENO);
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
