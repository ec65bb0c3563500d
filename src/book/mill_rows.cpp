#include "book/mill_rows.h"

#include "base/text.h"

namespace kerfbook::book {
namespace {

/// Wood that is nobody else's is the mill's own, unless the file says otherwise.
std::string owner_of(const JobEntry& job) {
  if (same_word(job.code, "own")) return "own";
  if (!job.owner.empty()) return job.owner;
  return job.customer.empty() ? "own" : "customer";
}

/// The mill file's spelling of a word is the one that is shown, also when a sheet used the word first.
void write_words(Store& store, Words& words, const Mill& mill) {
  for (const auto& site : mill.sites) words.find_or_add(WordKind::site, site);
  for (const auto& word : mill.species) {
    store.run("UPDATE species SET code = ?, name = ?, kind = ? WHERE id = ?", word.code, word.name,
              word.group, words.find_or_add(WordKind::species, word.code));
  }
  for (const auto& word : mill.grades) {
    store.run("UPDATE grade SET code = ?, name = ? WHERE id = ?", word.code, word.name,
              words.find_or_add(WordKind::grade, word.code));
  }
  for (const auto& customer : mill.customers) {
    store.run("UPDATE customer SET code = ?, name = ? WHERE id = ?", customer.code, customer.name,
              words.find_or_add(WordKind::customer, customer.code));
  }
  for (const auto& job : mill.jobs) {
    store.run("UPDATE job SET code = ?, name = ?, customer = ?, owner = ?, site = ? WHERE id = ?", job.code,
              job.name, words.find_or_add(WordKind::customer, job.customer), owner_of(job), job.site,
              words.find_or_add(WordKind::job, job.code));
  }
}

void write_cut_list(Store& store, Words& words, const JobEntry& job) {
  const auto id = words.find_or_add(WordKind::job, job.code);
  int line = 0;
  for (const auto& want : job.cut_list) {
    store.run("INSERT INTO cut_list (job, line, size, length, metric, grade, pieces) VALUES (?,?,?,?,?,?,?)",
              id, ++line, words.find_or_add(want.size), want.length.count,
              want.length.system == measure::System::metric, words.find_or_add(WordKind::grade, want.grade),
              want.pieces);
  }
}

void write_costs(Store& store, const Mill& mill) {
  store.run("DELETE FROM cost");
  store.run("DELETE FROM service");
  int line = 0;
  for (const auto& cost : mill.costs) {
    store.run(
        "INSERT INTO cost (line, name, rate_micro, per, whole, unit, who, from_day, to_day) "
        "VALUES (?,?,?,?,?,?,?,?,?)",
        ++line, cost.name, cost.rate_micro, cost.per, cost.whole, cost.unit, cost.who, cost.from, cost.to);
  }
  line = 0;
  for (const auto& service : mill.services) {
    store.run("INSERT INTO service (line, name, every_tenths) VALUES (?,?,?)", ++line, service.name,
              service.every_tenths);
  }
}

/// A job goes on from the file before this one, or is in the files from this one on.
void write_jobs_held(Store& store, Words& words, const MillEntry& posted) {
  for (const auto& job : posted.mill.jobs) {
    const auto id = words.find(WordKind::job, job.code);
    store.run("UPDATE mill_job SET last_entry = ? WHERE job = ? AND last_entry = ?", posted.entry, id,
              posted.before);
    store.run(
        "INSERT INTO mill_job (job, first_entry, last_entry) SELECT ?1, ?2, ?2 WHERE NOT EXISTS "
        "(SELECT 1 FROM mill_job WHERE job = ?1 AND last_entry = ?2)",
        id, posted.entry);
  }
}

}  // namespace

void write_mill_rows(Store& store, Words& words, const MillEntry& posted) {
  const Mill& mill = posted.mill;
  write_words(store, words, mill);
  write_jobs_held(store, words, posted);
  for (const auto& size : mill.sizes) words.find_or_add(size.nominal);
  store.run("DELETE FROM cut_list");
  for (const auto& job : mill.jobs) {
    for (const auto& size : job.sizes) words.find_or_add(size.nominal);
    write_cut_list(store, words, job);
  }
  write_costs(store, mill);
  words.take_notes();  // words of the mill file are not news
}

}  // namespace kerfbook::book
