// sheet_rows.h -- the rows of one sheet: its facts, each with what the book works out from it.
#pragma once

#include "book/projector.h"

namespace kerfbook::book {

/// Writes every row of a sheet but the struck ones. `then` is the mill file its logs are scaled by, `now` the
/// newest one, by which its boards are sized.
void write_sheet_rows(Store& store, Words& words, const SheetEntry& entry, MillInForce& then,
                      MillInForce& now);

/// Writes the lines of earlier revisions that the next revision no longer had, each with that revision's reason.
/// `revisions` is not empty and in order.
void write_struck_rows(Store& store, Words& words, const std::vector<SheetEntry>& revisions, const Mill& now);

/// Writes which jobs and buyers each revision after the first changed something of, with its reason.
void write_corrected_rows(Store& store, const std::vector<SheetEntry>& revisions);

}  // namespace kerfbook::book
