/* record.h -- what the fault layer (layer.c) writes down of each call, one after the other, for the test to read. */
#pragma once

#include <stdint.h>

/* One call that touched the folder, or one that said something. `from` and `to` (paths) and the bytes that were
   written follow it in the log. */
struct Record {
  int32_t number; /* of the call, from 0; -1: an output, which is counted by itself */
  char call;      /* one of the letters below */
  char
      made; /* it made a file that was not there; of a name: what happened to it, 'l'ink 'r'ename 'u'nlink 'm'kdir */
  char folder;    /* it was done to a folder */
  char failed;    /* it changed nothing */
  uint64_t file;  /* the file's own number on its disk */
  int64_t at;     /* where in the file */
  int64_t length; /* how many bytes; of truncate the new length */
  uint32_t from_bytes;
  uint32_t to_bytes;
  uint32_t bytes;
  uint32_t unused;
};

/* The letters of the calls. */
#define CALL_OPEN 'o'
#define CALL_CLOSE 'c'
#define CALL_READ 'r'
#define CALL_WRITE 'w'
#define CALL_TRUNCATE 't'
#define CALL_SYNC 's'
#define CALL_NAME 'n'
#define CALL_LOCK 'l'
#define CALL_UNLOCK 'u'
#define CALL_SAY 'y' /* a write to standard output or standard error */
