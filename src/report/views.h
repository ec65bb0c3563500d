// views.h -- the list of what a report may read, made from the schema itself: for README and for whoever writes one.
#pragma once

#include "book/book.h"
#include "render/document.h"

namespace kerfbook::report {

/// Every view and column, with the view's own comment from schema/views/ and the unit of the column.
render::Document views_document(const book::Book& book, const render::Style& style, Day today);

}  // namespace kerfbook::report
