#include "office/under_no_job.h"

#include <algorithm>
#include <tuple>
#include <unordered_map>

#include "base/error.h"
#include "base/text.h"
#include "book/store.h"
#include "office/draft_work.h"
#include "office/office.h"
#include "price/job_terms.h"

namespace kerfbook::billing {

namespace {

using book::Row;

/// Rows that no job pays: of no job, or, marked to be charged, of the mill's own work.
constexpr std::string_view kOwn = "job IN (SELECT id FROM job WHERE owner = 'own' OR code = 'own')";

/// Gathers the rows of each table, each with its sheet, into one entry a sheet and kind.
class Gathering {
 public:
  Gathering(const book::Book& book, Day to) : book_(book), store_(book.database()), to_(to) {
    for (const ChargeTerm& one : terms_of(book.mill()).charges) {
      moves_ = moves_ || one.move;
      strikes_ = strikes_ || one.strike;
    }
    jobs_ = store_.number("SELECT 1 FROM job WHERE code <> 'own' LIMIT 1").has_value();
  }

  std::vector<UnderNoJob> all() {
    if (jobs_) {
      sawing();
      logs();
      lumber();
      if (moves_) moves();
      if (strikes_) teeth();
    }
    stops();
    charges();
    std::stable_sort(out_.begin(), out_.end(), [](const UnderNoJob& a, const UnderNoJob& b) {
      return std::tie(a.day, a.shift, a.lines.front()) < std::tie(b.day, b.shift, b.lines.front());
    });
    return std::move(out_);
  }

 private:
  /// Row columns: day, shift, number, then the table's own.
  template <class Take>
  void each(const std::string& columns, const std::string& from, const std::string& where, Take&& take) {
    store_.each("SELECT day, shift, number, " + columns + " FROM " + from + " WHERE " + where +
                    " AND day <= ?1 ORDER BY day, shift, number",
                std::forward<Take>(take), to_);
  }

  /// The place of the row's entry in out_, made when it is the first of its kind on its sheet.
  std::size_t entry(const Row& row, const std::string& what, const std::string& content) {
    const Day day{static_cast<std::int32_t>(row.number(0))};
    const int shift = static_cast<int>(row.number(1));
    const std::string key = std::to_string(row.number(0)) + " " + std::to_string(shift) + " " + lower(what);
    const auto [at, fresh] = place_.emplace(key, out_.size());
    if (fresh) out_.push_back({day, shift, what, "", "", {}, ""});
    UnderNoJob& one = out_[at->second];
    one.content += (one.content.empty() ? "" : "\n") + content;
    const int line = static_cast<int>(row.number(2) / 1000);
    if (one.lines.empty() || one.lines.back() < line) one.lines.push_back(line);
    return at->second;
  }

  void say(std::size_t at, const std::string& words) {
    out_[at].words += (out_[at].words.empty() ? "" : "; ") + words;
  }

  void sawing() {
    std::vector<std::pair<std::size_t, int>> sums;
    each("from_minute, minutes", "sawing", "job IS NULL", [&](const Row& row) {
      const std::size_t at =
          entry(row, "sawing", std::to_string(row.number(3)) + " " + std::to_string(row.number(4)));
      if (sums.empty() || sums.back().first != at) sums.emplace_back(at, 0);
      sums.back().second += static_cast<int>(row.number(4));
    });
    for (const auto& [at, sum] : sums) say(at, "sawing time, " + write_duration(sum));
  }

  void logs() {
    std::vector<std::pair<std::size_t, int>> sums;
    each("l.tag, l.spec", "run r JOIN log l USING (day, shift, run)", "r.job IS NULL AND l.state = 'sawn'",
         [&](const Row& row) {
           const auto word = [&](int column) {
             return row.is_null(column) ? std::string() : row.text(column);
           };
           const std::size_t at = entry(row, "logs", word(3) + " " + word(4));
           if (sums.empty() || sums.back().first != at) sums.emplace_back(at, 0);
           ++sums.back().second;
         });
    for (const auto& [at, many] : sums)
      say(at, std::to_string(many) + (many == 1 ? " log sawn" : " logs sawn"));
  }

  void lumber() {
    struct Sum {
      std::size_t at = 0;
      std::int64_t pieces = 0;
      std::int64_t lumber = 0;
    };
    std::vector<Sum> sums;
    each("t.size, t.length, t.metric, t.pieces, t.lumber, t.form, r.species, t.grade",
         "run r JOIN tally t USING (day, shift, run)", "r.job IS NULL", [&](const Row& row) {
           std::string content;
           for (const int column : {3, 4, 5, 6, 9, 10})
             content += (row.is_null(column) ? "-" : std::to_string(row.number(column))) + " ";
           const std::size_t at = entry(row, "lumber", content + row.text(8));
           if (sums.empty() || sums.back().at != at) sums.push_back({at, 0, 0});
           sums.back().pieces += row.number(6);
           sums.back().lumber += row.number(7);
         });
    const auto units = book_.mill().units;
    for (const Sum& sum : sums) {
      const measure::Volume volume{sum.lumber, units};
      say(sum.at, grouped({sum.pieces, 0}) + (sum.pieces == 1 ? " piece, " : " pieces, ") +
                      (units == measure::System::metric ? grouped(shown(cubic_metres(volume), 3)) + " m³"
                                                        : grouped(shown(board_feet(volume), 2)) + " bf"));
    }
  }

