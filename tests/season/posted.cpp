#include "posted.h"

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
  return found;
}

}  // namespace reckoning
