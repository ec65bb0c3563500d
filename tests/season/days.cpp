#include "days.h"

#include <algorithm>
#include <sstream>
#include <stdexcept>

#include "notation.h"
#include "whose.h"

namespace reckoning {
namespace {

/// Reads one sheet line by line; what holds is in `now_`.
class SheetReader {
 public:
  Sheet read(const std::string& text) {
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
      ++line_;
      item_ = 0;
      line = line.substr(0, line.find(';'));
      named_.clear();
      if (const auto at = line.rfind(", job "); at != std::string::npos && !line.starts_with("crew")) {
        named_ = words_of(line.substr(at + 6)).at(0);
        line.erase(at);
      }
      const Words words = words_of(line);
      if (words.empty()) continue;
      lines_.kinds[line_] = words[0];
      one(words);
      if (words[0] == "job") lines_.jobs[line_] = words[1];
      if (!named_.empty()) lines_.named.insert(line_);
    }
    say_whose(sheet_, lines_);
    return std::move(sheet_);
  }

 private:
  void one(const Words& words) {
    const std::string& kind = words[0];
    const auto word = [&](std::size_t i) { return i < words.size() ? words[i] : std::string(); };
    if (kind == "sheet") return heading(words);
    if (kind == "site") return site(words);
    if (kind == "species") return static_cast<void>(now_.species = word(1));
    if (kind == "grade") return static_cast<void>(now_.grade = word(1) == "-" ? "" : word(1));
    if (kind == "bundle") return static_cast<void>(now_.bundle = word(1) == "-" ? "" : word(1));
    if (kind == "job") return static_cast<void>(now_.job = word(1));
    if (kind == "crew") return crew(words);
    if (kind == "run" || kind == "sawing") return sawing(words);
    if (kind == "stop") return stop(words);
    if (kind == "setup") return setup(words);
    if (kind == "log" || kind == "in") return log(words);
    if (kind == "less") return tally(words, 1, Sense::less);
    if (kind == "resaw") return tally(words, 1, Sense::resaw);
    if (kind == "sold") return sold(words);
    if (kind == "teeth") return teeth(words);
    if (kind == "charge") return charge(words);
    if (kind == "meter") return static_cast<void>(sheet_.meters.push_back({stand(), fraction_of(word(1))}));
    if (kind == "fuel") return fuel(words);
    if (kind == "move") return move(words);
    if (kind == "note" || kind == "thick") return;
    if (begins_with_digit(kind)) return tally(words, 0, Sense::sawn);
    throw std::runtime_error("the reckoning reads no such line: " + joined(words, 0));
  }

  Stand stand() {
    Stand at = now_;
    at.day = sheet_.day;
    at.shift = sheet_.shift;
    at.place = line_ * 1000 + item_++;
    if (!named_.empty()) at.job = named_;
    return at;
  }

  void site(const Words& words) {
    now_.site = joined(words, 1);
    lines_.places[line_] = {"", now_.site};
  }

  void heading(const Words& words) {
    sheet_.day = date_of(words.at(1));
    if (words.size() > 3 && words[2] == "shift") sheet_.shift = std::stoi(words[3]);
  }

  /// crew Quill 9, Bess 7:00-12:00 13:00-16:30 stacking
  void crew(const Words& words) {
    for (const std::string& part : parted(joined(words, 1), ',')) {
      const Words hand = words_of(part);
      std::size_t at = 0;
      Hand one;
      while (at < hand.size() && !begins_with_digit(hand[at])) ++at;
      one.name = joined(hand, 0, at);
      for (; at < hand.size() && begins_with_digit(hand[at]); ++at)
        one.minutes += is_clock(hand[at]) ? clock_of(hand[at]).minutes : minutes_of(hand[at]);
      one.activity = joined(hand, at);
      one.at = stand();
      sheet_.crew.push_back(one);
    }
  }

  void sawing(const Words& words) {
    for (std::size_t i = 1; i < words.size(); ++i) {
      const Clock span = clock_of(words[i]);
      sheet_.sawing.push_back({stand(), span.from, span.minutes});
    }
  }

  void stop(const Words& words) {
    Stop one;
    one.at = stand();
    if (is_clock(words.at(1))) {
      one.from = clock_of(words[1]).from;
      one.minutes = clock_of(words[1]).minutes;
    } else {
      one.minutes = minutes_of(words[1]);
    }
    one.cause = words.at(2);
    std::string rest = joined(words, 3);
    if (const auto comma = rest.rfind(','); comma != std::string::npos) {
      const Words after = words_of(rest.substr(comma + 1));
      if (!after.empty() && after[0] == "charge") {
        one.charge = true;
        if (after.size() > 1) {
          one.at.job = after[1];
          lines_.named.insert(line_);
        }
        rest.erase(comma);
      }
    }
    if (rest == "charge") {
      one.charge = true;
      rest.clear();
    }
    if (!one.cause.empty() && one.cause.back() == ',') one.cause.pop_back();
    one.text = rest;
    sheet_.stops.push_back(one);
  }

