#include "posted.h"

#include <set>

namespace reckoning {

Posted::Posted(const std::string& mill_file, std::string today)
    : desk_(std::move(today)), mill_(read_mill(mill_file)) {
  desk_.done({"new", desk_.path("mill.book"), "--mill", desk_.file("mill.toml", mill_file)});
}

std::string Posted::add(const std::string& text) {
  Sheet sheet = read_sheet(text);
  const std::string name = text_of(sheet.day) + "-" + std::to_string(sheet.shift) + ".sheet";
  put(sheets_, std::move(sheet));
  return desk_.file(name, text);
}

void Posted::post(const std::vector<std::string>& sheets) {
  std::vector<std::string> words{"post"};
  for (const auto& text : sheets) words.push_back(add(text));
  desk_.done(words);
}

void Posted::correct(const std::string& sheet, const std::string& why) {
  desk_.done({"post", add(sheet), "--why", why});
}

Bill Posted::draft_of(const std::string& job) const {
  const Bills bills(mill_);
  const auto before = billed_.find(job);
  return bills.draft(job, bills.items_of(job, sheets_),
                     before == billed_.end() ? std::vector<Billed>() : before->second);
}

std::vector<std::string> Posted::draft_differs(const std::string& job) const {
  std::vector<std::string> found;
  for (const auto& one : differences(draft_of(job), printed_bill(desk_.answer({"bill", job}))))
    found.push_back("bill " + job + ": " + one);
  return found;
}

std::vector<std::string> Posted::sale_differs(const std::string& buyer) const {
  const Bills bills(mill_);
  const Bill bill = bills.draft("", bills.items_sold(buyer, sheets_));
  std::vector<std::string> found;
  for (const auto& one : differences(bill, printed_bill(desk_.answer({"bill", "--sale", buyer}))))
    found.push_back("bill --sale " + buyer + ": " + one);
  return found;
}

std::vector<std::string> Posted::issue(const std::string& job) {
  const Bill bill = draft_of(job);
  const Bills bills(mill_);
  const std::string file = desk_.path(job + "-invoice.json");
  desk_.done({"issue", job, "--as", "json", "-o", file});
  std::vector<std::string> found;
  for (const auto& one : differences(bill, printed_bill(read_json(desk_.text_in(file)))))
    found.push_back("issue " + job + ": " + one);
  // what was billed of a sheet before stays billed: this paper froze the difference
  Billed frozen;
  frozen.items = bills.items_of(job, sheets_);
  frozen.sawing = bill.sawing;
  frozen.minimum = bill.minimum;
  for (auto& paper : billed_[job]) {
    frozen.sawing += paper.sawing;
    frozen.minimum += paper.minimum;
  }
  billed_[job] = {frozen};
  invoiced_[mill_.customer_of(job)] += bill.total;
  before_tax_[job] += bill.subtotal;
  return found;
}

std::vector<std::string> Posted::under_no_job_differs() const {
  std::set<std::string> expected, listed;
  for (const auto& sheet : sheets_) {
    const std::string day = text_of(sheet.day) + " ";
    for (const auto& one : sheet.sawing)
      if (one.at.job.empty()) expected.insert(day + "sawing");
    for (const auto& one : sheet.boards)
      if (one.at.job.empty()) expected.insert(day + "lumber");
    for (const auto& one : sheet.moves)
      if (one.at.job.empty()) expected.insert(day + "move");
    for (const auto& one : sheet.logs)
      if (one.at.job.empty() && one.state == Log::State::sawn) expected.insert(day + "logs");
  }
  const std::set<std::string> kinds{"sawing", "lumber", "move", "logs"};
  const Json answer = desk_.answer({"bill"});
  for (const auto& table : answer.at("tables").list)
    if (table.at("name").text == "under_no_job")
      for (const auto& row : table.at("rows").list)
        if (kinds.count(row.at("what").text) != 0)
          listed.insert(row.at("day").text + " " + row.at("what").text);
  std::vector<std::string> found;
  for (const auto& one : expected)
    if (listed.count(one) == 0) found.push_back("bill does not list under no job: " + one);
  for (const auto& one : listed)
    if (expected.count(one) == 0) found.push_back("bill lists under no job what is some job's: " + one);
  return found;
}

Table Posted::earnings() const {
  const Reckoning book = reckoned();
  Table table;
  table.keys = {"job"};
  table.sums = {"billed", "not_billed", "money", "lumber_bf", "sawing_hours", "crew_hours"};
  table.ratios = {{"per_bf", {"money", "lumber_bf"}},
                  {"per_sawing_hour", {"money", "sawing_hours"}},
                  {"per_crew_hour", {"money", "crew_hours"}}};
  for (const auto& [code, job] : mill_.jobs) {
    if (job.owner != "customer") continue;
    Fraction lumber, hours, crew;
    for (const auto& run : book.runs())
      if (run.job == code) lumber += run.lumber;
    for (const auto& sheet : book.sheets())
      for (const auto& span : sheet.sawing)
        if (span.at.job == code) hours += Fraction(span.minutes, 60);
    for (const auto& [day, worked] : book.crew_hours_of(code)) crew += worked;
    const auto billed = before_tax_.find(code);
    const Fraction invoiced = billed == before_tax_.end() ? Fraction(0) : billed->second;
    const Fraction open = draft_of(code).subtotal;
    table.rows.push_back({{"job", code},
                          {"billed", idle_or(invoiced)},
                          {"not_billed", idle_or(open)},
                          {"money", idle_or(invoiced + open)},
                          {"lumber_bf", idle_or(lumber)},
                          {"sawing_hours", idle_or(hours)},
                          {"crew_hours", shared(crew)}});
  }
  return table;
}

}  // namespace reckoning
