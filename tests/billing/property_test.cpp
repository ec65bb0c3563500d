// Any course of sheets, corrections, issues, payments and credits: sums add up, nothing is billed twice or forgotten,
// numbers have no gap, and what was frozen stays.
#include <rapidcheck.h>

#include <numeric>

#include "billing/ledger.h"
#include "billing/paper.h"
#include "helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kMonday = *read_day("2026-05-04");

int pick(int least, int past) {
  return *rc::gen::inRange(least, past);
}

/// Pieces of a few sizes and lengths. `whole`: sizes whose board feet are whole for every length.
std::vector<Fact> random_sheet(const SheetRef& sheet, bool whole) {
  static const std::vector<std::string> kWhole{"1x12", "2x6", "2x12", "4x6", "4x12"};
  static const std::vector<std::string> kAny{"1x4", "2x6", "5/4x6", "4x4", "3/4x5", "2x10", "1-1/8x7-1/2"};
  const std::vector<std::string>& sizes = whole ? kWhole : kAny;
  std::vector<Fact> facts;
  const int lines = pick(1, 5);
  for (int i = 0; i < lines; ++i) {
    Fact fact;
    fact.sheet = sheet;
    fact.species = pick(0, 2) == 0 ? "DF" : "WH";
    fact.size = *measure::read_size(sizes[static_cast<std::size_t>(pick(0, static_cast<int>(sizes.size())))]);
    fact.length = measure::feet(pick(8, 17));
    fact.count = pick(1, 30);
    facts.push_back(fact);
  }
  if (pick(0, 3) == 0) facts.push_back(stop(sheet, "waiting", 15 * pick(1, 8), "rain", true));
  if (pick(0, 4) == 0) facts.push_back(teeth(sheet, pick(1, 5), "metal", "T1"));
  if (pick(0, 4) == 0) facts.push_back(charge_line(sheet, "planing", Rational(pick(1, 400))));
  return facts;
}

std::string random_terms() {
  static const std::vector<std::string> kRounding{"total-whole", "total-hundredths", "line-whole",
                                                  "line-hundredths"};
  static const std::vector<std::string> kThickness{"as-cut", "next-quarter", "next-inch"};
  const std::string count = "count = { rounding = \"" + kRounding[static_cast<std::size_t>(pick(0, 4))] +
                            "\", thickness = \"" + kThickness[static_cast<std::size_t>(pick(0, 3))] +
                            "\", under_inch_as_inch = " + (pick(0, 2) == 0 ? "true" : "false") + " }\n";
  std::string toml = "[[price]]\nbasis = \"bf\"\nrate = 0." + std::to_string(pick(301, 999)) + "\n" + count;
  if (pick(0, 2) == 0) toml += "[[price]]\nbasis = \"mbf\"\nrate = 540\nthickness_from = \"4\"\n" + count;
  if (pick(0, 2) == 0) toml += "[[price]]\nbasis = \"piece\"\nrate = 3.35\nspecies = \"WH\"\n";
  toml += "[[charge]]\nname = \"waiting\"\nrate = 75\nper = \"hour\"\nstop = \"waiting\"\n";
  toml += "[[charge]]\nname = \"metal\"\nflat = 40\nrate = 9\nper = \"tooth\"\nstrike = true\n";
  toml += "[[charge]]\nname = \"planing\"\nrate = 0.055\nper = \"bf\"\ntax = \"planing\"\n";
  if (pick(0, 2) == 0) toml += "[[charge]]\nname = \"set-up\"\nflat = 150\nonce = true\n";
  if (pick(0, 2) == 0)
    toml += "[[charge]]\nname = \"discount\"\nrate = -5\nper = \"percent\"\nunasked = true\n";
  if (pick(0, 2) == 0) toml += "[[tax]]\nname = \"GST\"\nrate = 5\non = [\"sawing\", \"service\"]\n";
  if (pick(0, 2) == 0)
    toml += "[[tax]]\nname = \"VAT\"\nrate = 20\non = [\"planing\", \"sawing\"]\nincluded = true\n";
  return toml;
}

void check_sums(const Draft& draft) {
  Money lines;
  for (const Line& line : draft.lines) {
    lines = lines + line.amount;
    if (!line.rate || line.kind == LineKind::waived) continue;
    Rational quantity(line.quantity.units);
    for (int i = 0; i < line.quantity.places; ++i) quantity = quantity / Rational(10);
    RC_ASSERT(line.amount == measure::priced(quantity, *line.rate));  // as a hand calculator has it
  }
  RC_ASSERT(lines == draft.subtotal);
  Money total = draft.subtotal;
  for (const TaxRow& tax : draft.taxes) {
    RC_ASSERT(tax.added == (tax.included ? 0 : tax.amount.minor));
    total = total + Money{tax.added};
  }
  RC_ASSERT(total == draft.total);
}

