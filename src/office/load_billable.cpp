// load_billable.cpp -- reading a job's facts through the book's views.
#include "office/load_billable.h"

#include <unordered_map>
#include <utility>

#include "base/error.h"
#include "base/text.h"
#include "book/store.h"
#include "office/bundle.h"
#include "sheet/raw_log.h"

namespace kerfbook::billing {

namespace {

using book::Row;
using book::Store;

/// "(SELECT value ...)": the jobs or buyers asked for, handed over as one JSON list.
constexpr std::string_view kAsked = "(SELECT value FROM json_each(?1))";

std::string listed(const std::vector<std::int64_t>& ids) {
  std::string list = "[";
  for (const std::int64_t id : ids) list += (list.size() > 1 ? "," : "") + std::to_string(id);
  return list + "]";
}

/// The words of one small table by their number, read once: the long tables hold numbers.
class WordsById {
 public:
  WordsById(Store& store, const std::string& table, const std::string& column) {
    store.each("SELECT id, " + column + " FROM " + table,
               [&](const Row& row) { words_[row.number(0)] = row.text(1); });
  }
  [[nodiscard]] const std::string& of(const Row& row, int column) const {
    static const std::string kNone;
    if (row.is_null(column)) return kNone;
    const auto at = words_.find(row.number(column));
    return at == words_.end() ? kNone : at->second;
  }

 private:
  std::unordered_map<std::int64_t, std::string> words_;
};

std::shared_ptr<const Sheets> sheets_up_to(Store& store, Day to) {
  auto sheets = std::make_shared<Sheets>();
  store.each(
      "SELECT day, shift, revision FROM sheet WHERE day <= ? ORDER BY day, shift",
      [&](const Row& row) {
        const SheetRef sheet{Day{static_cast<std::int32_t>(row.number(0))}, static_cast<int>(row.number(1)),
                             static_cast<int>(row.number(2)), ""};
        sheets->emplace_hint(sheets->end(), key_of(sheet), sheet);
      },
      to);
  return sheets;
}

/// Reads the facts of several jobs, or of several buyers' sales, up to a day, each table gone through once.
class Loader {
 public:
  Loader(const book::Book& book, Day to)
      : book_(book),
        store_(book.database()),
        to_(to),
        sheets_(sheets_up_to(store_, to)),
        species_(store_, "species", "code"),
        grades_(store_, "grade", "code"),
        sites_(store_, "site", "name") {
    store_.each("SELECT id, label, metric FROM size",
                [&](const Row& row) { sizes_[row.number(0)] = size_of(row.text(1), row.number(2) != 0); });
  }

  /// In the order given; a job the book does not know has no facts.
  std::vector<JobFacts> jobs(const std::vector<std::string>& codes) {
    std::vector<std::int64_t> ids;
    start(codes.size());
    for (std::size_t i = 0; i < codes.size(); ++i) {
      const auto id = store_.number("SELECT id FROM job WHERE code = ?", codes[i]);
      if (!id) continue;
      place_[*id] = i;
      ids.push_back(*id);
    }
    asked_ = listed(ids);
    tally();
    logs();
    sawing();
    stops();
    teeth();
    charges();
    moves();
    for (JobFacts& one : out_)
      if (!one.facts.empty()) once(one);
    reasons(codes, false);
    return std::move(out_);
  }

  std::vector<JobFacts> sales(const std::vector<std::string>& buyers) {
    start(buyers.size());
    std::unordered_map<std::string, std::size_t> place;
    for (std::size_t i = 0; i < buyers.size(); ++i) place.emplace(lower(buyers[i]), i);
    store_.each(
        "SELECT buyer, day, shift, species, grade, bundle, size, length, metric, pieces, rate_micro, "
        "rate_per, form FROM sold WHERE day <= ? ORDER BY day, shift, number",
        [&](const Row& row) {
          const auto at = place.find(lower(row.text(0)));
          if (at == place.end()) return;
          Fact& fact = add(out_[at->second], row, 1, FactKind::sold);
          lumber(fact, row, 4);
          fact.species = species_.of(row, 3);
          name_wood(fact);
          const bool lineal = row.text(12) == "lineal";
          fact.count = lineal ? fact.length.count : row.number(9);
          if (lineal) fact.length.count = 0;
          if (const auto rate = row.maybe(10)) fact.agreed = Rational(*rate, 1'000'000);
          fact.agreed_per = row.text(11);
        },
        to_);
    for (const SoldBundle& sold : sold_bundles(book_, to_)) {
      const auto at = place.find(lower(sold.buyer));
      if (at != place.end()) add_bundle(out_[at->second], sold);
    }
    reasons(buyers, true);
    return std::move(out_);
  }