  void setup(const Words& words) {
    std::size_t at = 1;
    while (at < words.size() && words[at] != "kerf" && words[at] != "over") ++at;
    now_.setup = joined(words, 1, at);
    Setup one{stand(), now_.setup, std::nullopt};
    for (; at + 1 < words.size() && (words[at] == "kerf" || words[at] == "over"); at += 2)
      if (words[at] == "over") one.over = fraction_of(words[at + 1]).nearest(1000);
    sheet_.setups.push_back(one);
  }

  /// 12/13-15x16'6 and 30/32-36x4.8m; a diameter has decimals, never a fraction.
  static Measure measure_of(const std::string& word) {
    Measure measure;
    const auto cross = word.find('x');
    std::string ends = word.substr(0, cross);
    std::string length = word.substr(cross + 1);
    measure.metric = length.ends_with('m');
    std::erase_if(ends, [](char c) { return c == 'c' || c == 'm'; });
    const std::vector<std::string> both = parted(ends, '-');
    for (const auto& reading : parted(both[0], '/')) measure.small.push_back(fraction_of(reading));
    if (both.size() > 1)
      for (const auto& reading : parted(both[1], '/')) measure.large.push_back(fraction_of(reading));
    measure.length = length_of(length, measure.metric);
    return measure;
  }

  /// T13 is a tag, T13-T22 are ten.
  static Words tags_of(const std::string& word) {
    const auto dash = word.find('-');
    if (dash == std::string::npos) return {word};
    const auto digits = [](const std::string& tag) { return tag.find_first_of("0123456789"); };
    const std::string from = word.substr(0, dash);
    const std::string to = word.substr(dash + 1);
    const std::string letters = from.substr(0, digits(from));
    const std::size_t wide = from.size() - letters.size();
    Words tags;
    for (int i = std::stoi(from.substr(digits(from))); i <= std::stoi(to.substr(digits(to))); ++i) {
      const std::string number = std::to_string(i);
      tags.push_back(letters + std::string(wide > number.size() ? wide - number.size() : 0, '0') + number);
    }
    return tags;
  }

  void log(const Words& words) {
    std::size_t at = 1;
    Words tags;
    Log one;
    while (at < words.size() && !is_size(words[at]) && words[at] != "defect" && words[at] != "left" &&
           words[at] != "from") {
      for (auto& tag : tags_of(words[at])) tags.push_back(tag);
      ++at;
    }
    if (at < words.size() && is_size(words[at])) one.measure = measure_of(words[at++]);
    for (; at < words.size(); ++at) {
      if (words[at] == "defect") {
        std::string amount = words.at(++at);
        const bool percent = amount.ends_with('%');
        amount.erase(amount.size() - (percent ? 1 : 2));
        one.defects.push_back({fraction_of(amount), percent});
      } else if (words[at] == "left") {
        one.state = Log::State::left;
      } else if (words[at] == "from" && words[0] == "in") {
        one.origin = joined(words, at + 1);
        break;
      }
    }
    if (words[0] == "in") one.state = Log::State::received;
    if (tags.empty()) tags.emplace_back();
    for (const auto& tag : tags) {
      one.tag = tag;
      one.at = stand();
      sheet_.logs.push_back(one);
    }
  }

  void board(Sense sense, const Section& section, const std::string& grade, std::int64_t pieces,
             const Fraction& length, bool lineal = false) {
    Boards one;
    one.at = stand();
    if (!grade.empty()) one.at.grade = grade;
    one.sense = sense;
    one.section = section;
    one.length = length;
    one.lineal = lineal;
    one.pieces = pieces * one.sign();
    sheet_.boards.push_back(one);
  }