/// A job's life: sheets with their facts, papers, and the texts they were frozen as.
struct Life {
  Terms terms;
  JobTerms job = job_terms("TER");
  std::vector<std::pair<SheetRef, std::vector<Fact>>> sheets;
  std::vector<Paper> papers;
  std::vector<std::string> frozen_texts;
  Ledger ledger;
  bool whole = false;

  [[nodiscard]] JobFacts now() const {
    JobFacts all;
    auto in_force = std::make_shared<Sheets>();
    for (const auto& [sheet, facts] : sheets) {
      in_force->emplace(key_of(sheet), sheet);
      for (Fact fact : facts) {
        fact.sheet = sheet;
        all.facts.push_back(fact);
      }
    }
    all.sheets = in_force;
    if (!all.facts.empty()) all.facts.push_back(once());
    return all;
  }
  [[nodiscard]] Draft draft() const {
    return make_draft(terms, job, now(), billed_of(papers, "TER", "TER"), {}, kMonday);
  }
  Paper begun(PaperKind kind) const {
    Paper paper;
    paper.kind = kind;
    paper.number =
        1 + std::count_if(papers.begin(), papers.end(), [&](const Paper& p) { return p.kind == kind; });
    paper.after = static_cast<std::int64_t>(papers.size());
    paper.day = kMonday;
    paper.job = "TER";
    paper.customer = "TER";
    return paper;
  }
  void keep(const Paper& paper) {
    if (!why_not(ledger, paper).empty()) return;
    papers.push_back(paper);
    frozen_texts.push_back(write_paper(paper));
    play(ledger, paper);
  }

  void post() {
    const SheetRef sheet{kMonday + static_cast<int>(sheets.size()), 1, 1, ""};
    sheets.emplace_back(sheet, random_sheet(sheet, whole));
  }
  void correct() {
    if (sheets.empty()) return;
    auto& [sheet, facts] = sheets[static_cast<std::size_t>(pick(0, static_cast<int>(sheets.size())))];
    ++sheet.revision;
    sheet.why = "counted again";
    const std::size_t at = static_cast<std::size_t>(pick(0, static_cast<int>(facts.size())));
    const int how = pick(0, 3);
    if (how == 0)
      facts.erase(facts.begin() + static_cast<std::ptrdiff_t>(at));
    else if (how == 1 && facts[at].kind == FactKind::pieces)
      facts[at].count = pick(1, 40);
    else
      append(facts, random_sheet(sheet, whole));
    if (facts.empty()) facts = random_sheet(sheet, whole);
  }
  void issue() {
    const Draft made = draft();
    check_sums(made);
    if (made.lines.empty()) return;
    Paper paper = begun(PaperKind::invoice);
    paper.called = std::to_string(paper.number);
    paper.amount = made.total;
    paper.lines = made.lines;
    paper.taxes = made.taxes;
    paper.sheets = made.sheets;
    paper.items = made.items;
    paper.sawing = made.sawing;
    paper.minimum = made.minimum;
    keep(paper);
    RC_ASSERT(draft().lines.empty());  // nothing is billed twice
  }
  std::int64_t some_invoice() const { return static_cast<std::int64_t>(ledger.invoices.size()); }
  void pay() {
    Paper paper = begun(PaperKind::payment);
    paper.amount = {pick(1, 90000)};
    const int to = pick(0, 3);
    if (to == 0 && some_invoice() > 0) paper.invoice = pick(1, static_cast<int>(some_invoice()) + 1);
    if (to != 1) paper.job = to == 2 ? "" : paper.job;
    keep(paper);
  }
  void give_back() {
    Paper paper = begun(PaperKind::refund);
    if (pick(0, 2) == 0) paper.job = "";
    paper.amount = {pick(1, 20000)};
    keep(paper);
  }
  void credit() {
    if (some_invoice() == 0) return;
    Paper paper = begun(PaperKind::credit);
    paper.invoice = pick(1, static_cast<int>(some_invoice()) + 1);
    paper.cancels = pick(0, 2) == 0;
    const InvoiceState& state = ledger.invoices.at(paper.invoice);
    paper.amount = paper.cancels ? state.total - state.credited - state.written_off : Money{pick(1, 20000)};
    keep(paper);
  }
  void write_off() {
    if (some_invoice() == 0) return;
    Paper paper = begun(PaperKind::write_off);
    paper.invoice = pick(1, static_cast<int>(some_invoice()) + 1);
    paper.amount = {pick(1, 5000)};
    keep(paper);
  }
};

void live(Life& life, int steps) {
  life.terms = terms_of(random_terms());
  for (int i = 0; i < steps; ++i) {
    switch (pick(0, 10)) {
      case 0:
      case 1:
        life.post();
        break;
      case 2:
      case 3:
        life.correct();
        break;
      case 4:
      case 5:
        life.issue();
        break;
      case 6:
        life.pay();
        break;
      case 7:
        life.give_back();
        break;
      case 8:
        life.credit();
        break;
      default:
        life.write_off();
        break;
    }
  }
}

}  // namespace

