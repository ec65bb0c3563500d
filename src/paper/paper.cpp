// paper.cpp -- a paper as the journal keeps it.
#include "paper/paper.h"

#include <algorithm>
#include <array>
#include <set>
#include <stdexcept>

#include "base/error.h"
#include "base/text.h"
#include "book/copy.h"
#include "paper/paper_json.h"

namespace kerfbook::billing {

namespace {

constexpr std::array<std::string_view, kPaperKinds> kKindWords{
    "invoice", "division", "payment", "refund", "credit", "write-off", "waiver", "load", "take-back"};

Paper thaw_paper(const Json& json) {
  Paper paper;
  const std::optional<PaperKind> kind = read_paper_kind(json.at("paper").get<std::string>());
  if (!kind) throw std::invalid_argument("a paper of an unknown kind");
  paper.kind = *kind;
  paper.number = json.at("number").get<std::int64_t>();
  paper.after = json.at("after").get<std::int64_t>();
  paper.day = thaw_day(json.at("day"));
  paper.job = json.at("job").get<std::string>();
  paper.customer = json.at("customer").get<std::string>();
  paper.amount.minor = json.at("amount").get<std::int64_t>();
  paper.note = json.at("note").get<std::string>();
  paper.called = json.at("called").get<std::string>();
  paper.due = thaw_maybe_day(json.at("due"));
  paper.from = thaw_maybe_day(json.at("from"));
  paper.to = thaw_maybe_day(json.at("to"));
  paper.sawing.minor = json.at("sawing").get<std::int64_t>();
  paper.minimum.minor = json.at("minimum").get<std::int64_t>();
  paper.settled.minor = json.at("settled").get<std::int64_t>();
  paper.lines = thaw_list(json.at("lines"), thaw_line);
  paper.taxes = thaw_list(json.at("taxes"), thaw_tax);
  paper.sheets = thaw_list(json.at("sheets"), thaw_sheet);
  paper.items = thaw_items(json.at("items"));
  if (!json.at("split").is_null()) paper.split = thaw_split(json.at("split"));
  paper.invoice = json.at("invoice").get<std::int64_t>();
  paper.cancels = json.at("cancels").get<bool>();
  paper.method = json.at("method").get<std::string>();
  if (!json.at("waiver").is_null()) paper.waiver = thaw_waiver(json.at("waiver"));
  if (json.contains("load")) paper.load = thaw_list(json.at("load"), thaw_load_line);  // older ones have none
  paper.revision = json.value("mill", 0);
  paper.slip = json.value("slip", std::int64_t{0});
  if (json.contains("document")) paper.document = thaw_document(json.at("document"));  // see papers_about
  return paper;
}

}  // namespace

std::string_view word_of(PaperKind kind) {
  return kKindWords[static_cast<std::size_t>(kind)];
}

std::optional<PaperKind> read_paper_kind(std::string_view word) {
  for (std::size_t i = 0; i < kKindWords.size(); ++i)
    if (same_word(kKindWords[i], word)) return static_cast<PaperKind>(i);
  return std::nullopt;
}

std::string subject_of(const Paper& paper) {
  return std::string(word_of(paper.kind)) + " " + std::to_string(paper.number);
}

std::string write_paper(const Paper& paper) {
  Json json{{"paper", word_of(paper.kind)},
            {"number", paper.number},
            {"after", paper.after},
            {"day", frozen(paper.day)},
            {"job", paper.job},
            {"customer", paper.customer},
            {"amount", paper.amount.minor},
            {"note", paper.note},
            {"called", paper.called},
            {"due", frozen(paper.due)},
            {"from", frozen(paper.from)},
            {"to", frozen(paper.to)},
            {"sawing", paper.sawing.minor},
            {"minimum", paper.minimum.minor},
            {"settled", paper.settled.minor},
            {"lines", frozen_list(paper.lines)},
            {"taxes", frozen_list(paper.taxes)},
            {"sheets", frozen_list(paper.sheets)},
            {"items", frozen_items(paper.items)},
            {"split", paper.split ? frozen(*paper.split) : Json(nullptr)},
            {"invoice", paper.invoice},
            {"cancels", paper.cancels},
            {"method", paper.method},
            {"waiver", paper.waiver ? frozen(*paper.waiver) : Json(nullptr)},
            {"load", frozen_list(paper.load)},
            {"document", frozen(paper.document)}};
  if (paper.revision != 0) json["mill"] = paper.revision;
  if (paper.slip != 0) json["slip"] = paper.slip;
  // Bytes that are no UTF-8 (a name pasted from elsewhere) are replaced, never refused: the sheet was accepted.
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

Paper read_paper(std::string_view text) {
  try {
    return thaw_paper(Json::parse(text, [](int, Json::parse_event_t, const Json& value) {
      if (value.is_number_float()) throw std::domain_error("a number with a fraction, and a paper has none");
      constexpr std::int64_t kMost = 1'000'000'000'000'000'000;  // sums of two still have 63 bits
      const bool too_large = value.is_number_unsigned()
                                 ? value.get<std::uint64_t>() > static_cast<std::uint64_t>(kMost)
                                 : value.is_number_integer() && value.get<std::int64_t>() < -kMost;
      if (too_large) throw std::domain_error("a number of more than 18 digits");
      return true;
    }));
  } catch (const std::exception& fault) {
    throw Failed(std::string("a frozen paper cannot be read: ") + fault.what() + "; " +
                 std::string(book::kGoBack));
  }
}

namespace {

/// The invoices and divisions of a job (or, without one, of a buyer), and whether a credit note took them back.
std::vector<std::pair<const Paper*, bool>> issued(const std::vector<Paper>& papers, const std::string& job,
                                                  const std::string& customer) {
  std::set<std::int64_t> cancelled;
  for (const Paper& paper : papers)
    if (paper.kind == PaperKind::credit && paper.cancels) cancelled.insert(paper.invoice);
  std::vector<std::pair<const Paper*, bool>> all;
  for (const Paper& paper : papers) {
    const bool invoice = paper.kind == PaperKind::invoice;
    if (!invoice && paper.kind != PaperKind::division) continue;
    if (!same_word(paper.job, job) || (job.empty() && !same_word(paper.customer, customer))) continue;
    all.emplace_back(&paper, invoice && cancelled.count(paper.number) != 0);
  }
  return all;
}

}  // namespace

std::vector<Billed> billed_of(const std::vector<Paper>& papers, const std::string& job,
                              const std::string& customer) {
  std::vector<Billed> all;
  for (const auto& [paper, cancelled] : issued(papers, job, customer))
    all.push_back({subject_of(*paper), paper->kind == PaperKind::division, cancelled, paper->sheets,
                   paper->items, paper->sawing, paper->minimum, paper->revision});
  return all;
}

std::vector<Draft> drafts_of(const std::vector<Paper>& papers, const std::string& job,
                             const std::string& customer) {
  std::vector<Draft> all;
  for (const auto& [paper, cancelled] : issued(papers, job, customer)) {
    if (cancelled || paper->kind != PaperKind::invoice) continue;
    Draft draft;
    draft.lines = paper->lines;
    draft.taxes = paper->taxes;
    draft.total = paper->amount;
    all.push_back(std::move(draft));
  }
  return all;
}

std::vector<Waiver> waivers_of(const std::vector<Paper>& papers, const std::string& job) {
  std::vector<Waiver> all;
  for (const Paper& paper : papers) {
    if (!paper.waiver || !same_word(paper.job, job)) continue;
    std::erase_if(all, [&](const Waiver& one) { return one.same_charge(*paper.waiver); });
    if (!paper.waiver->back) all.push_back(*paper.waiver);
  }
  return all;
}

bool Waiver::same_charge(const Waiver& other) const {
  return day == other.day && shift == other.shift && same_word(charge, other.charge);
}

}  // namespace kerfbook::billing
