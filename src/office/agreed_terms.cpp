// agreed_terms.cpp -- looking for the mill file that holds for a job.
#include "office/agreed_terms.h"

#include <algorithm>

namespace kerfbook::billing {

bool Deals::Revision::names(const std::string& job) const {
  return find_job(mill, job) != nullptr || find_agreement(terms, job) != nullptr;
}

bool Deals::Revision::agreed(const std::string& job, Day day) const {
  const Agreement* agreement = find_agreement(terms, job);
  return agreement != nullptr && agreement->agreed == day;
}

Deals::Revision& Deals::newest() {
  if (revisions_.empty()) {
    Revision& made = revisions_.emplace_back();
    if (const auto entry = book_.current("mill")) made.number = entry->revision;
    made.mill = book_.mill();
    made.terms = terms_of(made.mill);
  }
  return revisions_.back();
}

/// All of them, the oldest first. One that this program would not accept any more counts for what it reads of it.
void Deals::read_all() {
  newest();
  if (all_read_) return;
  all_read_ = true;
  Revision last = std::move(revisions_.back());
  revisions_.clear();
  for (const book::Entry& entry : book_.revisions("mill")) {
    Revision& made = revisions_.emplace_back();
    made.number = entry.revision;
    if (const auto day = read_day(entry.at.substr(0, entry.at.find(' ')))) made.made = *day;
    made.mill = book::read_posted_mill(entry.body).mill;
    made.terms = read_terms(entry.body, options_of(made.mill)).terms;
  }
  if (revisions_.empty()) revisions_.push_back(std::move(last));  // a book without a mill file
}

std::size_t Deals::place_of(const std::string& job) {
  const auto day_agreed = [&](std::size_t place) -> std::optional<Day> {
    const Agreement* agreement = find_agreement(revisions_[place].terms, job);
    return agreement == nullptr ? std::nullopt : agreement->agreed;
  };
  const bool known = newest().names(job);
  if (known && !day_agreed(revisions_.size() - 1)) return revisions_.size() - 1;
  read_all();
  std::size_t last = revisions_.size() - 1;
  for (std::size_t i = revisions_.size(); i-- > 0;) {
    if (!revisions_[i].names(job)) continue;
    last = i;
    break;
  }
  const std::optional<Day> day = day_agreed(last);
  if (!day) return last;
  std::size_t first = last;
  for (std::size_t i = 0; i <= last; ++i) {
    if (!revisions_[i].agreed(job, *day)) continue;
    first = i;
    break;
  }
  const Day until = std::max(revisions_[first].made, *day);
  std::size_t place = first;
  for (std::size_t i = first; i <= last && revisions_[i].made <= until; ++i)
    if (revisions_[i].agreed(job, *day)) place = i;
  return place;
}

std::shared_ptr<const Terms> Deals::terms_at(std::size_t place) {
  Revision& of = revisions_[place];
  if (of.joined) return of.joined;
  auto made = std::make_shared<Terms>(of.terms);
  const Terms& now = newest().terms;
  if (&now != &of.terms) {
    made->invoice = now.invoice;
    made->taxes = now.taxes;
    made->agreements = now.agreements;
    for (const Agreement& one : of.terms.agreements)
      if (find_agreement(now, one.job) == nullptr) made->agreements.push_back(one);
  }
  of.joined = made;
  return made;
}

std::shared_ptr<const book::Mill> Deals::mill_with(const std::string& job, const book::Mill& then) {
  const book::Mill& now = book_.mill();
  const book::JobEntry* entry = find_job(then, job);
  if (find_job(now, job) != nullptr || entry == nullptr)
    return {std::shared_ptr<const book::Mill>(), &now};  // the book's own, which outlives the deed
  auto made = std::make_shared<book::Mill>(now);
  made->jobs.push_back(*entry);
  const book::Customer* customer = find_customer(then, entry->customer);
  if (customer != nullptr && find_customer(now, entry->customer) == nullptr)
    made->customers.push_back(*customer);
  return made;
}

Deal Deals::of_job(const std::string& job) {
  const std::size_t place = place_of(job);
  Deal deal;
  deal.terms = terms_at(place);
  const Revision& of = revisions_[place];
  deal.mill = mill_with(job, of.mill);
  deal.revision = of.number;
  deal.newest = place + 1 == revisions_.size();
  deal.posted = deal.newest ? "" : write_day(of.made);
  deal.job = job_terms(*deal.mill, job);
  deal.job = priced_at(place, deal).job;
  return deal;
}

/// The job as it is now, counted and scaled as it was under that mill file.
Priced Deals::priced_at(std::size_t place, const Deal& deal) {
  Priced priced{terms_at(place), deal.job};
  const book::Mill& mill = revisions_[place].mill;
  const JobTerms then =
      deal.job.job.empty() ? sale_terms(mill, deal.job.customer) : job_terms(mill, deal.job.job);
  priced.job.convention = then.convention;
  priced.job.practice = then.practice;
  priced.job.practices = then.practices;
  return priced;
}

void Deals::add_prices(const Deal& deal, std::vector<Billed>& before) {
  for (Billed& paper : before) {
    if (paper.revision == 0 || paper.revision == deal.revision) continue;
    read_all();
    for (std::size_t i = 0; i < revisions_.size(); ++i)
      if (revisions_[i].number == paper.revision) {
        Priced then = priced_at(i, deal);
        auto terms = std::make_shared<Terms>(*then.terms);
        terms->agreements = revisions_[i].terms.agreements;  // also the day it was agreed then
        then.terms = std::move(terms);
        paper.by = std::make_shared<const Priced>(std::move(then));
      }
  }
}

Deal Deals::of_sale(const std::string& buyer) {
  newest();
  Deal deal;
  deal.terms = terms_at(revisions_.size() - 1);
  deal.mill = {std::shared_ptr<const book::Mill>(), &book_.mill()};
  deal.revision = revisions_.back().number;
  deal.job = sale_terms(book_.mill(), buyer);
  return deal;
}

}  // namespace kerfbook::billing
