// mill_tables.h -- the parts of the mill file's reader. Each fills its part of the Mill from its tables and notes
// every slip. Private to this room; the grammar stands in mill.h.
#pragma once

#include "mill/mill.h"
#include "mill/toml_table.h"

namespace kerfbook::book {

/// [mill], [capacity], [[saw]], [species], [grade], [lumber]: read_self.cpp. [mill] comes first of all: it says what
/// plain numbers mean.
void read_mill_table(TomlTable& root, Mill& mill);
void read_capacity(TomlTable& root, Mill& mill);
void read_saws(TomlTable& root, Mill& mill);
void read_lumber(TomlTable& root, Mill& mill);

/// [scale], [[practice]], [recovery], [count]: read_scale.cpp.
void read_scale(TomlTable& root, Mill& mill);
void read_recovery(TomlTable& root, Mill& mill);
/// The keys of a table `count` change what `convention` says.
void read_count(TomlTable& holder, measure::Convention& convention);

/// [[customer]], [[job]]: read_jobs.cpp. After all of the above. `posted`: the cut lists are known to be good.
void read_customers(TomlTable& root, Mill& mill);
void read_jobs(TomlTable& root, Mill& mill, bool posted);

/// [[cost]], [[service]]: read_costs.cpp.
void read_costs(TomlTable& root, Mill& mill);
void read_services(TomlTable& root, Mill& mill);

/// A table `target`, nominal size = size cut to: adds to `sizes` or sets the target of one that is there.
void read_targets(TomlTable& holder, bool metric, std::vector<NamedSize>& sizes);
/// A log's diameter: inches, in a metric book centimetres.
Result<measure::Length> read_log_diameter(std::string_view text, bool metric);

}  // namespace kerfbook::book
