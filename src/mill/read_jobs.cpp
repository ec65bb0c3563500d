// read_jobs.cpp -- what the mill file says of customers and jobs. Prices and agreements are read in price/.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

#include "base/error.h"
#include "base/text.h"
#include "mill/mill_tables.h"
#include "mill/spellings.h"
#include "sheet/read.h"

namespace kerfbook::book {
namespace {

/// A code is one word, and stands once.
std::string read_code(TomlTable& table, std::string_view what, std::set<std::string>& taken) {
  std::string code = table.text("code");
  const std::string name(what);
  if (code.empty()) {
    table.wrong_at("code", name + " without a code", "write code = \"TER\": the word a sheet calls it by");
  } else if (split_words(code).size() > 1) {
    table.wrong_at("code", "the code " + in_quotes(code) + " has a blank in it",
                   "write one word, as \"TER\"");
  } else if (!taken.insert(lower(code)).second) {
    table.wrong_at("code", "a second " + name + " with the code " + in_quotes(code),
                   "give each a code of its own");
  }
  return code;
}

Customer read_customer(TomlTable& table, std::set<std::string>& taken) {
  Customer customer;
  customer.code = read_code(table, "[[customer]]", taken);
  customer.name = table.text("name");
  customer.address = table.words("address");
  customer.phone = table.text("phone");
  customer.email = table.text("email");
  customer.tax_certificate = table.text("certificate");
  customer.note = table.text("note");
  table.finish();
  if (customer.name.empty()) customer.name = customer.code;
  return customer;
}

/// Cut-list lines are written as a sheet's tally lines, and read by the sheet's own reader.
Result<std::vector<CutLine>> read_cut_line(std::string_view text, bool metric) {
  constexpr int kLine = 2;  // after the sheet's first line, which a tally needs above it
  const auto read = sheet::read("sheet 2000-01-01\n" + std::string(text), {.metric = metric});
  for (const auto& found : read.found) {
    if (found.severity != Severity::error) continue;
    const int at = found.place.line == kLine ? std::max(found.place.column - 1, 0) : 0;
    return Slip{found.what, found.instead, at};
  }
  const auto& lines = read.sheet.lines;
  const auto* tally = lines.size() == 1 ? std::get_if<sheet::Tally>(&lines[0].fact) : nullptr;
  if (tally == nullptr || tally->sense != sheet::Sense::sawn) {
    return Slip{in_quotes(text) + " is no line of a cut list",
                "write it as \"2x6x16 12\" or \"2x6 12/16 8/12\"", 0};
  }
  std::vector<CutLine> cuts;
  for (const auto& item : tally->items) cuts.push_back({tally->size, item.length, item.pieces, tally->grade});
  return cuts;
}

void check_customer(TomlTable& table, const JobEntry& job, const Mill& mill) {
  if (job.customer.empty() || find_customer(mill, job.customer) != nullptr) return;
  std::vector<std::string> codes;
  for (const auto& customer : mill.customers) codes.push_back(customer.code);
  const std::string near = nearest(job.customer, codes);
  table.wrong_at("customer", "no [[customer]] has the code " + in_quotes(job.customer),
                 near.empty() ? "add one, with its name and address" : "did you mean " + near + "?");
}

void check_rule(TomlTable& table, const JobEntry& job, const Mill& mill) {
  if (job.rule.empty() || practice_named(mill, job.rule)) return;
  std::vector<std::string> names = scaling::practice_names();
  for (const auto& practice : mill.practices) names.push_back(practice.name);
  const std::string near = nearest(job.rule, names);
  const std::string why = scaling::why_not(job.rule);
  table.wrong_at("rule", in_quotes(job.rule) + " is no log rule",
                 near.empty() ? why : "did you mean " + near + "?");
}

CutList read_cut_list(TomlTable& table, bool metric, bool posted) {
  if (posted) return {table.words("cut_list"), metric};
  const auto parts = table.read_list<std::vector<CutLine>>(
      "cut_list", [metric](std::string_view text) { return read_cut_line(text, metric); });
  std::vector<CutLine> all;
  for (const auto& some : parts) all.insert(all.end(), some.begin(), some.end());
  return CutList(std::move(all));
}

JobEntry read_job(TomlTable& table, const Mill& mill, bool posted, std::set<std::string>& taken) {
  const bool metric = mill.units == measure::System::metric;
  JobEntry job;
  job.code = read_code(table, "[[job]]", taken);
  job.customer = table.text("customer");
  job.name = table.text("name");
  job.site = table.text("site");
  const std::string usual = job.customer.empty() ? "own" : "customer";
  job.owner = table.read<std::string>("owner", read_owner_word).value_or(usual);
  job.rule = table.text("rule");
  if (table.has("count")) {
    job.convention = mill.convention;
    read_count(table, *job.convention);
  }
  read_targets(table, metric, job.sizes);
  job.cut_list = read_cut_list(table, metric, posted);
  check_customer(table, job, mill);
  check_rule(table, job, mill);
  if (job.owner != "own" && job.customer.empty()) {
    table.wrong_at("owner", "wood of a customer, and no customer", "write customer = \"TER\"");
  }
  table.finish();
  return job;
}

}  // namespace

const std::vector<CutLine>& CutList::lines() const {
  for (const auto& text : std::exchange(written_, {})) {
    const auto some = read_cut_line(text, metric_);
    if (!some) throw Failed(fmt::format("the cut list of the mill file in the book: {}", some.slip().what));
    lines_.insert(lines_.end(), some->begin(), some->end());
  }
  return lines_;
}

void read_customers(TomlTable& root, Mill& mill) {
  std::set<std::string> taken;
  for (auto& table : root.tables("customer")) mill.customers.push_back(read_customer(table, taken));
}

void read_jobs(TomlTable& root, Mill& mill, bool posted) {
  std::set<std::string> taken;
  for (auto& table : root.tables("job")) mill.jobs.push_back(read_job(table, mill, posted, taken));
}

}  // namespace kerfbook::book