 private:
  /// Why sheets were corrected, each only for whom the correction concerns.
  void reasons(const std::vector<std::string>& asked, bool sale) {
    std::unordered_map<std::string, std::size_t> place;
    for (std::size_t i = 0; i < asked.size(); ++i) place.emplace(lower(asked[i]), i);
    store_.each(
        "SELECT who, day, shift, revision, why FROM corrected WHERE sale = ? AND day <= ? "
        "ORDER BY day, shift, revision",
        [&](const Row& row) {
          const auto at = place.find(lower(row.text(0)));
          if (at == place.end()) return;
          const SheetKey key{Day{static_cast<std::int32_t>(row.number(1))}, static_cast<int>(row.number(2))};
          out_[at->second].reasons[key].push_back({static_cast<int>(row.number(3)), row.text(4)});
        },
        sale, to_);
  }

  /// For one price it is one thing; by the price list, what is in it.
  void add_bundle(JobFacts& to, const SoldBundle& sold) {
    Fact common;
    common.sheet = sheets_->at({sold.day, sold.shift});
    common.bundle = sold.tag;
    if (sold.price || sold.lines.empty()) {
      Fact& fact = to.facts.emplace_back(common);
      fact.kind = FactKind::bundle;
      fact.name = sold.tag;
      fact.text = sold.words(book_.mill());
      fact.agreed = sold.price;
      return;
    }
    for (const BundleLine& line : sold.lines) {
      Fact& fact = to.facts.emplace_back(common);
      fact.kind = FactKind::sold;
      fact.species = line.species;
      fact.grade = line.grade;
      name_wood(fact);
      fact.size = line.size;
      fact.length = line.length;
      fact.count = line.count;
    }
  }

  void name_wood(Fact& fact) const {
    fact.species_name = name_of(book_.mill().species, fact.species);
    fact.grade_name = name_of(book_.mill().grades, fact.grade);
  }

  void start(std::size_t many) {
    out_.assign(many, {});
    for (JobFacts& one : out_) one.sheets = sheets_;
  }

  static Size size_of(const std::string& label, bool metric) {
    const auto size = measure::read_size(label, metric);
    if (!size) throw Failed("the book has a size '" + label + "' that cannot be read; run verify");
    return *size;
  }

  /// A fact of the sheet whose day and shift stand from column `day` on.
  Fact& add(JobFacts& to, const Row& row, int day, FactKind kind) {
    Fact& fact = to.facts.emplace_back();
    fact.kind = kind;
    fact.sheet =
        sheets_->at({Day{static_cast<std::int32_t>(row.number(day))}, static_cast<int>(row.number(day + 1))});
    return fact;
  }
  /// The same where the row begins with the job's number.
  Fact& add(const Row& row, FactKind kind) { return add(out_[place_.at(row.number(0))], row, 1, kind); }

  /// grade, bundle, size, length, metric from column `first` on.
  void lumber(Fact& fact, const Row& row, int first) const {
    fact.grade = grades_.of(row, first);
    if (!row.is_null(first + 1)) fact.bundle = row.text(first + 1);
    fact.size = sizes_.at(row.number(first + 2));
    fact.length = {row.number(first + 3),
                   row.number(first + 4) != 0 ? measure::System::metric : measure::System::inch};
  }

  void tally() {
    static const std::string kSql =
        "SELECT r.job, t.day, t.shift, r.species, t.grade, t.bundle, t.size, t.length, t.metric, t.pieces, "
        "t.form, t.sense, r.site FROM run r JOIN tally t ON t.day = r.day AND t.shift = r.shift AND "
        "t.run = r.run WHERE r.job IN " +
        std::string(kAsked) + " AND r.day <= ?2 ORDER BY t.day, t.shift, t.number";
    store_.each(
        kSql,
        [&](const Row& row) {
          const bool lineal = row.text(10) == "lineal";
          Fact& fact = add(row, lineal ? FactKind::lineal : FactKind::pieces);
          fact.species = species_.of(row, 3);
          lumber(fact, row, 4);
          fact.site = sites_.of(row, 12);
          fact.count = lineal ? fact.length.count * (row.text(11) == "sawn" ? 1 : -1) : row.number(9);
          if (lineal) fact.length.count = 0;
        },
        asked_, to_);
  }

