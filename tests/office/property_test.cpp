// Any course of sheets, corrections, issues, payments and credits: sums add up, nothing is billed twice or forgotten,
// numbers have no gap, and what was frozen stays.
#include <rapidcheck.h>

#include <numeric>

#include "helpers.h"
#include "paper/ledger.h"
#include "paper/paper.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kMonday = *read_day("2026-05-04");

int pick(int least, int past) {
  return *rc::gen::inRange(least, past);
}

std::string one_of(const std::vector<std::string>& words) {
  return words[static_cast<std::size_t>(pick(0, static_cast<int>(words.size())))];
}

bool chance(int in) {
  return pick(0, in) == 0;
}

/// Pieces of a few sizes and lengths. `whole`: sizes whose board feet are whole for every length.
std::vector<Fact> random_sheet(const SheetRef& sheet, bool whole) {
  static const std::vector<std::string> kWhole{"1x12", "2x6", "2x12", "4x6", "4x12"};
  static const std::vector<std::string> kAny{"1x4", "2x6", "5/4x6", "4x4", "3/4x5", "2x10", "1-1/8x7-1/2"};
  std::vector<Fact> facts;
  const int lines = pick(1, 5);
  for (int i = 0; i < lines; ++i) {
    Fact fact;
    fact.sheet = sheet;
    fact.species = chance(2) ? "DF" : "WH";
    fact.size = *measure::read_size(one_of(whole ? kWhole : kAny));
    fact.length = measure::feet(pick(8, 17));
    if (!whole && chance(4)) fact.length.count += measure::kPerInch * pick(1, 12);
    fact.count = pick(1, 30);
    facts.push_back(fact);
  }
  if (!whole && chance(5)) {
    Fact feet = facts.front();
    feet.kind = FactKind::lineal;
    feet.length.count = 0;
    feet.count = pick(100, 200'000);
    facts.push_back(feet);
  }
  if (chance(3)) facts.push_back(stop(sheet, "waiting", 15 * pick(1, 8), "rain", true));
  if (chance(4)) facts.push_back(teeth(sheet, pick(1, 5), "metal", "T1"));
  if (chance(4)) facts.push_back(charge_line(sheet, "planing", Rational(pick(1, 400))));
  if (chance(2)) facts.push_back(sawing(sheet, pick(10, 500)));
  for (int logs = pick(0, 3); logs > 0; --logs)
    facts.push_back(log_fact(sheet, "T" + std::to_string(logs),
                             std::to_string(pick(6, 30)) + "x" + std::to_string(pick(6, 17)),
                             chance(4) ? "10%" : ""));
  return facts;
}

/// Any way of counting the language of the mill file has.
std::string random_count() {
  return "count = { rounding = \"" +
         one_of({"total-whole", "total-hundredths", "line-whole", "line-hundredths"}) + "\", thickness = \"" +
         one_of({"as-cut", "next-quarter", "next-inch"}) + "\", length = \"" +
         one_of({"as-written", "whole-foot-down", "even-foot-down"}) +
         "\", under_inch_as_inch = " + one_of({"true", "false"}) +
         ", surface_measure = " + one_of({"true", "false"}) + " }\n";
}

/// Taxes, and charges of every kind that comes with lumber, logs and what happened.
std::string random_charges() {
  std::string toml =
      "[[charge]]\nname = \"waiting\"\nrate = 75\nper = \"hour\"\nstop = \"waiting\"\n"
      "[[charge]]\nname = \"metal\"\nflat = 40\nrate = 9\nper = \"tooth\"\nstrike = true\n"
      "[[charge]]\nname = \"planing\"\nrate = 0.055\nper = \"bf\"\ntax = \"planing\"\n";
  if (chance(2)) toml += "[[charge]]\nname = \"set-up\"\nflat = 150\nonce = true\n";
  if (chance(3)) toml += "[[charge]]\nname = \"discount\"\nrate = -5\nper = \"percent\"\nautomatic = true\n";
  if (chance(3))
    toml +=
        "[[charge]]\nname = \"long\"\nrate = 0.035\nper = \"bf\"\nautomatic = true\nlength_over = \"12\"\n";
  if (chance(3))
    toml += "[[charge]]\nname = \"thick\"\nrate = 8\nper = \"log\"\nautomatic = true\ndiameter_from = 20\n";
  if (chance(2)) toml += "[[tax]]\nname = \"GST\"\nrate = 5\non = [\"sawing\", \"service\"]\n";
  if (chance(3)) toml += "[[tax]]\nname = \"PST\"\nrate = 7.25\non = \"sawing\"\ncertificate = false\n";
  if (chance(2))
    toml += "[[tax]]\nname = \"VAT\"\nrate = 20\non = [\"planing\", \"sawing\"]\nincluded = true\n";
  return toml;
}

/// Prices by the board foot, the thousand and the piece, with rates under 1.00 a foot.
std::string random_terms() {
  const std::string count = random_count();
  std::string toml = "[[price]]\nbasis = \"bf\"\nrate = 0." + std::to_string(pick(301, 999)) + "\n" + count;
  if (chance(2)) toml += "[[price]]\nbasis = \"mbf\"\nrate = 540\nthickness_from = \"4\"\n" + count;
  if (chance(3)) toml += "[[price]]\nbasis = \"piece\"\nrate = 3.35\nspecies = \"WH\"\nlength_over = \"6\"\n";
  return toml + random_charges();
}

/// Prices on every basis that is paid in money.
std::string any_terms() {
  static const std::vector<std::string> kBases{
      "bf\"\nrate = 0.487",         "mbf\"\nrate = 512.50", "log-scale\"\nrate = 0.333",
      "log-mbf\"\nrate = 455",      "log\"\nrate = 17.35",  "m3-log\"\nrate = 61.25",
      "m3-sawn\"\nrate = 187.77",   "hour\"\nrate = 83.50", "lineal-foot\"\nrate = 0.277",
      "lineal-metre\"\nrate = 1.1", "day\"\nrate = 812.50"};
  std::string toml = "[[price]]\nbasis = \"" + one_of(kBases) + "\n";
  if (chance(2)) toml += random_count();
  if (chance(3)) toml += "minimum_job = 250.00\n";
  if (chance(2)) toml += "[[price]]\nbasis = \"bf\"\nrate = 0.61\nspecies = \"WH\"\n" + random_count();
  if (chance(3))
    toml +=
        "[[price]]\nbasis = \"log-scale\"\nrate = 0.4\nspecies = \"DF\"\nrule = \"doyle\"\n"
        "minimum_log = \"12x8\"\n" +
        random_count();
  return toml + random_charges();
}

void check_sums(const Draft& draft) {
  Money lines;
  for (const BillLine& line : draft.lines) {
    lines = lines + line.amount;
    if (!line.rate || line.kind == LineKind::waived) continue;
    RC_ASSERT(line.amount == measure::priced(quantity_of(line), *line.rate));  // as a hand calculator has it
  }
  RC_ASSERT(lines == draft.subtotal);
  Money total = draft.subtotal;
  for (const TaxRow& tax : draft.taxes) {
    const std::int64_t charged = tax.excused.empty() ? tax.amount.minor : 0;
    const std::int64_t inside = tax.included ? tax.amount.minor : 0;
    RC_ASSERT(tax.added == charged - inside);  // what is not charged is taken off a price that has it
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
  std::vector<std::shared_ptr<const Priced>> lists;  ///< every list of prices there was
  int revision = 0;                                  ///< the one of now

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
  /// Each paper with the prices it was made by, when they are not those of now.
  [[nodiscard]] std::vector<Billed> before() const {
    std::vector<Billed> all = billed_of(papers, "TER", "TER");
    for (Billed& paper : all)
      if (paper.revision != revision) paper.by = lists.at(static_cast<std::size_t>(paper.revision));
    return all;
  }
  [[nodiscard]] Draft draft() const { return make_draft(terms, job, now(), before(), {}, kMonday); }
  void agree(const std::string& toml) {
    terms = terms_of(toml);
    revision = static_cast<int>(lists.size());
    lists.push_back(std::make_shared<Priced>(Priced{std::make_shared<Terms>(terms), job}));
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
    paper.revision = revision;
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

/// `prices_change`: now and then there is a new list.
void live(Life& life, int steps, bool prices_change = false) {
  life.agree(prices_change ? any_terms() : random_terms());
  for (int i = 0; i < steps; ++i) {
    if (prices_change && chance(12)) life.agree(any_terms());
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

TEST_CASE(
    "lines add to subtotal, tax and total on every basis, and every amount is its printed quantity times its "
    "rate") {
  CHECK(rc::check("sums", [] {
    Life life;
    life.terms = terms_of(chance(2) ? any_terms() : random_terms());
    if (chance(2)) life.job.certificate = "CERT-7";
    const int sheets = pick(1, 5);
    for (int i = 0; i < sheets; ++i) life.post();
    const Draft draft = life.draft();
    for (const std::string& problem : draft.problems)
      RC_ASSERT(problem.find("counted by its length") != std::string::npos);
    check_sums(draft);
  }));
}

TEST_CASE("the quantity billed is the tally counted by the convention, whichever it is") {
  CHECK(rc::check("quantity", [] {
    Life life;
    const std::string count = random_count();
    life.terms = terms_of("[[price]]\nbasis = \"bf\"\nrate = 0.487\n" + count + random_charges());
    const int sheets = pick(1, 4);
    for (int i = 0; i < sheets; ++i) life.post();
    const measure::Convention by = joined(life.job.convention, life.terms.prices.at(0).count);
    // each size line of the job as a customer would write it out, counted by the rules of measure/
    std::map<std::tuple<std::string, Size, Length>, std::int64_t> pieces;
    std::map<std::pair<std::string, Size>, Rational> lineal;
    for (const Fact& fact : life.now().facts) {
      if (fact.kind == FactKind::pieces) pieces[{fact.species, fact.size, fact.length}] += fact.count;
      if (fact.kind == FactKind::lineal)
        lineal[{fact.species, fact.size}] =
            lineal[{fact.species, fact.size}] + Rational(fact.count, measure::kPerFoot);
    }
    std::vector<Rational> lines;
    for (const auto& [line, many] : pieces)
      lines.push_back(counted_bf({std::get<1>(line), std::get<2>(line), many}, by));
    for (const auto& [line, feet] : lineal)
      lines.push_back(feet * in_inches(counted_thickness(line.second.thickness, by)) *
                      in_inches(line.second.width) / Rational(12));
    const bool whole =
        by.rounding == measure::BillRounding::total_whole || by.rounding == measure::BillRounding::line_whole;
    const bool each = by.rounding == measure::BillRounding::line_whole ||
                      by.rounding == measure::BillRounding::line_hundredths;
    const int places = whole ? 0 : 2;
    Rational exact;
    std::int64_t added = 0;
    for (const Rational& line : lines) {
      exact = exact + line;
      added += line.rounded(places);
    }
    const Draft draft = life.draft();
    const BillLine& sawn = draft.lines.at(0);
    RC_ASSERT(sawn.title == "Sawing");
    RC_ASSERT(sawn.quantity == (Decimal{each ? added : exact.rounded(places), places}));
  }));
}

TEST_CASE(
    "balance = billed - paid - credited - written off + given back, whatever happens in whatever order") {
  CHECK(rc::check("balance", [] {
    Life life;
    live(life, pick(5, 40), true);
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
    live(life, pick(5, 30), true);
    std::map<PaperKind, std::int64_t> last;
    for (std::size_t i = 0; i < life.papers.size(); ++i) {
      RC_ASSERT(life.papers[i].number == ++last[life.papers[i].kind]);
      RC_ASSERT(write_paper(life.papers[i]) == life.frozen_texts[i]);
      const Paper thawed = read_paper(life.frozen_texts[i]);
      RC_ASSERT(write_paper(thawed) == life.frozen_texts[i]);
      RC_ASSERT(thawed.lines == life.papers[i].lines);
      RC_ASSERT(thawed.taxes == life.papers[i].taxes);
      RC_ASSERT(thawed.sheets == life.papers[i].sheets);
      RC_ASSERT(thawed.items.size() == life.papers[i].items.size());
      for (std::size_t k = 0; k < thawed.items.size(); ++k) {
        const Item& one = thawed.items[k];
        const Item& was = life.papers[i].items[k];
        RC_ASSERT(identity(one) == identity(was));
        RC_ASSERT(one.rate == was.rate);
        RC_ASSERT(one.quantity == was.quantity);
        RC_ASSERT((one.count == was.count && one.pieces == was.pieces && one.size_line == was.size_line));
      }
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
