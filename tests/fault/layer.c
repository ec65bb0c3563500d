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
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include "layer.h"

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

int below(const char* path, char full[PATH_MAX]) {
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

int is_on(void) {
  return layer.log >= 0;
}

int is_watched(int handle) {
  return layer.log >= 0 && handle >= 0 && handle < kMostHandles && layer.watched[handle];
}

void watch(int handle, char yes) {
  if (handle >= 0 && handle < kMostHandles) layer.watched[handle] = yes;
}

void path_of(int handle, char full[PATH_MAX]) {
  char link[64];
  snprintf(link, sizeof link, "/proc/self/fd/%d", handle);
  const long length = syscall(SYS_readlink, link, full, PATH_MAX - 1);
  full[length < 0 ? 0 : length] = '\0';
}

uint64_t file_of(int handle, char* folder) {
  struct stat now;
  if (fstat(handle, &now) != 0) return 0;
  *folder = S_ISDIR(now.st_mode);
  return now.st_ino;
}

uint64_t file_named(const char* path) {
  struct stat now;
  return lstat(path, &now) == 0 ? now.st_ino : 0;
}

/* ---- what happens to it ------------------------------------------------------------------------------------ */

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

struct Call begin_call(struct Record record) {
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

void end_call(struct Call* call, int failed) {
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

int failed(struct Call* call) {
  end_call(call, 1);
  errno = call->struck;
  return -1;
}