  void logs() {
    static const std::string kSql =
        "SELECT r.job, l.day, l.shift, r.species, l.tag, l.spec, l.metric, r.site, "
        // a tag is measured by its newest line before it that is no sawing, as when the sheet was posted
        "CASE WHEN l.borrowed THEN (SELECT sheet.revision FROM log source JOIN sheet USING (day, shift) "
        "WHERE source.tag = l.tag AND source.state <> 'sawn' AND source.spec IS NOT NULL AND "
        "(source.day, source.shift) < (l.day, l.shift) ORDER BY day DESC, shift DESC, source.number DESC "
        "LIMIT 1) END FROM run r "
        "JOIN log l ON l.day = r.day AND l.shift = r.shift AND l.run = r.run WHERE l.state = 'sawn' AND "
        "r.job IN " +
        std::string(kAsked) + " AND r.day <= ?2 ORDER BY l.day, l.shift, l.number";
    store_.each(
        kSql,
        [&](const Row& row) {
          Fact& fact = add(row, FactKind::log);
          fact.species = species_.of(row, 3);
          if (!row.is_null(4)) fact.name = row.text(4);
          fact.site = sites_.of(row, 7);
          fact.source_corrected = row.maybe(8).value_or(1) > 1;
          if (row.is_null(5)) return;
          const auto& spec = spec_of(row.text(5), row.number(6) != 0);
          if (!spec) return;
          fact.measured = true;
          fact.log = spec->measure;
          fact.defects = spec->defects;
          fact.length = spec->measure.length;
        },
        asked_, to_);
  }

  /// Logs of one measure are many, and reading it is what takes longest.
  const std::optional<book::LogSpec>& spec_of(const std::string& text, bool metric) {
    const auto [at, unknown] = specs_.try_emplace((metric ? "m " : "i ") + text);
    if (unknown) at->second = book::read_spec(text, metric);
    return at->second;
  }

  /// `columns` of the table's rows that stand under a job asked for.
  template <class Take>
  void each_of(const std::string& columns, const std::string& table, Take&& take,
               const std::string& order = "ORDER BY day, shift, number") {
    store_.each("SELECT job, day, shift, " + columns + " FROM " + table + " WHERE job IN " +
                    std::string(kAsked) + " AND day <= ?2 " + order,
                std::forward<Take>(take), asked_, to_);
  }

  /// One fact a sheet: the spans of a day are billed as their sum.
  void sawing() {
    each_of(
        "sum(minutes)", "sawing", [&](const Row& row) { add(row, FactKind::sawing).count = row.number(3); },
        "GROUP BY job, day, shift ORDER BY day, shift");
  }

  void stops() {
    each_of("cause, minutes, text, charge", "stop", [&](const Row& row) {
      Fact& fact = add(row, FactKind::stop);
      fact.name = row.text(3);
      fact.minutes = static_cast<int>(row.number(4));
      fact.text = row.text(5);
      fact.chargeable = row.number(6) != 0;
    });
  }

  void teeth() {
    each_of("saw, cause, log_tag, teeth, text", "tooth_work", [&](const Row& row) {
      Fact& fact = add(row, FactKind::teeth);
      fact.name = row.text(3);
      fact.cause = row.text(4);
      fact.log_tag = row.text(5);
      fact.quantity = row.maybe(6).value_or(0);
      fact.text = row.text(7);
    });
  }

  void charges() {
    each_of("name, quantity_micro, text", "charge", [&](const Row& row) {
      Fact& fact = add(row, FactKind::charge);
      fact.name = row.text(3);
      fact.quantity = Rational(row.number(4), 1'000'000);
      fact.text = row.text(5);
    });
  }

  void moves() {
    each_of("from_site, to_site, distance_micro, unit, minutes", "move", [&](const Row& row) {
      Fact& fact = add(row, FactKind::move);
      fact.name = sites_.of(row, 3);
      fact.text = sites_.of(row, 4);
      fact.quantity = Rational(row.number(5), 1'000'000);
      fact.kilometres = row.text(6) == "km";
      fact.minutes = static_cast<int>(row.number(7));
    });
  }

  static void once(JobFacts& job) {
    Fact& fact = job.facts.emplace_back();
    fact.kind = FactKind::once;
    fact.sheet = {Day{}, 0, 0, ""};
  }

  const book::Book& book_;
  Store store_;
  Day to_;
  std::shared_ptr<const Sheets> sheets_;
  WordsById species_;
  WordsById grades_;
  WordsById sites_;
  std::unordered_map<std::int64_t, Size> sizes_;
  std::unordered_map<std::string, std::optional<book::LogSpec>> specs_;
  std::unordered_map<std::int64_t, std::size_t> place_;  ///< of a job asked for, by its number
  std::string asked_;
  std::vector<JobFacts> out_;
};

}  // namespace

JobFacts job_facts(const book::Book& book, const std::string& job, Day to) {
  return std::move(Loader(book, to).jobs({job}).front());
}

std::vector<JobFacts> job_facts(const book::Book& book, const std::vector<std::string>& jobs, Day to) {
  return Loader(book, to).jobs(jobs);
}

JobFacts sale_facts(const book::Book& book, const std::string& buyer, Day to) {
  return std::move(Loader(book, to).sales({buyer}).front());
}

std::vector<JobFacts> sale_facts(const book::Book& book, const std::vector<std::string>& buyers, Day to) {
  return Loader(book, to).sales(buyers);
}

}  // namespace kerfbook::billing