  void moves() {
    each(
        "(SELECT name FROM site WHERE id = from_site), (SELECT name FROM site WHERE id = to_site), "
        "distance_micro, unit, minutes",
        "move", "job IS NULL", [&](const Row& row) {
          const std::string way = row.text(3) + " to " + row.text(4) + ", " +
                                  shortest(shown(Rational(row.number(5), 1'000'000), 6)) + " " + row.text(6);
          say(entry(row, "move", way + " " + std::to_string(row.number(7))), "move " + way);
        });
  }

  void teeth() {
    each("saw, action, teeth, log_tag, text", "tooth_work", "job IS NULL AND lower(cause) = 'metal'",
         [&](const Row& row) {
           const std::string log = row.text(6).empty() ? "" : ", log " + row.text(6);
           const std::string words = row.text(3) + " " + row.text(4) +
                                     (row.is_null(5) ? "" : " " + row.text(5)) + " for metal" + log;
           say(entry(row, "teeth", words + " " + row.text(7)), words);
         });
  }

  void stops() {
    const std::string metal = strikes_ && jobs_ ? " OR (job IS NULL AND lower(cause) = 'metal')" : "";
    each("cause, minutes, text, charge", "stop",
         "((charge = 1 AND (job IS NULL OR " + std::string(kOwn) + "))" + metal + ")", [&](const Row& row) {
           const std::string words = "stop for " + row.text(3) + ", " +
                                     write_duration(static_cast<int>(row.number(4))) +
                                     (row.text(5).empty() ? "" : ", " + row.text(5));
           say(entry(row, row.text(3), words + " " + row.text(6)), words);
         });
  }

  void charges() {
    each("name, quantity_micro, text", "charge", std::string(kOwn), [&](const Row& row) {
      const std::string words = row.text(3) + ", " + shortest(shown(Rational(row.number(4), 1'000'000), 6)) +
                                (row.text(5).empty() ? "" : ", " + row.text(5));
      say(entry(row, row.text(3), words), "charge " + words);
    });
  }

  const book::Book& book_;
  book::Store store_;
  Day to_;
  bool moves_ = false;
  bool strikes_ = false;
  bool jobs_ = false;
  std::unordered_map<std::string, std::size_t> place_;
  std::vector<UnderNoJob> out_;
};

std::string words_of_sheet(Day day, int shift) {
  return "the sheet of " + write_day(day) + (shift > 1 ? " shift " + std::to_string(shift) : "");
}

Paper waiver_of(const book::Book& book, const UnderNoJob& one, const Waiver& asked, Day day) {
  Paper paper = begun(papers_of(book), PaperKind::waiver, day);
  paper.job = kNoJob;
  paper.note = asked.note;
  paper.waiver = Waiver{one.day, one.shift, one.what, asked.note, asked.back, one.content};
  return paper;
}

}  // namespace

std::vector<UnderNoJob> under_no_job(const book::Book& book, Day to) {
  std::vector<UnderNoJob> all = Gathering(book, to).all();
  if (all.empty()) return all;
  const std::vector<Waiver> waivers =
      waivers_of(papers_about(book, std::string(kNoJob), ""), std::string(kNoJob));
  for (UnderNoJob& one : all) {
    const Waiver like{one.day, one.shift, one.what, "", false, one.content};
    for (const Waiver& waiver : waivers)
      if (waiver.same_charge(like) && waiver.content == one.content) one.let_go = waiver.note;
  }
  return all;
}

std::vector<LetGo> let_go(book::Book& book, const Waiver& waiver, Day day) {
  if (trim(waiver.note).empty()) throw Refused("a reason is needed: --why \"...\"");
  book::Turn turn(book);
  std::vector<UnderNoJob> found;
  std::vector<std::string> there;
  for (UnderNoJob& one : under_no_job(book, waiver.day)) {
    if (one.day != waiver.day || one.shift != waiver.shift || one.let_go.empty() == waiver.back) continue;
    there.push_back(one.what);
    if (same_word(waiver.charge, kAllOfIt) || same_word(waiver.charge, one.what))
      found.push_back(std::move(one));
  }
  if (found.empty()) {
    const std::string state = waiver.back ? " is let go" : " is open under no job";
    throw Refused(words_of_sheet(waiver.day, waiver.shift) +
                  (there.empty()
                       ? ": nothing" + state
                       : ": no '" + waiver.charge + "'" + state + "; there is " + join(there, ", ")));
  }
  std::vector<LetGo> done;
  for (const UnderNoJob& one : found) {
    Paper paper = waiver_of(book, one, waiver, day);
    post(book, paper);
    done.push_back({one.words, paper.mark});
  }
  turn.commit();
  return done;
}

}  // namespace kerfbook::billing