  /// 2x6 Sel 5/10 1/12; 2x8x16 4; 1x4 212lf; 22x95 37lm; 5/4 rw Fas 7-1/2x8 6x8*3
  void tally(const Words& words, std::size_t at, Sense sense) {
    const std::vector<std::string> measures = parted(words.at(at++), 'x');
    const bool random = at < words.size() && words[at] == "rw";
    if (random) ++at;
    std::string grade;
    if (at < words.size() && !begins_with_digit(words[at])) grade = words[at++];
    if (random) {
      for (; at < words.size() && is_size(words[at]); ++at) {
        const auto star = words[at].find('*');
        const auto board_of = parted(words[at].substr(0, star), 'x');
        const std::int64_t pieces = star == std::string::npos ? 1 : std::stoll(words[at].substr(star + 1));
        board(sense, section_of(measures[0], board_of[0]), grade, pieces, length_of(board_of[1], false));
      }
      return;
    }
    const Section section = section_of(measures.at(0), measures.at(1));
    if (measures.size() == 3) {
      board(sense, section, grade, std::stoll(words.at(at)), length_of(measures[2], section.metric));
      return;
    }
    if (words.at(at).ends_with("lf") || words[at].ends_with("lm")) {
      const bool metres = words[at].ends_with("lm");
      if (metres != section.metric)
        throw std::runtime_error("lineal measure of the other system: " + joined(words, 0));
      board(sense, section, grade, 0, fraction_of(words[at].substr(0, words[at].size() - 2)), true);
      return;
    }
    for (; at < words.size() && begins_with_digit(words[at]); ++at) {
      const auto stroke = words[at].find('/');
      board(sense, section, grade, std::stoll(words[at].substr(0, stroke)),
            length_of(words[at].substr(stroke + 1), section.metric));
    }
  }

  /// sold Ferrin 2x6 No2 6/16 at 1.05 [each]
  void sold(const Words& words) {
    std::size_t at = 1;
    while (!is_size(words.at(at))) ++at;
    Sold one;
    one.buyer = joined(words, 1, at);
    const auto measures = parted(words[at++], 'x');
    one.section = section_of(measures.at(0), measures.at(1));
    std::string grade;
    if (!begins_with_digit(words.at(at))) grade = words[at++];
    Words items;
    while (at < words.size() && words[at] != "at") items.push_back(words[at++]);
    if (at < words.size()) one.price = fraction_of(words.at(at + 1));
    one.each = at + 2 < words.size() && words[at + 2] == "each";
    for (const auto& item : items) {
      const auto stroke = item.find('/');
      one.at = stand();
      if (!grade.empty()) one.at.grade = grade;
      one.lineal = item.ends_with("lf");
      one.pieces = one.lineal ? 0 : std::stoll(item.substr(0, stroke));
      one.length = one.lineal ? fraction_of(item.substr(0, item.size() - 2))
                              : length_of(item.substr(stroke + 1), one.section.metric);
      sheet_.sold.push_back(one);
    }
  }

  /// teeth head replaced 3 metal T17 text
  void teeth(const Words& words) {
    Teeth one;
    one.at = stand();
    one.saw = words.at(1);
    one.action = words.at(2);
    std::size_t at = 3;
    if (at < words.size() && begins_with_digit(words[at])) one.count = std::stoll(words[at++]);
    if (at < words.size()) one.cause = words[at++];
    if (at < words.size()) one.log = words[at++];
    if (one.cause == "-") one.cause.clear();
    if (one.log == "-") one.log.clear();
    one.text = joined(words, at);
    sheet_.teeth.push_back(one);
  }

  void charge(const Words& words) {
    ChargeLine one;
    one.at = stand();
    one.at.job = words.at(1);
    one.name = words.at(2);
    std::size_t at = 3;
    if (at < words.size() && begins_with_digit(words[at])) one.quantity = fraction_of(words[at++]);
    one.text = joined(words, at);
    sheet_.charges.push_back(one);
  }

  void fuel(const Words& words) {
    Fuel one{stand(), fraction_of(words.at(1)), words.at(2), std::nullopt};
    if (words.size() > 3) one.paid = fraction_of(words[3]);
    sheet_.fuel.push_back(one);
  }

  /// move Tervane farm to yard 23 mi 3:45
  void move(const Words& words) {
    const auto to = static_cast<std::size_t>(std::find(words.begin(), words.end(), "to") - words.begin());
    std::size_t at = to + 1;
    while (!begins_with_digit(words.at(at))) ++at;
    Move one;
    one.from = joined(words, 1, to);
    one.to = joined(words, to + 1, at);
    one.distance = fraction_of(words[at]);
    one.kilometres = words.at(at + 1) == "km";
    if (at + 2 < words.size()) one.minutes = minutes_of(words[at + 2]);
    now_.site = one.to;
    lines_.places[line_] = {one.from, one.to};
    one.at = stand();
    sheet_.moves.push_back(one);
  }

  Sheet sheet_;
  Stand now_;
  std::string named_;  ///< the job the line names at its end
  Lines lines_;
  int line_ = 0;
  int item_ = 0;
};

}  // namespace

Sheet read_sheet(const std::string& text) {
  return SheetReader().read(text);
}

}  // namespace reckoning
