/* floor.c -- the least a program can do that keeps the same facts: plain C on libsqlite3, without a grammar, checks,
 * exact figures or a layout. program_bench runs it beside kerfbook and compares the two.
 *
 *   floor ask BOOK FILE.sql DAY   opens the book to read it, runs the file's statements with :day bound, prints the rows
 *   floor keep DB BOOK [DAY]      puts the very rows of the book, all or those of a day and the newest entry, into tables
 *                                 like its own, in one transaction, as safely as a book is written
 */
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static sqlite3* db;

static void must(int code) {
  if (code == SQLITE_OK || code == SQLITE_ROW || code == SQLITE_DONE) return;
  fprintf(stderr, "floor: %s\n", sqlite3_errmsg(db));
  exit(3);
}

static char* text_of(const char* name) {
  FILE* const file = fopen(name, "rb");
  if (file == NULL || fseek(file, 0, SEEK_END) != 0) {
    perror(name);
    exit(3);
  }
  const long size = ftell(file);
  char* const text = malloc((size_t)size + 1);
  rewind(file);
  if (text == NULL || fread(text, 1, (size_t)size, file) != (size_t)size) exit(3);
  text[size] = '\0';
  fclose(file);
  return text;
}

static void ask(const char* sql, int day) {
  while (*sql != '\0') {
    sqlite3_stmt* statement = NULL;
    must(sqlite3_prepare_v2(db, sql, -1, &statement, &sql));
    if (statement == NULL) break;
    const int at = sqlite3_bind_parameter_index(statement, ":day");
    if (at > 0) must(sqlite3_bind_int(statement, at, day));
    int code = 0;
    while ((code = sqlite3_step(statement)) == SQLITE_ROW) {
      for (int i = 0; i < sqlite3_column_count(statement); ++i) {
        const unsigned char* const text = sqlite3_column_text(statement, i);
        printf(i == 0 ? "%s" : "\t%s", text == NULL ? (const unsigned char*)"" : text);
      }
      printf("\n");
    }
    must(code);
    must(sqlite3_finalize(statement));
  }
}

static sqlite3_stmt* ready(const char* format, const char* name) {
  char* const sql = sqlite3_mprintf(format, name);
  sqlite3_stmt* statement = NULL;
  must(sqlite3_prepare_v2(db, sql, -1, &statement, NULL));
  sqlite3_free(sql);
  return statement;
}

/* Every row of `table` of the other file, or those of a day, put into this one. */
static void keep_rows(const char* table, int day) {
  sqlite3_stmt* const columns = ready("SELECT name FROM pragma_table_info(%Q, 'source')", table);
  char* names = sqlite3_mprintf("");
  char* marks = sqlite3_mprintf("");
  int count = 0;
  int by_day = 0;
  while (sqlite3_step(columns) == SQLITE_ROW) {
    const char* const name = (const char*)sqlite3_column_text(columns, 0);
    by_day = by_day || strcmp(name, "day") == 0;
    char* const more = sqlite3_mprintf("%s%s%s", names, count == 0 ? "" : ", ", name);
    char* const mark = sqlite3_mprintf("%s%s?", marks, count == 0 ? "" : ", ");
    sqlite3_free(names);
    sqlite3_free(marks);
    names = more;
    marks = mark;
    ++count;
  }
  sqlite3_finalize(columns);
  const int is_journal = strcmp(table, "journal") == 0;
  if (day != 0 && !by_day && !is_journal) return;
  char* const select = sqlite3_mprintf("SELECT %s FROM source.%s%s", names, table,
                                       day == 0     ? ""
                                       : is_journal ? " WHERE entry = (SELECT max(entry) FROM source.journal)"
                                                    : " WHERE day = ?");
  char* const insert = sqlite3_mprintf("INSERT INTO main.%s (%s) VALUES (%s)", table, names, marks);
  sqlite3_stmt* const from = ready("%s", select);
  sqlite3_stmt* const to = ready("%s", insert);
  if (day != 0 && !is_journal) must(sqlite3_bind_int(from, 1, day));
  while (sqlite3_step(from) == SQLITE_ROW) {
    for (int i = 0; i < count; ++i) must(sqlite3_bind_value(to, i + 1, sqlite3_column_value(from, i)));
    must(sqlite3_step(to));
    must(sqlite3_reset(to));
  }
  sqlite3_finalize(from);
  sqlite3_finalize(to);
  sqlite3_free(select);
  sqlite3_free(insert);
  sqlite3_free(names);
  sqlite3_free(marks);
}

static void keep(const char* source, int day) {
  sqlite3_stmt* const attach = ready("ATTACH %Q AS source", source);
  must(sqlite3_step(attach));
  sqlite3_finalize(attach);
  must(sqlite3_exec(db, "BEGIN IMMEDIATE", NULL, NULL, NULL));
  const char* const things =
      "SELECT sql FROM source.sqlite_schema WHERE type IN ('table', 'index') AND sql IS NOT NULL";
  sqlite3_stmt* const make = ready("%s", things);
  while (day == 0 && sqlite3_step(make) == SQLITE_ROW)
    must(sqlite3_exec(db, (const char*)sqlite3_column_text(make, 0), NULL, NULL, NULL));
  sqlite3_finalize(make);
  sqlite3_stmt* const tables = ready("%s", "SELECT name FROM source.sqlite_schema WHERE type = 'table'");
  while (sqlite3_step(tables) == SQLITE_ROW) keep_rows((const char*)sqlite3_column_text(tables, 0), day);
  sqlite3_finalize(tables);
  must(sqlite3_exec(db, "COMMIT", NULL, NULL, NULL));
}

int main(int count, char** words) {
  if (count < 4) return 2;
  const int reads = strcmp(words[1], "ask") == 0;
  must(sqlite3_open_v2(words[2], &db,
                       reads ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL));
  must(sqlite3_exec(db, "PRAGMA synchronous = EXTRA", NULL, NULL, NULL));
  if (reads) {
    char* const sql = text_of(words[3]);
    ask(sql, count > 4 ? atoi(words[4]) : 0);
    free(sql);
  } else {
    keep(words[3], count > 4 ? atoi(words[4]) : 0);
  }
  sqlite3_close(db);
  return 0;
}
