// posted.h -- a book of the program and the reckoning's own pile of the same sheets, kept in step.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "answer.h"
#include "bills.h"
#include "reckoning.h"

namespace reckoning {

class Posted {
 public:
  Posted(const std::string& mill_file, std::string today);

  void post(const std::vector<std::string>& sheets);
  void correct(const std::string& sheet, const std::string& why);

  /// Holds the draft of a job against the reckoning: what differs, each with the job's name.
  [[nodiscard]] std::vector<std::string> draft_differs(const std::string& job) const;
  [[nodiscard]] std::vector<std::string> sale_differs(const std::string& buyer) const;
  /// Issues the draft; its total, as the program prints it, is kept for the customer's account.
  std::vector<std::string> issue(const std::string& job);

  [[nodiscard]] Reckoning reckoned(const std::string& rule = {}) const { return {mill_, sheets_, rule}; }
  [[nodiscard]] Period whole() const { return {sheets_.front().day, sheets_.back().day}; }
  [[nodiscard]] const Desk& desk() const { return desk_; }
  [[nodiscard]] const Mill& mill() const { return mill_; }
  [[nodiscard]] const std::vector<Sheet>& sheets() const { return sheets_; }
  /// The list of what is billed to nobody: sawing, logs, lumber and moves of sheets on which they are no job's.
  [[nodiscard]] std::vector<std::string> under_no_job_differs() const;
  /// The report earnings: each job's invoices before tax and its draft, over its lumber, sawing and crew hours.
  [[nodiscard]] Table earnings() const;
  /// What customers were invoiced so far.
  [[nodiscard]] const std::map<std::string, Fraction>& invoiced() const { return invoiced_; }

 private:
  std::string add(const std::string& text);
  [[nodiscard]] Bill draft_of(const std::string& job) const;

  Desk desk_;
  Mill mill_;
  std::vector<Sheet> sheets_;
  std::map<std::string, std::vector<Billed>> billed_;  ///< by job
  std::map<std::string, Fraction> invoiced_;           ///< by customer, with tax
  std::map<std::string, Fraction> before_tax_;         ///< by job
};

}  // namespace reckoning
