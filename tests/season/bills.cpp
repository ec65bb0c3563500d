#include "bills.h"

#include <algorithm>
#include <tuple>

#include "measures.h"

namespace reckoning {
namespace {

constexpr std::int64_t kCents = 100;

Item item_of(const Stand& at, const std::string& rate, const Fraction& quantity, const Fraction& price) {
  Item item;
  item.day = at.day;
  item.shift = at.shift;
  item.rate = rate;
  item.quantity = quantity;
  item.price = price;
  return item;
}

/// Where an entry stands among all: what tells two of one name apart.
std::string place_of(const Mill& mill, const Entry& entry) {
  return entry.table + " " + std::to_string(&entry - mill.entries.data());
}

Fraction amount_of(const std::vector<const Item*>& items) {
  Fraction quantity;
  for (const Item* item : items) quantity += item->quantity;
  const Item& first = *items.front();
  if (first.parts != 0) quantity = quantity.nearest(first.parts);
  return (quantity * first.price).nearest(kCents);
}

bool listed(const std::vector<std::string>& words, const std::string& word) {
  return words.empty() || std::find(words.begin(), words.end(), word) != words.end();
}

bool says(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

bool Bills::fits(const Entry& entry, const Question& asked) const {
  const auto named = [&](const char* key, const std::string& word) { return listed(entry.list(key), word); };
  if (!named("job", asked.job) || !named("customer", mill_.customer_of(asked.job)) ||
      !named("species", asked.species) || !named("grade", asked.grade))
    return false;
  for (const char* key : {"thickness_from", "thickness_to"}) {
    if (!entry.has(key)) continue;
    if (asked.section == nullptr) return false;
    const Fraction inches =
        asked.section->metric ? asked.section->thick / Fraction(254, 10) : asked.section->thick;
    const bool from = std::string(key) == "thickness_from";
    if (from ? inches < entry.number(key) : entry.number(key) < inches) return false;
  }
  if (entry.has("size") && (asked.section == nullptr || !says(entry.list("size"), asked.section->name)))
    return false;
  if (entry.has("from") && asked.day < date_of(entry.text("from"))) return false;
  return !entry.has("until") || !(date_of(entry.text("until")) < asked.day);
}

/// The most particular that fits: one that names the job, then the customer, then the one with more conditions, the
/// later one, the one that stands later.
const Entry* Bills::find(const std::string& table, const Question& asked, bool sells,
                         const std::string& name) const {
  const auto particular = [](const Entry& entry) {
    int others = entry.has("size") ? 4 : 0;
    for (const char* key : {"species", "grade", "thickness_from", "thickness_to"})
      others += entry.has(key) ? 1 : 0;
    return std::tuple(entry.has("job"), entry.has("customer"), others,
                      entry.has("from") ? date_of(entry.text("from")) : Date(), &entry);
  };
  const Entry* best = nullptr;
  for (const Entry* entry : mill_.all(table)) {
    if (entry->truth("sells") != sells || (!name.empty() && entry->text("name") != name) ||
        !fits(*entry, asked))
      continue;
    if (best == nullptr || particular(*best) < particular(*entry)) best = entry;
  }
  return best;
}

void Bills::lumber(const Boards& boards, std::vector<Item>& items) const {
  const Entry* price = find(
      "price", {boards.at.job, boards.at.species, boards.at.grade, boards.at.day, &boards.section}, false);
  if (price == nullptr) return;
  const std::string basis = price->text("basis");
  Item item = item_of(boards.at, place_of(mill_, *price), 0, price->number("rate"));
  item.sawing = true;
  item.tax = price->has("tax") ? price->text("tax") : "sawing";
  item.parts = mill_.whole_feet ? 1 : 100;
  if (basis == "bf" || basis == "mbf") {
    item.quantity = lumber_of(boards);
    if (basis == "mbf") item.price = item.price / 1000;
  } else if (basis == "piece") {
    item.quantity = boards.pieces;
    item.parts = 1;
  } else if (basis == "lineal-foot") {
    item.quantity = feet_of(boards);
  } else {
    return;
  }
  items.push_back(item);
}

void Bills::log(const Log& log, std::vector<Item>& items) const {
  const Entry* price = find("price", {log.at.job, log.at.species, log.at.grade, log.at.day, nullptr}, false);
  if (price == nullptr || log.state != Log::State::sawn) return;
  const std::string basis = price->text("basis");
  Item item = item_of(log.at, place_of(mill_, *price), 1, price->number("rate"));
  item.sawing = true;
  item.tax = "sawing";
  item.parts = mill_.whole_feet ? 1 : 100;
  if (basis == "log-scale") {
    const auto scale = scale_of(log, price->has("rule") ? price->text("rule") : mill_.rule_of(log.at.job));
    if (!scale) return;
    item.quantity = scale->net;
  } else if (basis != "log") {
    return;
  }
  items.push_back(item);
}

void Bills::charge(const Entry& entry, const Stand& at, const Fraction& times, const Fraction& quantity,
                   std::vector<Item>& items) const {
  const std::string rate = place_of(mill_, entry);
  Item item = item_of(at, rate + " flat", times, entry.number("flat"));
  item.alone = true;
  item.tax = entry.has("tax") ? entry.text("tax") : "service";
  if (!item.price.is_zero() && !times.is_zero()) items.push_back(item);
  const Fraction counted = quantity < entry.number("free") ? Fraction(0) : quantity - entry.number("free");
  item.rate = rate + " rate";
  item.price = entry.number("rate");
  item.quantity = counted;
  if (entry.text("per") == "hour") item.parts = 0;
  if (!item.price.is_zero() && !counted.is_zero()) items.push_back(item);
}

void Bills::charges_of(const std::string& job, const Sheet& sheet, std::vector<Item>& items) const {
  std::set<std::string> written;
  for (const auto& line : sheet.charges)
    if (line.at.job == job) written.insert(line.name);
  const auto each_charge = [&](const Stand& at, const auto& wanted, const auto& deed) {
    std::set<std::string> names;
    for (const Entry* entry : mill_.all("charge")) {
      if (!wanted(*entry) || written.count(entry->text("name")) != 0 || names.count(entry->text("name")) != 0)
        continue;
      const Entry* best = find("charge", {job, at.species, "", at.day, nullptr}, false, entry->text("name"));
      if (best == nullptr || !wanted(*best)) continue;
      names.insert(entry->text("name"));
      deed(*best);
    }
  };
  for (const auto& line : sheet.charges) {
    if (line.at.job != job) continue;
    const Entry* entry = find("charge", {job, "", "", sheet.day, nullptr}, false, line.name);
    if (entry == nullptr) continue;
    if (entry->truth("strike"))
      charge(*entry, line.at, line.quantity, 0, items);
    else
      charge(*entry, line.at, entry->has("rate") ? Fraction(1) : line.quantity, line.quantity, items);
  }
  for (const auto& stop : sheet.stops) {
    if (stop.at.job != job || !stop.charge) continue;
    each_charge(
        stop.at, [&](const Entry& one) { return says(one.list("stop"), stop.cause); },
        [&](const Entry& one) {
          charge(one, stop.at, 1, one.text("per") == "hour" ? Fraction(stop.minutes, 60) : Fraction(1),
                 items);
        });
  }
  for (const auto& move : sheet.moves) {
    if (move.at.job != job) continue;
    each_charge(
        move.at, [](const Entry& one) { return one.truth("move"); },
        [&](const Entry& one) {
          Fraction distance = move.distance;
          if (one.text("per") == "hour") distance = Fraction(move.minutes, 60);
          if (one.text("per") == "mile" && move.kilometres)
            distance = distance / Fraction(1'609'344, 1'000'000);
          charge(one, move.at, 1, one.truth("round_trip") ? distance * 2 : distance, items);
        });
  }
  const bool stopped = std::any_of(sheet.stops.begin(), sheet.stops.end(), [&](const Stop& stop) {
    return stop.at.job == job && stop.cause == "metal";
  });
  std::set<std::string> logs;
  const auto strike = [](const Entry& one) { return one.truth("strike"); };
  for (const auto& stop : sheet.stops)
    if (stop.at.job == job && stop.cause == "metal")
      each_charge(stop.at, strike, [&](const Entry& one) {
        charge(one, stop.at, 1, one.text("per") == "hour" ? Fraction(stop.minutes, 60) : Fraction(0), items);
      });
  for (const auto& work : sheet.teeth) {
    if (work.at.job != job || work.cause != "metal") continue;
    const bool evidence = !stopped && logs.insert(work.log).second;
    for (const Entry* one : mill_.all("charge"))
      if (one->truth("strike")) {
        const bool by_tooth = one->text("per") == "tooth";
        const bool once = evidence && written.count(one->text("name")) == 0;
        charge(*one, work.at, once ? 1 : 0, by_tooth ? Fraction(work.count.value_or(0)) : Fraction(0), items);
      }
  }
}

std::vector<Item> Bills::items_of(const std::string& job, const std::vector<Sheet>& given) const {
  std::vector<Sheet> sheets = given;
  lend_measures(sheets);
  std::vector<Item> items;
  std::set<Date> days;
  bool any = false;
  for (const auto& sheet : sheets) {
    bool worked = false;
    const auto of = [&](const Stand& at) {
      worked = worked || at.job == job;
      return at.job == job;
    };
    const auto surcharges = [&](const Stand& at, bool log, const Fraction& count) {
      for (const Entry* one : mill_.all("charge")) {
        if (!one->truth("unasked") || (one->text("per") == "log") != log || one->text("per") == "percent")
          continue;
        if (find("charge", {job, at.species, at.grade, at.day, nullptr}, false, one->text("name")) != one)
          continue;
        Item item = item_of(at, place_of(mill_, *one), count, one->number("rate"));
        item.parts = 1;
        item.tax = "service";
        items.push_back(item);
      }
    };
    for (const auto& boards : sheet.boards)
      if (of(boards.at)) {
        lumber(boards, items);
        if (!boards.lineal) surcharges(boards.at, false, boards.pieces);
      }
    for (const auto& one : sheet.logs)
      if (one.state == Log::State::sawn && of(one.at)) {
        log(one, items);
        surcharges(one.at, true, 1);
      }
    for (const auto& span : sheet.sawing) {
      if (!of(span.at)) continue;
      const Entry* price = find("price", {job, "", "", sheet.day, nullptr}, false);
      if (price == nullptr || price->text("basis") != "hour") continue;
      Item item =
          item_of(span.at, place_of(mill_, *price), Fraction(span.minutes, 60), price->number("rate"));
      item.sawing = true;
      item.tax = "sawing";
      item.parts = 0;
      items.push_back(item);
    }
    if (worked && days.insert(sheet.day).second) {
      const Entry* price = find("price", {job, "", "", sheet.day, nullptr}, false);
      if (price != nullptr && price->text("basis") == "day") {
        Stand at;
        at.day = sheet.day;
        at.shift = sheet.shift;
        Item item = item_of(at, place_of(mill_, *price), 1, price->number("rate"));
        item.sawing = true;
        item.tax = "sawing";
        items.push_back(item);
      }
    }
    const std::size_t before = items.size();
    charges_of(job, sheet, items);
    any = any || worked || items.size() > before;
  }
  if (any)
    for (const Entry* one : mill_.all("charge"))
      if (one->truth("once") && find("charge", {job, "", "", {}, nullptr}, false, one->text("name")) == one) {
        Stand at;
        at.shift = 0;
        charge(*one, at, 1, 0, items);
      }
  return items;
}

std::vector<Item> Bills::items_sold(const std::string& buyer, const std::vector<Sheet>& sheets) const {
  std::vector<Item> items;
  for (const auto& sheet : sheets)
    for (const auto& sold : sheet.sold) {
      if (sold.buyer != buyer) continue;
      Boards boards;
      boards.section = sold.section;
      boards.length = sold.length;
      boards.pieces = sold.pieces;
      boards.lineal = sold.lineal;
      Item item = item_of(sold.at, "sold", sold.each ? Fraction(sold.pieces) : lumber_of(boards), 0);
      item.alone = true;
      item.tax = "lumber";
      item.parts = sold.each || mill_.whole_feet ? 1 : 100;
      if (sold.price) {
        item.price = *sold.price;
      } else if (const Entry* price =
                     find("price", {"", sold.at.species, sold.at.grade, sheet.day, &sold.section}, true)) {
        item.price = price->number("rate");
        if (price->has("tax")) item.tax = price->text("tax");
      }
      items.push_back(item);
    }
  return items;
}

Bill Bills::draft(const std::string& job, const std::vector<Item>& now,
                  const std::vector<Billed>& before) const {
  using Sheets = std::pair<Date, int>;
  std::set<Sheets> billed;
  std::vector<Item> changes;
  Fraction sawing_before, minimum_before;
  for (const auto& paper : before) {
    sawing_before += paper.sawing;
    minimum_before += paper.minimum;
    for (const Item& item : paper.items) {
      billed.insert({item.day, item.shift});
      changes.push_back(item);
      changes.back().quantity = -item.quantity;
    }
  }
  Bill bill;
  std::map<std::string, Fraction> by_tax;
  const auto put = [&](const std::vector<const Item*>& items, bool adjustment) {
    const Fraction amount = amount_of(items);
    if (adjustment && amount.is_zero()) return;
    bill.amounts.push_back(amount);
    by_tax[items.front()->tax] += amount;
    if (items.front()->sawing) bill.sawing += amount;
  };
  std::map<std::string, std::vector<const Item*>> fresh;
  std::map<std::tuple<Date, int, std::string>, std::vector<const Item*>> adjusted;
  for (const Item& item : now) {
    if (billed.count({item.day, item.shift}) != 0)
      adjusted[{item.day, item.shift, item.rate}].push_back(&item);
    else if (item.alone)
      put({&item}, false);
    else
      fresh[item.rate].push_back(&item);
  }
  for (const Item& item : changes) adjusted[{item.day, item.shift, item.rate}].push_back(&item);
  for (const auto& [rate, items] : fresh) put(items, false);
  for (const auto& [key, items] : adjusted) put(items, true);

  Fraction least;
  bool used = false;
  for (const Entry* price : mill_.all("price")) {
    const std::string place = place_of(mill_, *price);
    const bool here =
        std::any_of(now.begin(), now.end(), [&](const Item& item) { return item.rate == place; });
    if (here && price->has("minimum_job")) {
      used = true;
      if (least < price->number("minimum_job")) least = price->number("minimum_job");
    }
  }
  if (used) {
    const Fraction all = sawing_before + bill.sawing;
    const Fraction wanted = all < least ? least - all : Fraction(0);
    bill.minimum = wanted - minimum_before;
    if (!bill.minimum.is_zero()) {
      bill.amounts.push_back(bill.minimum);
      by_tax["sawing"] += bill.minimum;
    }
  }
  for (const Entry* one : mill_.all("charge")) {
    if (one->text("per") != "percent" || bill.sawing.is_zero()) continue;
    if (find("charge", {job, "", "", {}, nullptr}, false, one->text("name")) != one) continue;
    const Fraction amount = (bill.sawing * one->number("rate") / 100).nearest(kCents);
    bill.amounts.push_back(amount);
    by_tax["sawing"] += amount;
  }
  for (const auto& amount : bill.amounts) bill.subtotal += amount;
  for (const Entry* tax : mill_.all("tax")) {
    Fraction base;
    for (const auto& kind : tax->list("on")) base += by_tax[kind];
    bill.tax += (base * tax->number("rate") / 100).nearest(kCents);
  }
  bill.total = bill.subtotal + bill.tax;
  return bill;
}

PrintedBill printed_bill(const Json& answer) {
  PrintedBill bill;
  for (const auto& row : answer.at("rows").list) {
    const Json& amount = row.at("amount");
    if (!amount.is_null()) bill.amounts.push_back(fraction_of(amount.text));
  }
  for (const auto& sum : answer.at("sums").list)
    if (sum.at("label").text == "Total") bill.total = fraction_of(sum.at("value").text);
  return bill;
}

std::vector<std::string> differences(const Bill& expected, const PrintedBill& actual) {
  std::vector<std::string> found;
  std::vector<Fraction> left = actual.amounts;
  for (const auto& amount : expected.amounts) {
    const auto at = std::find(left.begin(), left.end(), amount);
    if (at == left.end())
      found.push_back("no line of " + amount.text());
    else
      left.erase(at);
  }
  for (const auto& amount : left)
    if (!amount.is_zero()) found.push_back("a line of " + amount.text() + " that is not reckoned");
  if (!(expected.total == actual.total))
    found.push_back("the total is " + actual.total.text() + ", reckoned " + expected.total.text());
  return found;
}

}  // namespace reckoning