TEST_CASE("lines add to subtotal, tax and total, and every amount is its printed quantity times its rate") {
  CHECK(rc::check("sums", [] {
    Life life;
    life.terms = terms_of(random_terms());
    const int sheets = pick(1, 5);
    for (int i = 0; i < sheets; ++i) life.post();
    check_sums(life.draft());
  }));
}

TEST_CASE(
    "balance = billed - paid - credited - written off + given back, whatever happens in whatever order") {
  CHECK(rc::check("balance", [] {
    Life life;
    live(life, pick(5, 40));
    Money balance;
    for (const Paper& paper : life.papers) {
      const bool adds = paper.kind == PaperKind::invoice || paper.kind == PaperKind::refund;
      balance = adds ? balance + paper.amount : balance - paper.amount;
    }
    RC_ASSERT(life.ledger.balance("TER") == balance);
    const Money credit = life.ledger.credit_of("TER");
    RC_ASSERT(credit.minor >= 0);
    RC_ASSERT(life.ledger.deposit_of("TER").minor >= 0);
    for (const auto& [number, invoice] : life.ledger.invoices) {
      RC_ASSERT(invoice.open().minor >= 0);
      RC_ASSERT(credit.minor == 0 || invoice.open().minor == 0);  // credit does not lie idle beside a debt
    }
    RC_ASSERT(ageing(life.ledger, "TER", kMonday + 40).sum() - credit - life.ledger.deposit_of("TER") ==
              balance);
  }));
}

TEST_CASE("numbers have no gap and a frozen paper never changes") {
  CHECK(rc::check("frozen", [] {
    Life life;
    live(life, pick(5, 30));
    std::map<PaperKind, std::int64_t> last;
    for (std::size_t i = 0; i < life.papers.size(); ++i) {
      RC_ASSERT(life.papers[i].number == ++last[life.papers[i].kind]);
      RC_ASSERT(write_paper(life.papers[i]) == life.frozen_texts[i]);
      RC_ASSERT(write_paper(read_paper(life.frozen_texts[i])) == life.frozen_texts[i]);
    }
  }));
}

TEST_CASE(
    "all papers and the draft together are what one bill for everything would be, and the rest is "
    "explained") {
  CHECK(rc::check("whole job", [] {
    Life life;
    life.whole = pick(0, 2) == 0;
    live(life, pick(5, 40));
    std::vector<Draft> parts = drafts_of(life.papers, "TER", "TER");
    parts.push_back(life.draft());
    const Draft once = make_draft(life.terms, life.job, life.now(), {}, {}, kMonday);
    Money sum;
    std::size_t lines = once.lines.size() + once.taxes.size();
    for (const Draft& part : parts) {
      sum = sum + part.total;
      lines += part.lines.size() + part.taxes.size();
    }
    Money explained;
    for (const Difference& one : explain_difference(once, parts)) {
      RC_ASSERT(!one.words.empty());
      explained = explained + one.more;
    }
    RC_ASSERT(sum - once.total == explained);
    // a line can be off by half a foot at under 1.00, plus tax and discount on it
    const std::int64_t most = static_cast<std::int64_t>(lines) * 70;
    RC_ASSERT(explained.minor <= most);
    RC_ASSERT(explained.minor >= -most);
  }));
}

TEST_CASE("where every quantity is whole the papers add up to one bill to the cent") {
  CHECK(rc::check("whole quantities", [] {
    Life life;
    life.whole = true;
    live(life, 0);
    life.terms = terms_of(
        "[[price]]\nbasis = \"bf\"\nrate = 0.50\ncount = { rounding = \"total-whole\" }\n"
        "[[charge]]\nname = \"waiting\"\nrate = 60\nper = \"hour\"\nstop = \"waiting\"\n"
        "[[charge]]\nname = \"metal\"\nflat = 40\nrate = 9\nper = \"tooth\"\nstrike = true\n"
        "[[charge]]\nname = \"planing\"\nrate = 0.10\nper = \"bf\"\n"
        "[[charge]]\nname = \"set-up\"\nflat = 150\nonce = true\n");
    for (int i = 0; i < 30; ++i) {
      const int step = pick(0, 4);
      if (step == 0)
        life.post();
      else if (step == 1)
        life.correct();
      else if (step == 2)
        life.issue();
      else
        life.credit();
    }
    Money sum = life.draft().total;
    for (const Draft& part : drafts_of(life.papers, "TER", "TER")) sum = sum + part.total;
    RC_ASSERT(sum == make_draft(life.terms, life.job, life.now(), {}, {}, kMonday).total);
  }));
}
