// layout.h -- what every paper is laid out of: the head, addresses, columns, totals, cautions.
#pragma once

#include <string>
#include <vector>

#include "mill/mill.h"
#include "price/terms.h"
#include "render/document.h"

namespace kerfbook::billing {

/// A document with the mill's name, address, tax number and logo, made on `day`.
render::Document letter(const book::Mill& mill, const std::string& name, const std::string& title, Day day);
/// The customer's address block: a customer of the mill file, or a name alone.
/// Where tax is charged or quoted, with the exemption certificate on file.
void add_party(render::Document& paper, const book::Mill& mill, const std::string& customer,
               const std::string& heading, bool with_certificate = false);
void add_head(render::Document& paper, const std::string& label, render::Cell value,
              render::ColumnKind kind = render::ColumnKind::text);

render::Cell money_cell(Money sum, const book::Mill& mill);
/// A rate: with the currency's places, or as many more as it has.
render::Cell rate_cell(const Rational& rate, const book::Mill& mill);

render::Column text_column(const std::string& name, const std::string& heading);
render::Column day_column(const std::string& name, const std::string& heading);
render::Column count_column(const std::string& name, const std::string& heading,
                            const std::string& unit = "");
render::Column decimal_column(const std::string& name, const std::string& heading, const std::string& unit,
                              int places);
render::Column money_column(const std::string& name, const std::string& heading, const book::Mill& mill);
render::Column summed(render::Column column);  ///< with a total
/// Totals under the summed columns; and, where the printed lines do not add to them, a note that says so.
void foot(render::Table& table, const book::Mill& mill);

/// Takes out a column of text in which nothing stands: it says nothing.
void drop_empty(render::Table& table, std::size_t column);

// Cautions that stand on papers (DESIGN: where they matter).
extern const char* const kTaxCaution;
extern const char* const kScaleCaution;
extern const char* const kBilledScaleCaution;  ///< where the scale is what is paid for
extern const char* const kGradeCaution;

/// A table with empty rows, to be filled in by hand.
render::Table ruled_table(const std::string& name, const std::string& title,
                          const std::vector<std::string>& headings, std::size_t rows);

}  // namespace kerfbook::billing
