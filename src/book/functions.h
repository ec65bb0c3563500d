// functions.h -- the trade's arithmetic for SQL, so that no report repeats it.
//
//   net_scale(PRACTICE, SPEC, METRIC)    net scale of a log, millionths of the practice's unit
//   gross_scale(PRACTICE, SPEC, METRIC)  gross scale, the same way
//   scale_unit(PRACTICE)                 'bf', 'ft3', 'm3', 'hoppus ft'
//   rule_words(PRACTICE)                 'Int. 1/4': the name people read; several with commas between them
//   times_over(A, B, C)                  A x B / C, worked out exactly and rounded once; NULL when one is NULL or C is 0
//   lumber_of(THICKNESS, WIDTH, LENGTH, METRIC)   nominal volume of a board, in the book's own counts
//   money_micro(MINOR)                   minor units of the book's currency as millionths of it
//
// PRACTICE is a name: one that the mill file defines, else a built-in one. SPEC is what log.spec and v_log.spec hold;
// METRIC is log.metric and may be left out in an inch book. NULL when SPEC is NULL or the rule needs a reading that
// was not taken. An unknown practice is an error.
#pragma once

#include "book/projector.h"

namespace kerfbook::book {

/// On this connection. `projector` gives the mill file in force and outlives the connection's statements.
void register_functions(SQLite::Database& database, Projector& projector);

}  // namespace kerfbook::book
